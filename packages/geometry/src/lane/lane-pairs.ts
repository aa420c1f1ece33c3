import { turnDeg } from '../nest/angle.js';
import { refKey } from '../nest/demand.js';
import { axisDistanceAt, directionDegAt } from '../nest/field.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { regionCentroid } from '../shape/ring.js';
import type { CopyRef, Item, Lane, NestProblem, PairRule, Placement } from '../types/problem.js';
import type { LaneCopy } from './lane-search.js';

/** Placements after copies were given to places anew, and the lanes that name them. */
export interface AssignedPlacements {
  readonly all: readonly Placement[];
  rename(lanes: readonly Lane[]): readonly Lane[];
}

/**
 * Copies of one item are alike: the plain and the mirrored ones of pairs are given to places so that both of a pair
 * lie alike far from the backbone. Copies that are bound to sheets of their own stay where they are.
 */
export function assignPairs(
  problem: NestProblem,
  placements: readonly Placement[],
  copies: readonly LaneCopy[],
): AssignedPlacements {
  const bound = new Set(copies.filter(({ sheets }) => sheets !== undefined).map(refKey));
  const renamed = new Map<string, CopyRef>();
  for (const mirrored of problem.items) {
    const plain = problem.items.find(({ id }) => id === mirrored.mirrorOf);
    if (plain === undefined || mirrored.pair === undefined) continue;
    const ofItem = (item: Item): Placement[] =>
      placements.filter((placement) => placement.item === item.id && !bound.has(refKey(placement)));
    const ones = byAxisDistance(problem, plain, ofItem(plain));
    const others = byAxisDistance(problem, mirrored, ofItem(mirrored));
    const refs = pairedRefs(ofItem(plain), ofItem(mirrored));
    ones.forEach((placement, i) => renamed.set(refKey(placement), refs.plain[i]!));
    others.forEach((placement, i) => renamed.set(refKey(placement), refs.mirrored[i]!));
  }
  const rename = <T extends CopyRef>(one: T): T => {
    const ref = renamed.get(refKey(one));
    return ref === undefined ? one : { ...one, set: ref.set, copy: ref.copy };
  };
  return {
    all: placements.map(rename),
    rename: (lanes) =>
      lanes.map((lane) => ({
        ...lane,
        rows: lane.rows.map((row) => ({ ...row, straps: row.straps.map(rename) })),
      })),
  };
}

/** Copies of both items in an order in which partners come first, alike. */
function pairedRefs(
  plain: readonly CopyRef[],
  mirrored: readonly CopyRef[],
): { readonly plain: readonly CopyRef[]; readonly mirrored: readonly CopyRef[] } {
  const number = ({ set, copy }: CopyRef): string => `${set}/${copy}`;
  const sort = (own: readonly CopyRef[], others: readonly CopyRef[]): CopyRef[] => {
    const there = new Set(others.map(number));
    const inOrder = [...own].sort((a, b) => a.set - b.set || a.copy - b.copy);
    return [
      ...inOrder.filter((one) => there.has(number(one))),
      ...inOrder.filter((one) => !there.has(number(one))),
    ];
  };
  return { plain: sort(plain, mirrored), mirrored: sort(mirrored, plain) };
}

function byAxisDistance(problem: NestProblem, item: Item, placements: readonly Placement[]): Placement[] {
  const known = placements.map((placement, i) => ({
    placement,
    i,
    distance: situation(problem, item, placement).distance,
  }));
  known.sort((a, b) => (a.distance || 0) - (b.distance || 0) || a.i - b.i);
  return known.map(({ placement }) => placement);
}

/** Copies of pairs, one of them laid now, that don't lie alike. Both are told, unless one lay there already. */
export function brokenPairs(
  problem: NestProblem,
  placements: readonly Placement[],
  lying: readonly Placement[],
): CopyRef[] {
  const all = new Map([...lying, ...placements].map((placement) => [refKey(placement), placement]));
  const now = new Set(placements.map(refKey));
  const broken: CopyRef[] = [];
  for (const mirrored of problem.items) {
    const plain = problem.items.find(({ id }) => id === mirrored.mirrorOf);
    if (plain === undefined || mirrored.pair === undefined) continue;
    for (const placement of all.values()) {
      if (placement.item !== mirrored.id) continue;
      const partner = all.get(refKey({ ...placement, item: plain.id }));
      if (partner === undefined) continue;
      const one = situation(problem, mirrored, placement);
      if (liesAlike(mirrored.pair, one, situation(problem, plain, partner))) continue;
      broken.push(...[placement, partner].filter((copy) => now.has(refKey(copy))));
    }
  }
  return broken;
}

/** Angle of the arrow to the local direction (NaN: unknown), and distance to the axis (NaN: none). */
interface Situation {
  readonly angleDeg: number;
  readonly distance: number;
}

function situation(problem: NestProblem, item: Item, { sheet, x, y, rotationDeg }: Placement): Situation {
  const field = problem.sheets.find(({ id }) => id === sheet)?.direction;
  const centre = regionCentroid(item.region);
  const { sin, cos } = sinCosDeg(rotationDeg);
  const atX = x + centre.x * cos - centre.y * sin;
  const atY = y + centre.x * sin + centre.y * cos;
  return {
    angleDeg: item.angleRule.arrowDeg + rotationDeg - directionDegAt(field, atX, atY),
    distance: axisDistanceAt(field, atX, atY),
  };
}

function liesAlike(rule: PairRule, one: Situation, other: Situation): boolean {
  if (!(Math.abs(turnDeg(one.angleDeg, -other.angleDeg, 180)) <= rule.toleranceDeg)) return false;
  if (Number.isNaN(one.distance) !== Number.isNaN(other.distance)) return false;
  return Number.isNaN(one.distance) || Math.abs(one.distance - other.distance) <= rule.distanceMm;
}
