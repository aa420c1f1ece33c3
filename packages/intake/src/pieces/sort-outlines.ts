import { findSelfCrossing } from '@hidebound/geometry';
import { longName, placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { MIN_PIECE_MM2, OPENING_SHARE, PUNCH_MAX_DIAMETER_MM } from '../limits.js';
import { allowanceBetween } from './allowance.js';
import { tellLooksGraded } from './looks-graded.js';
import { containersOf } from './outline.js';
import type { Outline } from './outline.js';

/** What a closed line without a telling role turns out to be. */
export type OutlineKind = 'piece' | 'cut-out' | 'punch' | 'small circle' | 'stitch' | 'stray';

export interface SortedOutline {
  readonly outline: Outline;
  readonly kind: OutlineKind;
  /** Number of the piece's own outline in the list; of a piece, itself. */
  readonly piece?: number;
}

/**
 * Sorts closed lines of role cut, or of none, by what lies within what. Outermost ones are pieces. Within a piece: of
 * role cut, an opening; without a role, a small circle, a hole of its element's filled area, a dashed line, or by
 * size: below 25 % of the piece an opening, else a stitch line (with an even allowance outside it, or a warning). Within an opening: a piece again.
 */
export function sortOutlines(unsorted: readonly Outline[], findings: Findings): SortedOutline[] {
  const outlines = unsorted
    .map((outline, i) => ({ outline, i }))
    .sort((a, b) => b.outline.area - a.outline.area || a.i - b.i)
    .map(({ outline }) => outline);
  const containers = containersOf(outlines);
  const sorted: SortedOutline[] = [];
  const compared = new Map<Outline, number>();
  outlines.forEach((outline, i) => {
    const around = bearerOf(sorted, containers, containers[i]);
    sorted.push(sortOne(outline, i, around, { sorted, compared, findings }));
  });
  tellLooksGraded(sorted, findings);
  tellLostHoles(sorted, findings);
  return sorted;
}

/** Circles of a punch's size outside any piece: far oftener holes whose piece was not read than pieces. */
function tellLostHoles(sorted: readonly SortedOutline[], findings: Findings): void {
  const lost = sorted.filter(({ outline, kind }) => kind === 'stray' && isLostHole(outline));
  if (lost.length === 0) return;
  const { line } = lost[0]!.outline;
  const params = { count: lost.length, most: PUNCH_MAX_DIAMETER_MM };
  tell(findings, 'warning', 'holes-outside-pieces', params, {
    ...placeOf(line.source),
    point: line.curve.start,
  });
}

function isLostHole({ line, circle }: Outline): boolean {
  return circle !== undefined && line.role === undefined && 2 * circle.radius <= PUNCH_MAX_DIAMETER_MM;
}

/** The nearest container that bounds leather: a piece or an opening. */
function bearerOf(
  sorted: readonly SortedOutline[],
  containers: readonly (number | undefined)[],
  from: number | undefined,
): number | undefined {
  for (let i = from; i !== undefined; i = containers[i]) {
    const { kind } = sorted[i]!;
    if (kind === 'piece' || kind === 'cut-out') return i;
  }
  return undefined;
}

/** What is known while outlines are sorted. */
interface Sorting {
  readonly sorted: readonly SortedOutline[];
  /** How many outlines within a piece were held against its edge, which takes long where both have many corners. */
  readonly compared: Map<Outline, number>;
  readonly findings: Findings;
}

/** Of several outlines within a piece only the largest few can run along its edge. */
const MOST_COMPARED = 6;

function sortOne(
  outline: Outline,
  self: number,
  around: number | undefined,
  sorting: Sorting,
): SortedOutline {
  const { sorted, findings } = sorting;
  const bearer = around === undefined ? undefined : sorted[around]!;
  if (bearer === undefined) return { outline, kind: outermostKind(outline, findings), piece: self };
  if (bearer.kind === 'cut-out') {
    if (outline.line.role === undefined) {
      tell(findings, 'warning', 'piece-in-opening', {}, placeOf(outline.line.source));
    }
    return { outline, kind: 'piece', piece: self };
  }
  const kind = innerKind(outline, bearer.outline, sorting);
  return { outline, kind, ...(bearer.piece === undefined ? {} : { piece: bearer.piece }) };
}

function outermostKind(outline: Outline, findings: Findings): OutlineKind {
  const { line, area, ring } = outline;
  if (isLostHole(outline)) return 'stray';
  // A figure of eight has no area either, but the mistake to tell of is another one.
  if (area < MIN_PIECE_MM2 && findSelfCrossing(ring) === undefined) {
    const place = { ...placeOf(line.source), point: line.curve.start };
    tell(findings, 'warning', 'too-small-for-a-piece', { area: round2(area) }, place);
    return 'stray';
  }
  if (line.isDashed && line.role === undefined) {
    tell(
      findings,
      'warning',
      'dashed-outline-as-cut',
      { element: longName(line.source) },
      placeOf(line.source),
    );
  }
  return 'piece';
}

function innerKind(outline: Outline, piece: Outline, { compared, findings }: Sorting): OutlineKind {
  const { line, circle, area } = outline;
  const isSmallCircle = circle !== undefined && 2 * circle.radius <= PUNCH_MAX_DIAMETER_MM;
  if (line.role === 'cut') return isSmallCircle ? 'punch' : 'cut-out';
  if (isSmallCircle) return 'small circle';
  if (line.isHole) return 'cut-out';
  if (line.isDashed) return 'stitch';
  if (area < OPENING_SHARE * piece.area) return 'cut-out';
  const tries = compared.get(piece) ?? 0;
  compared.set(piece, tries + 1);
  const width = tries < MOST_COMPARED ? allowanceBetween(piece, outline) : undefined;
  if (width !== undefined) {
    tell(findings, 'note', 'allowance', { element: longName(line.source), width }, placeOf(line.source));
    return 'stitch';
  }
  const share = Math.round((100 * area) / piece.area);
  tell(findings, 'warning', 'inner-outline-as-stitch', { share }, placeOf(line.source));
  return 'stitch';
}

function round2(n: number): number {
  return Math.round(n * 100) / 100;
}
