import { intersectRegions } from '../shape/clipper.js';
import { roundPoint } from '../point.js';
import type { Random } from '../number/random.js';
import type { Point, Region } from '../types/shape.js';

/** The cuts of a hide that can be drawn by chance. */
export type SampleCut = 'side' | 'hide' | 'shoulder' | 'bend' | 'belly' | 'panel';

/** Half a hide in shares of its length and width: head at x = 0, backbone along y = 0; from memory of real ones. */
const HALF: readonly (readonly [number, number])[] = [
  [0.98, 0],
  [1.0, 0.05],
  [0.985, 0.2],
  [0.99, 0.42],
  [1.01, 0.62],
  [1.03, 0.84],
  [1.0, 0.97],
  [0.94, 0.96],
  [0.9, 0.86],
  [0.84, 0.74],
  [0.74, 0.8],
  [0.62, 0.86],
  [0.5, 0.88],
  [0.38, 0.84],
  [0.29, 0.77],
  [0.25, 0.88],
  [0.2, 1.0],
  [0.13, 0.98],
  [0.11, 0.84],
  [0.13, 0.64],
  [0.07, 0.48],
  [0.01, 0.36],
  [-0.02, 0.2],
  [0.0, 0.06],
  [0.02, 0],
];

/** Rectangles, in shares of length and width, that a part of a hide is cut along. */
const CUTS: Readonly<Record<SampleCut, readonly [number, number, number, number]>> = {
  side: [-0.2, 0, 1.2, 1.2],
  hide: [-0.2, -1.2, 1.2, 1.2],
  shoulder: [-0.2, 0, 0.33, 0.7],
  bend: [0.33, 0, 1.2, 0.6],
  belly: [0.1, 0.6, 1.2, 1.2],
  panel: [0.4, 0.05, 0.8, 0.5],
};

/** Size and fineness of an outline. */
export interface OutlineOptions {
  readonly cut: SampleCut;
  readonly lengthMm: number;
  /** From backbone to belly edge. */
  readonly halfWidthMm: number;
  /** Corners of the whole outline, about. */
  readonly corners: number;
}

/** The outline of a hide or of a cut of it, without openings, on the 0.001 mm grid. */
export function sampleOutline(random: Random, options: OutlineOptions): Region {
  const { lengthMm, halfWidthMm, cut } = options;
  const scale = (p: Point): Point => ({ x: p.x * lengthMm, y: p.y * halfWidthMm });
  const perHalf = Math.max(30, Math.round(options.corners / 2));
  const lower = smoothHalf(random, perHalf);
  const upper = smoothHalf(random, perHalf).map(({ x, y }) => ({ x, y: -y }));
  const whole = [...lower, ...upper.reverse()].map(scale).map(roundPoint);
  const [x0, y0, x1, y1] = CUTS[cut];
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ].map(scale);
  const parts = intersectRegions([{ outer: whole, openings: [] }], [{ outer: corners, openings: [] }]);
  // A cut may leave a tip of a leg apart: the sheet is its largest part.
  return parts.reduce((best, part) => (part.outer.length > best.outer.length ? part : best));
}

/** Catmull-Rom through the jittered marks, with a little roughness of the edge. */
function smoothHalf(random: Random, corners: number): Point[] {
  const marks = HALF.map(([x, y]) => ({
    x: x + 0.012 * random.normal(),
    y: y === 0 ? 0 : Math.max(0.01, y + 0.012 * random.normal()),
  }));
  const steps = Math.max(1, Math.round(corners / (marks.length - 1)));
  const points: Point[] = [];
  for (let i = 0; i + 1 < marks.length; i++) {
    const p = [
      marks[Math.max(0, i - 1)]!,
      marks[i]!,
      marks[i + 1]!,
      marks[Math.min(marks.length - 1, i + 2)]!,
    ];
    for (let k = 0; k < steps; k++) {
      const at = catmullRom(p as [Point, Point, Point, Point], k / steps);
      const rough = k === 0 ? 0 : 0.0006;
      points.push({ x: at.x + rough * random.normal(), y: Math.max(0, at.y + rough * random.normal()) });
    }
  }
  points.push(marks[marks.length - 1]!);
  return points;
}

function catmullRom([a, b, c, d]: readonly [Point, Point, Point, Point], t: number): Point {
  const blend = (p: number, q: number, r: number, s: number): number =>
    q + 0.5 * t * (r - p + t * (2 * p - 5 * q + 4 * r - s + t * (3 * (q - r) + s - p)));
  return { x: blend(a.x, b.x, c.x, d.x), y: blend(a.y, b.y, c.y, d.y) };
}
