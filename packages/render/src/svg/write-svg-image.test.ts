import { Resvg } from '@resvg/resvg-js';
import { circleCurve } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { group } from '../drawing/build.js';
import type { Drawing } from '../drawing/model.js';
import { fourColours } from '../sample/four-colours.js';
import { writeSvg } from './write-svg.js';

const PX_PER_MM = 4;

/** The four colours over 40 × 20 mm from (10, 10), quarter-turned about (0, 0) and moved by (60, 0). */
function drawing(opacity?: number): Drawing {
  const image = {
    kind: 'image',
    file: fourColours(),
    box: { minX: 10, minY: 10, maxX: 50, maxY: 30 },
    ...(opacity === undefined ? {} : { opacity }),
  } as const;
  const turned = group('turned', [image], { transform: { a: 0, b: 1, c: -1, d: 0, e: 60, f: 0 } });
  const clip = [circleCurve({ x: 40, y: 30 }, 15)];
  return {
    widthMm: 80,
    heightMm: 60,
    title: 'image',
    layers: [{ name: 'photo', elements: [group('clipped', [turned], { clip })] }],
  };
}

/** Red, green and blue as another renderer (resvg) shows them. */
function seen(svg: string): (x: number, y: number) => number[] {
  const { width, pixels } = new Resvg(svg, {
    fitTo: { mode: 'width', value: 80 * PX_PER_MM },
    background: '#ffffff',
  }).render();
  return (x, y) => {
    const at = (Math.round(y * PX_PER_MM) * width + Math.round(x * PX_PER_MM)) * 4;
    return [...pixels.subarray(at, at + 3)];
  };
}

test('when an image is written, it lies in its box, turned and clipped as its groups are', () => {
  const colour = seen(writeSvg(drawing()));
  // (x, y) of the image goes to (60 - y, x): its left end comes to lie above, its top to the right.
  expect(colour(45, 22)).toEqual([255, 0, 0]);
  expect(colour(45, 38)).toEqual([0, 255, 0]);
  expect(colour(35, 22)).toEqual([0, 0, 255]);
  expect(colour(35, 38)).toEqual([0, 0, 0]);
  // Within the box, beyond the clip.
  expect(colour(48, 12)).toEqual([255, 255, 255]);
});

test('when an image is faint, white shows through', () => {
  const [r = 0, g = 0, b = 0] = seen(writeSvg(drawing(0.25)))(45, 22);
  expect(r).toBe(255);
  expect(Math.abs(g - 191)).toBeLessThanOrEqual(1);
  expect(Math.abs(b - 191)).toBeLessThanOrEqual(1);
});
