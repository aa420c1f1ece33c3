import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { SimulatedPicture } from './sensor.js';

interface JpegMaker {
  jpeg(options: { readonly quality: number; readonly chromaSubsampling: string }): {
    toBuffer(): Promise<Buffer>;
  };
}
type OpenPixels = (
  pixels: Uint8Array,
  options: { readonly raw: { readonly width: number; readonly height: number; readonly channels: 3 } },
) => JpegMaker;

/** A JPEG file as phones write it, colours at half size. `root` is the project's folder. */
export async function encodePhoto(
  picture: SimulatedPicture,
  quality: number,
  root: string,
): Promise<Uint8Array> {
  // sharp belongs to intake alone; from here it is found by way of that package.
  const open = createRequire(join(root, 'packages/intake/package.json'))('sharp') as OpenPixels;
  const { width, height, rgb } = picture;
  return open(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality, chromaSubsampling: '4:2:0' })
    .toBuffer();
}
