import type { Preparation } from '../model/order.js';

/** What a dye is made up with; it decides how long it dries, and what may not come before it. */
export const DYE_BASES = ['spirit', 'oil', 'water', 'pigment'] as const;
export type DyeBase = (typeof DYE_BASES)[number];

/** Finishes that dry and cover alike; by the names of the built-in coverages. */
export const FINISH_KINDS = ['acrylic finish', 'oil', 'wax or resin finish'] as const;
export type FinishKind = (typeof FINISH_KINDS)[number];

/** Words of labels and recipes that tell the kind, the telling one first: "beeswax and oil" is a wax. */
const BASE_WORDS: readonly (readonly [DyeBase, RegExp])[] = [
  ['spirit', /\b(spirit|alcohol|meths|ethanol)/i],
  ['water', /\bwater/i],
  ['pigment', /\b(pigment|acrylic|paint)/i],
  ['oil', /\b(oil|solvent)/i],
];
const FINISH_WORDS: readonly (readonly [FinishKind, RegExp])[] = [
  ['acrylic finish', /acrylic|polyurethane/i],
  ['wax or resin finish', /wax|resin|lacquer|shellac|varnish|cream|antique/i],
  ['oil', /oil|fat|tallow|dubbin/i],
];
const DAMP_WORDS = /\b(damp|water|moist\w*|wet|sponge\w*)\b/i;

/** The base that the preparation names in any words; undefined where it names none that is known. */
export function dyeBaseOf({ dye, dyeBase }: Preparation): DyeBase | undefined {
  return firstMatch(BASE_WORDS, dyeBase) ?? firstMatch(BASE_WORDS, dye);
}

export function finishKindOf(words: string | undefined): FinishKind | undefined {
  return firstMatch(FINISH_WORDS, words);
}

/** Wiping with water so that the dye takes evenly, or feeding with oil, wax or what else the preparation names. */
export function conditioningOf({ condition }: Preparation): 'damp' | 'fed' | undefined {
  if (condition === undefined) return undefined;
  return DAMP_WORDS.test(condition) && finishKindOf(condition) === undefined ? 'damp' : 'fed';
}

/** The row of the table of coverages that stands for all dyes of a base. */
export function dyeCoverage<Base extends DyeBase | undefined>(base: Base) {
  return base === undefined || base === 'pigment' ? base : `${base} dye`;
}

function firstMatch<Kind>(
  table: readonly (readonly [Kind, RegExp])[],
  words: string | undefined,
): Kind | undefined {
  return words === undefined ? undefined : table.find(([, pattern]) => pattern.test(words))?.[0];
}
