import { curveBox } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';
import type { DrawnText } from '../drawing/drawn-line.js';
import { placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { axisThrough } from '../lines/axis.js';
import type { Axis, Stretch } from '../lines/axis.js';
import { axisOnEdge, edgesOf, stretchOfMirror } from '../lines/mirror-line.js';
import type { RoleLine } from '../lines/role-line.js';
import type { HalfSigns } from './find-halves.js';
import { edgeOfText } from './fold-text.js';
import type { PieceParts } from './parts.js';
import { isSymmetric } from './unfold-curve.js';
import { unfoldPiece } from './unfold-piece.js';

/** The piece unfolded as its signs say, or as drawn; tells what was done, or what is not clear. */
export function unfoldBySigns(
  drawn: Piece,
  parts: PieceParts,
  signs: HalfSigns | undefined,
  isAsked: boolean,
  findings: Findings,
): Piece {
  if (signs === undefined) return drawn;
  const place = placeOf(parts.outline.line.source);
  const { name } = drawn;
  if (!isAsked) {
    if (signs.mirrors.length > 0) tell(findings, 'note', 'half-left', { piece: name }, place);
    return drawn;
  }
  const piece = unfoldByMirrors(drawn, parts, signs.mirrors, findings);
  for (const line of signs.inner) tellInner(piece, line, findings);
  return signs.mirrors.length > 0 || signs.inner.length > 0
    ? piece
    : unfoldByTexts(piece, parts, signs.texts, findings);
}

/**
 * Unfolded about its mirror line, and of a quarter about the second one, square to the first. More can't be meant: a
 * piece has its halves and its quarters, and each unfolding doubles it.
 */
function unfoldByMirrors(
  half: Piece,
  parts: PieceParts,
  mirrors: HalfSigns['mirrors'],
  findings: Findings,
): Piece {
  let piece = half;
  let edges = edgesOf(half.cut);
  const done: Axis[] = [];
  for (const { stretch, line } of mirrors) {
    const axis = axisOnEdge(edges, stretch);
    if (axis === undefined) continue;
    const [first, second] = done;
    if (second !== undefined || (first !== undefined && !isSquare(first, axis))) {
      tell(findings, 'warning', 'several-mirrors', { piece: piece.name }, placeOf(line.source));
      break;
    }
    piece = unfold(piece, axis, 'mirror', parts, findings);
    edges = edgesOf(piece.cut);
    done.push(axis);
  }
  return piece;
}

/** Cosine of the least angle between the axes of a quarter. */
const SQUARE_COSINE = 0.01;

function isSquare(a: Axis, b: Axis): boolean {
  return Math.abs(a.along.x * b.along.x + a.along.y * b.along.y) <= SQUARE_COSINE;
}

/** A mirror line within a piece: its two sides are alike, so that nothing is to be done, or it lies at a wrong place. */
function tellInner(piece: Piece, line: RoleLine, findings: Findings): void {
  const axis = axisThrough(stretchOfMirror(line.curve)!);
  const isWhole = axis !== undefined && isSymmetric(axis, piece.cut);
  const [severity, code] = isWhole
    ? (['note', 'already-whole'] as const)
    : (['warning', 'mirror-line-inside'] as const);
  tell(findings, severity, code, { piece: piece.name }, placeOf(line.source));
}

function unfoldByTexts(
  piece: Piece,
  parts: PieceParts,
  texts: readonly DrawnText[],
  findings: Findings,
): Piece {
  const [first] = texts;
  if (first === undefined) return piece;
  const edges = texts.map((text) => edgeOfText(piece.cut, text));
  const [edge] = edges;
  const isClear =
    edge !== undefined && edges.every((other) => other !== undefined && sameStretch(edge, other));
  const axis = isClear ? axisThrough(edge) : undefined;
  const place = placeOf(parts.outline.line.source);
  if (edge === undefined || axis === undefined) {
    tell(findings, 'warning', 'half-unclear', { piece: piece.name, text: first.text }, place);
    return piece;
  }
  const round = (n: number) => Math.round(n);
  const params = {
    piece: piece.name,
    text: first.text,
    length: round(Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y)),
  };
  const middle = { x: (edge.from.x + edge.to.x) / 2, y: (edge.from.y + edge.to.y) / 2 };
  tell(findings, 'warning', 'unfolded-by-text', params, { ...place, point: middle });
  return unfold(piece, axis, 'text', parts, findings);
}

function sameStretch(a: Stretch, b: Stretch): boolean {
  return a.from.x === b.from.x && a.from.y === b.from.y && a.to.x === b.to.x && a.to.y === b.to.y;
}

function unfold(
  half: Piece,
  axis: Axis,
  by: 'mirror' | 'text',
  { outline }: PieceParts,
  findings: Findings,
): Piece {
  const unfolded = unfoldPiece(half, axis);
  if (unfolded === undefined) return half;
  const { piece, uneven, arrowIsAskew } = unfolded;
  const place = placeOf(outline.line.source);
  const box = curveBox(piece.cut);
  const size = { width: tenths(box.maxX - box.minX), height: tenths(box.maxY - box.minY) };
  tell(findings, 'note', 'unfolded', { piece: piece.name, by, ...size }, place);
  if (uneven > 0) tell(findings, 'warning', 'line-over-fold', { piece: piece.name, count: uneven }, place);
  if (arrowIsAskew) tell(findings, 'warning', 'direction-askew', { piece: piece.name }, place);
  return piece;
}

function tenths(mm: number): number {
  return Math.round(mm * 10) / 10;
}
