import type { Figure } from '../model/workshop-rules.js';

/** Figures of keeping offcuts that a user may know better. */
export const STOCK_FIGURES: readonly Figure[] = [
  {
    name: 'narrowest strip worth keeping',
    words: 'Strips of offcuts are measured at this width',
    value: { min: 20, max: 20 },
    unit: 'mm',
    source: 'common practice, no source',
  },
  {
    name: 'shortest strip worth keeping',
    words: 'An offcut that holds a strip this long is kept, also where it is too narrow for the rectangle',
    value: { min: 200, max: 200 },
    unit: 'mm',
    source: 'common practice, no source',
  },
];
