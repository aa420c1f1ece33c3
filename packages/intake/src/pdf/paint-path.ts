import {
  affineDeterminant,
  applyAffine,
  curveArea,
  curveBox,
  curveLength,
  roundCurve,
  transformCurve,
  transformCurveToGrid,
} from '@hidebound/geometry';
import type { Box, Curve } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { ignore } from '../findings.js';
import { MAX_COORDINATE_MM, MAX_PATH_SEGMENTS } from '../limits.js';
import { holesAmong } from '../lines/holes.js';
import { dropStandstill } from '../lines/tidy.js';
import { spendClipWork, spendDrawn, spendKept } from './budget.js';
import { clipCurve } from './clip-curve.js';
import { narrowClip } from './clip-shape.js';
import { MAX_CLIPS_STACKED, MAX_HOLES_SUBPATHS, THIN_FILL_LENGTHS, THIN_FILL_MM } from './limits.js';
import { OP } from './operators.js';
import { isUnseen, sourceOf } from './page-walk.js';
import type { PageWalk } from './page-walk.js';
import { subpathsOf } from './path.js';
import type { GraphicsState } from './state.js';

/** pdf.js's operands of a path: what is done with it, its steps, and its box in user space. */
export type PathOperands = readonly [
  paint: number,
  steps: readonly [ArrayLike<number> | null],
  box: ArrayLike<number> | null,
];

/** Paints a path and then, if that was asked for, clips by it (ISO 32000-1, sections 8.5.3 and 8.5.4). */
export function paintPath(walk: PageWalk, [paint, [steps], box]: PathOperands): void {
  const isPainted = paint !== OP.endPath;
  if (isPainted) walk.paths++;
  const mayBeSeen = isPainted && steps !== null && !isUnseen(walk) && touchesClip(walk.state, box);
  if (mayBeSeen || walk.pendingClip !== undefined) {
    const path = readPath(walk, steps);
    if (mayBeSeen) drawPath(walk, path, paint);
    if (walk.pendingClip !== undefined) clipByPath(walk, path, walk.pendingClip === 'evenodd');
  }
  walk.pendingClip = undefined;
}

/** The subpaths of a path that is not too long: told by its numbers, before there is an object for each step. */
function readPath(walk: PageWalk, steps: ArrayLike<number> | null): Curve[] {
  if (steps === null) return [];
  const { budget, number, paths } = walk;
  // A straight step takes three numbers, a curved one more.
  const most = Math.ceil(steps.length / 3);
  const path = most > 3 * MAX_PATH_SEGMENTS ? undefined : subpathsOf(steps);
  const segments = path?.reduce((sum, curve) => sum + curve.segments.length, 0) ?? most;
  spendDrawn(budget, segments);
  if (path !== undefined && segments <= MAX_PATH_SEGMENTS) return path;
  const place = { file: budget.file, at: `path ${paths} on page ${number}` };
  throw new IntakeError('path-too-long', { limit: MAX_PATH_SEGMENTS }, place);
}

/** Most paths of a page that draws all of a tiled pattern lie beyond its edges. */
function touchesClip({ toMm, clip }: GraphicsState, box: ArrayLike<number> | null): boolean {
  if (box === null) return true;
  const corners = [0, 1, 2, 3].map((i) =>
    applyAffine(toMm, { x: box[i % 2 === 0 ? 0 : 2]!, y: box[i < 2 ? 1 : 3]! }),
  );
  const isBeyond =
    corners.every(({ x }) => x < clip.box.minX - BOX_SLACK_MM) ||
    corners.every(({ x }) => x > clip.box.maxX + BOX_SLACK_MM) ||
    corners.every(({ y }) => y < clip.box.minY - BOX_SLACK_MM) ||
    corners.every(({ y }) => y > clip.box.maxY + BOX_SLACK_MM);
  return !isBeyond;
}

/** The box is of single precision, and lines are clipped on the 1 µm grid. */
const BOX_SLACK_MM = 0.01;

/** Making a clip shape ready costs as much as so many comparisons with each of its edges. */
const CLIP_SHAPE_WORK = 20;

function clipByPath(walk: PageWalk, path: readonly Curve[], isEvenOdd: boolean): void {
  const { state } = walk;
  spendClipWork(walk.budget, path.length);
  const inMm = path.map((curve) => transformCurve(state.toMm, curve));
  const clip = narrowClip(state.clip, inMm, isEvenOdd);
  if (clip.shapes.length > MAX_CLIPS_STACKED) {
    throw new IntakeError('pdf-clip-too-heavy', {}, { file: walk.budget.file, at: `page ${walk.number}` });
  }
  if (clip.shapes.length > state.clip.shapes.length) {
    spendClipWork(walk.budget, CLIP_SHAPE_WORK * clip.shapes.at(-1)!.edges.length);
  }
  walk.state = { ...state, clip };
}

interface Paint {
  readonly stroke?: string;
  readonly fill?: string;
  readonly isEvenOdd: boolean;
}

const STROKES = new Set<number>([
  OP.stroke,
  OP.closeStroke,
  OP.fillStroke,
  OP.eoFillStroke,
  OP.closeFillStroke,
  OP.closeEOFillStroke,
]);
const FILLS = new Set<number>([
  OP.fill,
  OP.eoFill,
  OP.fillStroke,
  OP.eoFillStroke,
  OP.closeFillStroke,
  OP.closeEOFillStroke,
]);
const EVEN_ODD = new Set<number>([OP.eoFill, OP.eoFillStroke, OP.closeEOFillStroke]);

/** Nobody sees lines of this colour on paper; on a filled area its edge is seen instead. */
const PAPER = '#ffffff';

/** How a path is painted as one sees it, or why it is not seen. */
function paintOf(state: GraphicsState, op: number): Paint | 'white' | 'not painted' {
  const stroke = STROKES.has(op) && state.strokeAlpha > 0 ? state.stroke : undefined;
  const fill = FILLS.has(op) && state.fillAlpha > 0 ? state.fill : undefined;
  if (stroke === undefined && fill === undefined) return 'not painted';
  const hasStroke = stroke !== undefined && stroke !== PAPER;
  const hasFill = fill !== undefined && fill !== PAPER;
  if (!hasStroke && !hasFill) return 'white';
  return {
    ...(hasStroke ? { stroke } : {}),
    ...(fill === undefined ? {} : { fill }),
    isEvenOdd: EVEN_ODD.has(op),
  };
}

function drawPath(walk: PageWalk, path: readonly Curve[], op: number): void {
  const { state, findings, tally } = walk;
  const source = sourceOf(walk, 'path', walk.paths);
  const paint = paintOf(state, op);
  if (paint === 'not painted') return ignore(findings, source.name, paint);
  const { stroke, fill, isEvenOdd } = paint === 'white' ? { isEvenOdd: false } : paint;
  const isArea = stroke === undefined;
  const curves = path
    .map((curve) => dropStandstill(transformCurveToGrid(state.toMm, isArea ? closed(curve) : curve)))
    .filter((curve): curve is Curve => curve !== undefined);
  const seen = curves.map((curve) => seenParts(walk, curve, isArea));
  if (paint === 'white') {
    if (seen.some((parts) => parts.length > 0)) tally.white.push(source.name);
    return;
  }
  const holes =
    fill === undefined || curves.length > MAX_HOLES_SUBPATHS
      ? []
      : holesAmong(curves, isEvenOdd ? 'evenodd' : 'nonzero', true);
  const looks = {
    ...(stroke === undefined ? {} : { stroke }),
    ...(fill === undefined ? {} : { fill }),
    widthMm: stroke === undefined ? 0 : widthOf(state),
    isDashed: stroke !== undefined && state.isDashed,
  };
  curves.forEach((curve, i) => {
    if (seen[i]!.length > 0) checkReach(walk, curve, source.name);
    for (const part of seen[i]!) {
      spendKept(walk.budget, part.segments.length);
      const line: DrawnLine = { curve: part, source, ...looks, isHole: holes[i] ?? false };
      walk.lines.push(line);
    }
  });
  if (isArea && curves.some((curve, i) => seen[i]!.length > 0 && isThin(curve))) tally.thin.push(source.name);
}

/** A filled area ends where its filling ends. */
function closed(curve: Curve): Curve {
  if (curve.closed || curve.segments.length < 2) return curve;
  return { ...curve, segments: [...curve.segments, { kind: 'line', to: curve.start }], closed: true };
}

/** Width of a stroke in mm; of a transform that stretches unevenly, the geometric mean. 0 is the thinnest line there is. */
function widthOf({ lineWidth, toMm }: GraphicsState): number {
  return roundWidth(lineWidth * Math.sqrt(Math.abs(affineDeterminant(toMm))));
}

/** Widths in tenths of a µm, so that a rule's bounds hold what the drawing program said. */
function roundWidth(mm: number): number {
  return Math.round(mm * 10_000) / 10_000;
}

function seenParts(walk: PageWalk, curve: Curve, isArea: boolean): readonly Curve[] {
  const parts = clipCurve(curve, walk.state.clip, (work) => spendClipWork(walk.budget, work));
  const onGrid = parts
    .map((part) => (part === curve ? part : dropStandstill(roundCurve(part))))
    .filter((part): part is Curve => part !== undefined);
  return isArea ? onGrid.flatMap((part) => withoutPageEdge(part, walk.frame)) : onGrid;
}

/** Where a filled area is cut off by the edge of the paper, that edge is no line of the drawing. */
function withoutPageEdge(curve: Curve, { widthMm, heightMm }: PageWalk['frame']): Curve[] {
  const isOnEdge = (a: Curve['start'], b: Curve['start']) =>
    (a.x === b.x && (a.x === 0 || a.x === widthMm)) || (a.y === b.y && (a.y === 0 || a.y === heightMm));
  let from = curve.start;
  const drops = curve.segments.map((segment) => {
    const drop = segment.kind === 'line' && isOnEdge(from, segment.to);
    from = segment.to;
    return drop;
  });
  if (!drops.includes(true)) return [curve];
  return runsBetween(curve, drops);
}

/** The open runs of a curve that are left without some of its segments. */
function runsBetween(curve: Curve, drops: readonly boolean[]): Curve[] {
  const count = curve.segments.length;
  const first = curve.closed ? drops.indexOf(true) + 1 : 0;
  const runs: { start: Curve['start']; segments: Curve['segments'][number][] }[] = [];
  let goesOn = false;
  for (let k = 0; k < count; k++) {
    const i = (first + k) % count;
    if (drops[i]) {
      goesOn = false;
      continue;
    }
    const start = i === 0 ? curve.start : curve.segments[i - 1]!.to;
    if (goesOn) runs.at(-1)!.segments.push(curve.segments[i]!);
    else runs.push({ start, segments: [curve.segments[i]!] });
    goesOn = true;
  }
  return runs.map((run) => ({ ...run, closed: false }));
}

/** A line of which a part is seen must lie within reach; what lies wholly beyond the paper does not matter. */
function checkReach({ budget }: PageWalk, curve: Curve, at: string): void {
  const box: Box = curveBox(curve);
  const farthest = Math.max(-box.minX, -box.minY, box.maxX, box.maxY);
  if (farthest <= MAX_COORDINATE_MM) return;
  const metres = Number.isFinite(farthest) ? Number((farthest / 1000).toPrecision(3)) : 'infinitely many';
  throw new IntakeError(
    'absurd-coordinate',
    { metres, limit: MAX_COORDINATE_MM / 1000 },
    { file: budget.file, at },
  );
}

/** An area that is long and narrow everywhere: its two sides are most of its outline. */
function isThin(curve: Curve): boolean {
  if (!curve.closed) return false;
  const length = curveLength(curve) / 2;
  const width = Math.abs(curveArea(curve)) / length;
  return width <= THIN_FILL_MM && length >= THIN_FILL_LENGTHS * width;
}
