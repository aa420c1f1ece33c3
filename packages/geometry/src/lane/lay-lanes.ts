import { refKey } from '../nest/demand.js';
import { compareQuick, quickScore } from '../nest/score.js';
import type { CopyRef, Lane, NestProblem, Placement } from '../types/problem.js';
import { TASTES } from './constants.js';
import { assignPairs, brokenPairs } from './lane-pairs.js';
import type { LaidLanes, LaneCopy, LaneTask } from './lane-search.js';
import { layOnce } from './lane-search.js';

export type { LaneCopy } from './lane-search.js';

export interface LaneOptions {
  /** Copies to lay, in the order in which they are given places. Default: every copy asked for by number. */
  readonly copies?: readonly LaneCopy[];
  /** What lies on the sheets already. Default: the problem's fixed placements. */
  readonly lying?: readonly Placement[];
  /** Width of the cut between neighbours, in mm; 0 for a knife: they share one line. Default: the problem's kerf. */
  readonly kerfMm?: number;
}

export interface LaneLayout {
  /** Lanes around straps that lay there already come first, then the new ones. */
  readonly lanes: readonly Lane[];
  /** Of the copies that were laid now. */
  readonly placements: readonly Placement[];
  /** Copies for which no lane was found, in the order given: they are not laid at all, because a strap needs a lane. */
  readonly left: readonly CopyRef[];
}

/** Rounds in which copies whose pair rule can't be met are taken out and the rest is laid anew. */
const PAIR_ROUNDS = 3;

/**
 * Lays straps (items with a `lane`) in lanes: side by side along their direction rule, from one straight first cut
 * that runs out over the hide's edge, in rows of one width each that share their lines, cut to length past flaws, hole
 * ends towards the tail. Honours all that holds for a single strap (distances, needs of the strap and its parts,
 * direction, thickness, the item's sheets) and for pairs; what binds a set together is for the caller (`sheets` of
 * a copy). Sheets are used in their order. Deterministic; the work is bounded.
 *
 * A strap with a `roughMargin` keeps that margin to the edge and to all that lies there, so that a rough cut can be
 * drawn around its lane; the caller draws it.
 */
export function layLanes(problem: NestProblem, options: LaneOptions = {}): LaneLayout {
  const lying = options.lying ?? problem.fixed;
  const copies = openCopies(problem, options.copies ?? numberedCopies(problem), lying);
  let asked = copies;
  for (let round = 0; ; round++) {
    const laid = layBest({
      problem,
      copies: asked,
      lying,
      kerfMm: options.kerfMm ?? problem.distances.kerf ?? 0,
    });
    const placements = assignPairs(problem, laid.placements, asked);
    const broken = new Set(brokenPairs(problem, placements.all, lying).map(refKey));
    if (broken.size === 0) {
      const done = new Set(placements.all.map(refKey));
      return {
        lanes: placements.rename(laid.lanes),
        placements: placements.all,
        left: copies.filter((copy) => !done.has(refKey(copy))).map(bareCopy),
      };
    }
    const isPaired = (copy: CopyRef): boolean => round >= PAIR_ROUNDS && isOfPair(problem, copy);
    asked = asked.filter((copy) => !broken.has(refKey(copy)) && !isPaired(copy));
  }
}

function bareCopy({ item, set, copy }: CopyRef): CopyRef {
  return { item, set, copy };
}

function isOfPair({ items }: NestProblem, { item }: CopyRef): boolean {
  return items.some((one) => one.pair !== undefined && (one.id === item || one.mirrorOf === item));
}

/** Every copy that is asked for by number, set by set. */
export function numberedCopies({ setKinds }: NestProblem): LaneCopy[] {
  const copies: LaneCopy[] = [];
  for (const { sets, members } of setKinds) {
    for (let set = 1; sets !== 'many' && set <= sets; set++) {
      for (const { item, count } of members) {
        for (let copy = 1; copy <= count; copy++) copies.push({ item, set, copy });
      }
    }
  }
  return copies;
}

/** Those of straps that don't lie there yet. */
function openCopies(
  problem: NestProblem,
  copies: readonly LaneCopy[],
  lying: readonly Placement[],
): LaneCopy[] {
  const straps = new Set(problem.items.filter(({ lane }) => lane !== undefined).map(({ id }) => id));
  const there = new Set(lying.map(refKey));
  return copies.filter((copy) => straps.has(copy.item) && !there.has(refKey(copy)));
}

/** The best of a few tries, one after the other until all straps are laid. */
function layBest(task: LaneTask): LaidLanes {
  let best: LaidLanes | undefined;
  for (const taste of TASTES) {
    const laid = layOnce(task, taste);
    if (best === undefined || isBetter(task.problem, laid, best)) best = laid;
    if (best.placements.length === task.copies.length) break;
  }
  return best!;
}

/** As answers are compared: what is missed by priority, whole sets, value, sheets; then fewer lanes. */
function isBetter(problem: NestProblem, laid: LaidLanes, best: LaidLanes): boolean {
  const quick = compareQuick(quickScore(problem, laid.placements), quickScore(problem, best.placements));
  if (quick !== 0) return quick < 0;
  return laid.placements.length === best.placements.length
    ? laid.lanes.length < best.lanes.length
    : laid.placements.length > best.placements.length;
}
