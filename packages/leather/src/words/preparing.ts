import type { SentenceTable } from './sentence.js';

/** Sentences on how leather is prepared. */
export const PREPARING_SENTENCES = {
  'coverage-reversed': (p: { readonly product: string; readonly from: number; readonly to: number }) =>
    `The coverage of "${p.product}" goes from ${p.from} to ${p.to} mL per m²; the smaller figure comes first.`,
  'coverage-not-lighter': (p: {
    readonly product: string;
    readonly before: number;
    readonly after: number;
  }) =>
    `The bottle of "${p.product}" weighed ${p.before} g before and ${p.after} g after; after a coat it must weigh less.`,
} as const satisfies SentenceTable;
