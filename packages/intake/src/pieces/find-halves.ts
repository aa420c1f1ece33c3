import {
  boxesTouch,
  createSpatialIndex,
  curveBox,
  growBox,
  pointInRing,
  pointToRing,
} from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import type { DrawnText } from '../drawing/drawn-line.js';
import { placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { FOLD_TEXT_REACH_MM, JOIN_MM, MAX_FOLD_TEXTS } from '../limits.js';
import type { Stretch } from '../lines/axis.js';
import { isFinished } from '../lines/finished.js';
import { axisOnEdge, edgesOf, stretchOfMirror } from '../lines/mirror-line.js';
import type { Edges } from '../lines/mirror-line.js';
import type { RoleLine } from '../lines/role-line.js';
import { saysOnFold } from './fold-text.js';
import type { Outline } from './outline.js';
import type { PieceParts } from './parts.js';

/** What says of one piece that it is drawn as a half. */
export interface HalfSigns {
  readonly mirrors: readonly { readonly stretch: Stretch; readonly line: RoleLine }[];
  /** Mirror lines within a piece, off its edge. */
  readonly inner: readonly RoleLine[];
  readonly texts: readonly DrawnText[];
}

/** Mirror lines and texts of the fold by piece, and the mirror lines that belong to none. */
export function findHalves(
  mirrors: readonly RoleLine[],
  texts: readonly DrawnText[],
  pieces: readonly PieceParts[],
  findings: Findings,
): { readonly signs: ReadonlyMap<PieceParts, HalfSigns>; readonly strays: readonly RoleLine[] } {
  const signs = new Map<PieceParts, Mutable>();
  const signsOf = (piece: PieceParts) => {
    const own = signs.get(piece) ?? { mirrors: [], inner: [], texts: [] };
    signs.set(piece, own);
    return own;
  };
  const find = boxFinder(pieces);
  const known = new Map<PieceParts, Edges>();
  const edges = (piece: PieceParts): Edges => {
    const own = known.get(piece) ?? edgesOf(piece.outline.line.curve);
    known.set(piece, own);
    return own;
  };
  const strays: RoleLine[] = [];
  for (const line of mirrors) {
    const stretch = stretchOfMirror(line.curve);
    if (stretch === undefined) tell(findings, 'warning', 'mirror-line-bent', {}, placeOf(line.source));
    else if (!placeMirror({ line, stretch }, find, edges, signsOf)) strays.push(line);
  }
  for (const text of texts.filter(saysOnFold).slice(0, MAX_FOLD_TEXTS)) {
    const piece = pieceOfText(text, find);
    // A saved piece is whole, whatever is written on it.
    if (piece === undefined || isFinished(piece.outline.line)) continue;
    const known = signsOf(piece).texts;
    if (known.length < MOST_SIGNS) known.push(text);
  }
  return { signs, strays };
}

/** A piece says a thing once or twice; more signs of a kind than this tell nothing new. */
const MOST_SIGNS = 4;

interface Mutable extends HalfSigns {
  readonly mirrors: { readonly stretch: Stretch; readonly line: RoleLine }[];
  readonly inner: RoleLine[];
  readonly texts: DrawnText[];
}

type BoxFinder = (box: Box) => PieceParts[];

/** Pieces whose boxes touch a box, the smallest first. */
function boxFinder(pieces: readonly PieceParts[]): BoxFinder {
  const smallestFirst = [...pieces].sort((a, b) => a.outline.area - b.outline.area);
  const index = createSpatialIndex(smallestFirst.map(({ outline }) => outline.box));
  return (box) => {
    const near: number[] = [];
    index.query(box, (i) => void near.push(i));
    return near.sort((a, b) => a - b).map((i) => smallestFirst[i]!);
  };
}

/** To every piece on whose edge it lies; else to the smallest one within which it lies. */
function placeMirror(
  { line, stretch }: HalfSigns['mirrors'][number],
  find: BoxFinder,
  edges: (piece: PieceParts) => Edges,
  signsOf: (piece: PieceParts) => Mutable,
): boolean {
  const near = find(growBox(curveBox(line.curve), JOIN_MM));
  const halves = near.filter((piece) => axisOnEdge(edges(piece), stretch) !== undefined);
  for (const piece of halves) signsOf(piece).mirrors.push({ stretch, line });
  if (halves.length > 0) return true;
  const { from, to } = stretch;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const around = near.find(({ outline }) => pointInRing(middle, outline.ring) === 'inside');
  const inner = around === undefined ? [] : signsOf(around).inner;
  if (inner.length < MOST_SIGNS) inner.push(line);
  return around !== undefined;
}

/** The smallest piece in which the text starts, else the nearest one beside it. */
function pieceOfText({ at }: DrawnText, find: BoxFinder): PieceParts | undefined {
  const box = { minX: at.x, minY: at.y, maxX: at.x, maxY: at.y };
  const near = find(growBox(box, FOLD_TEXT_REACH_MM));
  const isIn = ({ ring, box: own }: Outline) => boxesTouch(box, own) && pointInRing(at, ring) !== 'outside';
  const around = near.find(({ outline }) => isIn(outline));
  if (around !== undefined) return around;
  const ranked = near
    .map((piece) => ({ piece, mm: pointToRing(at, piece.outline.ring) }))
    .sort((a, b) => a.mm - b.mm);
  return ranked[0] !== undefined && ranked[0].mm <= FOLD_TEXT_REACH_MM ? ranked[0].piece : undefined;
}
