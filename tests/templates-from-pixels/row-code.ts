/** What the sixteen squares of a row say. */
export interface RowCode {
  readonly word: number;
  /** The number of the square that was misread and is put right. */
  readonly putRight?: number;
}

/** Reads the extended Hamming code of docs/templates.md; undefined where two squares or more are misread. */
export function decodeRow(filled: readonly boolean[]): RowCode | undefined {
  let [parity, syndrome] = [0, 0];
  filled.forEach((isFilled, i) => {
    if (!isFilled) return;
    parity ^= 1;
    syndrome ^= i;
  });
  if (parity === 0 && syndrome !== 0) return undefined;
  const read = filled.reduce((word, isFilled, i) => (isFilled ? word | (1 << i) : word), 0);
  const word = parity === 0 ? read : read ^ (1 << syndrome);
  if (word === 0) return undefined;
  return parity === 0 ? { word } : { word, putRight: syndrome };
}
