import { FAINT_QUALITY, faintHidePixels, photoBox } from '@hidebound/intake';
import type { Hide, HidePhoto } from '@hidebound/leather';
import type { HidePicture } from '@hidebound/render';
import type { JobFile } from '../../job/job.js';
import { pathBeside } from '../../job/job.js';
import type { LostPhoto } from '../make-tasks.js';
import type { LayoutJob } from './layout-job.js';

/** Finer than this, nobody sees more of a faint picture on paper. */
const DOTS_PER_MM = 200 / 25.4;

/** The hides' photos, faint, to be drawn on; one that is missing or broken is told and left out. */
export async function hidePictures(
  { named, path }: LayoutJob,
  files: ReadonlyMap<string, JobFile>,
  page: { readonly widthMm: number; readonly heightMm: number },
): Promise<{
  readonly pictures: ReadonlyMap<string, HidePicture>;
  readonly lostPhotos: readonly LostPhoto[];
}> {
  const longestPx = Math.round(Math.max(page.widthMm, page.heightMm) * DOTS_PER_MM);
  const pictures = new Map<string, HidePicture>();
  const lostPhotos: LostPhoto[] = [];
  for (const { file, hide } of named) {
    const { photo } = hide;
    if (photo === undefined) continue;
    const picture = files.get(pathBeside(pathBeside(path, file), photo.file));
    const lose = (why: LostPhoto['why']) => lostPhotos.push({ hide: hide.id, file: photo.file, why });
    if (picture?.kind !== 'picture') {
      lose('missing');
      continue;
    }
    const whole = await pictureOf(picture.bytes);
    if (whole === undefined) lose('unreadable');
    else pictures.set(hide.id, await faintPicture(whole, { ...hide, photo }, longestPx));
  }
  return { pictures, lostPhotos };
}

async function pictureOf(bytes: Uint8Array): Promise<ImageBitmap | undefined> {
  return createImageBitmap(new Blob([bytes.slice()])).catch(() => undefined);
}

async function faintPicture(
  whole: ImageBitmap,
  hide: Hide & { readonly photo: HidePhoto },
  longestPx: number,
): Promise<HidePicture> {
  const stored = { widthPx: whole.width, heightPx: whole.height };
  const shrink = Math.min(1, longestPx / Math.max(whole.width, whole.height));
  const width = Math.max(1, Math.round(whole.width * shrink));
  const height = Math.max(1, Math.round(whole.height * shrink));
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(whole, 0, 0, width, height);
  whole.close();
  const image = pen.getImageData(0, 0, width, height);
  const box = photoBox(hide.photo, stored);
  const faint = faintHidePixels({ width, height, rgb: withoutAlpha(image.data) }, hide, box);
  putColours(faint.rgb, image.data);
  pen.putImageData(image, 0, 0);
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: FAINT_QUALITY / 100 });
  return { file: { type: 'image/jpeg', bytes: new Uint8Array(await blob.arrayBuffer()) }, box };
}

function withoutAlpha(rgba: Uint8ClampedArray): Uint8Array {
  const rgb = new Uint8Array((rgba.length / 4) * 3);
  for (let from = 0, to = 0; from < rgba.length; from += 4, to += 3) {
    rgb[to] = rgba[from]!;
    rgb[to + 1] = rgba[from + 1]!;
    rgb[to + 2] = rgba[from + 2]!;
  }
  return rgb;
}

function putColours(rgb: Uint8Array, rgba: Uint8ClampedArray): void {
  for (let from = 0, to = 0; to < rgba.length; from += 3, to += 4) {
    rgba[to] = rgb[from]!;
    rgba[to + 1] = rgb[from + 1]!;
    rgba[to + 2] = rgb[from + 2]!;
    rgba[to + 3] = 255;
  }
}
