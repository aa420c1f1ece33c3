import { withMats } from '../vision/mats.js';
import type { Vision } from '../vision/vision.js';
import { lightOf, redOf, yellowOf } from './colour.js';
import { patchesOf } from './grid.js';
import { GROUND } from './known-ground.js';
import type { Level } from './level.js';

/** Chalk lines are 3 to 8 mm wide; what is wider than this is a notch in the leather, whatever its colour. */
const WIDEST_SLIT_MM = 10;
/** Shorter ones are corners of the outline and not worth a doubt. */
const LEAST_LONG_MM = 12;
/** A slit is this many times as long as it is wide. */
const LEAST_SLENDER = 2;
/** The mouth at the edge takes up less than this share of its length: a gap between two scraps is open at both ends. */
const MOST_MOUTH = 0.6;
/** Floor within a narrow notch lies in shadow: darker than the floor beside by this (colour.ts), and of no other hue. */
const SHADOW = 4;
const SAME_HUE = 6;
/** How far around a slit floor is looked for to compare with. */
const FLOOR_WITHIN_MM = 30;
const FLOOR_CLEAR_MM = 8;
/** What a closed slit is given as logarithm of the odds. */
const CLOSED = 1;

/**
 * Chalk that runs up to the edge of dark leather looks like pale floor that runs into it. Closes such slits in the odds
 * (changed in place), but for those in which the floor itself is seen, in shadow.
 */
export function closeSlits(level: Level, ground: Uint8Array, odds: Float32Array, vision: Vision): void {
  const { width, height } = level;
  const isLeather = new Uint8Array(odds.length);
  for (let i = 0; i < odds.length; i++) if (odds[i]! > 0) isLeather[i] = 1;
  const closed = closedBy(level, isLeather, Math.round((WIDEST_SLIT_MM / 2) * level.pxPerMm), vision);
  const isAdded = (i: number): boolean => closed[i] === 1 && isLeather[i] === 0;
  const { labels, sizes } = patchesOf({ width, height }, isAdded, true);
  const least = (LEAST_LONG_MM * level.pxPerMm) / 1.5;
  const patches = new Map<number, number[]>();
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]!;
    if (label < 0 || sizes[label]! < least) continue;
    const pixels = patches.get(label);
    if (pixels === undefined) patches.set(label, [i]);
    else pixels.push(i);
  }
  for (const pixels of patches.values()) {
    if (pixels.some((i) => ground[i] !== GROUND.open)) continue;
    if (!isSlit(level, pixels, closed) || isShadedFloor(level, pixels, odds)) continue;
    for (const i of pixels) odds[i] = CLOSED;
  }
}

function closedBy({ width, height }: Level, mask: Uint8Array, radius: number, vision: Vision): Uint8Array {
  return withMats((keep) => {
    const from = keep(new vision.Mat(height, width, vision.CV_8UC1));
    from.data.set(mask);
    const to = keep(new vision.Mat());
    const kernel = keep(
      vision.getStructuringElement(vision.MORPH_ELLIPSE, new vision.Size(2 * radius + 1, 2 * radius + 1)),
    );
    vision.morphologyEx(from, to, vision.MORPH_CLOSE, kernel);
    return to.data.slice();
  });
}

/** Whether it is long and narrow and opens to the floor at one end. */
function isSlit({ width, height, pxPerMm }: Level, pixels: readonly number[], closed: Uint8Array): boolean {
  const long = extent(width, pixels);
  const wide = pixels.length / Math.max(1, long);
  if (long < LEAST_LONG_MM * pxPerMm || long < LEAST_SLENDER * wide) return false;
  const isFloor = (x: number, y: number): boolean =>
    x >= 0 && y >= 0 && x < width && y < height && closed[y * width + x] === 0;
  const mouth = pixels.filter((i) => {
    const x = i % width;
    const y = Math.floor(i / width);
    return isFloor(x - 1, y) || isFloor(x + 1, y) || isFloor(x, y - 1) || isFloor(x, y + 1);
  });
  return mouth.length > 0 && extent(width, mouth) < MOST_MOUTH * long;
}

/** The longest way across the pixels, along the axes or aslant. */
function extent(width: number, pixels: readonly number[]): number {
  const low = [Infinity, Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity, -Infinity];
  for (const i of pixels) {
    const x = i % width;
    const y = Math.floor(i / width);
    [x, y, (x + y) * Math.SQRT1_2, (x - y) * Math.SQRT1_2].forEach((along, n) => {
      low[n] = Math.min(low[n]!, along);
      high[n] = Math.max(high[n]!, along);
    });
  }
  return Math.max(...high.map((most, n) => most - low[n]!)) + 1;
}

function isShadedFloor(level: Level, pixels: readonly number[], odds: Float32Array): boolean {
  const floor = floorBeside(level, pixels, odds);
  if (floor.length === 0) return false;
  // The brightest quarter lies in the middle of the slit; the rest is blurred into the leather.
  const brightest = [...pixels]
    .sort((a, b) => lightOf(level.lab, b) - lightOf(level.lab, a))
    .slice(0, Math.ceil(pixels.length / 4));
  const slit = meanColour(level, brightest);
  const beside = meanColour(level, floor);
  return slit[0] < beside[0] - SHADOW && Math.hypot(slit[1] - beside[1], slit[2] - beside[2]) < SAME_HUE;
}

/** Floor around the slit, well away from any leather. */
function floorBeside(
  { width, height, pxPerMm }: Level,
  pixels: readonly number[],
  odds: Float32Array,
): number[] {
  const reach = Math.round(FLOOR_WITHIN_MM * pxPerMm);
  const clear = Math.round(FLOOR_CLEAR_MM * pxPerMm);
  const isFloor = (x: number, y: number): boolean =>
    x >= 0 && y >= 0 && x < width && y < height && odds[y * width + x]! < 0;
  const found = new Set<number>();
  for (const i of pixels)
    for (const [dx, dy] of [
      [reach, 0],
      [-reach, 0],
      [0, reach],
      [0, -reach],
    ] as const) {
      const x = (i % width) + dx;
      const y = Math.floor(i / width) + dy;
      if (
        isFloor(x, y) &&
        isFloor(x - clear, y) &&
        isFloor(x + clear, y) &&
        isFloor(x, y - clear) &&
        isFloor(x, y + clear)
      )
        found.add(y * width + x);
    }
  return [...found];
}

function meanColour({ lab }: Level, pixels: readonly number[]): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  for (const i of pixels) {
    sum[0] += lightOf(lab, i) / pixels.length;
    sum[1] += redOf(lab, i) / pixels.length;
    sum[2] += yellowOf(lab, i) / pixels.length;
  }
  return sum;
}
