import type { Point, Ring } from '@hidebound/geometry';
import { MARKER_FIELDS, MARKER_MM, markerCorners, markerFields, markerId } from './sheet-plan.js';
import type { MarkerPlace } from './sheet-plan.js';

interface Corner {
  readonly column: number;
  readonly row: number;
}

/**
 * The edges between black and white of one marker, in sheet coordinates, as closed rings: filled together by the
 * even-odd rule they are the marker. As one shape it has no seams between its fields where a printer or a screen
 * smooths edges.
 */
export function markerOutline(place: MarkerPlace): readonly Ring[] {
  const [topLeft] = markerCorners(place.place);
  const step = MARKER_MM / MARKER_FIELDS;
  const toSheet = ({ column, row }: Corner): Point => ({
    x: topLeft.x + column * step,
    y: topLeft.y + row * step,
  });
  return fieldLoops(markerFields(markerId(place))).map((loop) => straightened(loop).map(toSheet));
}

/** Closed walks along the sides of fields at which colour changes, each side once, black to the right. */
function fieldLoops(fields: readonly (readonly boolean[])[]): Corner[][] {
  const open = sidesByStart(fields);
  const loops: Corner[][] = [];
  for (const start of [...open.keys()]) {
    for (let first = open.get(start)?.pop(); first !== undefined; first = open.get(start)?.pop()) {
      const loop = [first];
      for (let next = open.get(keyOf(first))?.pop(); next !== undefined;) {
        loop.push(next);
        next = keyOf(next) === start ? undefined : open.get(keyOf(next))?.pop();
      }
      loops.push(loop);
    }
  }
  return loops;
}

/** The ends of all sides between black and white, by the corner where each begins. */
function sidesByStart(fields: readonly (readonly boolean[])[]): Map<string, Corner[]> {
  const open = new Map<string, Corner[]>();
  const isBlack = (row: number, column: number): boolean => fields[row]?.[column] === false;
  const add = (from: Corner, to: Corner): void => {
    open.set(keyOf(from), [...(open.get(keyOf(from)) ?? []), to]);
  };
  for (let row = 0; row < MARKER_FIELDS; row++) {
    for (let column = 0; column < MARKER_FIELDS; column++) {
      if (!isBlack(row, column)) continue;
      const [right, below] = [column + 1, row + 1];
      if (!isBlack(row - 1, column)) add({ column, row }, { column: right, row });
      if (!isBlack(row, right)) add({ column: right, row }, { column: right, row: below });
      if (!isBlack(below, column)) add({ column: right, row: below }, { column, row: below });
      if (!isBlack(row, column - 1)) add({ column, row: below }, { column, row });
    }
  }
  return open;
}

function keyOf({ column, row }: Corner): string {
  return `${column} ${row}`;
}

/** Without the corners at which the walk goes straight on. */
function straightened(loop: readonly Corner[]): Corner[] {
  return loop.filter((corner, i) => {
    const before = loop[(i + loop.length - 1) % loop.length]!;
    const after = loop[(i + 1) % loop.length]!;
    const isLevel = before.row === corner.row && corner.row === after.row;
    const isUpright = before.column === corner.column && corner.column === after.column;
    return !isLevel && !isUpright;
  });
}
