import type { StraightPicture } from '../straight/straight-picture.js';
import { withMats } from '../vision/mats.js';
import type { Vision } from '../vision/vision.js';

/** A picture made smaller: each of its pixels is the mean of a block of `step` × `step` pixels of the straightened one. */
export interface Level {
  readonly width: number;
  readonly height: number;
  readonly step: number;
  readonly pxPerMm: number;
  /** width × height × 3 bytes: lightness 0 to 255, a and b + 128, as OpenCV has them. */
  readonly lab: Uint8Array;
  /** How much the grey within a block varies (standard deviation, 0 to 255); empty where it was not asked for. */
  readonly roughness: Float32Array;
  /** width × height: 1 where more than half of the block is seen. */
  readonly seen: Uint8Array;
}

/** The place on the straightened picture of a place on the level (pixel middles are whole numbers). */
export function toFine(level: Pick<Level, 'step'>, at: number): number {
  return at * level.step + (level.step - 1) / 2;
}

export function toLevel(level: Pick<Level, 'step'>, fine: number): number {
  return (fine - (level.step - 1) / 2) / level.step;
}

/** The step at which a picture has about so many pixels left. */
export function stepForPixels({ width, height }: { width: number; height: number }, pixels: number): number {
  return Math.max(1, Math.round(Math.sqrt((width * height) / pixels)));
}

export function makeLevel(
  picture: StraightPicture,
  step: number,
  vision: Vision,
  withRoughness: boolean,
): Level {
  const width = Math.max(1, Math.floor(picture.width / step));
  const height = Math.max(1, Math.floor(picture.height / step));
  const rgb = new Uint8Array(width * height * 3);
  const seen = new Uint8Array(width * height);
  const roughness = new Float32Array(withRoughness ? width * height : 0);
  for (let row = 0; row < height; row++) meanRow(picture, step, row, width, { rgb, seen, roughness });
  const lab = withMats((keep) => {
    const from = keep(new vision.Mat(height, width, vision.CV_8UC3));
    from.data.set(rgb);
    const to = keep(new vision.Mat());
    vision.cvtColor(from, to, vision.COLOR_RGB2Lab);
    return to.data.slice();
  });
  return { width, height, step, pxPerMm: picture.pxPerMm / step, lab, roughness, seen };
}

interface Rows {
  readonly rgb: Uint8Array;
  readonly seen: Uint8Array;
  readonly roughness: Float32Array;
}

/** One row of blocks; only pixels that are seen count. */
function meanRow(picture: StraightPicture, step: number, row: number, width: number, to: Rows): void {
  const { rgb, seen, width: fineWidth } = picture;
  for (let column = 0; column < width; column++) {
    let red = 0;
    let green = 0;
    let blue = 0;
    let count = 0;
    let greySq = 0;
    for (let y = row * step; y < (row + 1) * step; y++) {
      let at = y * fineWidth + column * step;
      for (const end = at + step; at < end; at++) {
        if (seen[at] === 0) continue;
        const r = rgb[at * 3]!;
        const g = rgb[at * 3 + 1]!;
        const b = rgb[at * 3 + 2]!;
        red += r;
        green += g;
        blue += b;
        greySq += (r + 2 * g + b) * (r + 2 * g + b);
        count += 1;
      }
    }
    if (count === 0) continue;
    const out = row * width + column;
    to.rgb[out * 3] = red / count + 0.5;
    to.rgb[out * 3 + 1] = green / count + 0.5;
    to.rgb[out * 3 + 2] = blue / count + 0.5;
    to.seen[out] = count * 2 > step * step ? 1 : 0;
    if (to.roughness.length === 0) continue;
    const mean = (red + 2 * green + blue) / count;
    to.roughness[out] = Math.sqrt(Math.max(0, greySq / count - mean * mean)) / 4;
  }
}
