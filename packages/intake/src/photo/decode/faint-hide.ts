import { composeAffine, scaling, translation } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import { hideRegion } from '@hidebound/leather';
import type { Hide, HidePhoto } from '@hidebound/leather';
import { faintPixels } from './faint-pixels.js';
import { regionMask } from './leather-mask.js';

/** Changes of shade over more than this are the room's light, not the leather's marks, mm. */
const SLOW_MM = 180;

/** Light colours of low contrast: finer steps of a JPEG, 0 to 100, would not be seen on paper. */
export const FAINT_QUALITY = 72;

/** Pixels of three colours row by row, 8 bits each. */
export interface HidePixels {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** A straightened photo as large as it is stored, px. */
export interface StoredSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Where a hide's whole straightened photo lies in the hide's frame, mm. */
export function photoBox({ origin, pxPerMm }: HidePhoto, { widthPx, heightPx }: StoredSize): Box {
  return {
    minX: origin.x,
    minY: origin.y,
    maxX: origin.x + widthPx / pxPerMm,
    maxY: origin.y + heightPx / pxPerMm,
  };
}

/**
 * The straightened photo of a hide made light for drawing on (`faintPixels`); the floor around it becomes white.
 * @param pixels the whole photo, shrunk or not
 * @param box where it lies (`photoBox`)
 */
export function faintHidePixels(pixels: HidePixels, hide: Hide, box: Box): HidePixels {
  const pxPerMm = pixels.width / (box.maxX - box.minX);
  const toPicture = composeAffine(
    translation(-0.5, -0.5),
    composeAffine(scaling(pxPerMm), translation(-box.minX, -box.minY)),
  );
  const mask = regionMask(hideRegion(hide), toPicture, pixels);
  return faintPixels(pixels, mask, SLOW_MM * pxPerMm);
}
