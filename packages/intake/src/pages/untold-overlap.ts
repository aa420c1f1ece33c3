import type { Point } from '@hidebound/geometry';
import type { Wanted } from './agreement.js';
import { scoreOf } from './arrangement.js';
import { SEEK_MM } from './limits.js';
import { marginsBetween, medianOf, neighboursOf } from './neighbours.js';
import type { Neighbours } from './neighbours.js';
import type { Axis } from './overlaps.js';
import type { PageFacts } from './page-facts.js';
import { settle } from './settle.js';
import type { Settled } from './settle.js';
import { plus } from './vectors.js';

/** An overlap that nothing drawn tells, and what was taken instead; of paper, mm. */
export interface UntoldOverlap {
  readonly axis: Axis;
  readonly takenMm: number;
  readonly from: 'other axis' | 'edges';
}

export interface HeldPages {
  readonly groups: readonly Settled[];
  readonly untold: readonly UntoldOverlap[];
}

/** Margins across and down that add up to nearly the same are held to be alike, mm. */
const LIKE_MARGINS_MM = 2;

/** Places this near to what was asked stay, mm. */
const SAME_MM = 0.5;

/**
 * Lines that cross a seam straight and square say how two pages lie along the seam and nothing of how far they lie one
 * over the other. Where nothing else holds pages together along an axis, they take the overlap that is told elsewhere on
 * the same axis; else the one told on the other axis, if margins are alike; else what they show just meets.
 */
export function holdUntold(
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  wanted: Wanted,
): HeldPages {
  const told = {
    x: toldOverlap(facts, groups, 'x'),
    y: toldOverlap(facts, groups, 'y'),
  };
  const untold: UntoldOverlap[] = [];
  const held = groups.map((group) => {
    let now = group;
    for (const axis of ['x', 'y'] as const) {
      const result = heldAlong(facts, now, axis, told, wanted);
      now = result.group;
      if (result.untold !== undefined) untold.push(result.untold);
    }
    return now;
  });
  return { groups: held, untold };
}

type Told = Readonly<Record<Axis, number | undefined>>;

const other = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');

/** The middle of the paper overlaps that are told. */
function toldOverlap(
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  axis: Axis,
): number | undefined {
  const overlaps = groups
    .flatMap((group) => neighboursOf(facts, group))
    .filter((pair) => pair.axis === axis && pair.isTold)
    .map(({ overlap }) => overlap);
  return medianOf(overlaps);
}

function heldAlong(
  facts: readonly PageFacts[],
  group: Settled,
  axis: Axis,
  told: Told,
  wanted: Wanted,
): { readonly group: Settled; readonly untold?: UntoldOverlap } {
  const pairs = neighboursOf(facts, group);
  const rootOf = rootsAlong(group, pairs, axis);
  const loose = pairs.filter((pair) => pair.axis === axis && rootOf(pair.first) !== rootOf(pair.second));
  if (loose.length === 0) return { group };
  const { first, second } = (loose.find(({ isTied }) => isTied) ?? loose[0])!;
  const meeting = marginsBetween(facts, first, second, axis);
  const asOther = told[axis] ?? likeOther(facts, first, second, axis, told);
  const wish = asOther !== undefined && asOther >= meeting - SEEK_MM ? asOther : meeting;
  const moved = movedTo(facts, group, loose, rootOf, axis, wish, wanted);
  const isBetter = scoreOfSettled(moved) >= scoreOfSettled(group);
  const taken = isBetter ? moved : group;
  if (told[axis] !== undefined || !loose.some(({ isTied }) => isTied)) return { group: taken };
  const overlap = neighboursOf(facts, taken).find(
    (pair) => pair.first === first && pair.second === second,
  )?.overlap;
  const from = isBetter && wish === asOther ? 'other axis' : 'edges';
  // Paper without margins whose edges are told to meet the other way will meet this way too.
  const meetsElsewhere = Math.abs(told[other(axis)] ?? Infinity) <= SEEK_MM;
  if (meeting <= SEEK_MM && meetsElsewhere) return { group: taken };
  return { group: taken, untold: { axis, takenMm: overlap ?? wish, from } };
}

/** Pages beside each other lie at one height, so they are held together the other way. */
function rootsAlong({ places }: Settled, pairs: readonly Neighbours[], axis: Axis): (page: number) => number {
  const root = new Map([...places.keys()].map((page) => [page, page]));
  const rootOf = (page: number): number => {
    const up = root.get(page)!;
    return up === page ? page : rootOf(up);
  };
  for (const pair of pairs)
    if (pair.axis !== axis || pair.isTold) root.set(rootOf(pair.second), rootOf(pair.first));
  return rootOf;
}

function likeOther(
  facts: readonly PageFacts[],
  first: number,
  second: number,
  axis: Axis,
  told: Told,
): number | undefined {
  const own = marginsBetween(facts, first, second, axis);
  const across = marginsBetween(facts, first, first, other(axis));
  return Math.abs(own - across) <= LIKE_MARGINS_MM ? told[other(axis)] : undefined;
}

/** Each part that nothing holds is moved as a whole, from the first one on. */
function movedTo(
  facts: readonly PageFacts[],
  group: Settled,
  loose: readonly Neighbours[],
  rootOf: (page: number) => number,
  axis: Axis,
  wish: number,
  wanted: Wanted,
): Settled {
  const moves = new Map<number, number>([[rootOf([...group.places.keys()][0]!), 0]]);
  for (let hasGrown = true; hasGrown;) {
    hasGrown = false;
    for (const { first, second, overlap } of loose) {
      const [one, two] = [rootOf(first), rootOf(second)];
      const by = overlap - wish;
      if (moves.has(one) === moves.has(two)) continue;
      if (moves.has(one)) moves.set(two, moves.get(one)! + by);
      else moves.set(one, moves.get(two)! - by);
      hasGrown = true;
    }
  }
  if ([...moves.values()].every((by) => Math.abs(by) <= SAME_MM)) return group;
  const places = new Map(
    [...group.places].map(([page, place]) => {
      const by = moves.get(rootOf(page)) ?? 0;
      const move: Point = axis === 'x' ? { x: by, y: 0 } : { x: 0, y: by };
      return [page, plus(place, move)] as const;
    }),
  );
  return settle(facts, places, wanted);
}

function scoreOfSettled({ meetings, contradictions }: Settled): number {
  const fits = meetings.reduce((sum, { ties }) => sum + ties.length, 0);
  const clashes = meetings.reduce((sum, meeting) => sum + meeting.clashes, 0);
  return scoreOf({ fits, contradictions, clashes });
}
