import { createRandom } from '@hidebound/geometry';
import type { LightPicture } from './photograph.js';
import type { Light, PinholeCamera, Sensor } from './scene.js';

export interface SimulatedPicture {
  readonly width: number;
  readonly height: number;
  /** width × height × 3 bytes, sRGB. */
  readonly rgb: Uint8Array;
}

/** Shot noise of a phone indoors: the variance at full light, and the deviation in the dark. */
const SHOT_NOISE = 0.00016;
const DARK_NOISE = 0.0016;

const NORMALS = 1 << 16;
const ENCODED = 1 << 14;

/** What a phone makes of the light: it blurs, darkens the corners, adds noise and encodes. Takes the picture's memory. */
export function develop(
  picture: LightPicture,
  camera: PinholeCamera,
  sensor: Sensor,
  light: Light,
  seed: number,
): SimulatedPicture {
  const { width, height } = picture;
  let values = picture.light;
  if (sensor.blurPx > 0) values = blur(values, width, height, sensor.blurPx);
  if (sensor.motionPx > 0) values = smear(values, width, height, sensor.motionPx, sensor.motionDeg);
  const rgb = new Uint8Array(width * height * 3);
  const random = createRandom(seed);
  const normals = Float32Array.from({ length: NORMALS }, () => random.normal());
  const encode = encoder();
  const unit = Math.hypot(width, height) / 2;
  const tint = [1 + light.warmth / 2, 1, 1 - light.warmth / 2];
  let word = (seed * 2654435761) >>> 0 || 1;
  for (let j = 0, at = 0; j < height; j++) {
    const v = (j - (height - 1) / 2) / unit - camera.lens.axisY;
    for (let i = 0; i < width; i++) {
      const u = (i - (width - 1) / 2) / unit - camera.lens.axisX;
      const rr = u * u + v * v;
      const corner = 1 - sensor.vignetting * rr * (0.6 + 0.4 * rr);
      for (let c = 0; c < 3; c++, at++) {
        const value = values[at]! * corner * tint[c]!;
        // A small generator of its own (xorshift, Marsaglia 2003) picks from the normal numbers: two dozen million are asked for.
        word ^= word << 13;
        word ^= word >>> 17;
        word ^= word << 5;
        const deviation = sensor.noise * Math.sqrt(SHOT_NOISE * Math.max(0, value) + DARK_NOISE * DARK_NOISE);
        const noisy = value + deviation * normals[word & (NORMALS - 1)]!;
        rgb[at] = encode[noisy <= 0 ? 0 : noisy >= 1 ? ENCODED : (noisy * ENCODED) | 0]!;
      }
    }
  }
  return { width, height, rgb };
}

/** Light to sRGB bytes (IEC 61966-2-1). */
function encoder(): Uint8Array {
  return Uint8Array.from({ length: ENCODED + 1 }, (_, i) => {
    const v = i / ENCODED;
    return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
  });
}

/** Gaussian, first along rows, then along columns. */
function blur(values: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(2.6 * sigma));
  const taps = Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = taps.reduce((a, b) => a + b, 0);
  const weights = Float32Array.from(taps, (tap) => tap / sum);
  const rows = new Float32Array(values.length);
  const stride = 3 * width;
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < stride; i++) {
      let total = 0;
      for (let k = -reach; k <= reach; k++) {
        const from = Math.max(i % 3, Math.min(stride - 3 + (i % 3), i + 3 * k));
        total += weights[k + reach]! * values[j * stride + from]!;
      }
      rows[j * stride + i] = total;
    }
  }
  const out = values;
  out.fill(0);
  for (let j = 0; j < height; j++) {
    for (let k = -reach; k <= reach; k++) {
      const from = Math.max(0, Math.min(height - 1, j + k)) * stride;
      const weight = weights[k + reach]!;
      for (let i = 0; i < stride; i++) out[j * stride + i] = out[j * stride + i]! + weight * rows[from + i]!;
    }
  }
  return out;
}

const SMEAR_STEPS = 5;

/** The hand moved while the shutter was open. */
function smear(values: Float32Array, width: number, height: number, px: number, deg: number): Float32Array {
  const out = new Float32Array(values.length);
  const stride = 3 * width;
  for (let step = 0; step < SMEAR_STEPS; step++) {
    const along = px * (step / (SMEAR_STEPS - 1) - 0.5);
    const dx = along * Math.cos((deg * Math.PI) / 180);
    const dy = along * Math.sin((deg * Math.PI) / 180);
    const i0 = Math.floor(dx);
    const j0 = Math.floor(dy);
    const [s, t] = [dx - i0, dy - j0];
    for (let j = 0; j < height; j++) {
      const top = Math.max(0, Math.min(height - 1, j + j0)) * stride;
      const bottom = Math.max(0, Math.min(height - 1, j + j0 + 1)) * stride;
      for (let i = 0; i < width; i++) {
        const left = 3 * Math.max(0, Math.min(width - 1, i + i0));
        const right = 3 * Math.max(0, Math.min(width - 1, i + i0 + 1));
        const at = j * stride + 3 * i;
        for (let c = 0; c < 3; c++) {
          const upper = values[top + left + c]! * (1 - s) + values[top + right + c]! * s;
          const lower = values[bottom + left + c]! * (1 - s) + values[bottom + right + c]! * s;
          out[at + c] = out[at + c]! + (upper * (1 - t) + lower * t) / SMEAR_STEPS;
        }
      }
    }
  }
  return out;
}
