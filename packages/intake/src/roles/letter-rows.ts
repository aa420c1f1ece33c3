import { createSpatialIndex, flattenCurve, sinCosDeg } from '@hidebound/geometry';
import type { Box, Curve, Polyline } from '@hidebound/geometry';
import { FLATTEN_MM } from '../limits.js';

/** A filled area that may be a letter. */
export interface Letter {
  readonly curve: Curve;
  readonly fill: string;
  /** Length of its outline and square root of its area, mm: alike for equal shapes, whatever way they are turned. */
  readonly lengthMm: number;
  readonly sideMm: number;
  readonly isCircle: boolean;
}

/** Upright and lying first, as most are; steps within which a row still looks straight. It reads the same from its other end. */
const DIRECTIONS_DEG = [
  0, 90, 10, 20, 30, 40, 50, 60, 70, 80, 100, 110, 120, 130, 140, 150, 160, 170,
] as const;

/** An upright or lying row this long is no part of one seen askew: its letters are looked for in no further direction. */
const SETTLED_AT = 12;

/** Letters of one row differ in height by this factor at most: ascenders and small letters, not commas. */
const HEIGHT_FACTOR = 2.5;

/** Feet, heads or middles of neighbours agree within this share of the higher one's height. */
const LEVEL_SHARE = 0.15;

/** Neighbours are no farther apart than this share of the higher one's height: a word space, not a column. */
const GAP_SHARE = 1;

/** Neighbours overlap by no more, as a share of the same: leaning letters and turned ones do. */
const OVERLAP_SHARE = 0.3;

/** A row has so many letters at least, and so many shapes among them: holes and ornaments repeat one or two. */
const LETTERS_AT_LEAST = 3;
const SHAPES_AT_LEAST = 3;

/** Shapes are equal if outline and area differ by no more, mm. */
const EQUAL_MM = 0.1;

/** Dots, accents and commas stand this near to a letter, as a share of its height: nearer than stitch holes under a text. */
const MARK_REACH_SHARE = 0.35;

/** Marks are no higher than this share of the letter. */
const MARK_SHARE = 0.5;

/** Neighbours that are looked at: a letter has a few, crowded drawings thousands. */
const MOST_LOOKED = 200;

/** Rows of letters: for each the numbers of its members, dots and commas among them. No letter is in two rows. */
export function letterRows(letters: readonly Letter[]): number[][] {
  if (letters.length < LETTERS_AT_LEAST) return [];
  const flat = letters.map(({ curve }) => flattenCurve(curve, FLATTEN_MM));
  const found: number[][] = [];
  const settled = new Set<number>();
  for (const angle of DIRECTIONS_DEG) {
    const open = flat.flatMap((_, i) => (settled.has(i) ? [] : [i]));
    const boxes = open.map((i) => turnedBox(flat[i]!, angle));
    const rows = rowsAlong(boxes, (row) => isText(row.map((i) => letters[open[i]!]!)));
    for (const row of rows.map((members) => members.map((i) => open[i]!))) {
      found.push(row);
      if (angle % 90 === 0 && row.length >= SETTLED_AT) for (const i of row) settled.add(i);
    }
  }
  return withoutParts(found);
}

/** Longest rows first: one that shares a letter with a longer one is a part of it seen askew, and goes into it. */
function withoutParts(found: readonly (readonly number[])[]): number[][] {
  const rows: number[][] = [];
  const rowOf = new Map<number, number[]>();
  for (const members of [...found].sort((a, b) => b.length - a.length)) {
    const known = members.find((i) => rowOf.has(i));
    const row = known === undefined ? [] : rowOf.get(known)!;
    if (known === undefined) rows.push(row);
    for (const i of members) {
      if (rowOf.has(i)) continue;
      rowOf.set(i, row);
      row.push(i);
    }
  }
  return rows;
}

/** The box of the points in a frame whose x axis runs along the direction. */
function turnedBox(points: Polyline, angleDeg: number): Box {
  const { sin, cos } = sinCosDeg(angleDeg);
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { x, y } of points) {
    const [along, across] = [x * cos + y * sin, y * cos - x * sin];
    box.minX = Math.min(box.minX, along);
    box.maxX = Math.max(box.maxX, along);
    box.minY = Math.min(box.minY, across);
    box.maxY = Math.max(box.maxY, across);
  }
  return box;
}

/** Rows along the x axis that are text, each with the marks beside its letters. */
function rowsAlong(boxes: readonly Box[], isRow: (members: readonly number[]) => boolean): number[][] {
  const index = createSpatialIndex(boxes);
  const found = linked(boxes, index).filter(isRow);
  const inRow = new Set(found.flat());
  return found.map((row) => {
    const all = [...row];
    for (const i of row) {
      visitNear(boxes, index, i, (j) => {
        if (inRow.has(j) || !isMarkOf(boxes[j]!, boxes[i]!)) return;
        inRow.add(j);
        all.push(j);
      });
    }
    return all;
  });
}

/** Groups of boxes that are neighbours in a row, directly or over others. */
function linked(boxes: readonly Box[], index: ReturnType<typeof createSpatialIndex>): number[][] {
  const head = boxes.map((_, i) => i);
  const headOf = (i: number): number => {
    while (head[i] !== i) i = head[i] = head[head[i]!]!;
    return i;
  };
  boxes.forEach((box, i) => {
    visitNear(boxes, index, i, (j) => {
      if (areNeighbours(box, boxes[j]!)) head[headOf(j)] = headOf(i);
    });
  });
  const groups = new Map<number, number[]>();
  boxes.forEach((_, i) => {
    const group = groups.get(headOf(i));
    if (group === undefined) groups.set(headOf(i), [i]);
    else group.push(i);
  });
  return [...groups.values()];
}

function visitNear(
  boxes: readonly Box[],
  index: ReturnType<typeof createSpatialIndex>,
  i: number,
  visit: (j: number) => void,
): void {
  const box = boxes[i]!;
  const height = heightOf(box);
  const reach: Box = {
    minX: box.minX - height * GAP_SHARE,
    maxX: box.maxX + height * GAP_SHARE,
    minY: box.minY - height * MARK_REACH_SHARE,
    maxY: box.maxY + height * MARK_REACH_SHARE,
  };
  let looked = 0;
  index.query(reach, (j) => {
    if (j !== i) visit(j);
    return ++looked > MOST_LOOKED;
  });
}

function areNeighbours(a: Box, b: Box): boolean {
  const [low, high] = [heightOf(a), heightOf(b)].sort((x, y) => x - y) as [number, number];
  if (high > HEIGHT_FACTOR * low) return false;
  const gap = Math.max(a.minX, b.minX) - Math.min(a.maxX, b.maxX);
  if (gap > GAP_SHARE * high || -gap > OVERLAP_SHARE * high) return false;
  const apart = Math.min(
    Math.abs(a.minY - b.minY),
    Math.abs(a.maxY - b.maxY),
    Math.abs(a.minY + a.maxY - b.minY - b.maxY) / 2,
  );
  return apart <= LEVEL_SHARE * high;
}

/** So small beside a letter that it is a dot, comma, hyphen or accent. */
function isMarkOf(mark: Box, letter: Box): boolean {
  const height = heightOf(letter);
  const gap = Math.max(mark.minX, letter.minX) - Math.min(mark.maxX, letter.maxX);
  if (gap > MARK_REACH_SHARE * height) return false;
  return heightOf(mark) <= MARK_SHARE * height && mark.maxX - mark.minX <= height;
}

/** Enough letters of enough shapes; circles say nothing, whatever their size. */
function isText(row: readonly Letter[]): boolean {
  const shapes: Letter[] = [];
  let count = 0;
  for (const letter of row) {
    if (letter.isCircle) continue;
    count++;
    if (shapes.length < SHAPES_AT_LEAST && !shapes.some((shape) => areEqual(shape, letter)))
      shapes.push(letter);
  }
  return count >= LETTERS_AT_LEAST && shapes.length >= SHAPES_AT_LEAST;
}

function areEqual(a: Letter, b: Letter): boolean {
  return Math.abs(a.lengthMm - b.lengthMm) <= EQUAL_MM && Math.abs(a.sideMm - b.sideMm) <= EQUAL_MM;
}

function heightOf(box: Box): number {
  return box.maxY - box.minY;
}
