import type { Box } from '@hidebound/geometry';
import type { Places } from './arrangement.js';
import { SEEK_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import { meetingPairs } from './settle.js';
import { heightOf, moveBox, sharedBox, widthOf } from './vectors.js';

/** A straight stretch between two pages' shares: at `at` on its axis. */
export interface Seam {
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** Which part of the whole is taken from which page: boxes in the whole's frame, apart from each other. */
export interface Cells {
  readonly boxes: ReadonlyMap<number, readonly Box[]>;
  readonly seams: readonly Seam[];
}

/** Seams this near to each other are one, so that the corner where four pages meet is one place; mm. */
const ONE_SEAM_MM = 0.8;

interface Meeting {
  readonly a: number;
  readonly b: number;
  readonly axis: 'x' | 'y';
  readonly at: number;
  /** The page on the lesser side. */
  readonly first: number;
  /** How far along the seam both are seen, mm. */
  readonly length: number;
}

/**
 * Each place of the whole belongs to one page: where windows of two lie over each other, they are parted along the
 * middle of what they share.
 */
export function cellsOf(facts: readonly PageFacts[], places: Places): Cells {
  const windowOf = (page: number) => moveBox(facts[page]!.window, places.get(page)!);
  const meetings = evenSeams(
    meetingPairs(facts, places).map(([a, b]) => meetingOf(a, b, windowOf(a), windowOf(b))),
  );
  // Long seams first: what they take need not be cut out of a corner before.
  meetings.sort((p, q) => q.length - p.length || p.a - q.a || p.b - q.b);
  const boxes = new Map<number, Box[]>([...places.keys()].map((page) => [page, [windowOf(page)]]));
  const seams: Seam[] = [];
  for (const { a, b, axis, at, first } of meetings) {
    for (const [page, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const taken = beyondSeam(windowOf(other), axis, at, page === first);
      boxes.set(
        page,
        boxes.get(page)!.flatMap((box) => without(box, taken)),
      );
    }
    const shared = sharedBox(windowOf(a), windowOf(b));
    const [from, to] = axis === 'x' ? [shared.minY, shared.maxY] : [shared.minX, shared.maxX];
    if (to > from) seams.push({ axis, at, from, to });
  }
  return { boxes, seams };
}

function meetingOf(a: number, b: number, boxA: Box, boxB: Box): Meeting {
  const shared = sharedBox(boxA, boxB);
  const axis = widthOf(shared) <= heightOf(shared) ? 'x' : 'y';
  const at = axis === 'x' ? (shared.minX + shared.maxX) / 2 : (shared.minY + shared.maxY) / 2;
  const middle = (box: Box) => (axis === 'x' ? box.minX + box.maxX : box.minY + box.maxY);
  const length = Math.max(widthOf(shared), heightOf(shared));
  return { a, b, axis, at, first: middle(boxA) <= middle(boxB) ? a : b, length };
}

/** Seams that nearly lie on one line are put on it. */
function evenSeams(meetings: readonly Meeting[]): Meeting[] {
  const sorted = [...meetings].sort((p, q) => p.axis.localeCompare(q.axis) || p.at - q.at);
  const groups: Meeting[][] = [];
  for (const meeting of sorted) {
    const group = groups.at(-1);
    const head = group?.[0];
    if (group === undefined || head?.axis !== meeting.axis || meeting.at - head.at > ONE_SEAM_MM)
      groups.push([meeting]);
    else group.push(meeting);
  }
  return groups.flatMap((group) => {
    const at = group.reduce((sum, meeting) => sum + meeting.at, 0) / group.length;
    return group.map((meeting) => ({ ...meeting, at: Math.round(at * 1000) / 1000 }));
  });
}

/**
 * The share of a page beyond a seam. Its windows may lie a little higher or lower than the other's, and nothing is to
 * be left between, so it is taken a little longer along the seam.
 */
function beyondSeam(window: Box, axis: 'x' | 'y', at: number, isAfter: boolean): Box {
  const { minX, minY, maxX, maxY } = window;
  if (axis === 'x') {
    const span = { minY: minY - SEEK_MM, maxY: maxY + SEEK_MM };
    return isAfter
      ? { ...span, minX: at, maxX: maxX + SEEK_MM }
      : { ...span, minX: minX - SEEK_MM, maxX: at };
  }
  const span = { minX: minX - SEEK_MM, maxX: maxX + SEEK_MM };
  return isAfter ? { ...span, minY: at, maxY: maxY + SEEK_MM } : { ...span, minY: minY - SEEK_MM, maxY: at };
}

/** The box less another: up to four boxes. */
function without(box: Box, taken: Box): Box[] {
  const shared = sharedBox(box, taken);
  if (widthOf(shared) <= 0 || heightOf(shared) <= 0) return [box];
  const parts: Box[] = [
    { ...box, maxX: shared.minX },
    { ...box, minX: shared.maxX },
    { ...shared, minY: box.minY, maxY: shared.minY },
    { ...shared, minY: shared.maxY, maxY: box.maxY },
  ];
  return parts.filter((part) => widthOf(part) > 0 && heightOf(part) > 0);
}
