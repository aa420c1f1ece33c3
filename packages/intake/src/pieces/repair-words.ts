import type { Sentence } from '../sentence.js';

/** Findings about what was unfolded, taken for a size or an allowance, or repaired. */
export const REPAIR_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
