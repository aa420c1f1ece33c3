import { createRandom } from '@hidebound/geometry';
import type { Photo } from '@hidebound/intake/photo';
import { Resvg } from '@resvg/resvg-js';

/** How an invented scan is drawn: true shapes as SVG in mm, then what a scanner does to them. */
export interface ScanSetting {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly dpi: number;
  readonly ground: string;
  /** SVG elements in mm, drawn in this order. */
  readonly drawn: string;
  readonly seed: number;
  /** Deviation of the noise of each pixel, 0 to 255. */
  readonly noise?: number;
  /** Deviation of the blur, px. */
  readonly blurPx?: number;
  /** Depth of the paper's texture, 0 to 255: grains of about 0.4 mm. */
  readonly texture?: number;
  /** How much darker the far corner is lit, as a share. */
  readonly lightDrop?: number;
}

/** Draws the shapes anti-aliased (resvg) and adds blur, uneven light, texture and noise; the same seed gives the same bytes. */
export function drawScan(setting: ScanSetting): Photo {
  const { widthMm, heightMm, dpi, ground, drawn, seed } = setting;
  const width = Math.round((widthMm * dpi) / 25.4);
  const height = Math.round((heightMm * dpi) / 25.4);
  // The pixels' own size, so that mm are exact whatever the rounding of the sheet.
  const box = `0 0 ${(width * 25.4) / dpi} ${(height * 25.4) / dpi}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${box}"><rect width="100%" height="100%" fill="${ground}"/>${drawn}</svg>`;
  const { pixels } = new Resvg(svg).render();
  const planes = [0, 1, 2].map((channel) => {
    const plane = new Float32Array(width * height);
    for (let i = 0; i < plane.length; i++) plane[i] = pixels[4 * i + channel]!;
    return blurred(plane, width, setting.blurPx ?? 0.6);
  });
  const random = createRandom(seed);
  const grain = grains(width, height, dpi, setting.texture ?? 3, random.fork(1));
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const light = 1 - ((setting.lightDrop ?? 0) * (x / width + y / height)) / 2;
      for (let c = 0; c < 3; c++) {
        const value = planes[c]![i]! * light + grain[i]! + random.normal() * (setting.noise ?? 3);
        rgb[3 * i + c] = Math.max(0, Math.min(255, Math.round(value)));
      }
    }
  }
  return { file: 'scan.png', width, height, rgb };
}

function blurred(plane: Float32Array, width: number, sigma: number): Float32Array {
  if (sigma <= 0) return plane;
  const reach = Math.ceil(3 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((a, b) => a + b);
  const pass = (from: Float32Array, step: number, size: (i: number) => readonly [number, number]) => {
    const to = new Float32Array(from.length);
    for (let i = 0; i < from.length; i++) {
      const [at, length] = size(i);
      let value = 0;
      for (let k = -reach; k <= reach; k++) {
        const d = Math.max(-at, Math.min(length - 1 - at, k));
        value += weights[k + reach]! * from[i + d * step]!;
      }
      to[i] = value / sum;
    }
    return to;
  };
  const height = plane.length / width;
  const across = pass(plane, 1, (i) => [i % width, width]);
  return pass(across, width, (i) => [Math.floor(i / width), height]);
}

function grains(
  width: number,
  height: number,
  dpi: number,
  depth: number,
  random: { normal(): number },
): Float32Array {
  const size = Math.max(1, (0.4 * dpi) / 25.4);
  const [columns, rows] = [Math.ceil(width / size) + 2, Math.ceil(height / size) + 2];
  const coarse = Float32Array.from({ length: columns * rows }, () => random.normal() * depth);
  const fine = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const v = y / size;
    const j = Math.floor(v);
    for (let x = 0; x < width; x++) {
      const u = x / size;
      const i = Math.floor(u);
      const at = (a: number, b: number) => coarse[(j + b) * columns + i + a]!;
      const top = at(0, 0) * (1 - u + i) + at(1, 0) * (u - i);
      const bottom = at(0, 1) * (1 - u + i) + at(1, 1) * (u - i);
      fine[y * width + x] = top * (1 - v + j) + bottom * (v - j);
    }
  }
  return fine;
}
