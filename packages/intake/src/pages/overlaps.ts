import type { Point } from '@hidebound/geometry';
import type { Figure } from './figures.js';
import { isSameCorner } from './corners.js';
import type { Wanted } from './agreement.js';
import {
  CUT_MIN_SINE,
  GOES_ON_COS,
  LANDMARKS_PER_PAGE,
  MAX_OVERLAP_MM,
  SEEK_MM,
  TELLING_SINE,
} from './limits.js';
import { wordsOnce } from './drawing-words.js';
import { haveOneLabel } from './mark-labels.js';
import type { PageFacts } from './page-facts.js';
import type { CutEnd } from './windows.js';

/** Pages beside each other, or one below the other. */
export type Axis = 'x' | 'y';

/** Pairs of page numbers (from 0) that may be neighbours. */
export type Pairs = readonly (readonly [number, number])[];

/** Votes are counted in bins of this width, mm; the true overlap gathers votes of most neighbours. */
const BIN_MM = 0.25;

/** Votes of a mark, or of a name, weigh more than those of a line, which crosses a height at several places. */
const MARK_VOTES = 3;

/** Lines that cross an edge nearly square say nothing of how far pages lie over each other, but that they may just meet. */
const WEAK_VOTE = 0.2;

/** Overlaps that are looked at more closely. */
const MOST_OVERLAPS = 4;

/**
 * How far the windows of neighbours lie over each other, mm, the likeliest first. Windows beside each other are taken
 * to lie at one height, so a line that is cut at some height of one page is found at that height on the other, and the
 * overlap is how far from that page's border. Every pair of pages votes; those that are no neighbours vote at random.
 */
export function likelyOverlaps(
  facts: readonly PageFacts[],
  pairs: Pairs,
  axis: Axis,
  wanted: Wanted,
): number[] {
  const votes = new Map<number, number>();
  const vote = (overlap: number, weight: number) => {
    if (overlap < -SEEK_MM || overlap > MAX_OVERLAP_MM) return;
    const bin = Math.round(overlap / BIN_MM);
    votes.set(bin, (votes.get(bin) ?? 0) + weight);
  };
  const words = facts.map((one) => wordsOnce(one.words));
  for (const [i, j] of pairs) {
    const a = facts[i]!;
    const b = facts[j]!;
    voteByWords(a, b, words[i]!, words[j]!, axis, vote);
    if (wanted.lines) voteByLines(a, b, axis, vote);
    if (wanted.marks) voteByMarks(a, b, axis, vote);
  }
  return peaksOf(votes, MOST_OVERLAPS);
}

/**
 * The overlap for which most corners of long lines speak. Pieces that are alike vote for where they would coincide, so
 * this comes after all others.
 */
export function overlapByCorners(facts: readonly PageFacts[], pairs: Pairs, axis: Axis): number[] {
  const votes = new Map<number, number>();
  const vote = (overlap: number, weight: number) => {
    if (overlap < -SEEK_MM || overlap > MAX_OVERLAP_MM) return;
    const bin = Math.round(overlap / BIN_MM);
    votes.set(bin, (votes.get(bin) ?? 0) + weight);
  };
  for (const [i, j] of pairs) voteByCorners(facts[i]!, facts[j]!, axis, vote);
  return peaksOf(votes, 1);
}

/**
 * The overlap of windows that just meet. Some programs cut pages off at whole points, a little within the paper's edge:
 * margins of less than a millimetre are no margins, and there the paper's edges meet, with a small gap between windows.
 */
export function meetingOverlap(facts: readonly PageFacts[], axis: Axis): number {
  const first = facts.find(({ isBlank }) => !isBlank);
  if (first === undefined) return 0;
  const { low, high } = borders(first, axis);
  const gap = low + (axis === 'x' ? first.page.widthMm : first.page.heightMm) - high;
  return gap <= SEEK_MM ? -gap : 0;
}

type Vote = (overlap: number, weight: number) => void;

/** Coordinates along the axis and across it. */
const along = (p: Point, axis: Axis): number => p[axis];
const across = (p: Point, axis: Axis): number => p[axis === 'x' ? 'y' : 'x'];

/** Where the borders of a page's window lie on an axis. */
export function borders({ window }: PageFacts, axis: Axis) {
  return axis === 'x'
    ? { low: window.minX, high: window.maxX, side: window.minY }
    : { low: window.minY, high: window.maxY, side: window.minX };
}

function voteByLines(a: PageFacts, b: PageFacts, axis: Axis, vote: Vote): void {
  const [high, low] = axis === 'x' ? (['right', 'left'] as const) : (['bottom', 'top'] as const);
  const ofA = borders(a, axis);
  const ofB = borders(b, axis);
  const intoB = a.ends.filter(({ side }) => side === high);
  const intoA = b.ends.filter(({ side }) => side === low);
  for (const one of intoB) {
    for (const other of intoA) {
      const step = across(one.at, axis) - ofA.side - across(other.at, axis) + ofB.side;
      if (Math.abs(step) <= SEEK_MM && one.look === other.look && isOpposite(one.out, other.out))
        vote(0, Math.abs(across(one.out, axis)) < TELLING_SINE ? WEAK_VOTE : 1);
    }
  }
  for (const end of intoA)
    voteByCrossings(end, a, axis, across(end.at, axis) - ofB.side + ofA.side, ofA.high, -1, vote);
  for (const end of intoB)
    voteByCrossings(end, b, axis, across(end.at, axis) - ofA.side + ofB.side, ofB.low, 1, vote);
}

function isOpposite(a: Point, b: Point): boolean {
  return a.x * b.x + a.y * b.y <= -GOES_ON_COS;
}

/** Where lines of the page run at that height, near the border and in the end's direction. */
function voteByCrossings(
  end: CutEnd,
  page: PageFacts,
  axis: Axis,
  height: number,
  border: number,
  inward: 1 | -1,
  vote: Vote,
): void {
  if (Math.abs(across(end.out, axis)) < TELLING_SINE) return;
  const far = border + inward * MAX_OVERLAP_MM;
  const [from, to] = inward > 0 ? [border, far] : [far, border];
  const box =
    axis === 'x'
      ? { minX: from, maxX: to, minY: height, maxY: height }
      : { minX: height, maxX: height, minY: from, maxY: to };
  page.lines.chordsIn(box, (p, q, look) => {
    if (look !== end.look) return;
    const rise = across(q, axis) - across(p, axis);
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length === 0 || Math.abs(rise) < CUT_MIN_SINE * length) return;
    const cos = ((q.x - p.x) * end.out.x + (q.y - p.y) * end.out.y) / length;
    const share = (height - across(p, axis)) / rise;
    if (Math.abs(cos) < GOES_ON_COS || share < 0 || share > 1) return;
    const place = along(p, axis) + share * (along(q, axis) - along(p, axis));
    const overlap = inward * (place - border);
    if (overlap > BIN_MM) vote(overlap, 1);
  });
}

function voteByCorners(a: PageFacts, b: PageFacts, axis: Axis, vote: Vote): void {
  const ofA = borders(a, axis);
  const ofB = borders(b, axis);
  for (const one of a.corners) {
    for (const other of b.corners) {
      const step = across(one.at, axis) - ofA.side - across(other.at, axis) + ofB.side;
      if (Math.abs(step) > SEEK_MM || !isSameCorner(one, other)) continue;
      vote(ofA.high - along(one.at, axis) + along(other.at, axis) - ofB.low, 1);
    }
  }
}

function voteByMarks(a: PageFacts, b: PageFacts, axis: Axis, vote: Vote): void {
  const ofA = borders(a, axis);
  const ofB = borders(b, axis);
  for (const one of landmarks(a)) {
    for (const other of landmarks(b)) {
      if (one.shape !== other.shape || !haveOneLabel(one, other)) continue;
      const step = across(one.at, axis) - ofA.side - across(other.at, axis) + ofB.side;
      if (Math.abs(step) > SEEK_MM) continue;
      vote(ofA.high - along(one.at, axis) + along(other.at, axis) - ofB.low, MARK_VOTES);
    }
  }
}

type WordsOnce = ReturnType<typeof wordsOnce>;

/** Words that either page has once, such as the names of pieces. */
function voteByWords(
  a: PageFacts,
  b: PageFacts,
  ofPageA: WordsOnce,
  ofPageB: WordsOnce,
  axis: Axis,
  vote: Vote,
): void {
  const ofA = borders(a, axis);
  const ofB = borders(b, axis);
  for (const [text, one] of ofPageA) {
    const other = ofPageB.get(text);
    if (other === undefined) continue;
    const step = across(one.at, axis) - ofA.side - across(other.at, axis) + ofB.side;
    if (Math.abs(step) > SEEK_MM) continue;
    vote(ofA.high - along(one.at, axis) + along(other.at, axis) - ofB.low, MARK_VOTES);
  }
}

/** Figures that could be marks, without those of which the page is full. */
export function landmarks({ figures }: PageFacts): Figure[] {
  const counts = new Map<string, number>();
  for (const { shape } of figures) counts.set(shape, (counts.get(shape) ?? 0) + 1);
  return figures.filter(({ shape, isSign }) => isSign && counts.get(shape)! <= LANDMARKS_PER_PAGE);
}

/** Overlaps with the most votes of two neighbouring bins, at least three bins apart. */
function peaksOf(votes: ReadonlyMap<number, number>, most: number): number[] {
  const at = (bin: number) => votes.get(bin) ?? 0;
  const smooth = [...votes.keys()].map((bin) => ({ bin, weight: at(bin - 1) + at(bin) + at(bin + 1) }));
  smooth.sort((p, q) => q.weight - p.weight || at(q.bin) - at(p.bin) || p.bin - q.bin);
  const peaks: number[] = [];
  for (const { bin } of smooth) {
    if (peaks.every((peak) => Math.abs(peak - bin) >= 3)) peaks.push(bin);
    if (peaks.length === most) break;
  }
  return peaks.map((bin) => {
    const weight = at(bin - 1) + at(bin) + at(bin + 1);
    return (BIN_MM * ((bin - 1) * at(bin - 1) + bin * at(bin) + (bin + 1) * at(bin + 1))) / weight;
  });
}
