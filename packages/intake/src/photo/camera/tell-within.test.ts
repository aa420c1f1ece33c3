import { expect, test } from 'vitest';
import { newFindings } from '../../findings.js';
import { solveFloor } from './solve-floor.js';
import { tellWithin } from './tell-within.js';
import { seenBy, testCamera } from './test-scene.js';
import type { TestSheet } from './test-scene.js';
import { toFloorPoint } from './places.js';
import { shownAt } from './test-scene.js';

const HIDE = { width: 2000, height: 1500 };

function toldFor(sheets: readonly TestSheet[], width = 4000): string[] {
  const height = (width * 3) / 4;
  const camera = testCamera({ x: 0, y: 0, heightMm: 2500, width, height });
  const references = seenBy(camera, sheets, { noisePx: 0.05 });
  const floor = solveFloor(
    [{ references }],
    { barsOf: () => ({ acrossMm: 160, downMm: 220 }) },
    newFindings(''),
  );
  // From right above and without a roll the floor's frame is the scene's, apart from its origin.
  const origin = toFloorPoint(floor.cameras[0]!, shownAt(camera, 0, 0));
  const box = {
    minX: origin.x - HIDE.width / 2,
    maxX: origin.x + HIDE.width / 2,
    minY: origin.y - HIDE.height / 2,
    maxY: origin.y + HIDE.height / 2,
  };
  const findings = newFindings('');
  tellWithin(floor, box, findings);
  return findings.diagnostics.map(({ code }) => code);
}

const CORNERS: readonly TestSheet[] = [
  { sheet: 1, x: -950, y: -700, turnDeg: 0 },
  { sheet: 2, x: 950, y: -700, turnDeg: 90 },
  { sheet: 3, x: -950, y: 700, turnDeg: 180 },
  { sheet: 4, x: 950, y: 700, turnDeg: 45 },
];

test('when four sheets lie at the corners of a sharp photo, nothing is to be said', () => {
  expect(toldFor(CORNERS)).toEqual([]);
});

test('when all sheets lie to the left, it is told that the far side is not well known', () => {
  const left = [CORNERS[0]!, { ...CORNERS[1]!, x: -700 }, CORNERS[2]!];
  expect(toldFor(left)).toContain('references-to-one-side');
});

test('when one sheet lies in the middle, it is told that it is small', () => {
  expect(toldFor([{ ...CORNERS[0]!, x: 0, y: 0 }])).toContain('references-too-small');
});

test('when a photo has fewer than 1 px for a mm, it is told', () => {
  expect(toldFor(CORNERS, 2000)).toContain('too-few-pixels');
});
