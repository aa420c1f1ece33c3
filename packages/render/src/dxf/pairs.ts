/** Lines of a DXF file: a group code, then its value. */
export type Pair = readonly [number, string];

/** Ends of lines as the format's first programs wrote them; what reads the other ones reads these too. */
const LINE_END = '\r\n';
/** Codes stand in a field of three. */
const CODE_WIDTH = 3;

export function pairsToText(pairs: readonly Pair[]): string {
  return pairs
    .map(([code, value]) => `${String(code).padStart(CODE_WIDTH)}${LINE_END}${value}${LINE_END}`)
    .join('');
}

/** A number with at most so many decimals, with a point always, no exponent, never "-0.0". */
export function decimal(n: number, decimals = 6): string {
  const text = Math.abs(n).toFixed(decimals);
  const trimmed = text.replace(/0+$/, '').replace(/\.$/, '.0');
  return n < 0 && Number(text) !== 0 ? `-${trimmed}` : trimmed;
}

/** What plain ASCII lacks is written as the format's own escape. */
export function asciiText(text: string): string {
  return text
    .replace(/[\u0000-\u001f\u007f]+/g, ' ')
    .replace(
      /[^\u0020-\u007e]/g,
      (c) => `\\U+${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );
}
