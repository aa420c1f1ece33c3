import { createRandom } from '@hidebound/geometry';
import { mixedNoise, smoothNoise } from './noise.js';
import type { FloorLook } from './scene.js';

/** A square of floor that goes on seamlessly over its edges: sRGB, three bytes a pixel; its side is a power of two. */
export interface FloorTile {
  readonly side: number;
  readonly pxPerMm: number;
  readonly rgb: Uint8Array;
}

/** How much lighter (1 is as it is) and how much redder a place of the floor is. */
type Shade = (x: number, y: number) => readonly [number, number];

/** Small noise is made once in a smaller square and repeated: nobody sees it. */
const NOISE_SIDE = 1024;

export function floorTile(
  { kind, colour }: FloorLook,
  side: number,
  pxPerMm: number,
  seed: number,
): FloorTile {
  const shade = { plain, planks, tiles, cloth, concrete }[kind](side, pxPerMm, seed);
  const rgb = new Uint8Array(side * side * 3);
  for (let y = 0, at = 0; y < side; y++) {
    for (let x = 0; x < side; x++, at += 3) {
      const [light, red] = shade(x, y);
      rgb[at] = clampByte(colour[0] * light * (1 + red));
      rgb[at + 1] = clampByte(colour[1] * light);
      rgb[at + 2] = clampByte(colour[2] * light * (1 - red));
    }
  }
  return { side, pxPerMm, rgb };
}

/** A smooth cloth or painted board, with a little fluff. */
function plain(side: number, pxPerMm: number, seed: number): Shade {
  const fine = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 1, weight: 0.035 },
      { cell: 2, weight: 0.03 },
      { cell: 8, weight: 0.02 },
    ],
    seed,
  );
  const wide = bigNoise(side, pxPerMm, 250, seed + 1);
  return (x, y) => [1 + fine.values[mask(x, y)]! + 0.04 * wide(x, y), 0];
}

/** Boards along x, each of another wood, with grain, joints and gaps. */
function planks(side: number, pxPerMm: number, seed: number): Shade {
  const random = createRandom(seed);
  const rows = Math.round(side / pxPerMm / 118);
  const high = side / rows;
  const boards = Array.from({ length: rows }, () => {
    const first = random.between(0, side);
    const second = first + side * random.between(0.35, 0.65);
    return [first, second].map((start) => ({
      start: start % side,
      light: random.between(0.86, 1.12),
      red: random.between(-0.03, 0.05),
      shift: random.integer(NOISE_SIDE),
    }));
  });
  const streak = smoothNoise(NOISE_SIDE, 4, seed + 1).values;
  const fine = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 1, weight: 0.5 },
      { cell: 2, weight: 0.5 },
    ],
    seed + 2,
  ).values;
  const bend = smoothNoise(NOISE_SIDE, 128, seed + 3).values;
  return (x, y) => {
    const row = Math.min(rows - 1, Math.floor(y / high));
    const [a, b] = boards[row]!;
    const fromA = (x - a!.start + side) % side;
    const isA = fromA < (b!.start - a!.start + side) % side;
    const board = isA ? a! : b!;
    const sinceJoint = (x - board.start + side) % side;
    const gap = Math.min(y - row * high, (row + 1) * high - y) / pxPerMm;
    if (gap < 0.9 || sinceJoint / pxPerMm < 1.2) return [0.38, 0];
    const warped = y * 4 + 9 * bend[mask(x >> 2, y + board.shift)]! * 4;
    const grain = streak[mask((x >> 4) + board.shift, warped | 0)]!;
    const hair = fine[mask((x >> 3) + board.shift, y * 2)]!;
    const rings = Math.sin(y / pxPerMm / 5 + 5 * bend[mask((x >> 3) + board.shift, y >> 1)]!);
    const edge = gap < 2.5 ? 0.93 : 1;
    return [edge * board.light * (1 + 0.075 * grain + 0.05 * hair + 0.045 * rings), board.red + 0.02 * grain];
  };
}

/** Square stone tiles with joints of mortar. */
function tiles(side: number, pxPerMm: number, seed: number): Shade {
  const random = createRandom(seed);
  const across = Math.round(side / pxPerMm / 330);
  const wide = side / across;
  const looks = Array.from({ length: across * across }, () => ({
    light: random.between(0.93, 1.06),
    red: random.between(-0.015, 0.02),
    shift: random.integer(NOISE_SIDE),
  }));
  const cloud = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 128, weight: 0.5 },
      { cell: 32, weight: 0.3 },
      { cell: 8, weight: 0.15 },
    ],
    seed + 1,
  ).values;
  const speck = smoothNoise(NOISE_SIDE, 2, seed + 2).values;
  return (x, y) => {
    const i = Math.min(across - 1, Math.floor(x / wide));
    const j = Math.min(across - 1, Math.floor(y / wide));
    const look = looks[j * across + i]!;
    const gap = Math.min(x - i * wide, (i + 1) * wide - x, y - j * wide, (j + 1) * wide - y) / pxPerMm;
    const dust = speck[mask(x, y)]!;
    if (gap < 2.2) return [0.6 + 0.06 * dust, 0.02];
    const rim = gap < 4 ? 0.95 : 1;
    return [rim * look.light * (1 + 0.11 * cloud[mask(x + look.shift, y)]! + 0.025 * dust), look.red];
  };
}

/** Woven cloth with coloured checks. */
function cloth(side: number, pxPerMm: number, seed: number): Shade {
  const fine = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 1, weight: 0.05 },
      { cell: 4, weight: 0.03 },
    ],
    seed,
  ).values;
  const wide = bigNoise(side, pxPerMm, 300, seed + 1);
  const checks = Math.round(side / pxPerMm / 64);
  const threads = Math.round(side / pxPerMm / 2.6);
  return (x, y) => {
    const u = (x / side) * checks;
    const v = (y / side) * checks;
    const isAcross = u - Math.floor(u) < 0.5;
    const isDown = v - Math.floor(v) < 0.5;
    const weave = Math.sin((2 * Math.PI * x * threads) / side) * Math.sin((2 * Math.PI * y * threads) / side);
    const check = 1 - 0.26 * Number(isAcross) - 0.26 * Number(isDown);
    const tint = 0.05 - 0.09 * Number(isAcross) - 0.09 * Number(isDown);
    return [check * (1 + 0.09 * weave + fine[mask(x, y)]! + 0.05 * wide(x, y)), tint];
  };
}

/** Cast concrete: clouds, pores, and hair cracks. */
function concrete(side: number, pxPerMm: number, seed: number): Shade {
  const cloud = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 64, weight: 0.5 },
      { cell: 16, weight: 0.35 },
      { cell: 4, weight: 0.25 },
    ],
    seed,
  ).values;
  const fine = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 1, weight: 0.6 },
      { cell: 2, weight: 0.6 },
    ],
    seed + 1,
  ).values;
  const wide = bigNoise(side, pxPerMm, 400, seed + 2);
  const crack = bigNoise(side, pxPerMm, 520, seed + 3);
  return (x, y) => {
    const grain = fine[mask(x, y)]!;
    const pore = grain < -0.86 ? -0.25 : 0;
    const hair = Math.abs(crack(x, y) + 0.012 * cloud[mask(x, y)]!) < 0.0022 ? -0.2 : 0;
    return [
      1 + 0.1 * wide(x, y) + 0.07 * cloud[mask(x, y)]! + 0.05 * grain + pore + hair,
      0.012 * wide(y, x),
    ];
  };
}

/** Slow change over the whole square, seamless; about `mm` from one hill to the next. */
function bigNoise(side: number, pxPerMm: number, mm: number, seed: number): (x: number, y: number) => number {
  const knots = 64;
  const cell = Math.max(1, 2 ** Math.round(Math.log2((mm * pxPerMm * knots) / side)));
  const small = smoothNoise(knots, Math.min(cell, knots / 4), seed).values;
  const step = side / knots;
  return (x, y) => {
    const u = x / step;
    const v = y / step;
    const i = u | 0;
    const j = v | 0;
    const s = u - i;
    const t = v - j;
    const at = (a: number, b: number) => small[(b & (knots - 1)) * knots + (a & (knots - 1))]!;
    return (
      (at(i, j) * (1 - s) + at(i + 1, j) * s) * (1 - t) + (at(i, j + 1) * (1 - s) + at(i + 1, j + 1) * s) * t
    );
  };
}

function mask(x: number, y: number): number {
  return ((y & (NOISE_SIDE - 1)) << 10) | (x & (NOISE_SIDE - 1));
}

function clampByte(value: number): number {
  return value < 0 ? 0 : value > 255 ? 255 : value;
}
