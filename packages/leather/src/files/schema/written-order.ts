import * as v from 'valibot';
import type {
  ArticleLeather,
  HardwareLine,
  OrderLeather,
  Preparation,
  ThreadLine,
} from '../../model/order.js';
import { definedOnly } from '../defined-only.js';
import {
  DEFAULT_KEEP_TOGETHER,
  DEFAULT_MODE,
  DEFAULT_PRIORITY,
  DEFAULT_USE_FROM,
  DEFAULT_VALUE,
} from '../order-defaults.js';
import { group, listOf, listOfAtLeast, mapOf, optional } from './group.js';
import {
  count,
  day,
  exactly,
  filePath,
  flag,
  name,
  oneOf,
  priority,
  quantity,
  share,
  text,
  wholeNumber,
} from './leaves.js';
import { QUALITY_FIELDS } from './marks.js';
import { AS_MANY_AS_FIT, KEEP_TOGETHER, ORDER_MODES, USE_FROM_ENDS } from './resolved-order-schema.js';
import { writtenPattern } from './written-pattern.js';
import { writtenPiece } from './written-piece.js';
import { writtenWants } from './written-rules.js';
import { writtenStitch } from './written-stitch.js';
import {
  writtenAngle,
  writtenLength,
  writtenMoney,
  writtenPositive,
  writtenThickness,
  writtenThread,
  writtenVersion,
} from './written-leaves.js';

/** Orders and articles as people write them. */

export const ORDER_FORMAT = 'hidebound/order@1';
export const ARTICLE_FORMAT = 'hidebound/article@1';

const hardware = v.pipe(
  group({
    name: [name, 'What it is.'],
    count: [v.optional(count, 1), 'How many.'],
    price: [optional(writtenMoney), 'Price of one, as "1.20 EUR".'],
  }),
  v.transform((line): HardwareLine => definedOnly({ name: line.name, count: line.count, price: line.price })),
);

const thread = v.pipe(
  group({
    name: [name, 'What it is.'],
    thickness: [optional(writtenPositive), 'Its thickness.'],
    length: [optional(writtenThread), 'Length that is needed, as "12 m".'],
    price: [optional(writtenMoney), 'Its price, as "4.50 EUR".'],
  }),
  v.transform((line): ThreadLine =>
    definedOnly({
      name: line.name,
      thicknessMm: line.thickness,
      lengthMm: line.length,
      price: line.price,
    }),
  ),
);

const PAIR_WORDS = 'a pair of piece names as [front, back]';

const BODY_FIELDS = {
  name: [name, 'Its name within the order.'],
  goods: [name, 'What is made: "saddlebag".'],
  wants: [optional(writtenWants), 'What its leather has to be, where the table of goods does not fit.'],
  pieces: [listOfAtLeast(1, writtenPiece), 'Its pieces.'],
  beside: [
    listOf(v.strictTuple([name, name], PAIR_WORDS)),
    'Faces that end up side by side: pairs of piece names.',
  ],
  hardware: [listOf(hardware), 'Hardware per set.'],
  threads: [listOf(thread), 'Thread per set.'],
  stitch: [optional(writtenStitch), 'How its pieces are sewn, where they do not say it themselves.'],
  hours: [optional(quantity), 'Hours of work per set.'],
} as const;

const DEMAND_FIELDS = {
  sets: [
    v.union([count, exactly(AS_MANY_AS_FIT)], 'a whole number from 1 to 10,000, or "as many as fit"'),
    'How many sets: a number, or "as many as fit".',
  ],
  for: [optional(name), 'For whom.'],
  value: [v.optional(quantity, DEFAULT_VALUE), 'What a set is worth against the others, where not all fit.'],
  priority: [v.optional(priority, DEFAULT_PRIORITY), 'Higher is laid first.'],
  keepTogether: [
    v.optional(oneOf(KEEP_TOGETHER), DEFAULT_KEEP_TOGETHER),
    'What the pieces of a set must share: hide, lot, faces on one lot, nothing.',
  ],
} as const;

const articleReference = group({
  file: [filePath, 'The article file.'],
  ...DEMAND_FIELDS,
});

const articleInPlace = group({ ...DEMAND_FIELDS, ...BODY_FIELDS });

const QUALITIES = {
  ...QUALITY_FIELDS,
  thickness: [optional(writtenThickness), 'Its thickness, as "2.0-2.4 mm" or "4-5 oz".'],
} as const;

const articleLeather = group(QUALITIES);

const preparationGroup = group({
  name: [name, 'Its name; pieces of one preparation are prepared together.'],
  condition: [optional(text), 'How the leather is conditioned.'],
  dye: [optional(name), 'The dye.'],
  dyeBase: [optional(name), 'What the dye is made up with: spirit, oil, water, pigment.'],
  coats: [optional(wholeNumber(0, 100)), 'Coats of dye.'],
  thinner: [optional(quantity), 'Parts of thinner to one part of dye.'],
  thinnerName: [optional(name), 'The thinner that the dye’s own label names.'],
  resist: [optional(name), 'What keeps dye out of places, put on before the finish.'],
  finish: [optional(name), 'The finish.'],
  finishCoats: [optional(wholeNumber(0, 100)), 'Coats of finish.'],
  bothSides: [v.optional(flag, false), 'Whether both sides are treated.'],
});

const orderLeather = group({
  ...QUALITIES,
  hides: [listOf(filePath), 'Hide files in the order in which they are to be used: offcuts first.'],
  preparation: [optional(preparationGroup), 'How it is prepared.'],
});

const cuttingGroup = group({
  method: [name, 'The cutting method.'],
  gap: [optional(writtenLength), 'Between two cut lines.'],
  edge: [optional(writtenLength), 'To the outline and the openings.'],
  void: [optional(writtenLength), 'To places that are never to be used.'],
  kerf: [optional(writtenLength), 'Width of the cut.'],
});

const KEEP_WORDS = 'the two sides of the smallest leftover worth keeping, as [80, 80]';
export const writtenKeep = v.strictTuple([writtenPositive, writtenPositive], KEEP_WORDS);

const LEATHERS_WORDS = 'a group with one key for each leather';

export const articleFileSchema = group({
  format: [exactly(ARTICLE_FORMAT), 'What this file is.'],
  ...BODY_FIELDS,
  leathers: [
    mapOf(name, articleLeather, LEATHERS_WORDS),
    'What it asks of each leather, by the leather’s name.',
  ],
  lastYield: [optional(share), 'Yield of the last real run: piece area over the leather used up, 0 to 1.'],
  notes: [optional(text), 'Free words.'],
});

export const orderFileSchema = group({
  format: [exactly(ORDER_FORMAT), 'What this file is.'],
  name: [name, 'The order’s name.'],
  version: [v.optional(writtenVersion, '1'), 'Its version; 1 unless written.'],
  date: [day, 'Its day, as 2026-03-21.'],
  articles: [
    listOfAtLeast(
      1,
      v.union(
        [articleReference, articleInPlace],
        'an article: a file with its sets, or an article written out',
      ),
    ),
    'What is to be made: articles from files, or written here.',
  ],
  leathers: [mapOf(name, orderLeather, LEATHERS_WORDS), 'The leathers by name, each with its hides.'],
  patterns: [
    v.optional(mapOf(filePath, writtenPattern, 'a group with one key for each pattern file'), {}),
    'How pattern files are to be read, by file, where the reader’s own judgement is to be overruled.',
  ],
  table: [
    optional(group({ width: [writtenPositive, 'Its width.'], length: [writtenPositive, 'Its length.'] })),
    'The cutting table.',
  ],
  useFrom: [
    v.optional(
      v.union(
        [oneOf(USE_FROM_ENDS), writtenAngle],
        '"tail", "head", "backbone", "belly" or an angle in degrees',
      ),
      DEFAULT_USE_FROM as 'tail',
    ),
    'The end from which a hide is used up; an angle is the way into the hide, clockwise from its x axis.',
  ],
  mode: [v.optional(oneOf(ORDER_MODES), DEFAULT_MODE), 'Place all, whole sets only, or fill by value.'],
  cutting: [
    v.union(
      [name, cuttingGroup],
      'the name of a cutting method, or a group with method, gap, edge, void and kerf',
    ),
    'How it is cut: a method of the workshop’s table by name, or with distances of its own.',
  ],
  keep: [optional(writtenKeep), 'The smallest leftover worth keeping; the workshop’s unless written.'],
  threads: [listOf(thread), 'Thread for the whole order.'],
  hardware: [listOf(hardware), 'Hardware for the whole order.'],
  hours: [optional(quantity), 'Hours of work beyond the sets’ own.'],
  notes: [optional(text), 'Free words.'],
});

export type WrittenOrder = v.InferOutput<typeof orderFileSchema>;
export type WrittenArticleFile = v.InferOutput<typeof articleFileSchema>;
type WrittenQualities = v.InferOutput<typeof articleLeather>;

export function readArticleLeathers(written: Readonly<Record<string, WrittenQualities>>): ArticleLeather[] {
  return Object.entries(written).map(([leatherName, qualities]) => ({ name: leatherName, ...qualities }));
}

export function readOrderLeathers(written: WrittenOrder['leathers']): OrderLeather[] {
  return Object.entries(written).map(([leatherName, leather]) => {
    const { preparation, hides, ...qualities } = leather;
    const prepared = preparation === undefined ? {} : { preparation: readPreparation(preparation) };
    return { name: leatherName, ...qualities, hides, ...prepared };
  });
}

function readPreparation(written: v.InferOutput<typeof preparationGroup>): Preparation {
  const { thinner, thinnerName, ...rest } = written;
  return definedOnly({ ...rest, thinnerParts: thinner, thinner: thinnerName });
}
