import * as v from 'valibot';
import { parseAreaMm2 } from '../../units/area.js';
import { group, optional } from './group.js';
import { quantity, text } from './leaves.js';
import { readWith } from './problem.js';

/** How much of a product a coat takes, as people write it: two figures, or a bottle that was weighed. */

const SOURCE = [optional(text), 'Where the figure comes from; "own" unless written.'] as const;

const statedCoverage = group({
  from: [quantity, 'Least, mL per m² and coat.'],
  to: [quantity, 'Most, mL per m² and coat.'],
  source: SOURCE,
});

const AREA_WORDS = 'the area that one coat went over, such as "20 dm2" or "2 ft2"';
/** To a hundredth of a mm², as it is written again. */
function readArea(text: string): number {
  return Math.round(parseAreaMm2(text) * 100) / 100;
}

const ABOVE_ZERO = 'a number above 0';
const weighedCoverage = group({
  before: [quantity, 'What the bottle weighed before, g.'],
  after: [quantity, 'What it weighed after one coat, g.'],
  over: [
    v.pipe(
      v.string(AREA_WORDS),
      readWith(readArea),
      v.check((mm2) => mm2 > 0, AREA_WORDS),
    ),
    'The area that the coat went over, as "20 dm2".',
  ],
  gPerMl: [
    optional(
      v.pipe(
        quantity,
        v.check((grams) => grams > 0, ABOVE_ZERO),
      ),
    ),
    'What a mL of it weighs, g; 1 unless written (spirit dyes are lighter, about 0.8).',
  ],
  source: [optional(text), 'Where the figure comes from; "measured" unless written.'],
});

export const writtenCoverage = v.union(
  [statedCoverage, weighedCoverage],
  'a group with from and to (mL per m²), or with before and after (g) and over (an area)',
);

export type WrittenCoverage = v.InferOutput<typeof writtenCoverage>;
