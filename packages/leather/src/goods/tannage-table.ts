import type { TannageRule } from '../model/workshop-rules.js';

/** What leather of each tannage can do. */
export const DEFAULT_TANNAGES: readonly TannageRule[] = [
  {
    tannage: 'vegetable',
    alsoCalled: ['veg', 'veg tan', 'vegetable tanned', 'bark'],
    // It is acid too: no blade and no gun is stored in it.
    meets: { 'lying against steel': 'with care' },
    source: 'common practice, no source',
  },
];
