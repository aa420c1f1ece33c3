/** One declared value. */
export interface Declaration {
  readonly value: string;
  readonly isImportant: boolean;
}

/** The declarations of a `style` attribute; property names in small letters, later ones win. */
export function parseDeclarations(text: string): Map<string, Declaration> {
  const result = new Map<string, Declaration>();
  for (const part of splitDeclarations(text)) {
    const colon = part.indexOf(':');
    if (colon < 0) continue;
    const property = part.slice(0, colon).trim().toLowerCase();
    const raw = part.slice(colon + 1).trim();
    const value = raw.replace(/\s*!\s*important$/i, '');
    const isImportant = value.length < raw.length;
    if (property === '' || value === '') continue;
    if (result.get(property)?.isImportant === true && !isImportant) continue;
    result.set(property, { value, isImportant });
  }
  return result;
}

/** Splits at semicolons outside brackets and quotation marks; leaves comments out. */
function splitDeclarations(text: string): string[] {
  const plain = text.includes('/*') ? text.replace(/\/\*[\s\S]*?(?:\*\/|$)/g, ' ') : text;
  if (!/["'(]/.test(plain)) return plain.split(';');
  const parts: string[] = [];
  let from = 0;
  let depth = 0;
  let quote = '';
  for (let i = 0; i < plain.length; i++) {
    const ch = plain[i]!;
    if (quote !== '') {
      if (ch === quote) quote = '';
    } else if (ch === '"' || ch === "'") quote = ch;
    else if (ch === '(') depth++;
    else if (ch === ')') depth--;
    else if (ch === ';' && depth <= 0) {
      parts.push(plain.slice(from, i));
      from = i + 1;
    }
  }
  parts.push(plain.slice(from));
  return parts;
}
