import { pointInRing } from '@hidebound/geometry';
import type { Point, Polyline, Random, Ring } from '@hidebound/geometry';
import { wayNoise } from './noise.js';
import type { HideLook, MarkKind, MarkTruth } from './scene.js';

/** Marks keep off the edge and off each other by so much. */
const APART_MM = 25;
const TRIES = 400;

/** Holes through the leather and marks on it, invented, none over another one. */
export function inventMarks(
  look: HideLook,
  outline: Ring,
  random: Random,
): { readonly openings: readonly Ring[]; readonly marks: readonly MarkTruth[] } {
  const size = Math.max(0.5, Math.min(1, look.lengthMm / 1800));
  const taken: { readonly middle: Point; readonly reachMm: number }[] = [];
  const thinned = outline.filter((_, i) => i % 4 === 0);
  const place = (reachMm: number): Point | undefined => {
    for (let i = 0; i < TRIES; i++) {
      const middle = {
        x: look.at.x + random.between(-0.5, 0.5) * look.lengthMm,
        y: look.at.y + random.between(-0.5, 0.5) * look.lengthMm,
      };
      const room = reachMm + APART_MM;
      const isFree = taken.every((other) => apart(middle, other.middle) > room + other.reachMm);
      if (!isFree || pointInRing(middle, outline) !== 'inside') continue;
      if (thinned.some((point) => apart(middle, point) < room)) continue;
      taken.push({ middle, reachMm });
      return middle;
    }
    return undefined;
  };
  const openings: Ring[] = [];
  for (let i = 0; i < look.openings; i++) {
    const radius = (i === 0 ? 4 : random.between(6, 32)) * (i === 0 ? 1 : size);
    const middle = place(1.4 * radius);
    if (middle !== undefined) openings.push([...blob(middle, radius, random)].reverse());
  }
  const marks = DRAWN.flatMap(([kind, count, draw]) =>
    Array.from({ length: look.marks[count] }, () => {
      const { lines, widthMm } = draw(random, size);
      const reachMm = Math.max(...lines.flat().map(({ x, y }) => Math.hypot(x, y))) + widthMm / 2;
      const middle = place(reachMm);
      if (middle === undefined) return [];
      const moved = lines.map((line) => line.map(({ x, y }) => ({ x: x + middle.x, y: y + middle.y })));
      return [{ kind, lines: moved, widthMm, middle, reachMm }];
    }).flat(),
  );
  return { openings, marks };
}

interface Drawn {
  readonly lines: readonly Polyline[];
  readonly widthMm: number;
}

/** How each kind is drawn about (0, 0); largest first, so that all find room. */
const DRAWN: readonly (readonly [
  MarkKind,
  keyof HideLook['marks'],
  (random: Random, size: number) => Drawn,
])[] = [
  ['chalk ring', 'chalkRings', drawRing],
  ['brand', 'brands', drawBrand],
  [
    'vein',
    'veins',
    (random, size) => ({ lines: [wavyLine(random, size * random.between(160, 320), 22)], widthMm: 3 }),
  ],
  [
    'chalk line',
    'chalkLines',
    (random, size) => ({ lines: [wavyLine(random, size * random.between(110, 240), 7)], widthMm: 5 }),
  ],
  [
    'scar',
    'scars',
    (random, size) => ({
      lines: [wavyLine(random, size * random.between(60, 190), 9)],
      widthMm: random.between(2, 4.5),
    }),
  ],
  [
    'stain',
    'stains',
    (random, size) => ({ lines: [closed(blob(ORIGIN, size * random.between(22, 55), random))], widthMm: 0 }),
  ],
  ['chalk cross', 'chalkCrosses', drawCross],
  [
    'bite',
    'bites',
    (random) => ({ lines: [closed(blob(ORIGIN, random.between(2, 4), random))], widthMm: 0 }),
  ],
];

const ORIGIN: Point = { x: 0, y: 0 };

/** A ring as a hand draws it: not round, and it doesn't quite meet. */
function drawRing(random: Random, size: number): Drawn {
  const radius = size * random.between(55, 110);
  const wave = wayNoise(360, 70, random.integer(1 << 30));
  const start = random.between(0, 360);
  const end = start + random.between(348, 372);
  const line: Point[] = [];
  for (let turn = start; turn <= end; turn += 3) {
    const out = radius * (1 + 0.12 * wave(turn)) + 0.02 * (turn - start);
    line.push(polar(turn, out));
  }
  return { lines: [line], widthMm: random.between(4, 6) };
}

/** A sign that belongs to nobody: an arc over two bars. */
function drawBrand(random: Random, size: number): Drawn {
  const unit = size * random.between(30, 50);
  const turn = random.between(0, 360);
  const arc = Array.from({ length: 16 }, (_, i) => polar(200 + 140 * (i / 15), unit));
  const bars = [
    [
      { x: -0.7 * unit, y: -0.1 * unit },
      { x: 0.7 * unit, y: -0.1 * unit },
    ],
    [
      { x: 0, y: -0.1 * unit },
      { x: 0, y: 0.9 * unit },
    ],
  ];
  return {
    lines: [arc, ...bars].map((line) => line.map((point) => turned(point, turn))),
    widthMm: 0.2 * unit,
  };
}

function drawCross(random: Random): Drawn {
  const half = random.between(14, 24);
  const turn = random.between(0, 90);
  const lines = [turn, turn + random.between(84, 96)].map((deg) => [polar(deg, -half), polar(deg, half)]);
  return { lines, widthMm: 4.5 };
}

/** A line about (0, 0) that wanders by so much. */
function wavyLine(random: Random, length: number, wander: number): Polyline {
  const wave = wayNoise(3 * length, length / 2.5, random.integer(1 << 30));
  const turn = random.between(0, 360);
  const steps = Math.max(4, Math.ceil(length / 6));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const along = length * (i / steps - 0.5);
    return turned({ x: along, y: wander * wave(along + length) }, turn);
  });
}

/** A ragged disc, a positive ring. */
function blob(middle: Point, radius: number, random: Random): Ring {
  const wave = wayNoise(360, 60, random.integer(1 << 30));
  const steps = Math.max(24, Math.ceil((2 * Math.PI * radius) / 2));
  return Array.from({ length: steps }, (_, i) => {
    const { x, y } = polar((360 * i) / steps, radius * (1 + 0.22 * wave((360 * i) / steps)));
    return { x: middle.x + x, y: middle.y + y };
  });
}

function closed(ring: Ring): Polyline {
  return [...ring, ring[0]!];
}

function polar(deg: number, out: number): Point {
  return { x: out * Math.cos((deg * Math.PI) / 180), y: out * Math.sin((deg * Math.PI) / 180) };
}

function turned({ x, y }: Point, deg: number): Point {
  const sin = Math.sin((deg * Math.PI) / 180);
  const cos = Math.cos((deg * Math.PI) / 180);
  return { x: cos * x - sin * y, y: sin * x + cos * y };
}

function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
