import type { UnplacedReason } from '../types/problem.js';
import { exactPlace } from './exact-place.js';
import { isUnfitThickness } from './rules.js';
import type { Layout } from './layout.js';
import { variantOf } from './layout.js';
import type { PreparedItem } from './prepared-item.js';
import { fittedRotationDeg, quickLook, rulesHold } from './rules.js';
import { firstRotations } from './rotations.js';
import { scanPlaces } from './scan.js';
import { buildSheetSpace } from './sheet-space.js';
import type { SheetSpace } from './sheet-space.js';
import { withoutTaken } from './taken-region.js';
import type { SheetState } from './sheet-state.js';
import { createSheetState } from './sheet-state.js';
import { shrunkRunsOf } from './variant.js';

/** Why items that fit nowhere fit nowhere; found once an item, by laying it alone on empty sheets. */
export type Reasons = Map<number, UnplacedReason>;

/** Angles tried for a free item on an empty sheet, and places tried at each of them. */
const ROTATIONS_TRIED = 44;
const PLACES_TRIED = 12;

/** `no-room` if the item fits on an empty sheet; else the first thing that stands in its way. */
export function reasonFor(reasons: Reasons, layout: Layout, prepared: PreparedItem): UnplacedReason {
  const known = reasons.get(prepared.index);
  if (known !== undefined) return known;
  const reason = findReason(layout, prepared);
  reasons.set(prepared.index, reason);
  return reason;
}

function findReason(layout: Layout, prepared: PreparedItem): UnplacedReason {
  const sheets = layout.allowed[prepared.index]!;
  if (sheets.length === 0) return 'no-sheet-allowed';
  const spaces = sheets.map((s) => spaceOfSheet(layout, s));
  const empty = spaces.map((space) => emptyState(layout, space));
  const { thickness } = prepared.item;
  const isUnfit =
    thickness !== undefined && sheets.every((s) => isUnfitThickness(thickness, layout.problem.sheets[s]!));
  if (!isUnfit && empty.some((state) => fits(layout, prepared, state, 'all'))) return 'no-room';
  const bare = spaces.map((space) => emptyState(layout, withoutNeeds(space)));
  if (!bare.some((state) => fits(layout, prepared, state, 'none'))) return 'larger-than-every-sheet';
  if (!empty.some((state) => fits(layout, prepared, state, 'none'))) return 'no-leather-good-enough';
  if (isUnfit) return 'thickness';
  if (empty.some((state) => fits(layout, prepared, state, 'angle'))) return 'thickness';
  if (empty.some((state) => fits(layout, prepared, state, 'thickness'))) {
    return directionIsUnknown(layout, prepared, sheets) ? 'direction-unknown' : 'no-room';
  }
  return 'no-leather-good-enough';
}

function directionIsUnknown(layout: Layout, prepared: PreparedItem, sheets: readonly number[]): boolean {
  const rule = prepared.item.angleRule;
  if (rule.frame !== 'local') return false;
  return sheets.every((s) => {
    const field = layout.problem.sheets[s]!.direction;
    return layout.fields[s]!.directions.length === 0 || (rule.modulo === 360 && field?.axis === undefined);
  });
}

/** Without what was taken of it: that can be given back. */
function spaceOfSheet({ sheets, problem, prepared, pitch }: Layout, index: number): SheetSpace {
  const { space } = sheets[index]!;
  const sheet = withoutTaken(space.sheet);
  return sheet === space.sheet
    ? space
    : buildSheetSpace(sheet, index, problem.distances, prepared.needs, pitch);
}

function emptyState(layout: Layout, space: SheetSpace): SheetState {
  return createSheetState(space, layout.sheets[0]!.gaps, layout.prepared.groups.length);
}

function withoutNeeds(space: SheetSpace): SheetSpace {
  return { ...space, needs: space.needs.map(() => ({ bad: [], zone: undefined, layer: undefined })) };
}

/** Which rules count: all, none, or only the one about angles or about thickness. */
type Counted = 'all' | 'none' | 'angle' | 'thickness';

function fits(layout: Layout, prepared: PreparedItem, state: SheetState, counted: Counted): boolean {
  const { space } = state;
  const subject = subjectTo(prepared, counted);
  const cache = layout.fields[space.index]!;
  const context = { prepared: subject, frame: space.frame, cache, pair: undefined };
  const accepts = quickLook(subject, space.sheet, space.frame, cache, undefined);
  for (const rotation of firstRotations(context, ROTATIONS_TRIED)) {
    const variant = variantOf(layout, prepared, space.index, rotation);
    const looked = { ...variant, prepared: subject };
    const proposals = scanPlaces(
      state,
      looked,
      { behind: 0, goodLeatherMm: 0, accepts, isPassing: true },
      shrunkRunsOf(variant, layout.pitch),
    );
    for (const { column, row } of proposals.slice(0, PLACES_TRIED)) {
      const u = space.lattice.minX + column * space.lattice.pitch;
      const v = space.lattice.minY + row * space.lattice.pitch;
      const place = exactPlace(state, looked, u, v, 'thorough');
      if (place === undefined) continue;
      if (rulesHold(place, space.sheet, undefined)) return true;
      if (fittedRotationDeg(place, space.sheet) !== undefined) return true;
    }
  }
  return false;
}

/** The item freed of the rules that don't count. */
function subjectTo(prepared: PreparedItem, counted: Counted): PreparedItem {
  const { thickness, angleRule, ...rest } = prepared.item;
  const free = { ...angleRule, frame: 'free' as const, targetsDeg: [] };
  const keepsAngle = counted === 'all' || counted === 'angle';
  const keepsThickness = thickness !== undefined && (counted === 'all' || counted === 'thickness');
  const item = {
    ...rest,
    angleRule: keepsAngle ? angleRule : free,
    ...(keepsThickness ? { thickness } : {}),
  };
  return { ...prepared, item };
}
