import type {
  CopyRef,
  Item,
  Need,
  NestAnswer,
  NestProblem,
  Placement,
  QualityRegion,
  Sheet,
} from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';
import { areaOfRegion, placePoint } from './area.js';
import type { Area, Placing } from './area.js';
import { centroidOfRegion } from './centroid.js';
import { proofPointsOfRegion } from './proof-points.js';
import { placingOf } from './turn.js';
import { copyKey, copyRef } from './violation.js';

/** One copy where it lies. */
export interface Placed {
  readonly copy: CopyRef;
  readonly placement: Placement;
  readonly item: Item;
  readonly placing: Placing;
  readonly area: Area;
  readonly sheet: SheetArea;
}

/** A sheet as the check measures it. */
export interface SheetArea {
  readonly sheet: Sheet;
  readonly area: Area;
  readonly qualities: readonly QualityArea[];
}

export interface QualityArea {
  readonly quality: QualityRegion;
  readonly areas: readonly Area[];
}

/** A need, where it lies: the item's own over all of it, a part's over its areas. */
export interface PlacedNeed {
  /** Name of the part; absent: the whole item. */
  readonly part?: string;
  readonly need: Need;
  readonly areas: readonly Area[];
}

/** All that the rules read: the problem, the answer, and what lies where. */
export interface CheckContext {
  readonly problem: NestProblem;
  readonly answer: NestAnswer;
  readonly items: ReadonlyMap<string, Item>;
  readonly sheets: ReadonlyMap<string, SheetArea>;
  /** In the order of the answer. */
  readonly placed: readonly Placed[];
  /** Of a copy that is placed twice, the first. */
  readonly byCopy: ReadonlyMap<string, Placed>;
  readonly bySheet: ReadonlyMap<string, readonly Placed[]>;
  /** What a placed copy needs, and where. */
  needsOf(placed: Placed): readonly PlacedNeed[];
  /** Points of the item's own frame at which direction and thickness are proven. */
  proofPoints(item: Item): readonly Point[];
}

/** The context of a sane answer: its placements have finite numbers and known ids. */
export function buildContext(problem: NestProblem, answer: NestAnswer): CheckContext {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const sheets = new Map(problem.sheets.map((sheet) => [sheet.id, buildSheet(sheet)]));
  const placed = answer.placements.map((placement) => place(placement, items, sheets));
  const byCopy = new Map<string, Placed>();
  const bySheet = new Map<string, Placed[]>();
  for (const one of placed) {
    const key = copyKey(one.copy);
    if (!byCopy.has(key)) byCopy.set(key, one);
    const others = bySheet.get(one.placement.sheet);
    if (others === undefined) bySheet.set(one.placement.sheet, [one]);
    else others.push(one);
  }
  const needs = new Map<Placed, readonly PlacedNeed[]>();
  const needsOf = (one: Placed): readonly PlacedNeed[] => {
    const known = needs.get(one) ?? placedNeeds(one);
    needs.set(one, known);
    return known;
  };
  const points = new Map<string, readonly Point[]>();
  const proofPoints = (item: Item): readonly Point[] => {
    const known = points.get(item.id) ?? proofPointsOfRegion(item.region);
    points.set(item.id, known);
    return known;
  };
  return { problem, answer, items, sheets, placed, byCopy, bySheet, needsOf, proofPoints };
}

/** Where the centroid of a placed copy lies on its sheet. */
export function centroidOf(placed: Placed): Point {
  const own = centroidOfRegion(placed.item.region);
  return placePoint(own.x, own.y, placed.placing);
}

/**
 * All needs of a placed item. Each is proven over the whole of its own area, the item's everywhere, so that
 * where areas overlap the strictest need holds.
 */
function placedNeeds(placed: Placed): readonly PlacedNeed[] {
  return [
    { need: placed.item.need, areas: [placed.area] },
    ...placed.item.parts.map((part) => ({
      part: part.name,
      need: part.need,
      areas: part.areas.map((region) => areaOfRegion(region, placed.placing)),
    })),
  ];
}

function place(
  placement: Placement,
  items: ReadonlyMap<string, Item>,
  sheets: ReadonlyMap<string, SheetArea>,
): Placed {
  const item = items.get(placement.item)!;
  const placing = placingOf(placement);
  return {
    copy: copyRef(placement),
    placement,
    item,
    placing,
    area: areaOfRegion(item.region, placing),
    sheet: sheets.get(placement.sheet)!,
  };
}

function buildSheet(sheet: Sheet): SheetArea {
  const toAreas = (areas: readonly Region[]): readonly Area[] => areas.map((region) => areaOfRegion(region));
  return {
    sheet,
    area: areaOfRegion(sheet.region),
    qualities: sheet.qualities.map((quality) => ({ quality, areas: toAreas(quality.areas) })),
  };
}
