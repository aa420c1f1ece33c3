import { IntakeError } from '../error.js';
import { MAX_ENTITY_CHARACTERS, MAX_ENTITY_DEPTH } from '../limits.js';

const PREDEFINED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/**
 * The simple text entities that drawing programs declare for their namespace names. Nothing is ever fetched: an
 * external or a parameter entity is refused with `external-entity`; entities that contain each other or grow
 * beyond the limit with `entity-bomb`. An external DTD named in the DOCTYPE itself is left unread, as usual.
 */
export function readEntities(doctype: string, file: string): Map<string, string> {
  const raw = new Map<string, string>();
  const declaration = /<!ENTITY\s+(%\s+)?([^\s"'>]+)\s+(?:"([^"]*)"|'([^']*)'|([^>]*))/g;
  for (const match of doctype.matchAll(declaration)) {
    const [, percent, name, double, single] = match;
    const value = double ?? single;
    if (percent !== undefined || value === undefined) {
      throw new IntakeError('external-entity', { name: name! }, { file });
    }
    if (!raw.has(name!)) raw.set(name!, value);
  }
  const expanded = new Map<string, string>();
  for (const name of raw.keys()) expanded.set(name, expand(name, raw, expanded, file, 0));
  return expanded;
}

function expand(
  name: string,
  raw: ReadonlyMap<string, string>,
  expanded: Map<string, string>,
  file: string,
  depth: number,
): string {
  const known = expanded.get(name);
  if (known !== undefined) return known;
  const replacementFor = (whole: string, inner: string): string => {
    if (inner.startsWith('#')) return characterOf(inner) ?? whole;
    const predefined = PREDEFINED[inner];
    if (predefined !== undefined) return predefined;
    return raw.has(inner) ? expand(inner, raw, expanded, file, depth + 1) : whole;
  };
  if (depth > MAX_ENTITY_DEPTH) throw new IntakeError('entity-bomb', { name }, { file });
  const source = raw.get(name) ?? '';
  // Counted while it grows: a text that is looked at only when it is whole has filled the memory by then.
  let length = source.length;
  const text = source.replace(/&(#x[0-9a-f]+|#[0-9]+|[^;\s]+);/gi, (whole, inner: string) => {
    const replacement = replacementFor(whole, inner);
    length += replacement.length;
    if (length > MAX_ENTITY_CHARACTERS) throw new IntakeError('entity-bomb', { name }, { file });
    return replacement;
  });
  if (text.length > MAX_ENTITY_CHARACTERS) throw new IntakeError('entity-bomb', { name }, { file });
  expanded.set(name, text);
  return text;
}

function characterOf(reference: string): string | undefined {
  const code =
    reference[1]?.toLowerCase() === 'x' ? parseInt(reference.slice(2), 16) : Number(reference.slice(1));
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
}

/** A table for the XML reader whose every look-up is counted, so that many uses of one long entity are refused too. */
export function countedEntities(
  entities: ReadonlyMap<string, string>,
  file: string,
  into: Record<string, string>,
): void {
  let used = 0;
  for (const [name, text] of entities) {
    Object.defineProperty(into, name, {
      configurable: true,
      get() {
        used += text.length;
        if (used > MAX_ENTITY_CHARACTERS) throw new IntakeError('entity-bomb', { name }, { file });
        return text;
      },
    });
  }
}
