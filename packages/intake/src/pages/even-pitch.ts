import { agreementOf } from './agreement.js';
import type { Wanted } from './agreement.js';
import type { Places } from './arrangement.js';
import { FIT_MM, MAX_OVERLAP_MM, SEEK_MM } from './limits.js';
import { marginsBetween, medianOf, neighboursOf } from './neighbours.js';
import type { Neighbours } from './neighbours.js';
import { borders } from './overlaps.js';
import type { Axis } from './overlaps.js';
import type { PageFacts } from './page-facts.js';
import { pitchesOf } from './pitches.js';
import { settle } from './settle.js';
import type { Settled } from './settle.js';
import { singleMarks } from './single-marks.js';
import { minus, plus } from './vectors.js';
import type { Side } from './windows.js';

/** Equal pieces at an even distance, of which nothing tells which ones two pages both show; overlaps of paper, mm. */
export interface PitchDoubt {
  readonly axis: Axis;
  readonly pitchMm: number;
  readonly takenMm: number;
  readonly otherMm: number;
}

export interface EvenPages {
  readonly groups: readonly Settled[];
  readonly doubts: readonly PitchDoubt[];
  /** Pages (from 0) that lie much farther over a neighbour than the others do over theirs. */
  readonly uneven: readonly number[];
}

/** An overlap of windows that all neighbours along an axis could have, mm, and what speaks for it. */
interface Candidate {
  readonly overlap: number;
  readonly places: Places;
  /** Cut ends between neighbours that go on, and things that don't. */
  readonly fits: number;
  readonly contradictions: number;
  /** Names that differ at one place; marks and names that are there only once on a page and lie on each other. */
  readonly clashes: number;
  readonly singles: number;
}

/** Of the ends that go on at one overlap, at least this share does at another that is as good. */
const AS_GOOD_SHARE = 0.95;

/** Neighbours in a grid share nearly a whole side; pages that lie too far over each other share more than a corner with those across. */
const GRID_SIDE_SHARE = 0.5;

/** Overlaps of one file differ by less, mm, or its pages don't step evenly: far more than drawings move on their pages. */
const EVEN_MM = 3;

/**
 * Equal pieces at an even distance lie on each other too where pages are moved by that distance, and more of them do the
 * farther pages lie over each other. So all overlaps that differ by such a distance are held against each other, for all
 * neighbours along an axis together: names and single marks decide; where they don't, the least overlap is taken, since
 * pages hardly share more than a strip, and that is in doubt.
 */
export function holdEvenPitch(
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  wanted: Wanted,
): EvenPages {
  const doubts: PitchDoubt[] = [];
  const uneven: number[] = [];
  let held = groups;
  for (const axis of ['x', 'y'] as const) {
    const pitches = pitchesOf(facts, axis);
    if (pitches.length === 0) continue;
    held = held.map((group) => {
      const result = heldAlong(facts, group, axis, pitches, wanted);
      if (result.doubt !== undefined) doubts.push(result.doubt);
      uneven.push(...unevenPages(facts, result.group, axis));
      return result.group;
    });
  }
  return { groups: held, doubts, uneven: [...new Set(uneven)].sort((a, b) => a - b) };
}

function heldAlong(
  facts: readonly PageFacts[],
  group: Settled,
  axis: Axis,
  pitches: readonly number[],
  wanted: Wanted,
): { readonly group: Settled; readonly doubt?: PitchDoubt } {
  const all = gridNeighbours(facts, group);
  const along = all.filter((pair) => pair.axis === axis);
  const now = medianOf(along.map(({ overlap }) => overlap));
  if (now === undefined) return { group };
  const overlaps = [now, ...pitches.flatMap((pitch) => [now - pitch, now + pitch])].filter(
    (overlap) => overlap >= -SEEK_MM && overlap <= MAX_OVERLAP_MM + SEEK_MM,
  );
  const judged = (overlap: number, places: Places): Candidate => ({
    overlap,
    places,
    ...evidence(facts, along, places, axis, pitches, wanted),
  });
  const candidates = overlaps.map((overlap) =>
    judged(overlap, placesWith(overlap, now, facts, group, all, axis)),
  );
  // What is even comes first where as much speaks for it.
  if (along.some(({ overlap }) => Math.abs(overlap - now) > EVEN_MM))
    candidates.push(judged(now, group.places));
  const rivals = asGood(candidates).sort(
    (p, q) => p.clashes - q.clashes || q.singles - p.singles || p.overlap - q.overlap,
  );
  const [best, ...rest] = rivals;
  if (best === undefined) return { group };
  const isMoved = [...best.places].some(([page, place]) => {
    const by = minus(place, group.places.get(page)!);
    return Math.max(Math.abs(by.x), Math.abs(by.y)) > EVEN_MM;
  });
  const taken = isMoved ? settle(facts, best.places, wanted) : group;
  const other = rest.find(
    ({ clashes, singles, overlap }) =>
      clashes === best.clashes && singles === best.singles && overlap - best.overlap > EVEN_MM,
  );
  if (other === undefined) return { group: taken };
  const { first, second } = along[0]!;
  const [takenMm, otherMm] = [best, other].map(
    ({ overlap }) => overlap + marginsBetween(facts, first, second, axis),
  ) as [number, number];
  return { group: taken, doubt: { axis, pitchMm: otherMm - takenMm, takenMm, otherMm } };
}

/** Neighbours with the overlap of their windows instead of that of their paper, since margins may change from page to page. */
function gridNeighbours(facts: readonly PageFacts[], group: Settled): Neighbours[] {
  return neighboursOf(facts, group, GRID_SIDE_SHARE).map((pair) => ({
    ...pair,
    overlap: pair.overlap - marginsBetween(facts, pair.first, pair.second, pair.axis),
  }));
}

/**
 * The places with one overlap between all neighbours along the axis, and pages across from each other at one place of it.
 * What pages moved on their paper stays as it was.
 */
function placesWith(
  overlap: number,
  now: number,
  facts: readonly PageFacts[],
  { places }: Settled,
  pairs: readonly Neighbours[],
  axis: Axis,
): Places {
  const startOf = (page: number) => places.get(page)![axis] + borders(facts[page]!, axis).low;
  const moves = new Map<number, number>();
  for (const start of places.keys()) {
    if (moves.has(start)) continue;
    moves.set(start, 0);
    const queue = [start];
    for (const page of queue) {
      for (const pair of pairs.filter(({ first, second }) => first === page || second === page)) {
        const next = pair.first === page ? pair.second : pair.first;
        if (moves.has(next)) continue;
        const isAlong = pair.axis === axis;
        const was = isAlong ? pair.overlap : startOf(pair.first) - startOf(pair.second);
        const usual = isAlong ? now : 0;
        const by = (Math.abs(was - usual) <= EVEN_MM ? usual : was) - (isAlong ? overlap : 0);
        moves.set(next, moves.get(page)! + (pair.first === page ? by : -by));
        queue.push(next);
      }
    }
  }
  return new Map(
    [...places].map(([page, place]) => {
      const by = moves.get(page)!;
      return [page, plus(place, axis === 'x' ? { x: by, y: 0 } : { x: 0, y: by })] as const;
    }),
  );
}

/** What all neighbours along the axis say of lying so. */
function evidence(
  facts: readonly PageFacts[],
  along: readonly Neighbours[],
  places: Places,
  axis: Axis,
  pitches: readonly number[],
  wanted: Wanted,
): Omit<Candidate, 'overlap' | 'places'> {
  let [fits, contradictions, clashes, singles] = [0, 0, 0, 0];
  const [high, low] = axis === 'x' ? (['right', 'left'] as const) : (['bottom', 'top'] as const);
  for (const { first, second } of along) {
    const shift = minus(places.get(second)!, places.get(first)!);
    const [a, b] = [facts[first]!, facts[second]!];
    const { ties } = agreementOf(endsOnly(a, high), endsOnly(b, low), shift, { marks: false, lines: true });
    fits += ties.filter(({ miss }) => Math.hypot(miss.x, miss.y) <= FIT_MM).length;
    const whole = agreementOf(a, b, shift, wanted);
    contradictions += whole.contradictions;
    clashes += whole.clashes;
    singles += whole.twins + (wanted.marks ? singleMarks(a, b, shift, axis, pitches) : 0);
  }
  return { fits, contradictions, clashes, singles };
}

/** The page with nothing but the ends at one border. */
function endsOnly(facts: PageFacts, side: Side): PageFacts {
  return {
    ...facts,
    ends: facts.ends.filter((end) => end.side === side),
    corners: [],
    figures: [],
    words: [],
  };
}

/** Those at which nearly as many ends go on as at any, and hardly more speaks against them than against the best. */
function asGood(candidates: readonly Candidate[]): Candidate[] {
  const most = Math.max(0, ...candidates.map(({ fits }) => fits));
  if (most === 0) return [];
  const fitting = candidates.filter(({ fits }) => fits >= AS_GOOD_SHARE * most);
  const least = Math.min(...fitting.map(({ contradictions }) => contradictions));
  return fitting.filter(({ contradictions }) => contradictions <= least + (1 - AS_GOOD_SHARE) * most);
}

/** Pages whose overlap with the one before is far from that of most. */
function unevenPages(facts: readonly PageFacts[], group: Settled, axis: Axis): number[] {
  const along = gridNeighbours(facts, group).filter((pair) => pair.axis === axis);
  const median = medianOf(along.map(({ overlap }) => overlap));
  if (median === undefined) return [];
  return along.filter(({ overlap }) => Math.abs(overlap - median) > EVEN_MM).map(({ second }) => second);
}
