import type { RuleName } from '@hidebound/geometry';
import { checkLayout } from '../layout/check-layout.js';
import type { LayoutViolation } from '../layout/check-layout.js';
import { seatsOf } from '../layout/seats.js';
import type { Layout, PieceCopy, PiecePlacement } from '../model/layout.js';
import { bareCopy, pieceCopyKey } from '../order/item-id.js';
import type { NamedHide } from '../order/sheets.js';
import { currentCopies } from './current-copies.js';
import { keptWhole, toLayAgain } from './tick-layout.js';
import { meaningsIn, withFigures } from './with-figures.js';

/** Rules about the leather that a piece lies on. */
const LEATHER_RULES: readonly RuleName[] = ['void', 'edge', 'looks', 'strength', 'zone'];

/** A piece that a newly found flaw is in the way of. */
export interface FlawedCopy {
  readonly copy: PieceCopy;
  readonly number: string;
  /** The id of the flaw. */
  readonly flaw: string;
  readonly rule: RuleName;
  readonly isCut: boolean;
}

export interface LiftedLayout {
  readonly layout: Layout;
  readonly flawed: readonly FlawedCopy[];
}

/**
 * The layout on hides of which flaws were found since. Pieces that can't be cut any more where they lie are taken up
 * and wait for being laid again; all others stay. A piece that is cut already stays cut and bears the rule as accepted.
 */
export function liftFlawed(
  layout: Layout,
  before: readonly NamedHide[],
  after: readonly NamedHide[],
): LiftedLayout {
  const now = withFigures(
    layout,
    after.map(({ hide }) => hide),
  );
  const known = new Set(leatherFaults(layout, before).map(faultKey));
  const fresh = leatherFaults(now, after).filter((fault) => !known.has(faultKey(fault)));
  const copies = new Map(currentCopies(layout).map((copy) => [copy.key, copy]));
  const flawed = new Map<string, FlawedCopy>();
  for (const { at, other, rule } of fresh) {
    const current = copies.get(pieceCopyKey(at!));
    if (current === undefined || current.placement.state === 'spoiled' || flawed.has(current.key)) continue;
    flawed.set(current.key, {
      copy: bareCopy(current.placement),
      number: current.number,
      flaw: typeof other === 'string' ? other : '',
      rule,
      isCut: current.placement.state === 'cut',
    });
  }
  const lifted = new Set([...flawed].filter(([, { isCut }]) => !isCut).map(([key]) => key));
  const rules = acceptedRules(fresh);
  const placements = now.placements.map((placement): PiecePlacement => {
    const more = placement.state === 'cut' ? rules.get(pieceCopyKey(placement)) : undefined;
    if (more === undefined) return placement;
    return { ...placement, accepted: [...new Set([...placement.accepted, ...more])] };
  });
  const rest = withoutCopies({ ...now, placements }, lifted);
  return {
    layout: withFigures(
      rest,
      after.map(({ hide }) => hide),
    ),
    flawed: [...flawed.values()],
  };
}

function leatherFaults(layout: Layout, hides: readonly NamedHide[]): LayoutViolation[] {
  return checkLayout(layout, hides, meaningsIn(layout)).violations.filter(
    ({ rule, at, accepted }) => !accepted && at !== undefined && LEATHER_RULES.includes(rule),
  );
}

function faultKey({ rule, at, other }: LayoutViolation): string {
  return JSON.stringify([rule, at && pieceCopyKey(at), typeof other === 'string' ? other : '']);
}

function acceptedRules(faults: readonly LayoutViolation[]): Map<string, readonly RuleName[]> {
  const rules = new Map<string, readonly RuleName[]>();
  for (const { at, rule } of faults) {
    const key = pieceCopyKey(at!);
    rules.set(key, [...(rules.get(key) ?? []), rule]);
  }
  return rules;
}

/** Takes planned copies up, out of their lanes and rough cuts; these go with their last member. */
function withoutCopies(layout: Layout, keys: ReadonlySet<string>): Layout {
  if (keys.size === 0) return layout;
  const isLifted = (placement: PiecePlacement | undefined): boolean =>
    placement !== undefined && placement.state === 'planned' && keys.has(pieceCopyKey(placement));
  const seats = seatsOf(layout.placements);
  const lanes = layout.lanes
    .map((lane) => {
      const seated = seats.ofLane(lane);
      const rows = lane.rows.map((row, i) => ({
        ...row,
        straps: row.straps.filter((_, k) => !isLifted(seated[i]![k])),
      }));
      return { ...lane, rows };
    })
    .filter(({ rows }) => rows.some(({ straps }) => straps.length > 0));
  const roughCuts = layout.roughCuts
    .map((block) => {
      const seated = seats.ofRoughCut(block);
      return { ...block, members: block.members.filter((_, i) => !isLifted(seated[i])) };
    })
    .filter(({ members }) => members.length > 0);
  const left = new Set([...lanes, ...roughCuts].map(({ id }) => id));
  const lifted = layout.placements.filter(isLifted);
  return {
    ...layout,
    placements: keptWhole(
      layout.placements.filter((placement) => !isLifted(placement)),
      layout,
    ),
    lanes,
    roughCuts,
    // Copies stay named there, so that the numbers of all others stay what they are.
    cuttingOrder: layout.cuttingOrder.filter(({ of }) => of === undefined || left.has(of)),
    unplaced: [...layout.unplaced, ...lifted.map(toLayAgain)],
  };
}
