/** Lines that follow each other. End 2k is the start of line k, end 2k + 1 its end. */
export interface Chain {
  /** Ends by which each line is entered, in order. */
  readonly ends: readonly number[];
  readonly isClosed: boolean;
}

/** The whole chain that line k is part of; `partner` says for each end which other one it meets, if any. */
export function chainFrom(k: number, partner: readonly (number | undefined)[]): Chain {
  let entry = 2 * k;
  for (;;) {
    const before = partner[entry];
    if (before === undefined) break;
    entry = before ^ 1;
    if (entry >> 1 === k) break;
  }
  const ends = [entry];
  for (;;) {
    const next = partner[ends.at(-1)! ^ 1];
    if (next === undefined) return { ends, isClosed: false };
    if (next === ends[0]) return { ends, isClosed: true };
    ends.push(next);
  }
}
