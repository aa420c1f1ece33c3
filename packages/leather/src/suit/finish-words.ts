/** Bare leather in the trade's words: what takes water, tools and dye. */
const UNFINISHED = /\b(unfinished|undyed|russet|natural|bare|crust|tooling)\b/i;

/** True if these words tell of leather without a finish. */
export function isUnfinished(finish: string): boolean {
  return UNFINISHED.test(finish) && !/\bnot (unfinished|natural)\b/i.test(finish);
}
