import * as v from 'valibot';
import { HIDE_CUTS, ZONE_KINDS } from '../../model/hide.js';
import { FIGURE_UNITS, LEATHER_NEEDS, TEMPERS } from '../../model/workshop-rules.js';
import type { LeatherNeed, LeatherWants } from '../../model/workshop-rules.js';
import { parseAreaSpanMm2 } from '../../units/area-span.js';
import { definedOnly } from '../defined-only.js';
import { group, optional } from './group.js';
import { name, oneOf, quantity, text } from './leaves.js';
import { readWith } from './problem.js';
import { writtenLength, writtenMoney, writtenPercent, writtenThickness } from './written-leaves.js';

/** Rules of the workshop file on goods, leather and money, as people write them. */

export const ANY_WORD = 'any';
const SOURCE = [optional(text), 'Where the figure comes from; "own" unless written.'] as const;

/** One word, or a list of them. */
function someOf<Item extends v.GenericSchema>(item: Item, words: string) {
  return v.union([item, v.array(item)], words);
}

const thicknessOrAny = v.union(
  [v.literal(ANY_WORD), writtenThickness],
  '"any", or a thickness such as "2.0-2.4 mm" or "4-5 oz"',
);

export const WANTS_FIELDS = {
  thickness: [optional(thicknessOrAny), 'Thickness that it wants, or "any".'],
  tannage: [
    optional(someOf(name, 'a tannage, or a list of them')),
    'Tannages that suit, the usual one first.',
  ],
  temper: [
    optional(someOf(oneOf(TEMPERS), 'soft, medium, firm, hard, or a list of them')),
    'Tempers that suit, the usual one first.',
  ],
  finish: [optional(name), 'How its surface is finished.'],
  zones: [
    optional(
      v.union(
        [v.literal(ANY_WORD), v.array(oneOf(ZONE_KINDS))],
        '"any", or a list of zones such as [bend, shoulder]',
      ),
    ),
    'Zones that it usually comes from, or "any".',
  ],
  needs: [optional(v.array(oneOf(LEATHER_NEEDS), 'a list of needs')), 'What the leather has to do.'],
} as const;

const wantsGroup = group(WANTS_FIELDS);
type WrittenWants = v.InferOutput<typeof wantsGroup>;

/** What an article wants where its goods’ row does not fit. */
export const writtenWants = v.pipe(wantsGroup, v.transform(readWants));

export function readWants(written: WrittenWants): LeatherWants {
  const { thickness, tannage, temper, finish, zones, needs } = written;
  return definedOnly({
    thickness: thickness === ANY_WORD ? undefined : thickness,
    tannages: tannage === undefined ? undefined : [tannage].flat(),
    tempers: temper === undefined ? undefined : [temper].flat(),
    finish,
    zones: zones === ANY_WORD ? undefined : zones,
    needs,
  });
}

export const writtenGoods = group({
  ...WANTS_FIELDS,
  alsoCalled: [optional(v.array(name, 'a list of names')), 'Other names that orders use for it.'],
  source: SOURCE,
});

const care = oneOf(['yes', 'no', 'with care']);
type CareFields = {
  readonly [Need in LeatherNeed]: readonly [v.ExactOptionalSchema<typeof care, undefined>, string];
};
const meetsFields = Object.fromEntries(
  LEATHER_NEEDS.map((need) => [need, [optional(care), `Whether it is fit for ${need}.`]]),
) as unknown as CareFields;

export const writtenTannage = group({
  alsoCalled: [optional(v.array(name, 'a list of names')), 'Other names for it.'],
  meets: [optional(group(meetsFields)), 'What it can do; what is not named, it can.'],
  source: SOURCE,
});

const AREA_WORDS = 'an area or a span of it, such as "20-22 ft2", "2.1 m2" or "190-210 dm2"';
export const writtenAreaSpan = v.pipe(v.string(AREA_WORDS), readWith(parseAreaSpanMm2));

const PAIR_WORDS = 'least and most, as [900, 1200]';
const lengthSpan = v.pipe(
  v.strictTuple([writtenLength, writtenLength], PAIR_WORDS),
  v.check(([min, max]) => min <= max, `${PAIR_WORDS}, the smaller one first`),
);

export const writtenCutSize = group({
  cut: [optional(oneOf(HIDE_CUTS)), 'Which cut of the animal it is.'],
  area: [optional(writtenAreaSpan), 'Its area, as "20-22 ft2".'],
  length: [optional(lengthSpan), 'Along the backbone, least and most.'],
  width: [optional(lengthSpan), 'Across the backbone, least and most.'],
  source: SOURCE,
});

const SHARE_WORDS = 'two percentages, least and most, as [90, 95]';
export const writtenGrade = group({
  usable: [
    v.pipe(
      v.strictTuple([writtenPercent, writtenPercent], SHARE_WORDS),
      v.check(([min, max]) => min <= max && max <= 100, `${SHARE_WORDS}, the smaller one first, up to 100`),
    ),
    'Per cent of the area that are free of flaws, least and most.',
  ],
  source: SOURCE,
});

const FIGURE_WORDS = 'a number, or a group with from, to, unit and source';
export const writtenFigure = v.union(
  [
    quantity,
    group({
      from: [quantity, 'Least.'],
      to: [quantity, 'Most.'],
      unit: [optional(oneOf(FIGURE_UNITS)), 'Its unit, as the built-in figure has it.'],
      source: SOURCE,
    }),
  ],
  FIGURE_WORDS,
);

export const writtenOffer = group({
  name: [name, 'Its name.'],
  cut: [name, 'A cut of the table of cuts.'],
  tannage: [optional(name), 'How it was tanned.'],
  temper: [optional(name), 'How firm it is.'],
  finish: [optional(name), 'How its surface was finished.'],
  colour: [optional(name), 'Its colour.'],
  thickness: [optional(writtenThickness), 'Its thickness.'],
  grade: [optional(name), 'Its grade, of the table of grades.'],
  area: [optional(writtenAreaSpan), 'Area of one, as "20-22 ft2"; the table of cuts says it unless written.'],
  price: [writtenMoney, 'Its price, as "9.80 EUR".'],
  per: [oneOf(['hide', 'ft2', 'm2', 'dm2']), 'For a hide, or for so much area.'],
  source: SOURCE,
});

export const writtenRounding = group({
  to: [writtenMoney, 'Whole multiples of this, as "0.50 EUR".'],
  way: [v.optional(oneOf(['up', 'nearest']), 'nearest'), 'Up, or to the nearest one.'],
});

export type WrittenGoods = v.InferOutput<typeof writtenGoods>;
export type WrittenTannage = v.InferOutput<typeof writtenTannage>;
export type WrittenCutSize = v.InferOutput<typeof writtenCutSize>;
export type WrittenGrade = v.InferOutput<typeof writtenGrade>;
export type WrittenFigure = v.InferOutput<typeof writtenFigure>;
export type WrittenOffer = v.InferOutput<typeof writtenOffer>;
