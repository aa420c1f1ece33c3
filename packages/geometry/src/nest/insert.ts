import { FIRST_CANDIDATES, FIRST_FREE_ANGLES, SECOND_ANGLES, SECOND_CANDIDATES } from './constants.js';
import type { Copy } from './demand.js';
import type { PlaceEffort } from './exact-place.js';
import { exactPlace, unsettledPlace } from './exact-place.js';
import { toU } from './frame.js';
import type { Layout } from './layout.js';
import { pairLimitFor, variantOf } from './layout.js';
import type { RotationContext } from './rotations.js';
import { firstRotations } from './rotations.js';
import type { PairLimit } from './rules.js';
import { fittedRotationDeg, quickLook, rulesHold } from './rules.js';
import type { Proposal, ScanTaste } from './scan.js';
import { scanPlaces } from './scan.js';
import type { Place, SheetState } from './sheet-state.js';
import type { ScanRuns, Variant } from './variant.js';
import { grownRunsOf, shrunkRunsOf } from './variant.js';

/** How hard to look for a place. */
export interface Effort {
  readonly mostRotations: number;
  readonly mostCandidates: number;
  /** Weight of empty length behind a piece. */
  readonly behind: number;
  /** Look for exact fits too where nothing else is found. */
  readonly exactFits: boolean;
  /** As if the partner of its pair didn't lie. */
  readonly withoutPartner?: boolean;
}

export const FIRST_EFFORT: Effort = {
  mostRotations: FIRST_FREE_ANGLES,
  mostCandidates: FIRST_CANDIDATES,
  behind: 0.3,
  exactFits: true,
};

/** For a piece that found no place at first: more angles, more places. */
export const SECOND_EFFORT: Effort = {
  ...FIRST_EFFORT,
  mostRotations: SECOND_ANGLES,
  mostCandidates: SECOND_CANDIDATES,
};

/** An undemanding piece is laid so much farther on to leave good leather to those that need it. */
const GOOD_LEATHER_MM = 100;

/** The best place found for a copy on one sheet, valid for now; undefined if none was found. */
export function findPlace(layout: Layout, copy: Copy, sheet: number, effort: Effort): Place | undefined {
  const state = layout.sheets[sheet]!;
  const pair = effort.withoutPartner === true ? undefined : pairLimitFor(layout, copy);
  const context: RotationContext = {
    prepared: copy.prepared,
    frame: state.space.frame,
    cache: layout.fields[sheet]!,
    pair,
  };
  const rotations = firstRotations(context, effort.mostRotations);
  const taste: ScanTaste = {
    behind: effort.behind,
    goodLeatherMm: copy.prepared.needs.some(({ needClass }) => needClass === state.space.strictest)
      ? 0
      : GOOD_LEATHER_MM,
    accepts: quickLook(copy.prepared, state.space.sheet, state.space.frame, context.cache, pair),
    isPassing: pair !== undefined,
  };
  const variants = rotations.map((rotation) => variantOf(layout, copy.prepared, sheet, rotation));
  // Grown a little at first, for few false proposals; then grown to be safe; at last shrunk, for exact fits.
  const looks: readonly ((variant: Variant) => ScanRuns)[] = [
    (variant) => variant.runs,
    (variant) => grownRunsOf(variant, layout.pitch),
    (variant) => shrunkRunsOf(variant, layout.pitch),
  ];
  for (const look of effort.exactFits ? looks : looks.slice(0, 2)) {
    const proposals = variants.flatMap((variant) => scanPlaces(state, variant, taste, look(variant)));
    const howExact = look === looks[2] ? 'thorough' : 'quick';
    const place = bestExact(layout, state, proposals, effort, pair, howExact);
    if (place !== undefined) return place;
  }
  return undefined;
}

/** How much better than promised a place may turn out when it is made exact, in pitches. */
const PROMISE_PITCHES = 2;

function bestExact(
  layout: Layout,
  state: SheetState,
  proposals: Proposal[],
  effort: Effort,
  pair: PairLimit | undefined,
  howExact: PlaceEffort,
): Place | undefined {
  proposals.sort((a, b) => a.score - b.score);
  const { lattice, frame } = state.space;
  let best: Place | undefined;
  let bestScore = Infinity;
  let tried = 0;
  const mostTried = 4 * effort.mostCandidates;
  let proven = 0;
  for (const { variant, column, row, score } of proposals) {
    if (proven >= effort.mostCandidates || tried >= mostTried) break;
    if (score > bestScore + PROMISE_PITCHES * lattice.pitch) break;
    tried++;
    const u = lattice.minX + column * lattice.pitch;
    const v = lattice.minY + row * lattice.pitch;
    const place = ruledPlace(layout, state, variant, u, v, pair, howExact);
    if (place === undefined) continue;
    proven++;
    const gained = u - toU(frame, place.x, place.y);
    if (score - gained < bestScore) {
      best = place;
      bestScore = score - gained;
    }
  }
  return best;
}

/** The exact place near (u, v), with the piece turned to suit the local direction if need be. */
function ruledPlace(
  layout: Layout,
  state: SheetState,
  variant: Variant,
  u: number,
  v: number,
  pair: PairLimit | undefined,
  howExact: PlaceEffort,
): Place | undefined {
  const { sheet, index } = state.space;
  const place = exactPlace(state, variant, u, v, howExact);
  if (place === undefined || rulesHold(place, sheet, pair)) return place;
  const deg = fittedRotationDeg(place, sheet);
  if (deg !== undefined) {
    const turned = exactPlace(state, variantOf(layout, variant.prepared, index, deg), u, v);
    if (turned !== undefined && rulesHold(turned, sheet, pair)) return turned;
  }
  // Direction, thickness or the partner's distance may be right where it was looked for but not where it slid to.
  const start = unsettledPlace(state, variant, u, v);
  return start !== undefined && rulesHold(start, sheet, pair) ? start : undefined;
}
