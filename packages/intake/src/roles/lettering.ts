import { createSpatialIndex, curveArea, curveBox, curveLength } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import type { LineRole } from '@hidebound/leather';
import type { DrawnLine, DrawnSource } from '../drawing/drawn-line.js';
import { LETTER_MAX_MM } from '../limits.js';
import { circleOfCurve } from '../lines/circles.js';
import { letterRows } from './letter-rows.js';
import type { Letter } from './letter-rows.js';

/** Outlines that draw letters: their numbers among the lines, in order, and how many rows they make. */
export interface Lettering {
  readonly lines: ReadonlySet<number>;
  readonly rows: number;
}

/** Letters within letters, crowded drawings: of the boxes around a place only so many are looked at. */
const MOST_LOOKED = 200;

/**
 * Texts that were exported as outlines: small filled areas without a stroke that stand in rows, with the holes in them
 * and the dots and commas beside them. A line that has a role is never one.
 */
export function findLettering(lines: readonly (DrawnLine & { readonly role?: LineRole })[]): Lettering {
  const boxes = lines.map(({ curve }) => curveBox(curve));
  const areas = lines.flatMap((line, i) => (isSmallArea(line, boxes[i]!) ? [i] : []));
  if (areas.length === 0) return { lines: new Set(), rows: 0 };
  const within = containersAmong(
    areas.map((i) => boxes[i]!),
    areas.map((i) => Math.abs(curveArea(lines[i]!.curve))),
  );
  const bearing = bearingAreas(lines, boxes, areas);
  const outer = areas.flatMap((line, a) =>
    within[a] === undefined && !lines[line]!.isHole && !bearing.has(a) ? [a] : [],
  );
  const rows = letterRows(outer.map((a) => letterOf(lines[areas[a]!]!)));
  const taken = new Set(rows.flat().map((letter) => outer[letter]!));
  for (const a of restsOfTexts(outer, taken, (area) => lines[areas[area]!]!)) taken.add(a);
  const found = areas.filter((_, a) => taken.has(a) || (within[a] !== undefined && taken.has(within[a])));
  return { lines: new Set(found), rows: rows.length };
}

/** What is left of an element of which more than half is in rows already: dots, and words of one or two letters. */
function restsOfTexts(
  outer: readonly number[],
  taken: ReadonlySet<number>,
  lineOf: (area: number) => DrawnLine,
): number[] {
  const surplus = new Map<DrawnSource, number>();
  for (const a of outer) {
    const { source } = lineOf(a);
    surplus.set(source, (surplus.get(source) ?? 0) + (taken.has(a) ? 1 : -1));
  }
  return outer.filter((a) => surplus.get(lineOf(a).source)! > 0);
}

/** A filled area without a stroke and a role, no larger than letters are. */
function isSmallArea(line: DrawnLine & { readonly role?: LineRole }, box: Box): boolean {
  if (line.role !== undefined || line.stroke !== undefined || line.fill === undefined) return false;
  return line.curve.closed && Math.max(box.maxX - box.minX, box.maxY - box.minY) <= LETTER_MAX_MM;
}

function letterOf({ curve, fill }: DrawnLine): Letter {
  return {
    curve,
    fill: fill!,
    lengthMm: curveLength(curve),
    sideMm: Math.sqrt(Math.abs(curveArea(curve))),
    isCircle: circleOfCurve(curve) !== undefined,
  };
}

/** For each box the outermost of the others that it lies in; equal ones lie in the first. */
function containersAmong(boxes: readonly Box[], areas: readonly number[]): (number | undefined)[] {
  const index = createSpatialIndex(boxes);
  return boxes.map((box, i) => {
    let outermost: number | undefined;
    let looked = 0;
    index.query(box, (j) => {
      if (j !== i && isWithin(box, boxes[j]!) && !(isWithin(boxes[j]!, box) && j > i)) {
        if (outermost === undefined || areas[j]! > areas[outermost]!) outermost = j;
      }
      return ++looked > MOST_LOOKED;
    });
    return outermost;
  });
}

/** Areas on which something else is drawn, such as the stitch line of a small piece: nothing is drawn on a letter. */
function bearingAreas(
  lines: readonly DrawnLine[],
  boxes: readonly Box[],
  areas: readonly number[],
): Set<number> {
  const index = createSpatialIndex(areas.map((i) => boxes[i]!));
  const bearing = new Set<number>();
  lines.forEach(({ stroke }, i) => {
    if (stroke === undefined) return;
    let looked = 0;
    index.query(boxes[i]!, (a) => {
      if (isWithin(boxes[i]!, boxes[areas[a]!]!)) bearing.add(a);
      return ++looked > MOST_LOOKED;
    });
  });
  return bearing;
}

function isWithin(inner: Box, outer: Box): boolean {
  return (
    inner.minX >= outer.minX &&
    inner.minY >= outer.minY &&
    inner.maxX <= outer.maxX &&
    inner.maxY <= outer.maxY
  );
}
