import { turnDeg } from '../nest/angle.js';
import { directionDegAt, isDirected, thicknessRangeAt } from '../nest/field.js';
import { toX, toY } from '../nest/frame.js';
import { angleExcessDeg } from '../nest/rules.js';
import { CHECK_FORGIVES_DEG } from '../tolerance.js';
import type { AngleRule, Sheet, ThicknessNeed } from '../types/problem.js';
import { LOOK_FORGIVES_DEG, LOOK_FORGIVES_MM, LOOK_PITCH_MM } from './constants.js';
import type { LaneSpace } from './lane-space.js';
import type { StrapKind, StrapShape } from './strap-kind.js';

/** Room for rounding a rotation to six decimals: a quarter of what the check forgives. */
const ROUNDING_DEG = CHECK_FORGIVES_DEG / 4;

/** Direction and thickness at places of a sheet, remembered on a coarse lattice; it grows as it is asked. */
export interface FieldLook {
  readonly sheet: Sheet;
  readonly places: Map<number, PlaceLook>;
}

interface PlaceLook {
  /** NaN where it is unknown. */
  readonly directionDeg: number;
  readonly thinnest: number;
  readonly thickest: number;
}

export function createFieldLook(sheet: Sheet): FieldLook {
  return { sheet, places: new Map() };
}

/** True if every rule about direction and thickness holds for a strap whose origin lies at (u, v) of the lane's frame. */
export function rulesHoldAt(
  look: FieldLook,
  space: LaneSpace,
  kind: StrapKind,
  shape: StrapShape,
  u: number,
  v: number,
): boolean {
  const { item } = kind.prepared;
  const rotation = space.angleDeg + shape.turnDeg;
  const { proofPoints } = shape;
  const isEverywhere = isFreeOfPlace(item.angleRule) && item.thickness === undefined;
  if (item.angleRule.frame === 'sheet') {
    if (angleExcessDeg(item.angleRule, item.angleRule.arrowDeg + rotation) > ROUNDING_DEG) return false;
  }
  if (isEverywhere && kind.lane.firmEnd === 0) return true;
  for (const isQuick of [true, false]) {
    const points = isEverywhere ? 2 : proofPoints.length;
    for (let i = 0; i < points; i += 2) {
      const x = toX(space.frame, u + proofPoints[i]!, v + proofPoints[i + 1]!);
      const y = toY(space.frame, u + proofPoints[i]!, v + proofPoints[i + 1]!);
      const place = isQuick ? roughPlace(look, x, y) : exactPlace(look.sheet, x, y);
      if (!holdsAt(look.sheet, kind, rotation, place, isQuick)) return false;
      if (i === 0 && !firmEndHolds(look.sheet, kind, rotation, place.directionDeg, isQuick)) return false;
    }
  }
  return true;
}

function isFreeOfPlace(rule: AngleRule): boolean {
  return rule.frame !== 'local';
}

function holdsAt(
  sheet: Sheet,
  kind: StrapKind,
  rotationDeg: number,
  place: PlaceLook,
  isQuick: boolean,
): boolean {
  const { angleRule, thickness } = kind.prepared.item;
  if (angleRule.frame === 'local') {
    if (Number.isNaN(place.directionDeg)) return false;
    if (angleRule.modulo === 360 && !isDirected(sheet.direction)) return false;
    const excess = angleExcessDeg(angleRule, angleRule.arrowDeg + rotationDeg - place.directionDeg);
    if (excess > (isQuick ? LOOK_FORGIVES_DEG : ROUNDING_DEG)) return false;
  }
  if (thickness === undefined || sheet.thickness === undefined) return true;
  return thicknessHolds(thickness, place, isQuick ? LOOK_FORGIVES_MM : 0);
}

function thicknessHolds(need: ThicknessNeed, place: PlaceLook, forgivenMm: number): boolean {
  if (place.thinnest < need.minMm - forgivenMm) return false;
  return need.tooThick === 'skive' || place.thickest <= need.maxMm + forgivenMm;
}

/** The hole end points to the tail; without an axis nobody knows where that is. */
function firmEndHolds(
  sheet: Sheet,
  kind: StrapKind,
  rotationDeg: number,
  directionDeg: number,
  isQuick: boolean,
): boolean {
  const { firmEnd } = kind.lane;
  if (firmEnd === 0 || !isDirected(sheet.direction) || Number.isNaN(directionDeg)) return true;
  const endDeg = rotationDeg + (firmEnd === 1 ? 0 : 180);
  return Math.abs(turnDeg(endDeg, directionDeg, 360)) <= 90 + (isQuick ? LOOK_FORGIVES_DEG : ROUNDING_DEG);
}

function exactPlace(sheet: Sheet, x: number, y: number): PlaceLook {
  const [thinnest, thickest] =
    sheet.thickness === undefined ? [0, 0] : thicknessRangeAt(sheet.thickness, x, y);
  return { directionDeg: directionDegAt(sheet.direction, x, y), thinnest, thickest };
}

/** More rows than any sheet has on that lattice, so that a place has one number. */
const LOOK_ROWS = 16_777_216;

function roughPlace(look: FieldLook, x: number, y: number): PlaceLook {
  const column = Math.round(x / LOOK_PITCH_MM);
  const row = Math.round(y / LOOK_PITCH_MM);
  const key = column * LOOK_ROWS + row;
  const known = look.places.get(key);
  if (known !== undefined) return known;
  const place = exactPlace(look.sheet, column * LOOK_PITCH_MM, row * LOOK_PITCH_MM);
  look.places.set(key, place);
  return place;
}
