import sharp from 'sharp';
import type { Sharp } from 'sharp';
import { IntakeError } from '../error.js';
import { LEAST_PHOTO_SIDE_PX, MOST_PHOTO_MEGAPIXELS } from '../photo/decode/photo-limits.js';
import { photoSignature } from '../photo/decode/photo-kind.js';

/** A picture whose kind and size have been looked at, its pixels not yet. */
export interface OpenPicture {
  /** As stored, before it is turned upright. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** The first page or frame, turned upright, in 8 bits of red, green and blue; transparent is white. */
  readonly upright: Sharp;
}

const PIXELS_PER_MEGAPIXEL = 1_000_000;

/** Bits of red, green and blue that all pictures become; whoever has a profile of colours is converted by it. */
const COLOURS = 'srgb';

const PAPER_WHITE = '#ffffff';

/**
 * Looks at a picture's first bytes and its header, and refuses by these alone what is no photo or too large. Nothing is
 * decoded yet.
 * @throws IntakeError `not-a-photo`, `photo-heic`, `photo-broken`, `photo-too-many-pixels`
 */
export async function openPicture(bytes: Uint8Array, file: string): Promise<OpenPicture> {
  refuseOtherKinds(bytes, file);
  // The pixels are counted here, in words of our own.
  const picture = sharp(bytes, { failOn: 'warning', limitInputPixels: false, pages: 1 });
  const { width: widthPx, height: heightPx } = await brokenUnless(file, picture.metadata());
  if (widthPx * heightPx > MOST_PHOTO_MEGAPIXELS * PIXELS_PER_MEGAPIXEL) {
    throw new IntakeError(
      'photo-too-many-pixels',
      {
        width: widthPx,
        height: heightPx,
        megapixels: Math.round(megapixels(widthPx, heightPx)),
        limit: MOST_PHOTO_MEGAPIXELS,
      },
      { file },
    );
  }
  const upright = picture.autoOrient().flatten({ background: PAPER_WHITE }).toColourspace(COLOURS);
  return { widthPx, heightPx, upright };
}

/** How many megapixels a picture has, by its header alone. Throws as `openPicture`. */
export async function photoMegapixels(bytes: Uint8Array, file: string): Promise<number> {
  const { widthPx, heightPx } = await openPicture(bytes, file);
  return megapixels(widthPx, heightPx);
}

/** Throws `photo-too-small`. */
export function refuseTooSmall({ widthPx, heightPx }: OpenPicture, file: string): void {
  if (Math.min(widthPx, heightPx) >= LEAST_PHOTO_SIDE_PX) return;
  throw new IntakeError(
    'photo-too-small',
    { width: widthPx, height: heightPx, least: LEAST_PHOTO_SIDE_PX },
    { file },
  );
}

function refuseOtherKinds(bytes: Uint8Array, file: string): void {
  const signature = photoSignature(bytes);
  if (signature.kind === 'heic') throw new IntakeError('photo-heic', { what: signature.what }, { file });
  if (signature.kind === 'other') throw new IntakeError('not-a-photo', { what: signature.what }, { file });
}

/** What the library says of a broken file is for its programmers. */
export async function brokenUnless<Result>(file: string, work: Promise<Result>): Promise<Result> {
  try {
    return await work;
  } catch (error) {
    const broken = new IntakeError('photo-broken', {}, { file });
    broken.cause = error;
    throw broken;
  }
}

function megapixels(widthPx: number, heightPx: number): number {
  return (widthPx * heightPx) / PIXELS_PER_MEGAPIXEL;
}
