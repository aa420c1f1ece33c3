import type { Region } from '@hidebound/geometry';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import { placesInside } from '../outline/places-inside.js';
import { toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';

/** Near white in all three colours, sensors show nothing of what they see. */
const BLOWN_OUT = 250;
/** Less of the hide than this is a glint on a wet spot. */
const WORTH_TELLING = 0.005;
/** A shine of a hand's breadth has fifty of such places; finer ones only cost time. */
const STEP_MM = 12;

/** Tells where light on the leather is so bright that marks below it can't be seen. */
export function tellShine(picture: StraightPicture, leather: Region, findings: Findings): void {
  const places = placesInside(leather, STEP_MM);
  const shining = places.filter((place) => isBlownOut(picture, toPicture(picture, place))).length;
  if (places.length === 0 || shining / places.length < WORTH_TELLING) return;
  tell(findings, 'warning', 'shine-on-hide', { percent: Math.ceil((100 * shining) / places.length) });
}

function isBlownOut({ width, height, rgb }: StraightPicture, at: { readonly x: number; readonly y: number }) {
  const [x, y] = [Math.round(at.x), Math.round(at.y)];
  if (x < 0 || y < 0 || x >= width || y >= height) return false;
  const i = 3 * (y * width + x);
  return rgb[i]! >= BLOWN_OUT && rgb[i + 1]! >= BLOWN_OUT && rgb[i + 2]! >= BLOWN_OUT;
}
