import {
  curveEndPoints,
  curveFromPolyline,
  distanceBetween,
  flattenCurve,
  pointInRing,
  pointToRing,
  roundPoint,
} from '@hidebound/geometry';
import type { Curve, Point, Ring } from '@hidebound/geometry';
import type { DirectionArrow, LineRole, Notch } from '@hidebound/leather';
import { findHoleRows } from '../../../lines/circles.js';
import { notchOfMark } from '../../../pieces/notch.js';
import { toFloor } from '../../straight/straight-picture.js';
import type { StraightPicture } from '../../straight/straight-picture.js';
import type { Vision } from '../../vision/vision.js';
import type { CardShape } from '../card-piece.js';
import { labelAreas } from '../label-areas.js';
import type { EdgePlace } from '../runs/edge-place.js';
import { fitLine } from '../runs/fit-line.js';
import { findArrows } from './arrows.js';
import { findDashRows } from './dash-rows.js';
import { inkMask } from './ink-mask.js';
import type { InkMask } from './ink-mask.js';
import {
  DOT_MM,
  DRAWN_SIGMA_MM,
  LEAST_INK_MM2,
  MM_PER_SEGMENT,
  NOTCH_LINE_MM,
  REACHES_EDGE_MM,
  SEGMENTS_ALLOWED,
  SHORTEST_SOLID_MM,
  STRONG_INK,
  WIDEST_LINE_MM,
} from './limits.js';
import { lengthOf, strokesOf } from './strokes.js';
import type { Stroke } from './strokes.js';
import { thin } from './thin.js';

/** What is drawn on a card, by how it is drawn. */
export interface DrawnMarks {
  readonly solid: readonly Curve[];
  /** Dashes, and rows of dots. */
  readonly dashed: readonly Curve[];
  readonly notches: readonly Notch[];
  readonly arrows: readonly DirectionArrow[];
  /** Strokes that are none of these: writing, above all. */
  readonly leftOver: number;
}

export type DrawnRole = Extract<LineRole, 'fold' | 'stitch' | 'skive' | 'cement' | 'ignore'>;

/** Lines drawn on a card in another shade than its own; floor mm. */
export function drawnMarks(picture: StraightPicture, shape: CardShape, vision: Vision): DrawnMarks {
  const mask = inkMask(picture, shape, vision);
  const { strokes, dots } = mask === undefined ? { strokes: [], dots: [] } : strokesOfMask(picture, mask);
  const ring = flattenCurve(shape.cut, 0.05).slice(0, -1);
  const arrows = findArrows(strokes);
  const inArrow = new Set(arrows.flatMap((arrow) => arrow.strokes));
  const free = strokes.filter((stroke) => !inArrow.has(stroke));
  const notches = free.flatMap((stroke) => {
    const notch = notchOf(stroke, ring);
    return notch === undefined ? [] : [{ stroke, notch }];
  });
  const inNotch = new Set(notches.map(({ stroke }) => stroke));
  const rest = free.filter((stroke) => !inNotch.has(stroke));
  const rows = findDashRows(rest);
  const inRow = new Set(rows.flatMap((row) => row.strokes));
  const singles = rest.filter((stroke) => !inRow.has(stroke));
  const lines = singles.flatMap((stroke) => {
    const curve =
      stroke.lengthMm < SHORTEST_SOLID_MM ? undefined : lineOf(stroke.points, stroke.closed, ring);
    return curve === undefined ? [] : [curve];
  });
  const dashed = rows.flatMap(({ points, closed }) => lineOf(points, closed, ring) ?? []);
  const dotRows = findHoleRows(dots.map((center) => ({ center, radius: 0.5 })));
  const dotted = dotRows.map(({ members, isClosed }) =>
    curveFromPolyline(
      members.map((i) => roundPoint(dots[i]!)),
      isClosed,
    ),
  );
  return {
    solid: lines,
    dashed: [...dashed, ...dotted],
    notches: notches.map(({ notch }) => notch),
    arrows: arrows.map(({ from, to }) => ({ from: roundPoint(from), to: roundPoint(to) })),
    leftOver: singles.length - lines.length,
  };
}

interface MaskStrokes {
  readonly strokes: readonly Stroke[];
  readonly dots: readonly Point[];
}

function strokesOfMask(picture: StraightPicture, mask: InkMask): MaskStrokes {
  const { width, height, ink } = mask;
  const binary = Uint8Array.from(ink, (value) => (value >= 1 ? 1 : 0));
  const areas = labelAreas(binary, width, LEAST_INK_MM2 * picture.pxPerMm ** 2);
  const strokes: Stroke[] = [];
  const dots: Point[] = [];
  areas.areas.forEach(({ box, pixels }, k) => {
    const part = partOf(areas.labels, k + 1, box, mask);
    if (part.strongest < STRONG_INK) return;
    const mm = 1 / picture.pxPerMm;
    const size = [box.maxX - box.minX + 1, box.maxY - box.minY + 1].map((n) => n * mm);
    if (Math.max(...size) <= DOT_MM && Math.max(...size) <= 2 * Math.min(...size)) {
      dots.push(toFloor(picture, { x: part.middle.x + mask.left, y: part.middle.y + mask.top }));
      return;
    }
    const thinned = thin(part.mask, part.width);
    const length = thinned.reduce((sum, value) => sum + value, 0);
    const widthPx = pixels / Math.max(1, length);
    if (widthPx * mm > WIDEST_LINE_MM) return;
    const place = ({ x, y }: Point) =>
      toFloor(picture, { x: x - 1 + box.minX + mask.left, y: y - 1 + box.minY + mask.top });
    strokes.push(
      ...strokesOf(thinned, part.width, widthPx, place).map((one) => lengthened(one, (widthPx * mm) / 2)),
    );
  });
  return { strokes: height === 0 ? [] : strokes.filter(({ points }) => points.length >= 2), dots };
}

/** Thinning takes half the width off each end of a line. */
function lengthened(stroke: Stroke, by: number): Stroke {
  const { points, closed, lengthMm } = stroke;
  if (closed || points.length < 2) return stroke;
  const beyond = (a: Point, b: Point): Point => {
    const away = distanceBetween(a, b) || 1;
    return { x: a.x + ((a.x - b.x) * by) / away, y: a.y + ((a.y - b.y) * by) / away };
  };
  const back = Math.min(points.length - 1, 6);
  const first = beyond(points[0]!, points[back]!);
  const last = beyond(points.at(-1)!, points.at(-1 - back)!);
  return { points: [first, ...points, last], closed, lengthMm: lengthMm + 2 * by };
}

/** One area of ink with a rim of one pixel around. */
function partOf(
  labels: Int32Array,
  label: number,
  box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
  { width: whole, ink }: InkMask,
) {
  const width = box.maxX - box.minX + 3;
  const mask = new Uint8Array(width * (box.maxY - box.minY + 3));
  let [strongest, x, y, count] = [0, 0, 0, 0];
  for (let row = box.minY; row <= box.maxY; row++) {
    for (let column = box.minX; column <= box.maxX; column++) {
      const i = row * whole + column;
      if (labels[i] !== label) continue;
      mask[(row - box.minY + 1) * width + column - box.minX + 1] = 1;
      strongest = Math.max(strongest, ink[i]!);
      [x, y, count] = [x + column, y + row, count + 1];
    }
  }
  return { mask, width, strongest, middle: { x: x / count, y: y / count } };
}

/** A short straight line that starts at the edge and goes inwards. */
function notchOf({ points, closed, lengthMm }: Stroke, ring: Ring): Notch | undefined {
  if (closed || lengthMm > NOTCH_LINE_MM) return undefined;
  const [a, b] = [points[0]!, points.at(-1)!];
  if (distanceBetween(a, b) < STRAIGHT_NOTCH * lengthMm) return undefined;
  const [near, far] = pointToRing(a, ring) <= pointToRing(b, ring) ? [a, b] : [b, a];
  const reach = pointToRing(near, ring);
  if (reach > REACHES_EDGE_MM || pointToRing(far, ring) < reach + DEEP_SHARE * lengthMm) return undefined;
  return notchOfMark(curveFromPolyline([near, far], false), ring);
}

const STRAIGHT_NOTCH = 0.95;
/** A notch goes more inwards than along the edge. */
const DEEP_SHARE = 0.7;

/** The clean line of a stroke, up to the edge where it nearly gets there; nothing for writing. */
function lineOf(points: readonly Point[], closed: boolean, ring: Ring): Curve | undefined {
  const fit = fitLine(placesOf(points, closed), { closed, sigmaMm: DRAWN_SIGMA_MM });
  if (fit === undefined) return undefined;
  const { curve } = fit;
  if (curve.segments.length > SEGMENTS_ALLOWED + lengthOf(points) / MM_PER_SEGMENT) return undefined;
  return closed ? curve : upToEdge(curve, ring);
}

/** Places at even steps: dashes count with the gaps between them. */
const PLACE_STEP_MM = 0.25;

function placesOf(points: readonly Point[], closed: boolean): EdgePlace[] {
  const chain = closed ? [...points, points[0]!] : points;
  const places: EdgePlace[] = [];
  let carry = 0;
  for (let i = 1; i < chain.length; i++) {
    const [a, b] = [chain[i - 1]!, chain[i]!];
    const length = distanceBetween(a, b);
    for (let at = carry; at < length; at += PLACE_STEP_MM) {
      const share = at / length;
      places.push({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, weightMm: PLACE_STEP_MM });
    }
    carry =
      length === 0 ? carry : carry + Math.ceil((length - carry) / PLACE_STEP_MM) * PLACE_STEP_MM - length;
  }
  const last = points.at(-1)!;
  return closed ? places : [...places, { ...last, weightMm: PLACE_STEP_MM }];
}

function upToEdge(curve: Curve, ring: Ring): Curve {
  const { start, end } = curveEndPoints(curve);
  const first = curve.segments[0]!;
  const last = curve.segments.at(-1)!;
  const before = curve.segments.length > 1 ? curve.segments.at(-2)!.to : start;
  const newStart = first.kind === 'line' ? edgeBeyond(start, first.to, ring) : start;
  const newEnd = last.kind === 'line' ? edgeBeyond(end, before, ring) : end;
  const segments =
    last.kind === 'line' ? [...curve.segments.slice(0, -1), { ...last, to: newEnd }] : curve.segments;
  return { start: newStart, segments, closed: false };
}

/** Halvings on the way to the edge: below a micrometre. */
const HALVINGS = 14;

/** Where a line that comes from `from` meets the edge a little beyond its end; its end if it does not. */
function edgeBeyond(end: Point, from: Point, ring: Ring): Point {
  const away = distanceBetween(end, from) || 1;
  const at = (mm: number): Point => ({
    x: end.x + ((end.x - from.x) * mm) / away,
    y: end.y + ((end.y - from.y) * mm) / away,
  });
  if (pointInRing(at(REACHES_EDGE_MM), ring) !== 'outside' || pointInRing(end, ring) === 'outside')
    return end;
  let [inside, outside] = [0, REACHES_EDGE_MM];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (inside + outside) / 2;
    if (pointInRing(at(middle), ring) === 'outside') outside = middle;
    else inside = middle;
  }
  return roundPoint(at(inside));
}
