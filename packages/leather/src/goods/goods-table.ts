import type { GoodsRule } from '../model/workshop-rules.js';

/** What each kind of goods wants of its leather, where order and workshop file are silent. */
export const DEFAULT_GOODS: readonly GoodsRule[] = [
  {
    goods: 'saddlebag',
    alsoCalled: ['pannier', 'saddle bag'],
    thickness: { minMm: 2.8, maxMm: 3.6 },
    tannages: ['vegetable', 'oil'],
    tempers: ['firm'],
    zones: ['bend', 'shoulder'],
    needs: ['standing up', 'burnished edges'],
    source: 'Australian supplier chart; UK maker’s chart',
  },
];
