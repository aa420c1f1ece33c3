import * as v from 'valibot';
import { DRAWING_UNITS, PAGE_JOINTS, PAGE_ORDERS } from '../../model/pattern-reading.js';
import { LINE_ROLES } from '../../model/piece.js';
import { group, listOf, optional } from './group.js';
import { factor, filePath, flag, lengthMm, name, oneOf, positiveMm, wholeNumber } from './leaves.js';
import { MOST_PAGES } from '../../units/page-numbers.js';

/** How a pattern file is read, as layouts keep it. */

const LOOK_FIELDS = {
  layer: [optional(name), 'Layer name; "*" stands for any run of characters.'],
  label: [optional(name), 'Label, id or class.'],
  colour: [optional(name), 'Colour of the stroke as #rrggbb.'],
  dashed: [optional(flag), 'Whether the stroke is dashed.'],
  filled: [optional(flag), 'Whether it is a filled area without a stroke.'],
  widthMm: [
    optional(v.strictTuple([lengthMm, lengthMm], 'a span of widths as [from, to] in mm')),
    'Stroke width from and to, mm.',
  ],
} as const;

export const roleRule = group({ role: [oneOf(LINE_ROLES), 'What such a line is.'], ...LOOK_FIELDS });

export const sizeRule = group({ size: [name, 'The size that such a line belongs to.'], ...LOOK_FIELDS });

const page = wholeNumber(1, 1_000_000);

export const pagesReading = group({
  take: [optional(v.array(page, 'a list of page numbers')), 'Page numbers; absent: all.'],
  join: [optional(oneOf(PAGE_JOINTS)), 'How they are put together; absent: found out.'],
  columns: [optional(wholeNumber(1, MOST_PAGES)), 'Of a grid: pages side by side.'],
  order: [optional(oneOf(PAGE_ORDERS)), 'Whether pages fill a grid by rows or by columns.'],
  overlapMm: [
    optional(v.strictTuple([lengthMm, lengthMm], 'two lengths as [across, down] in mm')),
    'How far the paper of neighbours lies one over the other, mm.',
  ],
});

export const patternReading = group({
  file: [filePath, 'The pattern file.'],
  dpi: [optional(positiveMm), 'Pixels per inch of the file.'],
  scale: [optional(factor), 'Factor that makes it true to size.'],
  knownLength: [
    optional(
      group({
        element: [name, 'Id of an element whose true length is known.'],
        mm: [positiveMm, 'Its true length, mm.'],
      }),
    ),
    'A length that makes it true to size.',
  ],
  units: [optional(oneOf(DRAWING_UNITS)), 'What a unit of the drawing is.'],
  pages: [optional(pagesReading), 'Which pages hold the pattern, and how they lie together.'],
  unfold: [optional(flag), 'False: halves drawn up to a fold are left as they are.'],
  sizes: [optional(v.array(sizeRule, 'a list')), 'Which lines belong to which graded size.'],
  roles: [listOf(roleRule), 'Lines of the table of roles, for this file.'],
});
