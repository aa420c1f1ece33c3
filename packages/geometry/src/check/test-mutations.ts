/** Seeded small layouts near contact, and mutations of them, for the test against the outside judge. */
import type { Item, Need, Placement } from '../types/problem.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { frame, makeItem, makeJob, makeQuality, makeSheet, place, polygon, rectangle } from './test-jobs.js';
import type { Job } from './test-jobs.js';
import { cosSinOfDeg } from './turn.js';

export type Dice = () => number;

/** Numbers from 0 to 1, the same for a seed (the mulberry32 recurrence, from memory). */
export function makeDice(seed: number): Dice {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Between the two, each power of ten as likely. */
function anyScale(dice: Dice, low: number, high: number): number {
  return low * (high / low) ** dice();
}

export function pick<T>(dice: Dice, list: readonly T[]): T {
  return list[Math.floor(dice() * list.length)]!;
}

const SHEET_OUTLINE: Ring = polygon(
  [0, 0],
  [260, 8],
  [420, 0],
  [400, 150],
  [424, 300],
  [200, 280],
  [0, 306],
).outer;
export const OPENING: Region = polygon([60, 60], [100, 70], [80, 110]);
export const VOID: Region = polygon([300, 60], [340, 50], [350, 90], [320, 80]);
export const SCAR: Region = polygon([150, 200], [260, 190], [262, 193], [152, 204]);

/** Two zones that share a border and leave a hole between them. */
export const ZONES: readonly Region[] = [
  polygon([20, 10], [210, 20], [210, 120], [190, 140], [210, 160], [205, 275], [15, 290]),
  polygon([210, 20], [390, 12], [395, 280], [205, 275], [210, 160], [225, 140], [210, 120]),
];

function star(dice: Dice): Region {
  const count = 5 + Math.floor(dice() * 14);
  const corners = Array.from({ length: count }, (_, i): readonly [number, number] => {
    const angle = (2 * Math.PI * (i + 0.6 * dice())) / count;
    const radius = 12 + 22 * dice();
    return [roundMm(radius * Math.cos(angle)), roundMm(radius * Math.sin(angle))];
  });
  return polygon(...corners);
}

export function randomRegion(dice: Dice): Region {
  const kind = Math.floor(dice() * 6);
  if (kind === 0) return rectangle(-25, -15, 25, 15);
  if (kind === 1) return rectangle(-70, -3, 70, 3);
  if (kind === 2) return polygon([-30, -30], [30, -30], [30, -10], [-10, -10], [-10, 30], [-30, 30]);
  if (kind === 3) return frame(rectangle(-40, -30, 40, 30), rectangle(-26, -16, 26, 16));
  return star(dice);
}

const NEED: Need = { maxGrade: 0, strong: true, zones: ['bend', 'back'] };

export interface Mutation {
  readonly job: Job;
  readonly gap: number;
  readonly edge: number;
  readonly voidMm: number;
}

/** Two to four pieces, each slid into contact with something, then one of them moved or turned a little or a lot. */
export function makeMutation(seed: number): Mutation {
  const dice = makeDice(seed);
  const gap = pick(dice, [0, 0, 3]);
  const edge = pick(dice, [0, 4]);
  const voidMm = pick(dice, [0, 2]);
  const count = 2 + Math.floor(dice() * 3);
  const twin = dice() < 0.2 ? randomRegion(dice) : undefined;
  const items: Item[] = [];
  const placements: Placement[] = [];
  for (let i = 0; i < count; i++) {
    items.push(makeItem(`piece ${i}`, twin ?? randomRegion(dice), { need: NEED }));
    placements.push(slide(dice, items, placements, { gap, edge, voidMm }));
  }
  // More often the last, which touches what it was slid against.
  const chosen = dice() < 0.6 ? count - 1 : Math.floor(dice() * count);
  placements[chosen] = mutate(dice, placements[chosen]!);
  const job = makeJob({
    items,
    placements: placements.map(roundPlacement),
    sheets: [
      makeSheet({
        region: { outer: SHEET_OUTLINE, openings: [[...OPENING.outer].reverse()] },
        qualities: [
          makeQuality('void', VOID, { isVoid: true }),
          makeQuality('scar', SCAR, { grade: 1, weak: true }),
          makeQuality('bend', ZONES[0]!, { zone: 'bend' }),
          makeQuality('back', ZONES[1]!, { zone: 'back' }),
        ],
      }),
    ],
    problem: { distances: { gap, edge, void: voidMm } },
  });
  return { job, gap, edge, voidMm };
}

function slide(
  dice: Dice,
  items: readonly Item[],
  placements: readonly Placement[],
  apart: { readonly gap: number; readonly edge: number; readonly voidMm: number },
): Placement {
  const index = placements.length;
  const start = place(
    `piece ${index}`,
    60 + 300 * dice(),
    60 + 180 * dice(),
    pick(dice, [0, 90, 360 * dice()]),
  );
  const targets: readonly (readonly [readonly Ring[], number])[] = [
    ...placements.map((other, i) => [ringsOf(items[i]!.region, other), apart.gap] as const),
    [[SHEET_OUTLINE], apart.edge],
    [[OPENING.outer], apart.edge],
    [[VOID.outer], apart.voidMm],
    [[SCAR.outer], 0],
    [ZONES.map(({ outer }) => outer), 0],
  ];
  const [target, distance] = pick(dice, [...targets, ...targets.slice(0, index), ...targets.slice(0, index)]);
  const goal = pick(dice, target[0]!);
  const length = Math.hypot(goal.x - start.x, goal.y - start.y) || 1;
  const unit = { x: (goal.x - start.x) / length, y: (goal.y - start.y) / length };
  const way = wayToContact(ringsOf(items[index]!.region, start), target, unit);
  if (way === undefined) return start;
  return { ...start, x: start.x + (way - distance) * unit.x, y: start.y + (way - distance) * unit.y };
}

function mutate(dice: Dice, placement: Placement): Placement {
  const angle = 2 * Math.PI * dice();
  const way = dice() < 0.15 ? 0 : anyScale(dice, 0.0005, pick(dice, [0.1, 20]));
  const turn = dice() < 0.6 ? 0 : anyScale(dice, 0.00001, 40) * pick(dice, [-1, 1]);
  return {
    ...placement,
    x: placement.x + way * Math.cos(angle),
    y: placement.y + way * Math.sin(angle),
    rotationDeg: placement.rotationDeg + turn,
  };
}

export function roundMm(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function roundPlacement(placement: Placement): Placement {
  return {
    ...placement,
    x: roundMm(placement.x),
    y: roundMm(placement.y),
    rotationDeg: Math.round(placement.rotationDeg * 1e6) / 1e6,
  };
}

function ringsOf(region: Region, { x, y, rotationDeg }: Placement): readonly Ring[] {
  const [cos, sin] = cosSinOfDeg(rotationDeg);
  return [region.outer, ...region.openings].map((ring) =>
    ring.map((corner) => ({
      x: x + cos * corner.x - sin * corner.y,
      y: y + sin * corner.x + cos * corner.y,
    })),
  );
}

/** How far the mover goes in a direction until corners of one first meet edges of the other. */
function wayToContact(mover: readonly Ring[], target: readonly Ring[], unit: Point): number | undefined {
  const back = { x: -unit.x, y: -unit.y };
  const ways = [...waysToEdges(mover, target, unit), ...waysToEdges(target, mover, back)];
  return ways.length === 0 ? undefined : Math.min(...ways);
}

function waysToEdges(corners: readonly Ring[], edges: readonly Ring[], unit: Point): readonly number[] {
  const ways: number[] = [];
  for (const p of corners.flat()) {
    for (const ring of edges) {
      for (const [i, a] of ring.entries()) {
        const b = ring[(i + 1) % ring.length]!;
        const across = unit.x * (b.y - a.y) - unit.y * (b.x - a.x);
        if (across === 0) continue;
        const t = ((p.x - a.x) * -unit.y + (p.y - a.y) * unit.x) / across;
        const way = ((a.x - p.x) * (b.y - a.y) - (a.y - p.y) * (b.x - a.x)) / across;
        if (t >= 0 && t <= 1 && way >= 0) ways.push(way);
      }
    }
  }
  return ways;
}
