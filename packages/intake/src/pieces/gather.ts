import { curveFromPolyline } from '@hidebound/geometry';
import type { PatternPiece } from '@hidebound/leather';
import type { DrawnText } from '../drawing/drawn-line.js';
import { ignore, longName, newFindings, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { STITCH_HOLE_MAX_DIAMETER_MM } from '../limits.js';
import { findHoleRows } from '../lines/circles.js';
import type { RoleLine } from '../lines/role-line.js';
import { findHalves } from './find-halves.js';
import { finishPieces } from './finish.js';
import { outlineOf } from './outline.js';
import type { Outline } from './outline.js';
import { emptyParts } from './parts.js';
import type { PieceParts } from './parts.js';
import { markLine, placeLines, placeTexts, punchOf } from './place-lines.js';
import { sortOutlines } from './sort-outlines.js';
import type { SortedOutline } from './sort-outlines.js';

/** Pieces with what lies in each, and the lines that lie in none. */
export interface Gathered {
  readonly pieces: readonly PatternPiece[];
  readonly strays: readonly RoleLine[];
}

/** How pieces are gathered. */
export interface GatherOptions {
  /** Halves drawn up to a fold become whole. */
  readonly unfolds: boolean;
  /** The one of several graded sizes that the lines are of. */
  readonly size?: string;
  /** False for a piece, known by its shape and lines, that is left to another run. */
  readonly takes?: (shape: string) => boolean;
  /** Another run with the same lines has told of them already: only what is found of the pieces themselves is told. */
  readonly isQuiet?: boolean;
}

/**
 * Lines with their roles → pieces. Works on any drawing in mm, whatever format it comes from. Lines that lie in no piece
 * are given back and not told of.
 */
export function gatherPieces(
  lines: readonly RoleLine[],
  texts: readonly DrawnText[],
  options: GatherOptions,
  findings: Findings,
): Gathered {
  const told = options.isQuiet === true ? newFindings(findings.file) : findings;
  const wanted = lines.filter((line) => isWanted(line, told));
  const bounds = wanted.filter(isBound).map(outlineOf);
  const sorted = sortOutlines(bounds, told);
  const { byOutline, smallCircles, strays } = partsOfOutlines(sorted);
  const pieces = inDrawnOrder([...byOutline.values()], lines);
  const mirrors = wanted.filter(({ role }) => role === 'mirror');
  const others = wanted.filter(({ role }) => role !== 'mirror');
  const placed = placeLines(placeable(others, smallCircles, pieces, told), pieces, told);
  const halves = findHalves(mirrors, texts, pieces, told);
  for (const line of [...placed.strays, ...halves.strays]) strays.push(line);
  placeTexts(texts, pieces);
  const shapes = options.takes === undefined ? [] : pieces.map(shapeKey);
  const taken = pieces.filter((_, i) => options.takes?.(shapes[i]!) ?? true);
  const gathered = { pieces: taken, guesses: placed.guesses, signs: halves.signs };
  return { pieces: finishPieces(gathered, options, findings), strays };
}

/** A piece for each cut line, with the outlines within it; small circles wait until it is known which are rows. */
function partsOfOutlines(sorted: readonly SortedOutline[]) {
  const byOutline = new Map<number, PieceParts>();
  sorted.forEach(({ kind, outline }, i) => {
    if (kind === 'piece') byOutline.set(i, emptyParts(outline));
  });
  const smallCircles = new Map<PieceParts, Outline[]>();
  const strays: RoleLine[] = [];
  for (const { kind, outline, piece } of sorted) {
    const parts = piece === undefined ? undefined : byOutline.get(piece);
    if (kind === 'stray' || parts === undefined) strays.push(outline.line);
    else if (kind === 'cut-out') parts.cutOuts.push(outline.line.curve);
    else if (kind === 'stitch') parts.stitchLines.push(markLine(outline.line));
    else if (kind === 'punch') parts.punches.push(punchOf(outline.circle!.center, outline.circle!.radius));
    else if (kind === 'small circle') {
      const circles = smallCircles.get(parts);
      if (circles === undefined) smallCircles.set(parts, [outline]);
      else circles.push(outline);
    }
  }
  return { byOutline, smallCircles, strays };
}

/** What a piece is, whatever it is called. */
function shapeKey({ outline, texts: _, directions, ...lines }: PieceParts): string {
  const { source, curve } = outline.line;
  return JSON.stringify([source.name, curve, lines, directions.map(({ arrow }) => arrow)]);
}

function isWanted(line: RoleLine, findings: Findings): boolean {
  if (line.role !== 'ignore' && line.role !== 'text') return true;
  ignore(findings, longName(line.source), line.role === 'text' ? 'text' : 'marked to be ignored');
  return false;
}

/** Lines that can bound leather. */
function isBound(line: RoleLine): boolean {
  return line.curve.closed && (line.role === undefined || line.role === 'cut');
}

function inDrawnOrder(pieces: readonly PieceParts[], lines: readonly RoleLine[]): PieceParts[] {
  const order = new Map(lines.map((line, i) => [line, i]));
  return [...pieces].sort((a, b) => order.get(a.outline.line)! - order.get(b.outline.line)!);
}

/**
 * All lines that are not outlines already dealt with. Rows of small circles become stitch lines through their
 * centres on the way, whether named stitch or without a role; single ones become punches.
 */
function placeable(
  wanted: readonly RoleLine[],
  smallCircles: ReadonlyMap<PieceParts, readonly Outline[]>,
  pieces: readonly PieceParts[],
  findings: Findings,
): RoleLine[] {
  tellRows(
    pieces.map((piece) => placeHoles(piece, smallCircles.get(piece) ?? [])),
    findings,
  );
  const rest = wanted.filter((line) => !isBound(line));
  const stitchHoles = rest.filter((line) => line.role === 'stitch' && line.curve.closed).map(outlineOf);
  const holes = stitchHoles.filter(isStitchHole);
  if (holes.length === 0) return rest;
  const rows = rowLines(holes);
  const inRow = new Set(rows.flatMap(({ members }) => members.map(({ line }) => line)));
  const single = new Set(holes.map(({ line }) => line).filter((line) => !inRow.has(line)));
  const others = rest.filter((line) => !inRow.has(line) && !single.has(line));
  const punches = [...single].map((line): RoleLine => ({ ...line, role: 'punch' }));
  return [...others, ...punches, ...rows.map(({ line }) => line)];
}

function isStitchHole({ circle }: Outline): boolean {
  return circle !== undefined && 2 * circle.radius <= STITCH_HOLE_MAX_DIAMETER_MM;
}

interface HoleCount {
  readonly rows: number;
  readonly holes: number;
}

function tellRows(counts: readonly HoleCount[], findings: Findings): void {
  const rows = counts.reduce((sum, count) => sum + count.rows, 0);
  const holes = counts.reduce((sum, count) => sum + count.holes, 0);
  if (rows > 0) tell(findings, 'note', 'holes-as-stitch-line', { rows, holes });
}

function placeHoles(piece: PieceParts, circles: readonly Outline[]): HoleCount {
  const rows = rowLines(circles.filter(isStitchHole));
  const inRow = new Set(rows.flatMap(({ members }) => members));
  for (const { line } of rows) piece.stitchLines.push(markLine(line));
  const single = circles.filter((outline) => !inRow.has(outline));
  for (const { circle } of single) piece.punches.push(punchOf(circle!.center, circle!.radius));
  return { rows: rows.length, holes: inRow.size };
}

function rowLines(holes: readonly Outline[]): { line: RoleLine; members: Outline[] }[] {
  const rows = findHoleRows(holes.map(({ circle }) => circle!));
  return rows.map((row) => {
    const members = row.members.map((i) => holes[i]!);
    const centres = members.map(({ circle }) => punchOf(circle!.center, circle!.radius).at);
    const line = {
      ...members[0]!.line,
      role: 'stitch' as const,
      curve: curveFromPolyline(centres, row.isClosed),
    };
    return { line, members };
  });
}
