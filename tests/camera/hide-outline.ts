import { createRandom, orientRing, ringArea } from '@hidebound/geometry';
import type { Point, Random, Ring } from '@hidebound/geometry';
import { wayNoise } from './noise.js';
import type { HideForm, HideLook } from './scene.js';

/** Half of a hide from head (0) to tail (1) along its backbone, and out from it; in shares of its length. */
const HALF_HIDE: readonly (readonly [number, number])[] = [
  [0.0, 0.07],
  [0.01, 0.13],
  [0.08, 0.17],
  [0.15, 0.26],
  [0.17, 0.37],
  [0.155, 0.46],
  [0.2, 0.49],
  [0.245, 0.45],
  [0.27, 0.385],
  [0.34, 0.37],
  [0.46, 0.395],
  [0.58, 0.4],
  [0.67, 0.365],
  [0.73, 0.4],
  [0.775, 0.48],
  [0.83, 0.5],
  [0.875, 0.45],
  [0.9, 0.34],
  [0.945, 0.2],
  [0.96, 0.085],
  [1.0, 0.04],
];

/** A small scrap: no two alike, more or less round. */
const SCRAP_CORNERS = 11;

/** One knot of the outline before it is made round: its place and how rough the edge is there, 0 to 1. */
interface Knot extends Point {
  readonly rough: number;
}

/** Waves of the edge: how long and how high each way, for a hide of 2.2 m. */
const EDGE_WAVES = [
  { long: 240, high: 12 },
  { long: 90, high: 5 },
  { long: 34, high: 2.4 },
  { long: 11, high: 0.7 },
] as const;

const POINT_EVERY_MM = 2;

/** How rough an edge cut with a knife along a straight line is. */
const CUT_ROUGH = 0.12;

/** The outline of an invented hide on the floor, and its backbone from head to tail. */
export function hideOutline(
  look: HideLook,
  seed: number,
): { readonly outline: Ring; readonly backbone: readonly Point[] } {
  const random = createRandom(seed);
  const knots = knotsOf(look.form, random).map(({ x, y, rough }) => ({
    x: x * look.lengthMm,
    y: y * look.lengthMm,
    rough,
  }));
  const rounded = roughen(roundOff(knots), look.lengthMm, random);
  const place = placer(look, rounded);
  return {
    outline: orientRing(rounded.map(place), 'outer'),
    backbone: [
      { x: 0.02 * look.lengthMm, y: 0 },
      { x: 0.96 * look.lengthMm, y: 0 },
    ].map(place),
  };
}

function knotsOf(form: HideForm, random: Random): readonly Knot[] {
  const wobble = () => random.between(-0.02, 0.02);
  if (form === 'scrap') {
    return Array.from({ length: SCRAP_CORNERS }, (_, i) => {
      const turn = (2 * Math.PI * i) / SCRAP_CORNERS;
      const out = random.between(0.3, 0.5);
      return { x: 0.5 + out * Math.cos(turn), y: 0.8 * out * Math.sin(turn), rough: 0.5 };
    });
  }
  const wide = form === 'skin' ? 0.86 : 0.95;
  const lower = HALF_HIDE.map(([x, y]) => ({ x: x + wobble(), y: wide * (y + wobble()), rough: 1 }));
  if (form === 'side') {
    // Along the straight cut the knots lie close together, so that rounding leaves it straight.
    const cut = [0.97, 0.9, 0.8, 0.65, 0.5, 0.35, 0.2, 0.1, 0.03, 0.01].map((x) => ({
      x,
      y: 0,
      rough: CUT_ROUGH,
    }));
    return [...lower.slice(1, -1), ...cut];
  }
  const upper = HALF_HIDE.map(([x, y]) => ({ x: x + wobble(), y: -wide * (y + wobble()), rough: 1 }));
  return [...lower, ...upper.reverse()];
}

/** Through every knot without corners (Catmull and Rom's spline), a point every 2 mm or so. */
function roundOff(knots: readonly Knot[]): readonly Knot[] {
  const at = (i: number) => knots[(i + knots.length) % knots.length]!;
  return knots.flatMap((from, i) => {
    const [before, to, after] = [at(i - 1), at(i + 1), at(i + 2)];
    const steps = Math.max(2, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / POINT_EVERY_MM));
    return Array.from({ length: steps }, (_, step) => {
      const t = step / steps;
      const blend = (a: number, b: number, c: number, d: number) =>
        0.5 *
        (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t * t * t);
      return {
        x: blend(before.x, from.x, to.x, after.x),
        y: blend(before.y, from.y, to.y, after.y),
        rough: from.rough * (1 - t) + to.rough * t,
      };
    });
  });
}

/** Moves the points in and out, as hide edges are ragged. */
function roughen(points: readonly Knot[], lengthMm: number, random: Random): readonly Point[] {
  const length = points.length * POINT_EVERY_MM;
  const size = Math.max(0.45, lengthMm / 2200);
  const waves = EDGE_WAVES.map(({ long, high }) => ({
    wave: wayNoise(length, long, random.integer(1 << 30)),
    high: high * size,
  }));
  const outwards = ringArea(points) > 0 ? 1 : -1;
  return points.map(({ x, y, rough }, i) => {
    const before = points[(i + points.length - 3) % points.length]!;
    const after = points[(i + 3) % points.length]!;
    const dx = after.x - before.x;
    const dy = after.y - before.y;
    const span = Math.hypot(dx, dy) || 1;
    const way = i * POINT_EVERY_MM;
    const out = rough * waves.reduce((sum, { wave, high }) => sum + high * wave(way), 0);
    return { x: x + (outwards * out * dy) / span, y: y - (outwards * out * dx) / span };
  });
}

/** From the hide's own frame to the floor: the middle of its box comes to lie at its place. */
function placer({ turnDeg, at }: HideLook, points: readonly Point[]): (point: Point) => Point {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const midX = (Math.min(...xs) + Math.max(...xs)) / 2;
  const midY = (Math.min(...ys) + Math.max(...ys)) / 2;
  const sin = Math.sin((turnDeg * Math.PI) / 180);
  const cos = Math.cos((turnDeg * Math.PI) / 180);
  return ({ x, y }) => ({
    x: at.x + cos * (x - midX) - sin * (y - midY),
    y: at.y + sin * (x - midX) + cos * (y - midY),
  });
}
