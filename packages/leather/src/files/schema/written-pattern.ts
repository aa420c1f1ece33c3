import * as v from 'valibot';
import { DRAWING_UNITS, PAGE_JOINTS, PAGE_ORDERS } from '../../model/pattern-reading.js';
import type { LineLook, PagesReading, PatternReading } from '../../model/pattern-reading.js';
import { LINE_ROLES } from '../../model/piece.js';
import { MOST_PAGES, readPageNumbers } from '../../units/page-numbers.js';
import { definedOnly } from '../defined-only.js';
import { group, listOf, optional } from './group.js';
import { factor, flag, name, oneOf, positiveMm, wholeNumber } from './leaves.js';
import { readWith } from './problem.js';
import { writtenLength, writtenPositive } from './written-leaves.js';

/** How pattern files are to be read, as orders say it. */

const WIDTHS_WORDS = 'a span of stroke widths as [from, to]';
const COLOUR_WORDS = 'a colour as "#rrggbb"';
const LOOK_FIELDS = {
  layer: [optional(name), 'Layer name; "*" stands for any run of characters.'],
  label: [optional(name), 'Label, id or class.'],
  colour: [
    optional(v.pipe(v.string(COLOUR_WORDS), v.regex(/^#[0-9a-fA-F]{6}$/, COLOUR_WORDS))),
    'Colour of the stroke as "#rrggbb".',
  ],
  dashed: [optional(flag), 'Whether the stroke is dashed.'],
  filled: [optional(flag), 'Whether it is a filled area without a stroke.'],
  width: [optional(v.strictTuple([writtenLength, writtenLength], WIDTHS_WORDS)), 'Stroke width from and to.'],
} as const;

const role = group({ role: [oneOf(LINE_ROLES), 'What such a line is.'], ...LOOK_FIELDS });
const size = group({ size: [name, 'The size that such a line belongs to.'], ...LOOK_FIELDS });

const PAGES_WORDS = 'page numbers such as "2-7, 9"';
const OVERLAP_WORDS = 'a length, or two as [across, down]';
const pagesGroup = group({
  take: [
    optional(
      v.pipe(v.union([v.number(PAGES_WORDS), v.string(PAGES_WORDS)], PAGES_WORDS), readWith(readPageNumbers)),
    ),
    'Pages that hold the pattern, as "2-7, 9"; all unless written.',
  ],
  join: [
    optional(oneOf(PAGE_JOINTS)),
    'How they are put together: by marks, by lines that go on over an edge, in a grid, or apart; found out unless written.',
  ],
  columns: [optional(wholeNumber(1, MOST_PAGES)), 'Of a grid: pages side by side.'],
  order: [optional(oneOf(PAGE_ORDERS)), 'Whether pages fill a grid by rows (as usual) or by columns.'],
  overlap: [
    optional(
      v.union([writtenLength, v.strictTuple([writtenLength, writtenLength], OVERLAP_WORDS)], OVERLAP_WORDS),
    ),
    'How far the paper of neighbours lies one over the other; one length, or [across, down].',
  ],
});

export const writtenPattern = group({
  dpi: [optional(positiveMm), 'Pixels per inch of the file.'],
  scale: [optional(factor), 'Factor that makes it true to size.'],
  knownLength: [
    optional(
      group({
        element: [name, 'Id of an element whose true length is known.'],
        length: [writtenPositive, 'Its true length.'],
      }),
    ),
    'A length that makes it true to size.',
  ],
  units: [optional(oneOf(DRAWING_UNITS)), 'What a unit of a drawing is, where it does not say so itself.'],
  pages: [optional(pagesGroup), 'Which pages of a PDF hold the pattern, and how they lie together.'],
  unfold: [optional(flag), 'Whether halves drawn up to a fold are unfolded; yes unless written.'],
  sizes: [listOf(size), 'Which lines belong to which graded size; the first line that fits decides.'],
  roles: [
    listOf(role),
    'What its lines are, where the usual table is wrong; the first line that fits decides.',
  ],
});

export function readPatterns(
  written: Readonly<Record<string, v.InferOutput<typeof writtenPattern>>>,
): PatternReading[] {
  return Object.entries(written).map(([file, reading]) => {
    const { knownLength, pages, sizes, roles, ...rest } = reading;
    return {
      file,
      ...rest,
      ...definedOnly({
        knownLength: knownLength && { element: knownLength.element, mm: knownLength.length },
        pages: pages && readPages(pages),
        sizes: sizes.length === 0 ? undefined : sizes.map(readLook),
      }),
      roles: roles.map(readLook),
    };
  });
}

function readPages({ overlap, ...rest }: v.InferOutput<typeof pagesGroup>): PagesReading {
  if (overlap === undefined) return rest;
  return { ...rest, overlapMm: typeof overlap === 'number' ? [overlap, overlap] : overlap };
}

interface WithWidth {
  readonly width?: readonly [number, number];
}

function readLook<Written extends WithWidth>(
  written: Written,
): Omit<Written, 'width'> & Pick<LineLook, 'widthMm'> {
  const { width, ...rest } = written;
  return width === undefined ? rest : { ...rest, widthMm: width };
}
