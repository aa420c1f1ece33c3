import { createRandom } from '../number/random.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { roundCoordinate } from '../point.js';
import { pointWithin, sampleHide } from '../sample/sample-hide.js';
import type { SampleHideOptions } from '../sample/sample-hide.js';
import type { Item, NestAnswer, NestProblem, Placement, Sheet } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';
import type { LaneLayout } from './lay-lanes.js';

/** A strap with a half octagon at its hole end (greater x) and a square one. */
export function strapRegion(lengthMm: number, widthMm: number): Region {
  const x = lengthMm / 2;
  const y = widthMm / 2;
  const outer = [
    { x: -x, y: -y },
    { x: x - y, y: -y },
    { x, y: -y / 2 },
    { x, y: y / 2 },
    { x: x - y, y },
    { x: -x, y },
  ];
  return { outer, openings: [] };
}

export function makeStrap(id: string, lengthMm: number, widthMm: number, changes: Partial<Item> = {}): Item {
  return {
    id,
    region: strapRegion(lengthMm, widthMm),
    need: { maxGrade: 0, strong: true },
    parts: [],
    angleRule: { frame: 'local', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 10, modulo: 180 },
    value: 0,
    priority: 0,
    sheets: ['hide'],
    lane: { widthMm, firmEnd: 1 },
    isFace: true,
    ...changes,
  };
}

export function rectangle(minX: number, minY: number, maxX: number, maxY: number): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** A plain panel with its backbone along x. */
export function panelSheet(lengthMm: number, widthMm: number, changes: Partial<Sheet> = {}): Sheet {
  return {
    id: 'hide',
    region: { outer: rectangle(0, 0, lengthMm, widthMm), openings: [] },
    qualities: [],
    direction: {
      axis: [
        { x: 0, y: 0 },
        { x: lengthMm, y: 0 },
      ],
      strokes: [],
    },
    lot: 'lot',
    useFrom: { x: 1, y: 0 },
    ...changes,
  };
}

export function strapProblem(
  sheets: readonly Sheet[],
  straps: readonly { readonly item: Item; readonly count: number }[],
  changes: Partial<NestProblem> = {},
): NestProblem {
  return {
    items: straps.map(({ item }) => item),
    setKinds: straps.map(({ item, count }) => ({
      id: `kind of ${item.id}`,
      sets: 1,
      members: [{ item: item.id, count }],
      value: 0,
      priority: 0,
      keep: 'nothing',
      beside: [],
    })),
    sheets,
    fixed: [],
    distances: { gap: 3, edge: 5, void: 3 },
    objective: { mode: 'placeAll', keepMm: [200, 100] },
    budget: { seed: 1, streams: 1, joins: 0 },
    ...changes,
  };
}

/** The answer that consists of lanes alone, what was left told. */
export function answerWith(laid: LaneLayout, lying: readonly Placement[] = []): NestAnswer {
  return {
    placements: [
      ...lying.map(({ item, set, copy, sheet, x, y, rotationDeg }) => ({
        item,
        set,
        copy,
        sheet,
        x,
        y,
        rotationDeg,
      })),
      ...laid.placements,
    ],
    lanes: laid.lanes,
    roughCuts: [],
    unplaced: laid.left.map((copy) => ({ ...copy, reason: 'no-room' as const })),
    joins: 0,
  };
}

/** Straps and a hide as they come, the same for the same seed. */
export function randomStraps(seed: number): { readonly problem: NestProblem; readonly kerfMm: number } {
  const random = createRandom(seed);
  const pick = <T>(list: readonly T[]): T => list[random.integer(list.length)]!;
  const options: SampleHideOptions = {
    id: 'hide',
    cut: pick(['hide', 'side', 'bend', 'shoulder', 'panel'] as const),
    corners: 60 + random.integer(120),
    flaws: random.integer(16),
    strokes: random.integer(4),
    ...(random.next() < 0.3 ? { readings: 6 } : {}),
    useFrom: pick([
      { x: 1, y: 0 },
      { x: -1, y: 0 },
      { x: 0, y: 1 },
    ]),
  };
  const hide = sampleHide(seed, options);
  const side = sampleHide(seed + 1, { ...options, id: 'other' });
  const count = 1 + random.integer(4);
  const straps = Array.from({ length: count }, (_, i) => {
    const widthMm = pick([12, 15.875, 25, 38.1, 38]);
    const lengthMm = pick([150, 420.5, 900, 1150]);
    const face = { outer: strapRegion(lengthMm / 2, widthMm * 0.8).outer, openings: [] };
    const item = makeStrap(`strap ${i + 1}`, lengthMm, widthMm, {
      need: { maxGrade: random.integer(3), strong: random.next() < 0.5 },
      parts:
        random.next() < 0.5 ? [{ name: 'face', areas: [face], need: { maxGrade: 0, strong: false } }] : [],
      angleRule: {
        frame: pick(['local', 'local', 'sheet', 'free'] as const),
        arrowDeg: pick([0, 180, 12]),
        targetsDeg: [pick([0, 0, 90])],
        toleranceDeg: pick([2, 8, 15]),
        modulo: pick([180, 360] as const),
      },
      lane: { widthMm, firmEnd: pick([-1, 0, 1] as const) },
      priority: random.integer(2),
      sheets: random.next() < 0.5 ? ['hide', 'other'] : ['other'],
      ...(random.next() < 0.4 ? { group: `group ${1 + random.integer(2)}` } : {}),
      ...(random.next() < 0.2 ? { thickness: { minMm: 1.8, maxMm: 3, tooThick: 'skive' as const } } : {}),
    });
    return { item, count: 1 + random.integer(12) };
  });
  const distances = {
    gap: pick([0, 2, 14]),
    edge: pick([0, 5]),
    void: pick([0, 3]),
    ...(random.next() < 0.3 ? { betweenGroups: 8 } : {}),
  };
  return { problem: strapProblem([hide, side], straps, { distances }), kerfMm: pick([0, 0, 0.2, 1.5]) };
}

/** Round blocks strewn over the hides: things that lie there already, wherever they are. */
export function randomObstacles(
  seed: number,
  problem: NestProblem,
): { readonly withObstacles: NestProblem; readonly lying: readonly Placement[] } {
  const random = createRandom(seed + 7);
  const count = 6;
  const outer = Array.from({ length: 12 }, (_, i) => {
    const { sin, cos } = sinCosDeg(30 * i);
    return { x: 30 * cos, y: 30 * sin };
  });
  const { lane: _, ...strap } = makeStrap('block', 60, 60, { need: { maxGrade: 9, strong: false } });
  const item: Item = {
    ...strap,
    region: { outer, openings: [] },
    angleRule: { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 180, modulo: 360 },
    sheets: problem.sheets.map(({ id }) => id),
  };
  const lying = Array.from({ length: count }, (__, i): Placement => {
    const sheet = problem.sheets[random.integer(problem.sheets.length)]!;
    const { x, y } = pointWithin(random, sheet.region);
    const at = { x: roundCoordinate(x), y: roundCoordinate(y), rotationDeg: 0 };
    return { item: 'block', set: 1, copy: i + 1, sheet: sheet.id, ...at };
  });
  const { items, setKinds } = strapProblem([], [{ item, count }]);
  return {
    withObstacles: {
      ...problem,
      items: [...problem.items, ...items],
      setKinds: [...problem.setKinds, ...setKinds],
    },
    lying,
  };
}
