import type { Box, Point } from '@hidebound/geometry';
import { isSameCorner } from './corners.js';
import type { Corner } from './corners.js';
import { sharedWords } from './drawing-words.js';
import type { Figure } from './figures.js';
import { haveOneLabel } from './mark-labels.js';
import type { PageFacts } from './page-facts.js';
import { FIT_MM, SEEK_MM } from './limits.js';
import { goesOnOverStrip, tipReach } from './lost-strip.js';
import { dot, isInBox, minus, moveBox, plus, sharedBox, heightOf, widthOf } from './vectors.js';
import type { CutEnd } from './windows.js';

/**
 * One thing that two pages share. Along `along` (absent: every way) it says nothing; `miss` is how far the second
 * page's lies from the first's at the shift that was asked, so that the shift should grow by it.
 */
export interface Tie {
  /** In the first page's frame. */
  readonly at: Point;
  readonly normals: readonly Point[];
  readonly miss: Point;
  readonly kind: 'mark' | 'line' | 'corner';
}

export interface Agreement {
  readonly ties: readonly Tie[];
  /** Cut ends and marks that should be on the other page too, and are not. */
  readonly contradictions: number;
  /** Texts that both pages have at one place, and those in whose place the other page has other ones. */
  readonly twins: number;
  readonly clashes: number;
}

export interface Wanted {
  readonly marks: boolean;
  readonly lines: boolean;
}

/** Pages meet along at least so much of an edge, mm; corners that only touch say nothing. */
const MEET_MM = 3;

/**
 * What two pages say of lying so that the second's frame is shifted by `shift` against the first's: lines cut by one
 * page's border should be seen to go on at the other's, and marks on both. Pages are only shifted against each other,
 * never turned: how a page is turned was settled when it was read.
 */
export function agreementOf(a: PageFacts, b: PageFacts, shift: Point, wanted: Wanted): Agreement {
  const shared = sharedBox(a.window, moveBox(b.window, shift));
  const nothing = { ties: [], contradictions: 0, twins: 0, clashes: 0 };
  if (widthOf(shared) < -SEEK_MM || heightOf(shared) < -SEEK_MM) return nothing;
  if (Math.max(widthOf(shared), heightOf(shared)) < MEET_MM) return nothing;
  const ties: Tie[] = [];
  let contradictions = 0;
  const add = (found: Tie | 'missing' | undefined) => {
    if (found === 'missing') contradictions++;
    else if (found !== undefined) ties.push(found);
  };
  if (wanted.lines) {
    for (const end of a.ends) add(tieOfEnd(end, a, b, shared, shift, 1));
    const back = { x: -shift.x, y: -shift.y };
    for (const end of b.ends) add(tieOfEnd(end, b, a, moveBox(shared, back), back, -1));
    for (const corner of a.corners) add(tieOfCorner(corner, b, shared, shift));
  }
  if (wanted.marks) {
    for (const figure of a.figures) add(tieOfFigure(figure, b, shared, shift));
    const own = moveBox(shared, { x: -shift.x, y: -shift.y });
    for (const figure of b.figures) {
      if (
        isShared(figure) &&
        isSurely(figure.box, own) &&
        matchOf(figure, a, plus(figure.at, shift)) === undefined
      )
        contradictions++;
    }
  }
  return { ties, contradictions, ...sharedWords(a.words, b.words, shared, shift) };
}

function tieOfEnd(
  end: CutEnd,
  own: PageFacts,
  other: PageFacts,
  shared: Box,
  shift: Point,
  sign: 1 | -1,
): Tie | 'missing' | undefined {
  if (!isInBox(end.at, shared, SEEK_MM)) return undefined;
  const place = minus(end.at, shift);
  const found = other.lines.nearest(place, end.out, end.look, SEEK_MM);
  const isUpright = end.side === 'top' || end.side === 'bottom';
  const half = found === undefined && own.signs.has(end.line) ? otherHalf(end, place, other) : undefined;
  if (half !== undefined) {
    const miss = minus(place, half.at);
    const at = sign > 0 ? end.at : place;
    return { at, normals: BOTH_AXES, miss: { x: miss.x * sign, y: miss.y * sign }, kind: 'mark' };
  }
  if (found === undefined) {
    const beyond = endOverStrip(end, place, other);
    if (beyond !== undefined) return tieOverStrip(end, place, beyond, sign);
    return isWithinSpan(end.at, shared, isUpright) && !isAtTip(end, own) ? 'missing' : undefined;
  }
  const normal = { x: -end.out.y, y: end.out.x };
  const away = dot(normal, minus(place, found.at)) * sign;
  const at = sign > 0 ? end.at : place;
  const kind = own.signs.has(end.line) && other.signs.has(found.line) ? 'mark' : 'line';
  return { at, normals: [normal], miss: { x: normal.x * away, y: normal.y * away }, kind };
}

/** The end with which a line goes on that crosses a strip which is on neither page, at a flat angle. */
function endOverStrip(end: CutEnd, place: Point, other: PageFacts): CutEnd | undefined {
  const moved = { at: place, out: end.out };
  return other.ends.find(
    (one) => one.look === end.look && one.side !== end.side && goesOnOverStrip(moved, one),
  );
}

/** Measured square to the mean of both directions, so that a bend between them counts for nothing. */
function tieOverStrip(end: CutEnd, place: Point, beyond: CutEnd, sign: 1 | -1): Tie {
  const mean = minus(end.out, beyond.out);
  const length = Math.sqrt(dot(mean, mean));
  const normal = { x: -mean.y / length, y: mean.x / length };
  const away = dot(normal, minus(place, beyond.at)) * sign;
  const miss = { x: normal.x * away, y: normal.y * away };
  return { at: sign > 0 ? end.at : place, normals: [normal], miss, kind: 'line' };
}

/** The line turns back where no page shows it. */
function isAtTip(end: CutEnd, own: PageFacts): boolean {
  return own.ends.some(
    (one) => one.look === end.look && one.side === end.side && tipReach(end, one) !== undefined,
  );
}

/** A corner that both pages show; what one page alone shows speaks against nothing, since lines say that themselves. */
function tieOfCorner(corner: Corner, other: PageFacts, shared: Box, shift: Point): Tie | undefined {
  if (!isInBox(corner.at, shared)) return undefined;
  const place = minus(corner.at, shift);
  const match = other.corners.find(
    (one) =>
      Math.abs(one.at.x - place.x) <= SEEK_MM &&
      Math.abs(one.at.y - place.y) <= SEEK_MM &&
      isSameCorner(one, corner),
  );
  if (match === undefined) return undefined;
  return { at: corner.at, normals: BOTH_AXES, miss: minus(place, match.at), kind: 'corner' };
}

const BOTH_AXES: readonly Point[] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
];

/** Half a mark has a corner on the edge (a diamond), so its lines meet there without going on. */
function otherHalf(end: CutEnd, place: Point, other: PageFacts): CutEnd | undefined {
  return other.ends.find(
    ({ at, look, line, side }) =>
      side !== end.side &&
      look === end.look &&
      other.signs.has(line) &&
      Math.abs(at.x - place.x) <= SEEK_MM &&
      Math.abs(at.y - place.y) <= SEEK_MM,
  );
}

/** Not so near to the other borders that a small shift would take it off the page. */
function isWithinSpan({ x, y }: Point, shared: Box, isUpright: boolean): boolean {
  return isUpright
    ? x > shared.minX + SEEK_MM && x < shared.maxX - SEEK_MM
    : y > shared.minY + SEEK_MM && y < shared.maxY - SEEK_MM;
}

function tieOfFigure(
  figure: Figure,
  other: PageFacts,
  shared: Box,
  shift: Point,
): Tie | 'missing' | undefined {
  if (!isInBox(figure.at, shared, SEEK_MM)) return undefined;
  const place = minus(figure.at, shift);
  const match = matchOf(figure, other, place);
  if (match === undefined) return isShared(figure) && isSurely(figure.box, shared) ? 'missing' : undefined;
  const kind = figure.isSign ? 'mark' : 'line';
  return { at: figure.at, normals: BOTH_AXES, miss: minus(place, match.at), kind };
}

/** A mark that both pages should have; one that points to an edge is for its own page, and the neighbour's points back. */
function isShared({ isSign, leans }: Figure): boolean {
  return isSign && !leans;
}

/** All of it should be seen on the other page, whatever its drawing moved. */
function isSurely(box: Box, shared: Box): boolean {
  return (
    box.minX > shared.minX + SEEK_MM &&
    box.maxX < shared.maxX - SEEK_MM &&
    box.minY > shared.minY + SEEK_MM &&
    box.maxY < shared.maxY - SEEK_MM
  );
}

export function matchOf(figure: Figure, other: PageFacts, place: Point): Figure | undefined {
  return other.byShape
    .get(figure.shape)
    ?.find(
      (candidate) =>
        haveOneLabel(candidate, figure) &&
        Math.abs(candidate.at.x - place.x) <= SEEK_MM &&
        Math.abs(candidate.at.y - place.y) <= SEEK_MM,
    );
}

/** Holds a shift that is told one way only near where it was expected. */
const HOLD_WEIGHT = 0.01;

/** How the shift should change so that the ties miss least (least squares). */
export function correctionOf(ties: readonly Tie[]): Point {
  let xx = HOLD_WEIGHT;
  let xy = 0;
  let yy = HOLD_WEIGHT;
  let xr = 0;
  let yr = 0;
  for (const { normals, miss } of ties) {
    for (const n of normals) {
      const r = dot(n, miss);
      xx += n.x * n.x;
      xy += n.x * n.y;
      yy += n.y * n.y;
      xr += n.x * r;
      yr += n.y * r;
    }
  }
  const det = xx * yy - xy * xy;
  return { x: (yy * xr - xy * yr) / det, y: (xx * yr - xy * xr) / det };
}

/** A tested place of one page against another. */
export interface PageLink {
  readonly a: number;
  readonly b: number;
  /** From the frame of b to that of a. */
  readonly shift: Point;
  readonly fits: number;
  readonly contradictions: number;
  /** Names that stand at one place and differ. */
  readonly clashes: number;
  readonly marks: number;
}

/** Rounds of mending the shift: lines are nearly straight where they are cut, so two would do. */
const ROUNDS = 3;

/** The pages' agreement once the shift is mended; what still misses then counts as a contradiction. */
export function linkOf(
  facts: readonly PageFacts[],
  a: number,
  b: number,
  nominal: Point,
  wanted: Wanted,
): PageLink {
  let shift = nominal;
  let agreement = agreementOf(facts[a]!, facts[b]!, shift, wanted);
  for (let round = 0; round < ROUNDS && agreement.ties.length > agreement.contradictions; round++) {
    shift = plus(shift, correctionOf(agreement.ties));
    agreement = agreementOf(facts[a]!, facts[b]!, shift, wanted);
  }
  let fits = 0;
  let marks = 0;
  let { contradictions } = agreement;
  for (const tie of agreement.ties) {
    if (tie.kind === 'corner') continue;
    if (Math.abs(tie.miss.x) > FIT_MM || Math.abs(tie.miss.y) > FIT_MM) contradictions++;
    else {
      fits++;
      if (tie.kind === 'mark') marks++;
    }
  }
  return { a, b, shift, fits, contradictions, clashes: agreement.clashes, marks };
}
