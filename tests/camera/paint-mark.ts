import { pointInRing } from '@hidebound/geometry';
import type { Polyline } from '@hidebound/geometry';
import type { MapGrid } from './edge-field.js';
import { mixedNoise } from './noise.js';
import type { Light, MarkTruth } from './scene.js';

interface Painted extends MapGrid {
  readonly rgb: Uint8Array;
}

type Colour = readonly [number, number, number];

const CHALKS: readonly Colour[] = [
  [244, 243, 238],
  [240, 232, 178],
  [206, 222, 240],
];

const NOISE_SIDE = 256;

/** Draws one mark onto the leather. */
export function paintMark(map: Painted, mark: MarkTruth, light: Light, seed: number): void {
  const noise = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 1, weight: 0.35 },
      { cell: 4, weight: 0.4 },
      { cell: 16, weight: 0.35 },
    ],
    seed,
  ).values;
  const rough = (at: number) => {
    const i = at % map.width;
    const j = (at / map.width) | 0;
    return noise[((j & (NOISE_SIDE - 1)) << 8) | (i & (NOISE_SIDE - 1))]!;
  };
  const half = mark.widthMm / 2;
  switch (mark.kind) {
    case 'scar':
      // Healed skin is smooth and a little paler, with a dark rim.
      nearLines(map, mark.lines, half + 2, (at, d) => {
        const core = soft(half - d, 0.8);
        const rim = soft(half + 1.2 - d, 0.8) - core;
        multiply(map.rgb, at, 1 + core * (0.2 + 0.06 * rough(at)) - 0.16 * rim);
      });
      return;
    case 'brand':
      nearLines(map, mark.lines, half + 3, (at, d) => {
        const core = soft(half - d, 1.2);
        const rim = soft(half + 2 - d, 1.2) - core;
        multiply(map.rgb, at, 1 - core * (0.3 + 0.1 * rough(at)) + 0.1 * rim);
      });
      return;
    case 'ridge':
      shadeRidge(map, mark, light);
      return;
    case 'vein':
      nearLines(map, mark.lines, half + 3, (at, d) => multiply(map.rgb, at, 1 - 0.09 * soft(half - d, 2)));
      return;
    case 'stain':
      within(map, mark, 6, (at, inside) => {
        const share = soft(inside + 3 * rough(at), 5);
        const rim = soft(inside + 1, 2) * soft(5 - inside, 3);
        multiply(map.rgb, at, 1 - share * (0.17 + 0.04 * rough(at)) - 0.05 * rim);
      });
      return;
    case 'bite':
      within(map, mark, 3, (at, inside) => {
        const core = soft(inside, 0.7);
        multiply(map.rgb, at, 1 - 0.42 * core + 0.14 * (soft(inside + 1.8, 0.8) - core));
      });
      return;
    default: {
      const chalk = CHALKS[seed % CHALKS.length]!;
      nearLines(map, mark.lines, half + 2, (at, d) => {
        // Chalk catches on the grain's tops and skips now and then.
        const share = soft(half + 1.4 * rough(at) - d, 1) * Math.max(0, Math.min(1, 0.78 + 0.8 * rough(at)));
        for (let c = 0; c < 3; c++)
          map.rgb[3 * at + c] = map.rgb[3 * at + c]! * (1 - share) + chalk[c]! * share;
      });
    }
  }
}

/** Slopes of a ridge this high over its width shine or darken by so much in full raking light (Lambert's cosine law). */
const RIDGE_SHADE = 0.35;

/** The side that looks to the light is brighter, the one that looks away darker; nothing shows in light from all around. */
function shadeRidge(map: Painted, mark: MarkTruth, { raking = 0, shadowTowardsDeg }: Light): void {
  if (raking === 0) return;
  const sigma = mark.widthMm / 2;
  const turn = (shadowTowardsDeg * Math.PI) / 180;
  const heights = new Map<number, number>();
  nearLines(map, mark.lines, 3 * sigma, (at, d) => heights.set(at, Math.exp((-d * d) / (2 * sigma * sigma))));
  const step = Math.max(1, Math.round(0.5 * map.pxPerMm));
  const rise = (at: number, offset: number) =>
    ((heights.get(at + offset) ?? 0) - (heights.get(at - offset) ?? 0)) * (sigma / (2 * step)) * map.pxPerMm;
  for (const at of heights.keys()) {
    const slope = Math.cos(turn) * rise(at, step) + Math.sin(turn) * rise(at, step * map.width);
    multiply(map.rgb, at, Math.max(0.2, 1 + raking * RIDGE_SHADE * slope));
  }
}

/** Visits the pixels near the lines with their distance, mm, each once. */
function nearLines(
  map: Painted,
  lines: readonly Polyline[],
  reach: number,
  visit: (at: number, distance: number) => void,
): void {
  const box = pixelBox(map, lines, reach);
  const wide = box.lastX - box.firstX + 1;
  const high = box.lastY - box.firstY + 1;
  if (wide <= 0 || high <= 0) return;
  const nearest = new Float32Array(wide * high).fill(reach);
  for (const line of lines) {
    for (let k = 0; k + 1 < line.length; k++) {
      const a = line[k]!;
      const b = line[k + 1]!;
      const part = pixelBox(map, [[a, b]], reach);
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const lengthSq = dx * dx + dy * dy || 1;
      for (let j = part.firstY; j <= part.lastY; j++) {
        const py = map.y0 + (j + 0.5) / map.pxPerMm - a.y;
        for (let i = part.firstX; i <= part.lastX; i++) {
          const px = map.x0 + (i + 0.5) / map.pxPerMm - a.x;
          const t = Math.max(0, Math.min(1, (px * dx + py * dy) / lengthSq));
          const d = Math.hypot(px - t * dx, py - t * dy);
          const at = (j - box.firstY) * wide + i - box.firstX;
          if (d < nearest[at]!) nearest[at] = d;
        }
      }
    }
  }
  for (let j = 0; j < high; j++)
    for (let i = 0; i < wide; i++) {
      const d = nearest[j * wide + i]!;
      if (d < reach) visit((j + box.firstY) * map.width + i + box.firstX, d);
    }
}

/** Visits the pixels in and near a closed line with their depth inside it, mm (below 0: outside). */
function within(
  map: Painted,
  mark: MarkTruth,
  reach: number,
  visit: (at: number, inside: number) => void,
): void {
  const ring = mark.lines[0]!;
  const inner: number[] = [];
  nearLines(map, [ring], mark.reachMm + reach, (at, d) => {
    const x = map.x0 + ((at % map.width) + 0.5) / map.pxPerMm;
    const y = map.y0 + (Math.floor(at / map.width) + 0.5) / map.pxPerMm;
    if (pointInRing({ x, y }, ring.slice(0, -1)) !== 'outside') inner.push(at, d);
    else if (d < reach) inner.push(at, -d);
  });
  for (let k = 0; k < inner.length; k += 2) visit(inner[k]!, inner[k + 1]!);
}

function pixelBox(map: MapGrid, lines: readonly Polyline[], reach: number) {
  const xs = lines.flat().map(({ x }) => x);
  const ys = lines.flat().map(({ y }) => y);
  return {
    firstX: Math.max(0, Math.floor((Math.min(...xs) - reach - map.x0) * map.pxPerMm)),
    lastX: Math.min(map.width - 1, Math.ceil((Math.max(...xs) + reach - map.x0) * map.pxPerMm)),
    firstY: Math.max(0, Math.floor((Math.min(...ys) - reach - map.y0) * map.pxPerMm)),
    lastY: Math.min(map.height - 1, Math.ceil((Math.max(...ys) + reach - map.y0) * map.pxPerMm)),
  };
}

function multiply(rgb: Uint8Array, at: number, factor: number): void {
  for (let c = 3 * at; c < 3 * at + 3; c++) rgb[c] = Math.max(0, Math.min(255, rgb[c]! * factor));
}

/** 1 well within, 0 well outside, half at the edge; over so many mm each way. */
function soft(inside: number, mm: number): number {
  const t = Math.max(0, Math.min(1, 0.5 + inside / (2 * mm)));
  return t * t * (3 - 2 * t);
}
