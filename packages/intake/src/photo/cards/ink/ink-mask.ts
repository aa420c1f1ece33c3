import { flattenCurve } from '@hidebound/geometry';
import type { Curve, Point, Ring } from '@hidebound/geometry';
import { toPicture } from '../../straight/straight-picture.js';
import type { StraightPicture } from '../../straight/straight-picture.js';
import { withMats } from '../../vision/mats.js';
import type { Vision } from '../../vision/vision.js';
import type { CardShape } from '../card-piece.js';
import { median } from '../colour.js';
import { AROUND_MM, EDGE_RIM_MM, INK_SIGMAS, LEAST_INK } from './limits.js';

/** Where a card differs from its own colour around: how much, for each pixel of its box, in thresholds. */
export interface InkMask {
  readonly width: number;
  readonly height: number;
  /** The picture's place of the box's first pixel. */
  readonly left: number;
  readonly top: number;
  /** 1 is just ink. 0 outside of the card, and near its edges. */
  readonly ink: Float32Array;
}

/** Nothing for a card too small to be drawn on. */
export function inkMask(picture: StraightPicture, shape: CardShape, vision: Vision): InkMask | undefined {
  const box = boxOf(picture, shape.cut);
  if (box.width < 8 || box.height < 8) return undefined;
  const within = cardPixels(picture, shape, box, vision);
  const planes = smoothPlanes(picture, box);
  const reach = Math.round(AROUND_MM * picture.pxPerMm);
  const first = offAround(planes, within, box, reach);
  const rough = threshold(first, within);
  // Again without what is ink, so that it does not darken its own surroundings.
  const clean = within.map((inside, i) => (inside === 1 && first[i]! < rough ? 1 : 0));
  const off = offAround(planes, clean, box, reach);
  const least = threshold(off, clean);
  const ink = off.map((value, i) => (within[i] === 1 ? value / least : 0));
  return { ...box, ink };
}

interface PictureBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const CHORD_MM = 0.05;

function ringsOf(picture: StraightPicture, { cut, cutOuts, punches }: CardShape): Ring[] {
  const curves = [cut, ...cutOuts].map((curve) => flattenCurve(curve, CHORD_MM).slice(0, -1));
  const circles = punches.map(({ at, diameterMm }) =>
    Array.from({ length: 24 }, (_, i): Point => {
      const a = (i * Math.PI) / 12;
      return { x: at.x + (diameterMm / 2) * Math.cos(a), y: at.y + (diameterMm / 2) * Math.sin(a) };
    }),
  );
  return [...curves, ...circles].map((ring) => ring.map((p) => toPicture(picture, p)));
}

function boxOf(picture: StraightPicture, cut: Curve): PictureBox {
  const corners = flattenCurve(cut, CHORD_MM).map((p) => toPicture(picture, p));
  const left = Math.max(0, Math.floor(Math.min(...corners.map(({ x }) => x))));
  const top = Math.max(0, Math.floor(Math.min(...corners.map(({ y }) => y))));
  const right = Math.min(picture.width, Math.ceil(Math.max(...corners.map(({ x }) => x))));
  const bottom = Math.min(picture.height, Math.ceil(Math.max(...corners.map(({ y }) => y))));
  return { left, top, width: right - left, height: bottom - top };
}

/** 1 where the card is, clear of its edges. */
function cardPixels(picture: StraightPicture, shape: CardShape, box: PictureBox, vision: Vision): Uint8Array {
  const { left, top, width, height } = box;
  const inside = new Uint8Array(width * height);
  const rings = ringsOf(picture, shape);
  for (let y = 0; y < height; y++) {
    const crossings = rings.flatMap((ring) => crossingsAt(ring, y + top)).sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil(crossings[k]! - left));
      const to = Math.min(width - 1, Math.floor(crossings[k + 1]! - left));
      if (from <= to) inside.fill(255, y * width + from, y * width + to + 1);
    }
  }
  return withMats((keep) => {
    // A rim of its own, so that what lies beyond the box counts as outside.
    const mat = keep(new vision.Mat(height + 2, width + 2, vision.CV_8UC1));
    mat.data.fill(0);
    for (let y = 0; y < height; y++)
      mat.data.set(inside.subarray(y * width, (y + 1) * width), (y + 1) * (width + 2) + 1);
    const size = 2 * Math.max(1, Math.round(EDGE_RIM_MM * picture.pxPerMm)) + 1;
    const kernel = keep(vision.getStructuringElement(vision.MORPH_ELLIPSE, new vision.Size(size, size)));
    vision.morphologyEx(mat, mat, vision.MORPH_ERODE, kernel);
    return inside.map((_, i) =>
      mat.data[(Math.floor(i / width) + 1) * (width + 2) + (i % width) + 1]! > 0 ? 1 : 0,
    );
  });
}

function crossingsAt(ring: Ring, y: number): number[] {
  const found: number[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    if (p.y > y !== q.y > y) found.push(p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x));
  });
  return found;
}

/** The three channels of the box, each pixel the mean of nine. */
function smoothPlanes({ width, height, rgb }: StraightPicture, box: PictureBox): Float32Array[] {
  return [0, 1, 2].map((channel) => {
    const plane = new Float32Array(box.width * box.height);
    for (let y = 0; y < box.height; y++) {
      for (let x = 0; x < box.width; x++) {
        let sum = 0;
        for (let v = -1; v <= 1; v++) {
          const row = Math.min(height - 1, Math.max(0, y + box.top + v));
          for (let u = -1; u <= 1; u++) {
            const column = Math.min(width - 1, Math.max(0, x + box.left + u));
            sum += rgb[3 * (row * width + column) + channel]!;
          }
        }
        plane[y * box.width + x] = sum / 9;
      }
    }
    return plane;
  });
}

/** How far each pixel is from the mean colour of the counted ones around it. */
function offAround(
  planes: readonly Float32Array[],
  counted: Uint8Array,
  { width, height }: PictureBox,
  reach: number,
): Float32Array {
  const counts = summed(counted, counted, width, height);
  const off = new Float32Array(width * height);
  for (const plane of planes) {
    const sums = summed(plane, counted, width, height);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const count = boxSum(counts, x, y, reach, width, height);
        const mean = count === 0 ? plane[y * width + x]! : boxSum(sums, x, y, reach, width, height) / count;
        off[y * width + x]! += (plane[y * width + x]! - mean) ** 2 / 3;
      }
    }
  }
  return off.map(Math.sqrt);
}

function summed(values: ArrayLike<number>, counted: Uint8Array, width: number, height: number): Float64Array {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      if (counted[y * width + x] === 1) row += values[y * width + x]!;
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row;
    }
  }
  return sums;
}

function boxSum(
  sums: Float64Array,
  x: number,
  y: number,
  reach: number,
  width: number,
  height: number,
): number {
  const [x0, x1] = [Math.max(0, x - reach), Math.min(width, x + reach + 1)];
  const [y0, y1] = [Math.max(0, y - reach), Math.min(height, y + reach + 1)];
  const w = width + 1;
  return sums[y1 * w + x1]! - sums[y0 * w + x1]! - sums[y1 * w + x0]! + sums[y0 * w + x0]!;
}

const THRESHOLD_SAMPLES = 20_000;

function threshold(off: Float32Array, counted: Uint8Array): number {
  const every = Math.max(1, Math.floor(off.length / THRESHOLD_SAMPLES));
  const values: number[] = [];
  for (let i = 0; i < off.length; i += every) if (counted[i] === 1) values.push(off[i]!);
  return Math.max(LEAST_INK, (INK_SIGMAS * median(values)) / MEDIAN_OF_SIGMA);
}

/** The middle of the length of three normal numbers over √3. */
const MEDIAN_OF_SIGMA = 0.89;
