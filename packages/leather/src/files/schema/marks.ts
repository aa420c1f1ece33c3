import * as v from 'valibot';
import { problemMessage } from './problem.js';
import { group, optional } from './group.js';
import { amount, currency, flag, name, oneOf, thicknessMm } from './leaves.js';

export const LOOKS = ['A', 'B', 'C'] as const;
export const STRENGTHS = ['sound', 'weak'] as const;
export const SIDES = ['grain', 'flesh'] as const;

export const looks = oneOf(LOOKS);
export const strength = oneOf(STRENGTHS);
export const side = oneOf(SIDES);

const EFFECT_WORDS = {
  looks: 'Looks of the leather there: A (best), B or C.',
  strength: 'Whether it bears load: sound or weak.',
  isVoid: 'True: never to be used.',
} as const;

/** All that a kind of flaw or zone does. */
export const wholeEffect = group({
  looks: [looks, EFFECT_WORDS.looks],
  strength: [strength, EFFECT_WORDS.strength],
  isVoid: [flag, EFFECT_WORDS.isVoid],
});

/** An effect of which what is absent comes from the kind. */
export const partialEffect = group({
  looks: [optional(looks), EFFECT_WORDS.looks],
  strength: [optional(strength), EFFECT_WORDS.strength],
  isVoid: [optional(flag), EFFECT_WORDS.isVoid],
});

export const thicknessRange = v.pipe(
  group({
    minMm: [thicknessMm, 'Thinnest, mm.'],
    maxMm: [thicknessMm, 'Thickest, mm.'],
  }),
  v.check(
    (range) => range.minMm <= range.maxMm,
    problemMessage('wrong-value', {
      found: 'a thickness whose minMm is more than its maxMm',
      right: 'a span with the smaller figure in minMm',
    }),
  ),
);

export const MONEY_FIELDS = {
  amount: [amount, 'The sum, as exact decimal text.'],
  currency: [currency, 'ISO 4217 code of the currency.'],
} as const;

export const money = group(MONEY_FIELDS);

/** Tannage, temper, finish and colour: free words. */
export const QUALITY_FIELDS = {
  tannage: [optional(name), 'How it was tanned: "vegetable", "chrome".'],
  temper: [optional(name), 'How firm it is: "firm", "soft".'],
  finish: [optional(name), 'How its surface was finished.'],
  colour: [optional(name), 'Its colour.'],
} as const;
