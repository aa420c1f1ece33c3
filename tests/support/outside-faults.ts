/**
 * Faults of a layout as jsts 2.12.1 (the JTS Topology Suite in JavaScript) finds them: overlaps, distances, and
 * leather on which a piece may not lie. Nothing of the exact check takes part, nor the project's own booleans and
 * distances; how a placement turns and moves a piece is written in the judge once more.
 */
import { CHECK_FORGIVES_MM, laneRegion, regionBox } from '@hidebound/geometry';
import type {
  Box,
  CopyRef,
  Item,
  Lane,
  Need,
  NestAnswer,
  NestProblem,
  Placement,
  Region,
  RoughCut,
  RuleName,
  Sheet,
} from '@hidebound/geometry';
import type { Judge, Shape } from '../../packages/geometry/src/check/test-judge.js';
import { joinedZones } from './joined-zones.js';

/** What is wrong, and with which copies (item set/copy). */
export interface OutsideFault {
  readonly rule: RuleName;
  readonly at: string;
  readonly other: string;
}

/** What the judge's own overlays leave behind where shapes only touch, mm². */
const NO_AREA_MM2 = 1e-6;

/** What is forgiven of a distance, and a breath for the judge's own arithmetic, mm. */
const FORGIVEN_MM = CHECK_FORGIVES_MM + 1e-6;

interface Lying {
  readonly name: string;
  readonly item: Item;
  readonly placement: Placement;
  readonly shape: Shape;
  /** Drawn in by what is forgiven. */
  readonly core: Shape;
  readonly reach: Box;
}

/** Every fault that the judge finds in the layout, but for rules that were accepted by hand. */
export function outsideFaults(
  judge: Judge,
  problem: NestProblem,
  answer: NestAnswer,
): readonly OutsideFault[] {
  const accepted = new Set(
    problem.fixed.flatMap((fixed) => fixed.accepted.map((rule) => `${rule} ${nameOf(fixed)}`)),
  );
  const faults = problem.sheets.flatMap((sheet) => {
    const lying = lyingOn(judge, sheet, problem, answer);
    return [
      ...gapFaults(judge, lying, problem, answer.lanes),
      ...lying.flatMap((one) => sheetFaults(judge, one, sheet, problem)),
      ...lying.flatMap((one) => leatherFaults(judge, one, sheet)),
      ...laneFaults(judge, lying, sheet, answer.lanes),
      ...blockFaults(judge, lying, sheet, answer.roughCuts),
    ];
  });
  return faults.filter(
    ({ rule, at, other }) => !accepted.has(`${rule} ${at}`) && !accepted.has(`${rule} ${other}`),
  );
}

export function nameOf({ item, set, copy }: CopyRef): string {
  return `${item} ${set}/${copy}`;
}

function lyingOn(judge: Judge, sheet: Sheet, { items }: NestProblem, { placements }: NestAnswer): Lying[] {
  return placements
    .filter((placement) => placement.sheet === sheet.id)
    .map((placement) => {
      const item = items.find(({ id }) => id === placement.item)!;
      const shape = judge.shapeOf(item.region, placement);
      const core = judge.grow(shape, -CHECK_FORGIVES_MM);
      return { name: nameOf(placement), item, placement, shape, core, reach: reachOf(item, placement) };
    });
}

/** A box that holds the piece however it is turned: only tells what needs no look. */
function reachOf({ region }: Item, { x, y }: Placement): Box {
  const { minX, minY, maxX, maxY } = regionBox(region);
  const radius = Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY));
  return { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
}

function areFarther(a: Box, b: Box, by: number): boolean {
  return a.minX - by > b.maxX || b.minX - by > a.maxX || a.minY - by > b.maxY || b.minY - by > a.maxY;
}

function gapFaults(
  judge: Judge,
  lying: readonly Lying[],
  { distances }: NestProblem,
  lanes: readonly Lane[],
): OutsideFault[] {
  const faults: OutsideFault[] = [];
  lying.forEach((one, i) => {
    for (const other of lying.slice(i + 1)) {
      const between = one.item.group === other.item.group ? 0 : (distances.betweenGroups ?? 0);
      const apart = Math.max(distances.gap, between);
      const required = sharedKerf(lanes, one, other) ?? apart;
      if (areFarther(one.reach, other.reach, required) || keepsOff(judge, one, other.shape, required))
        continue;
      faults.push({ rule: 'gap', at: one.name, other: other.name });
    }
  });
  return faults;
}

/** Straps in one row or in rows side by side keep the lane's kerf. */
function sharedKerf(lanes: readonly Lane[], one: Lying, other: Lying): number | undefined {
  for (const { rows, kerfMm } of lanes) {
    const rowOf = ({ name }: Lying): number =>
      rows.findIndex(({ straps }) => straps.some((strap) => nameOf(strap) === name));
    const [a, b] = [rowOf(one), rowOf(other)];
    if (a >= 0 && b >= 0 && Math.abs(a - b) <= 1) return kerfMm;
  }
  return undefined;
}

/** Nothing but its own straps reaches into the rectangle of a lane. */
function laneFaults(
  judge: Judge,
  lying: readonly Lying[],
  sheet: Sheet,
  lanes: readonly Lane[],
): OutsideFault[] {
  return lanes
    .filter((lane) => lane.sheet === sheet.id)
    .flatMap((lane) => {
      const own = new Set(lane.rows.flatMap(({ straps }) => straps.map(nameOf)));
      const shape = judge.shapeOf(laneRegion(lane));
      return lying
        .filter(({ name, core }) => !own.has(name) && judge.intersectionArea(core, shape) > NO_AREA_MM2)
        .map(({ name }) => ({ rule: 'lane' as const, at: name, other: lane.id }));
    });
}

/** Where nothing is required they may touch, and overlap by what rounding does. */
function keepsOff(judge: Judge, one: Lying, other: Shape, required: number): boolean {
  if (required > CHECK_FORGIVES_MM) return judge.distance(one.shape, other) >= required - FORGIVEN_MM;
  return judge.intersectionArea(one.core, other) <= NO_AREA_MM2;
}

function sheetFaults(judge: Judge, one: Lying, sheet: Sheet, { distances }: NestProblem): OutsideFault[] {
  const faults: OutsideFault[] = [];
  const hide = judge.shapeOf(sheet.region);
  const isWithin = judge.differenceArea(one.core, hide) <= NO_AREA_MM2;
  const isNear =
    distances.edge > CHECK_FORGIVES_MM &&
    judge.distanceToBoundary(one.shape, hide) < distances.edge - FORGIVEN_MM;
  if (!isWithin || isNear) faults.push({ rule: 'edge', at: one.name, other: sheet.id });
  for (const { id, areas, isVoid, uncertaintyMm } of sheet.qualities) {
    const required = distances.void + uncertaintyMm;
    const isClear = (area: Region): boolean =>
      areFarther(one.reach, regionBox(area), required) || keepsOff(judge, one, judge.shapeOf(area), required);
    if (isVoid && !areas.every(isClear)) faults.push({ rule: 'void', at: one.name, other: id });
  }
  return faults;
}

/** The piece as a whole for its own need, and each part of it (its face, say) for the part's. */
function leatherFaults(judge: Judge, one: Lying, sheet: Sheet): OutsideFault[] {
  const parts: (readonly [Shape, Need])[] = [[one.core, one.item.need]];
  for (const { areas, need } of one.item.parts) {
    for (const area of areas)
      parts.push([judge.grow(judge.shapeOf(area, one.placement), -CHECK_FORGIVES_MM), need]);
  }
  return parts.flatMap(([part, need]) =>
    needFaults(judge, part, need, one, sheet).map(({ rule, other }) => ({ rule, at: one.name, other })),
  );
}

function needFaults(
  judge: Judge,
  part: Shape,
  need: Need,
  { reach }: Lying,
  sheet: Sheet,
): Omit<OutsideFault, 'at'>[] {
  const faults: Omit<OutsideFault, 'at'>[] = [];
  for (const { id, areas, grade, weak } of sheet.qualities) {
    const rules: RuleName[] = [];
    if (grade > need.maxGrade) rules.push('looks');
    if (need.strong && weak) rules.push('strength');
    if (rules.length === 0) continue;
    const isTouched = areas.some(
      (area) =>
        !areFarther(reach, regionBox(area), 0) &&
        judge.intersectionArea(part, judge.shapeOf(area)) > NO_AREA_MM2,
    );
    if (isTouched) faults.push(...rules.map((rule) => ({ rule, other: id })));
  }
  if (need.zones !== undefined && !liesInZones(judge, part, need.zones, sheet))
    faults.push({ rule: 'zone', other: need.zones.join(', ') });
  return faults;
}

function liesInZones(judge: Judge, part: Shape, names: readonly string[], sheet: Sheet): boolean {
  const zones = joinedZones(judge, sheet, names);
  return zones !== undefined && judge.differenceArea(part, zones) <= NO_AREA_MM2;
}

/** Rough cuts lie within the hide's outline and apart, hold their members with the margin, and nothing else. */
function blockFaults(
  judge: Judge,
  lying: readonly Lying[],
  sheet: Sheet,
  roughCuts: readonly RoughCut[],
): OutsideFault[] {
  const outline = judge.shapeOf({ outer: sheet.region.outer, openings: [] });
  const blocks = roughCuts
    .filter((cut) => cut.sheet === sheet.id)
    .map((cut) => {
      const shape = judge.shapeOf({ outer: cut.outline, openings: [] });
      return { cut, shape, core: judge.grow(shape, -CHECK_FORGIVES_MM) };
    });
  return blocks.flatMap(({ cut, shape, core }, i) => {
    const members = new Set(cut.members.map(nameOf));
    const isAlone = blocks
      .slice(i + 1)
      .every((other) => judge.intersectionArea(core, other.shape) <= NO_AREA_MM2);
    const isWithin = judge.differenceArea(core, outline) <= NO_AREA_MM2;
    const wrong = lying.filter((one) => {
      if (!members.has(one.name)) return judge.intersectionArea(one.core, shape) > NO_AREA_MM2;
      const margin = Math.max(cut.marginMm, one.item.roughMargin ?? 0);
      if (judge.differenceArea(one.core, shape) > NO_AREA_MM2) return true;
      return judge.distanceToBoundary(one.shape, shape) < margin - FORGIVEN_MM;
    });
    return [...(isAlone && isWithin ? [] : [cut.id]), ...wrong.map(({ name }) => name)].map((at) => ({
      rule: 'rough-cut' as const,
      at,
      other: cut.id,
    }));
  });
}
