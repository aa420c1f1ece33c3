import type { StatedReference } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { lengthOrNothing } from '../length-option.js';

/** "x,y x,y x,y x,y = 900 x 600" as a rectangle that gives the scale. Fails with a CliError `bad-use`. */
export function rectangleFrom(text: string): StatedReference {
  const [left = '', right = '', ...more] = text.split('=');
  const corners = [...left.matchAll(/(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)/g)].map(([, x, y]) => ({
    x: Number(x),
    y: Number(y),
  }));
  const sides = right.split(/\s[x×]\s/).map((side) => lengthOrNothing(side.trim()));
  const [a, b, c, d] = corners;
  const [widthMm, heightMm] = sides;
  const isWhole = corners.length === 4 && sides.length === 2 && more.length === 0;
  if (!isWhole || widthMm === undefined || heightMm === undefined || widthMm <= 0 || heightMm <= 0) {
    throw new CliError(
      'bad-use',
      `--rectangle ${JSON.stringify(text)} can't be read; write four corners in pixels and two sides, such as "310,250 3700,260 3720,2800 280,2790 = 900 x 600".`,
    );
  }
  return { kind: 'rectangle', corners: [a!, b!, c!, d!], widthMm, heightMm };
}
