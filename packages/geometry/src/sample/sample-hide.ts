import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import { intersectRegions, subtractRegions } from '../shape/clipper.js';
import { regionArea, regionBox } from '../shape/ring.js';
import { pointInRegion } from '../shape/point-in-ring.js';
import type { DirectionField, QualityRegion, Sheet, ThicknessField } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';
import type { SampleCut } from './sample-outline.js';
import { sampleOutline } from './sample-outline.js';
import { blob, disc, strip } from './sample-shapes.js';

/** What a random hide is to be like; all lengths in mm. */
export interface SampleHideOptions {
  readonly id?: string;
  readonly cut?: SampleCut;
  readonly lengthMm?: number;
  readonly halfWidthMm?: number;
  /** Corners of the whole hide's outline, about. */
  readonly corners?: number;
  readonly flaws?: number;
  /** Neck, belly and shanks with marks of their own, and zones with names. Default true. */
  readonly zones?: boolean;
  /** Strokes of tightness beside the backbone. */
  readonly strokes?: number;
  /** Readings of thickness. */
  readonly readings?: number;
  readonly lot?: string;
  readonly useFrom?: Point;
}

/** A believable hide, the same for the same seed and options. Invented: no hide was measured for it. */
export function sampleHide(seed: number, options: SampleHideOptions = {}): Sheet {
  const random = createRandom(seed);
  const lengthMm = options.lengthMm ?? 2200;
  const halfWidthMm = options.halfWidthMm ?? 900;
  const cut = options.cut ?? 'side';
  const outline = sampleOutline(random.fork(1), {
    cut,
    lengthMm,
    halfWidthMm,
    corners: options.corners ?? 200,
  });
  const zones = options.zones === false ? [] : zonesOf(outline, lengthMm, halfWidthMm);
  const { openings, flaws } = sampleFlaws(random.fork(2), outline, options.flaws ?? 12);
  const region = cutOut(outline, openings);
  return {
    id: options.id ?? `hide-${seed}`,
    region,
    qualities: [...zones, ...flaws],
    direction: directionOf(random.fork(3), outline, lengthMm, cut, options.strokes ?? 0),
    ...(options.readings === undefined
      ? {}
      : { thickness: thicknessOf(random.fork(4), outline, options.readings) }),
    lot: options.lot ?? 'lot 1',
    useFrom: options.useFrom ?? { x: -1, y: 0 },
  };
}

/** In shares of length and half width: where zones lie on either side of the backbone. */
const ZONES: readonly {
  readonly zone: string;
  readonly box: readonly [number, number, number, number];
  readonly grade: number;
  readonly weak: boolean;
}[] = [
  { zone: 'neck', box: [-0.2, 0, 0.12, 1.2], grade: 1, weak: false },
  { zone: 'shoulder', box: [0.12, 0, 0.33, 0.62], grade: 0, weak: false },
  { zone: 'bend', box: [0.33, 0, 1.2, 0.62], grade: 0, weak: false },
  { zone: 'belly', box: [0.12, 0.62, 1.2, 0.84], grade: 1, weak: true },
  { zone: 'shank', box: [0.05, 0.84, 1.2, 1.3], grade: 2, weak: true },
];

function zonesOf(outline: Region, length: number, halfWidth: number): QualityRegion[] {
  const zones: QualityRegion[] = [];
  for (const { zone, box, grade, weak } of ZONES) {
    const areas = [1, -1].flatMap((side) =>
      intersectRegions([outline], [zoneBox(box, length, halfWidth, side)]),
    );
    if (areas.length === 0) continue;
    zones.push({ id: zone, areas, grade, weak, isVoid: false, uncertaintyMm: 0, zone });
  }
  return zones;
}

function zoneBox(
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  length: number,
  halfWidth: number,
  side: number,
): Region {
  const [top, bottom] = side > 0 ? [y0, y1] : [-y1, -y0];
  const corners = [
    [x0, top],
    [x1, top],
    [x1, bottom],
    [x0, bottom],
  ] as const;
  return { outer: corners.map(([x, y]) => ({ x: x * length, y: y * halfWidth })), openings: [] };
}

interface Flaws {
  readonly openings: Region[];
  readonly flaws: QualityRegion[];
}

function sampleFlaws(random: Random, outline: Region, count: number): Flaws {
  const openings: Region[] = [];
  const flaws: QualityRegion[] = [];
  for (let i = 0; i < count; i++) {
    const at = pointWithin(random, outline);
    const id = `flaw ${i + 1}`;
    const draw = random.next();
    const mark = (outer: Point[], grade: number, weak = false): void => {
      flaws.push({ id, areas: [{ outer, openings: [] }], grade, weak, isVoid: false, uncertaintyMm: 0 });
    };
    if (draw < 0.1) openings.push({ outer: disc(at, random.between(3, 12)), openings: [] });
    else if (draw < 0.3) {
      const outer = disc(at, random.between(2, 9), 16);
      const uncertaintyMm = random.next() < 0.5 ? 0 : 1;
      flaws.push({ id, areas: [{ outer, openings: [] }], grade: 3, weak: true, isVoid: true, uncertaintyMm });
    } else if (draw < 0.65) {
      mark(
        strip(at, random.between(0, 180), random.between(30, 220), random.between(2, 7)),
        1 + random.integer(2),
      );
    } else if (draw < 0.75) mark(strip(at, random.between(0, 180), 120, 80), 2);
    else mark(blob(random, at, random.between(12, 60)), 1 + random.integer(2), random.next() < 0.3);
  }
  return { openings, flaws };
}

/** Holes that overlap become one; a hole at the edge bites into it. */
function cutOut(outline: Region, openings: readonly Region[]): Region {
  const parts = subtractRegions([outline], openings);
  return parts.reduce((best, part) => (regionArea(part) > regionArea(best) ? part : best));
}

export function pointWithin(random: Random, region: Region): Point {
  const box = regionBox(region);
  for (;;) {
    const p = { x: random.between(box.minX, box.maxX), y: random.between(box.minY, box.maxY) };
    if (pointInRegion(p, region) === 'inside') return p;
  }
}

/** Strokes fan out a little from the backbone, as hair does towards the belly. */
function directionOf(
  random: Random,
  outline: Region,
  length: number,
  cut: SampleCut,
  strokes: number,
): DirectionField {
  const lines: Point[][] = [];
  for (let i = 0; i < strokes; i++) {
    const from = pointWithin(random, outline);
    const slope = random.between(-0.25, 0.25);
    lines.push([from, { x: from.x + 120, y: from.y + 120 * slope }]);
  }
  const axis = [
    { x: 0.01 * length, y: 0 },
    { x: 0.98 * length, y: 0 },
  ];
  return cut === 'belly' || cut === 'panel' ? { strokes: lines } : { axis, strokes: lines };
}

function thicknessOf(random: Random, outline: Region, readings: number): ThicknessField {
  return {
    rangeMm: [1.6, 3.4],
    readings: Array.from({ length: readings }, () => ({
      at: pointWithin(random, outline),
      mm: Math.round(10 * random.between(1.6, 3.4)) / 10,
    })),
  };
}
