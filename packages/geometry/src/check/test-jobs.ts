/** Small jobs for the tests of the check: items, sheets and answers with few words, and whole jobs turned and moved. */
import type {
  CopyRef,
  FixedPlacement,
  Item,
  NestAnswer,
  NestProblem,
  Placement,
  QualityRegion,
  Sheet,
} from '../types/problem.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { cosSinOfDeg } from './turn.js';

export interface Job {
  readonly problem: NestProblem;
  readonly answer: NestAnswer;
}

export interface JobParts {
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  readonly sheets?: readonly Sheet[];
  readonly problem?: Partial<NestProblem>;
  readonly answer?: Partial<NestAnswer>;
}

/** Corners clockwise as seen, so that the signed area is positive. */
export function rectangleRing(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

export function rectangle(minX: number, minY: number, maxX: number, maxY: number): Region {
  return { outer: rectangleRing(minX, minY, maxX, maxY), openings: [] };
}

/** A region with a rectangular opening. */
export function frame(outer: Region, opening: Region): Region {
  return { outer: outer.outer, openings: [[...opening.outer].reverse()] };
}

export function polygon(...corners: readonly (readonly [number, number])[]): Region {
  return { outer: corners.map(([x, y]) => ({ x, y })), openings: [] };
}

export function makeItem(id: string, region: Region, change: Partial<Item> = {}): Item {
  return {
    id,
    region,
    need: { maxGrade: 9, strong: false },
    parts: [],
    angleRule: { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 0, modulo: 360 },
    value: 1,
    priority: 0,
    sheets: ['hide'],
    isFace: true,
    ...change,
  };
}

export function makeSheet(change: Partial<Sheet> = {}): Sheet {
  return {
    id: 'hide',
    region: rectangle(0, 0, 1000, 600),
    qualities: [],
    lot: 'lot 1',
    useFrom: { x: 1, y: 0 },
    ...change,
  };
}

export function makeQuality(id: string, area: Region, change: Partial<QualityRegion> = {}): QualityRegion {
  return { id, areas: [area], grade: 0, weak: false, isVoid: false, uncertaintyMm: 0, ...change };
}

export function place(
  item: string,
  x: number,
  y: number,
  rotationDeg = 0,
  change: Partial<Placement> = {},
): Placement {
  return { item, set: 1, copy: 1, sheet: 'hide', x, y, rotationDeg, ...change };
}

export function copy(item: string, set = 1, number = 1): CopyRef {
  return { item, set, copy: number };
}

/** A job whose demand is just what is placed, unless the parts say otherwise. */
export function makeJob({ items, placements, sheets, problem, answer }: JobParts): Job {
  const most = (id: string): number =>
    placements.reduce((count, one) => (one.item === id ? Math.max(count, one.copy) : count), 0);
  return {
    problem: {
      items,
      setKinds: [
        {
          id: 'goods',
          sets: placements.reduce((count, one) => Math.max(count, one.set), 0),
          members: items.map(({ id }) => ({ item: id, count: most(id) })),
          value: 1,
          priority: 0,
          keep: 'nothing',
          beside: [],
        },
      ],
      sheets: sheets ?? [makeSheet()],
      fixed: [],
      distances: { gap: 0, edge: 0, void: 0 },
      objective: { mode: 'placeAll', keepMm: [300, 300] },
      budget: { seed: 1, streams: 1 },
      ...problem,
    },
    answer: { placements, lanes: [], roughCuts: [], unplaced: [], joins: 0, ...answer },
  };
}

/** The whole job turned clockwise about (0, 0), then moved. Items keep their own frames. */
export function turnJob({ problem, answer }: Job, angleDeg: number, moveX = 0, moveY = 0): Job {
  const [cos, sin] = cosSinOfDeg(angleDeg);
  const point = ({ x, y }: Point): Point => ({
    x: cos * x - sin * y + moveX,
    y: sin * x + cos * y + moveY,
  });
  const ring = (corners: readonly Point[]): Ring => corners.map(point);
  const region = ({ outer, openings }: Region): Region => ({
    outer: ring(outer),
    openings: openings.map(ring),
  });
  const placement = <T extends Placement>(one: T): T => ({
    ...one,
    ...point(one),
    rotationDeg: one.rotationDeg + angleDeg,
  });
  return {
    problem: {
      ...problem,
      items: problem.items.map((item) => turnSheetRule(item, angleDeg)),
      sheets: problem.sheets.map((sheet) => turnSheet(sheet, point, region)),
      fixed: problem.fixed.map((one): FixedPlacement => placement(one)),
    },
    answer: {
      ...answer,
      placements: answer.placements.map(placement),
      lanes: answer.lanes.map((lane) => ({ ...lane, from: point(lane.from), to: point(lane.to) })),
      roughCuts: answer.roughCuts.map((cut) => ({ ...cut, outline: ring(cut.outline) })),
    },
  };
}

function turnSheetRule(item: Item, angleDeg: number): Item {
  const { angleRule } = item;
  if (angleRule.frame !== 'sheet') return item;
  const targetsDeg = angleRule.targetsDeg.map((target) => target + angleDeg);
  return { ...item, angleRule: { ...angleRule, targetsDeg } };
}

function turnSheet(sheet: Sheet, point: (p: Point) => Point, region: (r: Region) => Region): Sheet {
  const { direction, thickness } = sheet;
  return {
    ...sheet,
    region: region(sheet.region),
    qualities: sheet.qualities.map((quality) => ({ ...quality, areas: quality.areas.map(region) })),
    ...(direction === undefined
      ? {}
      : {
          direction: {
            ...(direction.axis === undefined ? {} : { axis: direction.axis.map(point) }),
            strokes: direction.strokes.map((stroke) => stroke.map(point)),
          },
        }),
    ...(thickness === undefined
      ? {}
      : {
          thickness: {
            ...thickness,
            readings: thickness.readings.map((reading) => ({ ...reading, at: point(reading.at) })),
          },
        }),
  };
}
