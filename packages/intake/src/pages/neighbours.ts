import type { Places } from './arrangement.js';
import { TELLING_SINE } from './limits.js';
import type { Axis } from './overlaps.js';
import type { PageFacts } from './page-facts.js';
import type { Meeting, Settled } from './settle.js';
import { heightOf, moveBox, sharedBox, widthOf } from './vectors.js';

/** Neighbours, the first one on the lesser side of the axis. */
export interface Neighbours {
  readonly first: number;
  readonly second: number;
  readonly axis: Axis;
  /** Of their paper, mm. */
  readonly overlap: number;
  readonly isTied: boolean;
  /** What they share tells how far they lie over each other. */
  readonly isTold: boolean;
}

/** Windows that share less than this of their side only touch in a corner. */
const SIDE_SHARE = 0.25;

/** The pages of a group that lie beside each other or one below the other. */
export function neighboursOf(
  facts: readonly PageFacts[],
  { places, meetings }: Settled,
  sideShare = SIDE_SHARE,
): Neighbours[] {
  return meetings.flatMap((meeting) => neighboursIn(meeting, facts, places, sideShare) ?? []);
}

function neighboursIn(
  { a, b, ties }: Meeting,
  facts: readonly PageFacts[],
  places: Places,
  sideShare: number,
): Neighbours | undefined {
  const windows = [a, b].map((page) => moveBox(facts[page]!.window, places.get(page)!));
  const shared = sharedBox(windows[0]!, windows[1]!);
  const axis: Axis = widthOf(shared) <= heightOf(shared) ? 'x' : 'y';
  const sideOf = axis === 'x' ? heightOf : widthOf;
  if (sideOf(shared) < sideShare * sideOf(windows[0]!)) return undefined;
  const [first, second] = places.get(a)![axis] <= places.get(b)![axis] ? [a, b] : [b, a];
  const { page } = facts[first]!;
  const end = places.get(first)![axis] + (axis === 'x' ? page.widthMm : page.heightMm);
  return {
    first,
    second,
    axis,
    overlap: end - places.get(second)![axis],
    isTied: ties.length > 0,
    isTold: ties.some(({ normals }) => normals.some((n) => Math.abs(n[axis]) >= TELLING_SINE)),
  };
}

/** How far paper lies over paper where the windows just meet, mm. */
export function marginsBetween(
  facts: readonly PageFacts[],
  first: number,
  second: number,
  axis: Axis,
): number {
  const { window, page } = facts[first]!;
  const next = facts[second]!.window;
  return axis === 'x' ? page.widthMm - window.maxX + next.minX : page.heightMm - window.maxY + next.minY;
}

/** The middle one by size; of an even number, the greater of the two. */
export function medianOf(values: readonly number[]): number | undefined {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}
