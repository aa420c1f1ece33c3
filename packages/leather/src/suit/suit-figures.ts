import type { Figure } from '../model/workshop-rules.js';

/** Figures of choosing leather that a user may know better. */
export const SUIT_FIGURES: readonly Figure[] = [
  {
    name: 'tolerance of a stated thickness',
    words: 'How far the thickness of split leather may be from the stated one',
    value: { min: 0.2, max: 0.2 },
    unit: 'mm',
    source: 'a training lecture on cutting',
  },
];
