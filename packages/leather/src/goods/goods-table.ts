import type { ZoneKind } from '../model/hide.js';
import type { GoodsRule, LeatherNeed, Temper } from '../model/workshop-rules.js';

const MEMORY = 'from memory';
const PRACTICE = 'common practice, no source';
const AUSTRALIAN = 'Australian supplier chart';
const BRITISH = 'UK maker’s chart';
const WALLETS = 'wallet maker’s guide';
/** Tempers, tannages, zones and needs of every row. */
const REST = 'all else: common practice, no source';

const BACK: readonly ZoneKind[] = ['bend', 'shoulder'];
const BEND: readonly ZoneKind[] = ['bend'];
const SHOULDER: readonly ZoneKind[] = ['shoulder'];

interface RowWords {
  readonly as?: readonly string[];
  readonly tan: readonly string[];
  readonly temper: readonly Temper[];
  readonly zones?: readonly ZoneKind[];
  readonly finish?: string;
  readonly needs?: readonly LeatherNeed[];
  /** Where the thickness comes from. */
  readonly from: string;
}

/** Thickness in mm, of all layers together. */
function row(goods: string, minMm: number, maxMm: number, words: RowWords): GoodsRule {
  const { as = [], tan, temper, zones, finish, needs = [], from } = words;
  return {
    goods,
    alsoCalled: as,
    thickness: { minMm, maxMm },
    tannages: tan,
    tempers: temper,
    ...(finish === undefined ? {} : { finish }),
    ...(zones === undefined ? {} : { zones }),
    needs,
    source: from === PRACTICE ? PRACTICE : `thickness: ${from}; ${REST}`,
  };
}

const VEG = ['vegetable'] as const;
const VEG_OR_OIL = ['vegetable', 'oil', 'combination'] as const;
const SOFT_TAN = ['chrome', 'oil', 'combination'] as const;

const BELTS_AND_STRAPS: readonly GoodsRule[] = [
  row('dress belt', 2, 2.4, {
    as: ['lined belt'],
    tan: VEG,
    temper: ['firm', 'medium'],
    zones: BACK,
    needs: ['keeping its length', 'burnished edges'],
    from: PRACTICE,
  }),
  row('dress belt lining', 1, 1.2, {
    tan: VEG,
    temper: ['medium', 'soft'],
    needs: ['burnished edges'],
    from: PRACTICE,
  }),
  row('belt', 3.2, 4, {
    as: ['casual belt', 'single belt', 'trouser belt'],
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BEND,
    needs: ['keeping its length', 'burnished edges'],
    from: AUSTRALIAN,
  }),
  row('work belt', 4, 5.2, {
    as: ['heavy belt', 'gun belt'],
    tan: VEG,
    temper: ['hard', 'firm'],
    zones: BEND,
    needs: ['keeping its length', 'burnished edges'],
    from: AUSTRALIAN,
  }),
  row('bag strap', 2, 2.8, {
    as: ['shoulder strap'],
    tan: VEG_OR_OIL,
    temper: ['medium', 'firm'],
    zones: BACK,
    needs: ['keeping its length', 'burnished edges'],
    from: AUSTRALIAN,
  }),
  row('tool belt', 3.6, 4.4, {
    tan: VEG_OR_OIL,
    temper: ['firm', 'hard'],
    zones: BEND,
    needs: ['keeping its length'],
    from: MEMORY,
  }),
  row('guitar strap', 2.4, 2.8, {
    tan: VEG_OR_OIL,
    temper: ['medium', 'firm'],
    zones: BACK,
    needs: ['keeping its length', 'burnished edges'],
    from: BRITISH,
  }),
  row('watch strap', 1.2, 1.5, {
    as: ['watch band', 'watch strap top'],
    tan: VEG,
    temper: ['medium', 'firm'],
    zones: BEND,
    needs: ['keeping its length', 'turned edges', 'lying on skin'],
    from: PRACTICE,
  }),
  row('dog collar', 2.8, 4.5, {
    as: ['collar'],
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BACK,
    needs: ['keeping its length', 'burnished edges'],
    from: `${AUSTRALIAN}; makers of collars and leads`,
  }),
  row('dog lead', 3.5, 4.5, {
    as: ['lead', 'dog leash', 'leash'],
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BACK,
    needs: ['keeping its length', 'burnished edges'],
    from: 'makers of collars and leads',
  }),
  row('bridle', 3.6, 4.4, {
    as: ['rein', 'headstall'],
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BACK,
    needs: ['keeping its length', 'burnished edges'],
    from: AUSTRALIAN,
  }),
  row('saddle skirting', 4.8, 6, {
    as: ['stirrup leather', 'skirting'],
    tan: VEG,
    temper: ['hard', 'firm'],
    zones: BEND,
    needs: ['keeping its length', 'burnished edges'],
    from: AUSTRALIAN,
  }),
];

const BAGS_AND_SMALL_GOODS: readonly GoodsRule[] = [
  row('carved handbag', 2.4, 2.8, {
    as: ['tooled handbag'],
    tan: VEG,
    temper: ['firm'],
    zones: SHOULDER,
    finish: 'unfinished',
    needs: ['tooling', 'standing up', 'burnished edges'],
    from: AUSTRALIAN,
  }),
  row('tote', 1.2, 2, {
    as: ['tote bag', 'soft bag'],
    tan: SOFT_TAN,
    temper: ['soft', 'medium'],
    needs: [],
    from: MEMORY,
  }),
  row('satchel', 2.4, 3.2, {
    as: ['briefcase', 'document case'],
    tan: VEG,
    temper: ['firm'],
    zones: BACK,
    needs: ['standing up', 'burnished edges'],
    from: MEMORY,
  }),
  row('gusset', 1, 1.8, {
    tan: ['vegetable', 'chrome', 'oil', 'combination'],
    temper: ['soft', 'medium'],
    zones: ['shoulder', 'belly'],
    from: MEMORY,
  }),
  row('bag lining', 0.6, 0.8, {
    as: ['lining'],
    tan: ['chrome', 'vegetable', 'alum'],
    temper: ['soft'],
    from: AUSTRALIAN,
  }),
  row('wallet', 0.9, 1.6, {
    as: ['wallet outer', 'billfold', 'purse'],
    tan: VEG,
    temper: ['medium', 'firm'],
    zones: BACK,
    needs: ['burnished edges'],
    from: `${AUSTRALIAN}; ${WALLETS}`,
  }),
  row('wallet pocket', 0.5, 0.8, {
    as: ['card pocket'],
    tan: VEG,
    temper: ['soft', 'medium'],
    needs: ['burnished edges'],
    from: `${WALLETS} (1.0 mm at most)`,
  }),
  row('card holder', 0.8, 1.2, {
    as: ['card case', 'cardholder'],
    tan: VEG,
    temper: ['medium', 'firm'],
    needs: ['burnished edges'],
    from: WALLETS,
  }),
  row('key fob', 2, 3.2, {
    as: ['fob', 'key ring'],
    tan: VEG,
    temper: ['firm', 'medium'],
    needs: ['burnished edges'],
    from: BRITISH,
  }),
  row('journal cover', 1.6, 3.2, {
    as: ['notebook cover', 'book cover'],
    tan: VEG_OR_OIL,
    temper: ['medium', 'firm'],
    zones: SHOULDER,
    needs: ['burnished edges'],
    from: BRITISH,
  }),
  row('desk inlay', 1, 1, {
    as: ['desk top', 'writing surface'],
    tan: ['chrome', 'vegetable'],
    temper: ['soft', 'medium'],
    from: BRITISH,
  }),
  row('moulded case', 2, 3.2, {
    as: ['moulded tray', 'tray', 'valet tray'],
    tan: VEG,
    temper: ['firm'],
    zones: SHOULDER,
    finish: 'unfinished',
    needs: ['moulding', 'standing up', 'burnished edges'],
    from: MEMORY,
  }),
];

const CASES_AND_TOOLS: readonly GoodsRule[] = [
  row('knife sheath', 2, 3.6, {
    as: ['sheath', 'axe sheath'],
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BACK,
    needs: ['moulding', 'standing up', 'burnished edges', 'lying against steel'],
    from: `sheath maker (3.0 typical); ${AUSTRALIAN}`,
  }),
  row('holster', 2.4, 3.6, {
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BACK,
    needs: ['moulding', 'standing up', 'burnished edges', 'lying against steel'],
    from: 'guild workshop notes (lining included)',
  }),
  row('rifle scabbard', 3.2, 3.6, {
    as: ['scabbard'],
    tan: VEG,
    temper: ['firm', 'hard'],
    zones: BACK,
    needs: ['standing up', 'burnished edges', 'lying against steel'],
    from: AUSTRALIAN,
  }),
  row('saddlebag', 2.8, 3.6, {
    as: ['pannier', 'saddle bag'],
    tan: VEG_OR_OIL,
    temper: ['firm'],
    zones: BACK,
    needs: ['standing up', 'burnished edges'],
    from: `${AUSTRALIAN}; ${BRITISH}`,
  }),
  row('tool roll', 1.8, 2.8, {
    as: ['tool pouch', 'pouch'],
    tan: ['oil', 'combination', 'vegetable'],
    temper: ['medium', 'firm'],
    from: MEMORY,
  }),
  row('work apron', 1.6, 2.4, {
    as: ['apron'],
    tan: SOFT_TAN,
    temper: ['soft', 'medium'],
    from: `${MEMORY}; ${BRITISH} (4–6 oz)`,
  }),
];

const CLOTHING_AND_SHOES: readonly GoodsRule[] = [
  row('chaps', 1.6, 2.4, { tan: SOFT_TAN, temper: ['soft', 'medium'], from: AUSTRALIAN }),
  row('garment', 0.6, 1, {
    as: ['jacket', 'waistcoat', 'vest', 'skirt'],
    tan: ['chrome', 'brain'],
    temper: ['soft'],
    needs: ['lying on skin'],
    from: MEMORY,
  }),
  row('glove', 0.5, 1, {
    as: ['mitten'],
    tan: ['chrome', 'alum', 'brain'],
    temper: ['soft'],
    needs: ['lying on skin'],
    from: `${MEMORY}; an Indian export list (at most 1.0 mm, stretch 15 % or more)`,
  }),
  row('upholstery', 0.9, 1.4, {
    as: ['seat cover', 'cushion'],
    tan: ['chrome'],
    temper: ['soft'],
    from: 'a page on car trim (cars 1.1–1.3); EN 13336 sets the tear load, more than 20 N',
  }),
  row('shoe upper', 1.2, 2, {
    as: ['upper', 'boot upper', 'shoe'],
    tan: ['chrome', 'combination', 'vegetable'],
    temper: ['medium', 'soft'],
    zones: BACK,
    needs: ['turned edges'],
    from: AUSTRALIAN,
  }),
  row('shoe lining', 0.7, 1, {
    tan: ['chrome', 'vegetable'],
    temper: ['soft', 'medium'],
    needs: ['lying on skin'],
    from: MEMORY,
  }),
  row('insole', 2.5, 3.5, {
    tan: VEG,
    temper: ['firm'],
    zones: ['belly', 'shoulder'],
    needs: ['lying on skin'],
    from: `${MEMORY}; bellies for insoles: W. H. Dooley 1912`,
  }),
  row('sole', 4, 6, {
    as: ['outsole'],
    tan: VEG,
    temper: ['hard'],
    zones: BEND,
    needs: ['keeping its length'],
    from: MEMORY,
  }),
  row('moccasin', 1.6, 2, {
    as: ['slipper'],
    tan: ['oil', 'combination', 'brain'],
    temper: ['soft', 'medium'],
    needs: ['lying on skin'],
    from: MEMORY,
  }),
];

/**
 * What each kind of goods wants of its leather, where order and workshop file are silent. A part has a row of its own
 * where its leather is another one: "wallet pocket" for the pockets of a wallet, "gusset" for those of anything.
 */
export const DEFAULT_GOODS: readonly GoodsRule[] = [
  ...BELTS_AND_STRAPS,
  ...BAGS_AND_SMALL_GOODS,
  ...CASES_AND_TOOLS,
  ...CLOTHING_AND_SHOES,
];
