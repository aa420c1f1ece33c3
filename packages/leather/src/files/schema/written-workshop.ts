import * as v from 'valibot';
import { FLAW_KINDS, ZONE_KINDS } from '../../model/hide.js';
import { PARTS } from '../../model/order.js';
import { group, listOf, listOfAtLeast, mapOf, optional } from './group.js';
import type { Field } from './group.js';
import { exactly, flag, name, oneOf, text } from './leaves.js';
import { looks, strength } from './marks.js';
import { writtenCoverage } from './written-coverage.js';
import {
  writtenLength,
  writtenMoney,
  writtenPercent,
  writtenPriceUnit,
  writtenThickness,
} from './written-leaves.js';
import { writtenKeep } from './written-order.js';
import { writtenDirection } from './written-piece.js';
import {
  writtenCutSize,
  writtenFigure,
  writtenGoods,
  writtenGrade,
  writtenOffer,
  writtenRounding,
  writtenTannage,
} from './written-rules.js';
import { writtenPitch, writtenStitch } from './written-stitch.js';

export const WORKSHOP_FORMAT = 'hidebound/workshop@1';

export const ANY = 'any';
export const PLAIN_CHOICES = ['never here', 'only where hidden', 'anywhere'] as const;
export type PlainChoice = (typeof PLAIN_CHOICES)[number];

const SOURCE: Field = [optional(text), 'Where the figure comes from; "own" unless written.'];

export const workshopPart = group({
  looks: [
    optional(
      group({
        face: [optional(looks), 'What the face needs: A, B or C.'],
        rest: [optional(looks), 'What the rest needs.'],
      }),
    ),
    'Looks that it needs.',
  ],
  load: [optional(flag), 'Whether it bears load.'],
  zones: [
    optional(
      v.union(
        [exactly(ANY), listOfAtLeast(1, oneOf(ZONE_KINDS))],
        '"any", or a list of zones such as [bend, shoulder]',
      ),
    ),
    'Zones that it may come from, or "any".',
  ],
  direction: [optional(writtenDirection), 'How its arrow lies.'],
  thickness: [
    optional(
      v.union([exactly(ANY), writtenThickness], '"any", or a thickness such as "2.0-2.4 mm" or "4-5 oz"'),
    ),
    'Thickness that it needs, or "any".',
  ],
  tooThick: [optional(oneOf(['refuse', 'skive'])), 'What to do with leather that is too thick.'],
  source: [optional(text), SOURCE[1]],
});

const effectGroup = group({
  looks: [optional(looks), 'Looks of the leather there: A, B or C.'],
  strength: [optional(strength), 'Whether it bears load: sound or weak.'],
  void: [optional(flag), 'Whether it is never to be used.'],
  source: [optional(text), SOURCE[1]],
});
export const workshopEffect = v.union(
  [oneOf(PLAIN_CHOICES), effectGroup],
  '"never here", "only where hidden", "anywhere", or a group with looks, strength and void',
);

const method = group({
  gap: [optional(writtenLength), 'Between two cut lines.'],
  edge: [optional(writtenLength), 'To the outline and the openings.'],
  void: [optional(writtenLength), 'To places that are never to be used.'],
  kerf: [optional(writtenLength), 'Width of the cut.'],
  source: [optional(text), SOURCE[1]],
});

const ironGroup = group({
  pitch: [writtenPitch, 'From tooth to tooth, measured over ten teeth.'],
  source: [optional(text), SOURCE[1]],
});
const iron = v.union(
  [writtenPitch, ironGroup],
  'a pitch in mm such as 3.4, or a group with pitch and source',
);

const price = group({
  name: [name, 'What it is.'],
  price: [writtenMoney, 'Its price, as "12.50 EUR".'],
  per: [
    writtenPriceUnit,
    'For how much: each, m, L, hide, m2; lengths, volumes and areas in other units, too.',
  ],
});

function oneKeyEach<const Kind extends string, Schema extends v.GenericSchema>(
  kinds: readonly Kind[],
  schema: Schema,
  wordsOf: (kind: Kind) => string,
) {
  const fields = kinds.map((kind) => [kind, [optional(schema), wordsOf(kind)]] as const);
  type Each = { readonly [Key in Kind]: readonly [v.ExactOptionalSchema<Schema, undefined>, string] };
  return group(Object.fromEntries(fields) as unknown as Each);
}

export const workshopFileSchema = group({
  format: [exactly(WORKSHOP_FORMAT), 'What this file is.'],
  name: [optional(name), 'The workshop’s name.'],
  parts: [
    v.optional(
      oneKeyEach(PARTS, workshopPart, (part) => `What the part "${part}" needs, where the order is silent.`),
      {},
    ),
    'What each part means, where the order is silent.',
  ],
  flaws: [
    v.optional(
      oneKeyEach(FLAW_KINDS, workshopEffect, (kind) => `What a flaw of the kind "${kind}" does.`),
      {},
    ),
    'What each kind of flaw does to the leather.',
  ],
  zones: [
    v.optional(
      oneKeyEach(ZONE_KINDS, workshopEffect, (kind) => `What leather of the ${kind} is like.`),
      {},
    ),
    'What the leather of each zone is like.',
  ],
  cutting: [
    v.optional(mapOf(name, method, 'a group with one key for each cutting method'), {}),
    'Cutting methods by name; a method of your own gives gap, edge, void and kerf.',
  ],
  keep: [optional(writtenKeep), 'The smallest leftover worth keeping.'],
  irons: [
    v.optional(mapOf(name, iron, 'a group with one key for each stitching iron'), {}),
    'Stitching irons by name, with their pitch.',
  ],
  stitch: [optional(writtenStitch), 'How seams are sewn where neither piece nor article says it.'],
  goods: [
    v.optional(mapOf(name, writtenGoods, 'a group with one key for each kind of goods'), {}),
    'What each kind of goods wants of its leather.',
  ],
  tannages: [
    v.optional(mapOf(name, writtenTannage, 'a group with one key for each tannage'), {}),
    'What leather of each tannage can do.',
  ],
  cuts: [
    v.optional(mapOf(name, writtenCutSize, 'a group with one key for each cut'), {}),
    'How large cuts and skins are; a row of your own gives cut, area, length and width.',
  ],
  grades: [
    v.optional(mapOf(name, writtenGrade, 'a group with one key for each grade'), {}),
    'How much of a hide of each grade is free of flaws.',
  ],
  figures: [
    v.optional(mapOf(name, writtenFigure, 'a group with one key for each figure'), {}),
    'Times, shares and allowances; "hidebound workshop" lists them all.',
  ],
  offers: [listOf(writtenOffer), 'Leather as you can buy it.'],
  coverages: [
    v.optional(mapOf(name, writtenCoverage, 'a group with one key for each product'), {}),
    'How much of a product a coat takes.',
  ],
  prices: [listOf(price), 'Prices of materials and hardware.'],
  hourlyRate: [optional(writtenMoney), 'What an hour of work costs, as "30 EUR".'],
  overhead: [optional(writtenPercent), 'Overhead on material and work, per cent.'],
  profit: [optional(writtenPercent), 'Profit, per cent.'],
  tax: [optional(writtenPercent), 'Tax, per cent.'],
  rounding: [optional(writtenRounding), 'How prices are rounded; to the smallest coin unless written.'],
});

export type WrittenWorkshop = v.InferOutput<typeof workshopFileSchema>;
export type WrittenPartRule = v.InferOutput<typeof workshopPart>;
export type WrittenEffect = v.InferOutput<typeof workshopEffect>;
export type WrittenMethod = v.InferOutput<typeof method>;
