import type { Item, NestProblem, Placement, SetKind, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';

/** Small problems by hand, for tests. */

export function rectangle(x0: number, y0: number, x1: number, y1: number): Region {
  return {
    outer: [
      { x: x0, y: y0 },
      { x: x1, y: y0 },
      { x: x1, y: y1 },
      { x: x0, y: y1 },
    ],
    openings: [],
  };
}

export function testSheet(id: string, region: Region, more: Partial<Sheet> = {}): Sheet {
  return { id, region, qualities: [], lot: 'lot', useFrom: { x: 1, y: 0 }, ...more };
}

export function testItem(id: string, region: Region, more: Partial<Item> = {}): Item {
  return {
    id,
    region,
    need: { maxGrade: 0, strong: false },
    parts: [],
    angleRule: { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 0, modulo: 360 },
    value: 1,
    priority: 0,
    sheets: ['sheet'],
    isFace: false,
    ...more,
  };
}

export function testKind(members: Readonly<Record<string, number>>, more: Partial<SetKind> = {}): SetKind {
  return {
    id: 'kind',
    sets: 1,
    members: Object.entries(members).map(([item, count]) => ({ item, count })),
    value: 1,
    priority: 0,
    keep: 'nothing',
    beside: [],
    ...more,
  };
}

export function testProblem(more: Partial<NestProblem>): NestProblem {
  return {
    items: [],
    setKinds: [],
    sheets: [testSheet('sheet', rectangle(0, 0, 100, 100))],
    fixed: [],
    distances: { gap: 0, edge: 0, void: 0 },
    objective: { mode: 'placeAll', keepMm: [20, 20] },
    budget: { seed: 1, streams: 1, joins: 0 },
    ...more,
  };
}

export function placement(
  item: string,
  copy: number,
  x: number,
  y: number,
  more: Partial<Placement> = {},
): Placement {
  return { item, set: 1, copy, sheet: 'sheet', x, y, rotationDeg: 0, ...more };
}
