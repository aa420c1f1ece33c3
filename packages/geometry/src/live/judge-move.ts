import { areBoxesNear, areaOfRings } from '../check/area.js';
import { buildContext } from '../check/context.js';
import type { CheckContext, Placed } from '../check/context.js';
import { isDemanded } from '../check/demand.js';
import { findAngleFaults } from '../check/rule-angle.js';
import { findEdgeFaults } from '../check/rule-edge.js';
import { splitSaneAnswer } from '../check/rule-finite-answer.js';
import { findGapFaults } from '../check/rule-gap.js';
import { findLaneFaults } from '../check/rule-lane.js';
import { findLockedFaults } from '../check/rule-locked.js';
import { findLooksFaults } from '../check/rule-looks.js';
import { findPairFaults } from '../check/rule-mirror.js';
import { findRoughCutFaults } from '../check/rule-rough-cut.js';
import { findSetFaults, findSheetFaults } from '../check/rule-set.js';
import { findThicknessFaults } from '../check/rule-thickness.js';
import { findVoidFaults } from '../check/rule-void.js';
import { findZoneFaults } from '../check/rule-zone.js';
import { copyKey, copyRef, markAccepted } from '../check/violation.js';
import type { Finding, FoundViolation } from '../check/violation.js';
import { GeometryError } from '../error.js';
import type { CopyRef, Placement, RoughCut } from '../types/problem.js';
import { answerWith, placeOnStage, placementOf } from './bench.js';
import type { Bench, SheetPlace } from './bench.js';

/**
 * Tells at once whether one copy may lie at a place of the bench, while all others stay: every rule that its place can
 * break, by the exact check's own functions and tolerances, so that the verdict is the one that `checkAnswer` would
 * give. Empty: valid there. Findings come in the check's order and name this copy as one of the two parties.
 *
 * Not judged, because no place of one copy decides on it: whether sets are whole, whether every copy is accounted for,
 * whether mirrored items are mirror images, and lanes and rough cuts as such (their straps and members are). A copy
 * that nobody asked for breaks `count`. The bench stays as it is; the copy need not lie on it yet.
 *
 * Throws `bad-argument` for an item that the problem does not have; an unknown sheet breaks `finite`.
 */
export function judgeMove(bench: Bench, copy: CopyRef, place: SheetPlace): readonly FoundViolation[] {
  const { problem, stage } = bench;
  if (!stage.context.items.has(copy.item)) {
    throw new GeometryError('bad-argument', `The problem has no item that is called ${copy.item}.`);
  }
  const placement = placementOf(copy, place);
  const { findings } = splitSaneAnswer(problem, answerWith([placement], {}));
  if (findings.length > 0) return markAccepted(findings, []);
  return markAccepted(findingsAt(bench, placement), problem.fixed);
}

function findingsAt(bench: Bench, placement: Placement): readonly Finding[] {
  const moved = placeOnStage(bench.stage, placement);
  const key = copyKey(moved.copy);
  const alone = contextOf(bench, moved);
  const names = (finding: Finding): boolean =>
    [finding.at, finding.other].some((party) => typeof party === 'object' && copyKey(party) === key);
  return [
    ...findGapFaults({ ...alone, bySheet: pairsNear(bench, moved, reachOf(bench)) }),
    ...findEdgeFaults(alone),
    ...findVoidFaults(alone),
    ...findLooksFaults(alone),
    ...findZoneFaults(alone),
    ...findAngleFaults(alone),
    ...findThicknessFaults(alone),
    ...findPairFaults({ ...alone, placed: mirroredOf(bench, moved) }),
    ...countFaults(bench, moved),
    ...findSetFaults(alone).filter(({ rule }) => rule !== 'set'),
    ...findSheetFaults(alone),
    ...findLockedFaults(alone),
    ...findLaneFaults(alone),
    ...findRoughCutFaults(alone),
  ].filter(names);
}

/** What the rules read, as if only the moved copy had to be judged: all others are there to be met, not to be judged. */
function contextOf(bench: Bench, moved: Placed): CheckContext {
  const { problem, answer, stage } = bench;
  const { items, sheets } = stage.context;
  const key = copyKey(moved.copy);
  // Needs are remembered by the copy where it lies, so for no longer than this move.
  const fresh = buildContext({ ...problem, items: [], sheets: [] }, answerWith([], {}));
  return {
    problem: { ...problem, fixed: problem.fixed.filter((fixed) => copyKey(fixed) === key) },
    answer: {
      ...answer,
      roughCuts: answer.roughCuts.filter((cut) => concerns(cut, moved, key)),
    },
    items,
    sheets,
    placed: [moved],
    byCopy: new Map(bench.byCopy).set(key, moved),
    bySheet: new Map([[moved.placement.sheet, [moved]]]),
    needsOf: (placed) => fresh.needsOf(placed),
    proofPoints: (item) => stage.context.proofPoints(item),
  };
}

/** A rough cut of which it is a member, or that it may reach into. */
function concerns(cut: RoughCut, moved: Placed, key: string): boolean {
  if (cut.members.some((member) => copyKey(member) === key)) return true;
  return (
    cut.sheet === moved.placement.sheet && areBoxesNear(areaOfRings([cut.outline]).box, moved.area.box, 0)
  );
}

/** The farthest at which two copies can still break the rule `gap`, in mm. */
function reachOf({ problem, answer }: Bench): number {
  const { gap, betweenGroups = 0 } = problem.distances;
  return Math.max(gap, betweenGroups, ...answer.lanes.map(({ kerfMm }) => kerfMm));
}

/**
 * The moved copy with each one near it, as pairs in the order of the answer. Boxes are gone through one by one: among
 * thousands of pieces that takes microseconds, which is less than keeping a tree true would.
 */
function pairsNear(bench: Bench, moved: Placed, reach: number): ReadonlyMap<string, readonly Placed[]> {
  const pairs = new Map<string, readonly Placed[]>();
  const key = copyKey(moved.copy);
  const own = bench.rank.get(key) ?? Infinity;
  for (const [i, other] of bench.placed.entries()) {
    if (i === own || other.sheet !== moved.sheet) continue;
    if (!areBoxesNear(moved.area.box, other.area.box, reach)) continue;
    pairs.set(copyKey(other.copy), i < own ? [other, moved] : [moved, other]);
  }
  return pairs;
}

/** The copies whose rule about pairs the move can break: itself if it is the mirrored one, or those that mirror it. */
function mirroredOf({ stage, byCopy }: Bench, moved: Placed): readonly Placed[] {
  const partners = (stage.partners.get(moved.item.id) ?? [])
    .map((item) => byCopy.get(copyKey({ ...moved.copy, item })))
    .filter((partner) => partner !== undefined);
  return [moved, ...partners];
}

function countFaults({ stage }: Bench, { copy, placement }: Placed): readonly Finding[] {
  if (isDemanded(copy, stage.demands.get(copy.item))) return [];
  return [{ rule: 'count', at: copyRef(copy), sheet: placement.sheet }];
}
