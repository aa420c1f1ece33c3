import { normalizeDeg, sinCosDeg } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import type { CutLabel } from '@hidebound/leather';
import { placeInside, roomiestPoint } from '../label/place-inside.js';
import type { FontBook } from '../text/font-book.js';
import { measureText, textLine } from '../text/measure-text.js';
import { textCurves } from '../text/text-curves.js';

/** Sizes of the em that are tried, mm: the largest is read at a glance, below the smallest a beam burns letters shut. */
const SIZES_MM = [8, 6, 4.5, 3.5];
/** Room that a name keeps around itself. */
const ROOM_MM = 1.5;

/** A piece's number and name, or where that has no room its number alone, as outlines within its free leather. */
export function labelCurves(
  { copy, region, arrowDeg }: CutLabel,
  number: string,
  fonts: FontBook,
): readonly Curve[] | undefined {
  const near = roomiestPoint(region);
  const angleDeg = uprightDeg(arrowDeg);
  for (const words of [`${number} ${copy.piece}`, number]) {
    for (const sizeMm of SIZES_MM) {
      const { widthMm, aboveMm, belowMm } = measureText(fonts, 'narrow', sizeMm, words);
      const heightMm = aboveMm + belowMm;
      const wanted = {
        widthMm: widthMm + 2 * ROOM_MM,
        heightMm: heightMm + 2 * ROOM_MM,
        angleDeg,
        near,
        avoid: [],
      };
      const found = placeInside(region, wanted);
      if (found === undefined) continue;
      const { center } = found;
      const { sin, cos } = sinCosDeg(angleDeg);
      // From the middle of the box down to the baseline.
      const down = heightMm / 2 - belowMm;
      const at = { x: center.x - sin * down, y: center.y + cos * down };
      return textCurves(
        fonts,
        textLine(fonts, words, { at, sizeMm, face: 'narrow', anchor: 'middle', angleDeg, colour: '#000000' }),
      );
    }
  }
  return undefined;
}

/** Along the arrow or against it, so that it is read from below. */
function uprightDeg(arrowDeg: number): number {
  const deg = normalizeDeg(arrowDeg);
  return deg > 90 && deg <= 270 ? deg - 180 : deg;
}
