import type { Diagnostic, Hide, HidePhoto } from '@hidebound/leather';
import type { HidePicture, HidePictures } from '@hidebound/render';
import { describeFailure } from '../describe-failure.js';
import { EXIT_STATUS } from '../exit-status.js';
import { besideFile } from './load-files.js';
import { SIZE_LIMIT_MB, readFileLimited } from './read-file.js';

/** A hide with the file that it was read from. */
export interface HideInFile {
  readonly file: string;
  readonly hide: Hide;
}

export interface LoadedPictures {
  readonly pictures: HidePictures;
  /** A warning for each photo that could not be shown. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The photos that lie beside hide files, made ready to be drawn on. A photo that is missing or broken is no reason not
 * to draw: it is told and left out.
 */
export async function loadHidePictures(
  hides: readonly HideInFile[],
  longestPx: number,
): Promise<LoadedPictures> {
  const pictures = new Map<string, HidePicture>();
  const diagnostics: Diagnostic[] = [];
  for (const { file, hide } of hides) {
    const { photo } = hide;
    if (photo === undefined) continue;
    const photoFile = besideFile(file, photo.file);
    try {
      pictures.set(hide.id, await hidePicture({ ...hide, photo }, photoFile, longestPx));
    } catch (error) {
      diagnostics.push(photoNotShown(hide.id, photoFile, error));
    }
  }
  return { pictures, diagnostics };
}

async function hidePicture(
  hide: Hide & { readonly photo: HidePhoto },
  photoFile: string,
  longestPx: number,
): Promise<HidePicture> {
  const bytes = readFileLimited(photoFile, SIZE_LIMIT_MB.photo);
  // The library of pictures is loaded only where there is one.
  const { faintHidePicture } = await import('@hidebound/intake/node');
  const { jpeg, box } = await faintHidePicture(bytes, photoFile, hide, longestPx);
  return { file: { type: 'image/jpeg', bytes: jpeg }, box };
}

function photoNotShown(hide: string, file: string, error: unknown): Diagnostic {
  const failure = describeFailure(error, file);
  if (failure.exitStatus !== EXIT_STATUS.badInput) throw error;
  return { code: 'photo-not-shown', severity: 'warning', params: { hide, why: failure.sentence }, place: {} };
}

/** Finer than this, nobody sees more of a faint picture on paper. */
const DOTS_PER_MM = 200 / 25.4;

/** Pixels that a picture as long as the page can show. */
export function pagePixels({
  widthMm,
  heightMm,
}: {
  readonly widthMm: number;
  readonly heightMm: number;
}): number {
  return Math.round(Math.max(widthMm, heightMm) * DOTS_PER_MM);
}

/** For drawings at true scale, which are looked at on a screen: 2 px/mm of a small hide, 1 px/mm of a large one. */
export const TRUE_SCALE_PIXELS = 3000;
