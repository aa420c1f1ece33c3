import type { Point, Ring } from '@hidebound/geometry';
import { MARKER_CODES } from './marker-codes.js';

/**
 * A reference sheet: paper of known drawing that lies beside the hide in a photo and gives it its scale. The same
 * drawing is printed on A4 and on Letter. Sheet coordinates: mm, x right, y down, origin in the middle of the drawing,
 * seen upright.
 */

/** Black outer edge of one marker: large enough for 8 px a field at 1 px/mm, small enough for four on either paper. */
export const MARKER_MM = 72;

/** Fields along one side of a marker, its black border included. */
export const MARKER_FIELDS = 8;

/** White that must surround a marker: one field. */
export const MARKER_QUIET_MM = MARKER_MM / MARKER_FIELDS;

/** The four markers fill the corners of this block; it leaves a margin of 14 mm at least on both papers. */
export const MARKER_BLOCK_MM = { width: 180, height: 250 } as const;

export const MARKERS_PER_SHEET = 4;

/** Sheets that can be told apart: as many as there are codes for. */
export const MOST_SHEETS = MARKER_CODES.length / MARKERS_PER_SHEET;

/** The bars that the user measures after printing, through the middle of the sheet, from end to end. */
export const BAR_MM = { across: 160, down: 220 } as const;

/** Half of the larger of both papers each way: what a sheet can cover. */
const PAPER_HALF_MM = { width: 215.9 / 2, height: 297 / 2 } as const;

/** Which sheet (from 1) and which place on it (0 top left, 1 top right, 2 bottom left, 3 bottom right) a marker has. */
export interface MarkerPlace {
  readonly sheet: number;
  readonly place: number;
}

export function markerId({ sheet, place }: MarkerPlace): number {
  return (sheet - 1) * MARKERS_PER_SHEET + place;
}

/** Undefined for an id that is on no sheet. */
export function markerPlace(id: number): MarkerPlace | undefined {
  if (!Number.isInteger(id) || id < 0 || id >= MARKER_CODES.length) return undefined;
  return { sheet: Math.floor(id / MARKERS_PER_SHEET) + 1, place: id % MARKERS_PER_SHEET };
}

/** The corners of a marker's black edge in sheet coordinates: top left, top right, bottom right, bottom left. */
export function markerCorners(place: number): readonly [Point, Point, Point, Point] {
  const minX = place % 2 === 0 ? -MARKER_BLOCK_MM.width / 2 : MARKER_BLOCK_MM.width / 2 - MARKER_MM;
  const minY = place < 2 ? -MARKER_BLOCK_MM.height / 2 : MARKER_BLOCK_MM.height / 2 - MARKER_MM;
  const maxX = minX + MARKER_MM;
  const maxY = minY + MARKER_MM;
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** Which fields of a marker are white, row by row, the border included. */
export function markerFields(id: number): readonly (readonly boolean[])[] {
  const code = MARKER_CODES[id]!;
  const bits = [...code].flatMap((digit) =>
    [8, 4, 2, 1].map((bit) => (Number.parseInt(digit, 16) & bit) !== 0),
  );
  const inner = MARKER_FIELDS - 2;
  return Array.from({ length: MARKER_FIELDS }, (_, row) =>
    Array.from({ length: MARKER_FIELDS }, (_, column) => {
      const isInside = row > 0 && row <= inner && column > 0 && column <= inner;
      return isInside && bits[(row - 1) * inner + column - 1]!;
    }),
  );
}

/** What a sheet's paper can cover, whichever of both papers it is, in sheet coordinates. */
export const PAPER_RING: Ring = [
  { x: -PAPER_HALF_MM.width, y: -PAPER_HALF_MM.height },
  { x: PAPER_HALF_MM.width, y: -PAPER_HALF_MM.height },
  { x: PAPER_HALF_MM.width, y: PAPER_HALF_MM.height },
  { x: -PAPER_HALF_MM.width, y: PAPER_HALF_MM.height },
];

/** The bars of a printed sheet as measured with a rule, mm. */
export interface MeasuredBars {
  readonly acrossMm: number;
  readonly downMm: number;
}

/** How the printer stretched a sheet: printed size over drawn size, along and across. 1 and 1 where nobody measured. */
export function printStretch(bars: MeasuredBars | undefined): { readonly x: number; readonly y: number } {
  if (bars === undefined) return { x: 1, y: 1 };
  return { x: bars.acrossMm / BAR_MM.across, y: bars.downMm / BAR_MM.down };
}
