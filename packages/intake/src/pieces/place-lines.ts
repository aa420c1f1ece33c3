import {
  createSpatialIndex,
  curveBox,
  curveEndPoints,
  curveLength,
  flattenCurve,
  growBox,
  pointInRing,
  pointToRing,
  ringBox,
} from '@hidebound/geometry';
import type { Box, Point, Polyline } from '@hidebound/geometry';
import type { LineRole, MarkLine } from '@hidebound/leather';
import type { DrawnText } from '../drawing/drawn-line.js';
import { longName, placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { FLATTEN_MM, FOLD_REACH_MM, JOIN_MM, NOTCH_MAX_MM, NOTCH_REACH_MM } from '../limits.js';
import { circleOfCurve } from '../lines/circles.js';
import type { RoleLine } from '../lines/role-line.js';
import { exactNotch, exactPunch } from './exact-marks.js';
import { lineName } from './names.js';
import { notchOfMark } from './notch.js';
import { shareInside } from './outline.js';
import type { PieceParts } from './parts.js';

/** A line that lies in no piece. */
export interface Stray {
  readonly line: RoleLine;
}

/** What a line of a known role needs to be put into its piece. */
interface Placing {
  readonly line: RoleLine;
  readonly piece: PieceParts;
  readonly findings: Findings;
  /** How many lines without a role were taken for what, by piece. */
  readonly guesses: Map<PieceParts, Map<LineRole, number>>;
}

/** Puts every line into the innermost piece that it lies in; gives back those that lie in none. */
export function placeLines(
  lines: readonly RoleLine[],
  pieces: readonly PieceParts[],
  findings: Findings,
): { readonly strays: RoleLine[]; readonly guesses: ReadonlyMap<PieceParts, ReadonlyMap<LineRole, number>> } {
  const find = pieceFinder(pieces);
  const strays: RoleLine[] = [];
  const guesses: Placing['guesses'] = new Map();
  for (const line of lines) {
    const piece = pieceAround(line, find);
    if (piece === undefined || !placeLine({ line, piece, findings, guesses })) strays.push(line);
  }
  return { strays, guesses };
}

/** Puts each text into the innermost piece that its start lies in. */
export function placeTexts(texts: readonly DrawnText[], pieces: readonly PieceParts[]): void {
  const find = pieceFinder(pieces);
  for (const { text, at } of texts) {
    const box = { minX: at.x, minY: at.y, maxX: at.x, maxY: at.y };
    find(box, ({ outline }) => pointInRing(at, outline.ring) !== 'outside')?.texts.push(text);
  }
}

/** The smallest piece whose box touches a box and of which something holds. */
type PieceFinder = (box: Box, holds: (piece: PieceParts) => boolean) => PieceParts | undefined;

function pieceFinder(pieces: readonly PieceParts[]): PieceFinder {
  const innermostFirst = [...pieces].sort((a, b) => a.outline.area - b.outline.area);
  const index = createSpatialIndex(innermostFirst.map(({ outline }) => outline.box));
  return (box, holds) => {
    const near: number[] = [];
    index.query(box, (i) => void near.push(i));
    near.sort((a, b) => a - b);
    return near.map((i) => innermostFirst[i]!).find(holds);
  };
}

/** The smallest piece within which half of the line lies; a notch may also stand beside the cut line. */
function pieceAround(line: RoleLine, find: PieceFinder): PieceParts | undefined {
  const points = flattenCurve(line.curve, FLATTEN_MM);
  const sampled = points.length > FEW_POINTS ? points : withMiddles(points);
  const box = ringBox(sampled);
  const around = find(box, ({ outline }) => shareInside(sampled, outline) >= 0.5);
  if (around !== undefined || line.role !== 'notch') return around;
  const reach = growBox(box, NOTCH_REACH_MM);
  return find(reach, ({ outline }) => pointToRing(points[0]!, outline.ring) <= NOTCH_REACH_MM);
}

/** Of a line with few corners, ends on the edge that rounding put outside would say too much. */
const FEW_POINTS = 8;

/** The corners, and the middles of the chords between them. */
function withMiddles(points: Polyline): Polyline {
  return points.flatMap((b, i) => {
    const a = points[i - 1];
    return a === undefined ? [b] : [{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, b];
  });
}

/** False if the line can't be what its role says. */
function placeLine(placing: Placing): boolean {
  const { line, piece } = placing;
  switch (line.role) {
    case 'cut-out':
    case 'cut':
      return line.curve.closed ? pushed(piece.cutOuts, line.curve) : refused(placing, 'open-cut-line');
    case 'punch':
      return placePunch(placing);
    case 'notch':
      return placeNotch(placing);
    case 'stitch':
      return pushed(piece.stitchLines, markLine(line));
    case 'fold':
      return pushed(piece.foldLines, markLine(line));
    case 'skive':
      return pushed(piece.skiveLines, markLine(line));
    case 'cement':
      return pushed(piece.cementLines, markLine(line));
    case 'face':
      return line.curve.closed ? pushed(piece.face, line.curve) : refused(placing, 'open-face-line');
    case 'direction':
      return placeDirection(placing);
    default:
      return guessLine(placing);
  }
}

function pushed<T>(list: T[], item: T): true {
  list.push(item);
  return true;
}

function refused({ line, findings }: Placing, code: string): false {
  const { start, end } = curveEndPoints(line.curve);
  const gap = Math.round(Math.hypot(end.x - start.x, end.y - start.y) * 100) / 100;
  tell(findings, 'warning', code, { gap }, { ...placeOf(line.source), point: end });
  return false;
}

export function markLine(line: RoleLine): MarkLine {
  const name = lineName(line.source);
  return name === undefined ? { curve: line.curve } : { name, curve: line.curve };
}

function placePunch({ line, piece, findings }: Placing): boolean {
  const circle = circleOfCurve(line.curve);
  if (circle !== undefined) {
    return pushed(piece.punches, exactPunch(line, punchOf(circle.center, circle.radius)));
  }
  if (line.curve.closed) return pushed(piece.cutOuts, line.curve);
  tell(
    findings,
    'warning',
    'punch-without-diameter',
    {},
    { ...placeOf(line.source), point: line.curve.start },
  );
  return false;
}

export function punchOf(center: Point, radius: number): { at: Point; diameterMm: number } {
  const round = (n: number) => Math.round(n * 1000) / 1000;
  return { at: { x: round(center.x), y: round(center.y) }, diameterMm: round(2 * radius) };
}

function placeNotch({ line, piece, findings }: Placing): boolean {
  const notch = exactNotch(line, piece.outline.ring) ?? notchOfMark(line.curve, piece.outline.ring);
  if (notch !== undefined) return pushed(piece.notches, notch);
  tell(findings, 'warning', 'notch-off-the-edge', {}, { ...placeOf(line.source), point: line.curve.start });
  return false;
}

function placeDirection({ line, piece, findings }: Placing): boolean {
  const { start, end } = curveEndPoints(line.curve);
  if (line.curve.closed || (start.x === end.x && start.y === end.y)) {
    tell(findings, 'warning', 'closed-direction', {}, placeOf(line.source));
    return false;
  }
  const arrow = { from: start, to: end };
  return pushed(piece.directions, { line, arrow, lengthMm: Math.hypot(end.x - start.x, end.y - start.y) });
}

/** Without a role: a short line inwards from the edge is a notch, one from edge to edge a fold, any other a stitch line. */
function guessLine(placing: Placing): boolean {
  const { line, piece, guesses } = placing;
  const role = guessRole(line, piece);
  const counts = guesses.get(piece) ?? new Map<LineRole, number>();
  guesses.set(piece, counts.set(role, (counts.get(role) ?? 0) + 1));
  if (role === 'notch') return placeNotch(placing);
  return pushed(role === 'fold' ? piece.foldLines : piece.stitchLines, markLine(line));
}

function guessRole({ curve }: RoleLine, piece: PieceParts): LineRole {
  if (curve.closed) return 'stitch';
  const { start, end } = curveEndPoints(curve);
  const [a, b] = [pointToRing(start, piece.outline.ring), pointToRing(end, piece.outline.ring)];
  const isShort =
    curve.segments.length === 1 && curve.segments[0]!.kind === 'line' && curveLength(curve) <= NOTCH_MAX_MM;
  if (isShort && Math.min(a, b) <= JOIN_MM && Math.max(a, b) > JOIN_MM) return 'notch';
  const box = curveBox(curve);
  const reaches = Math.max(a, b) <= FOLD_REACH_MM;
  const isLong = Math.max(box.maxX - box.minX, box.maxY - box.minY) > 2 * FOLD_REACH_MM;
  return reaches && isLong ? 'fold' : 'stitch';
}

/** One warning for all lines that lie in no piece, naming the first few. */
export function tellStrays(strays: readonly RoleLine[], findings: Findings): void {
  if (strays.length === 0) return;
  const shown = strays.slice(0, 4).map((line) => longName(line.source));
  const more = strays.length - shown.length;
  const elements = more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
  tell(
    findings,
    'warning',
    'lines-outside-pieces',
    { count: strays.length, elements },
    placeOf(strays[0]!.source),
  );
}
