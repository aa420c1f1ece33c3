import type { Sharp } from 'sharp';

/** Pixels of red, green and blue, 8 bits each, row by row. */
export interface RgbPixels {
  readonly width: number;
  readonly height: number;
  /** width × height × 3 bytes. */
  readonly rgb: Uint8Array;
}

/** Runs the library's work and takes its pixels. */
export async function rgbPixels(picture: Sharp): Promise<RgbPixels> {
  const { data, info } = await picture.raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true });
  const bytes = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  const { width, height, channels } = info;
  return { width, height, rgb: channels === 3 ? bytes : threeFold(bytes, channels) };
}

/** Grey becomes red, green and blue alike. */
function threeFold(bytes: Uint8Array, channels: number): Uint8Array {
  const rgb = new Uint8Array((bytes.length / channels) * 3);
  for (let from = 0, to = 0; from < bytes.length; from += channels, to += 3) {
    rgb.fill(bytes[from]!, to, to + 3);
  }
  return rgb;
}
