import type { Figure } from '../model/workshop-rules.js';

/** Figures of costing that a user may know better. */
export const COSTING_FIGURES: readonly Figure[] = [
  {
    name: 'supplies, share of the leather',
    words: 'What glue, edge paint and the like cost, as a share of the leather',
    value: { min: 0, max: 0 },
    unit: '%',
    source: 'from memory: none unless you say so; a saddle trade association’s cost sheet takes 20 %',
  },
  {
    name: 'return on materials',
    words: 'What the money that lies in materials is to bring, on leather, supplies, thread and hardware',
    value: { min: 0, max: 0 },
    unit: '%',
    source: 'from memory: none unless you say so; a saddle trade association’s cost sheet has such a line',
  },
];
