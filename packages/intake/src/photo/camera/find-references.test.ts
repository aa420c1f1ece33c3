import { MARKERS_PER_SHEET, markerId } from '@hidebound/leather';
import { beforeAll, expect, test } from 'vitest';
import { loadVision } from '../vision/load-vision.js';
import type { Vision } from '../vision/vision.js';
import { findReferences } from './find-references.js';
import type { SeenMarker, SeenReferences } from './seen-references.js';
import { photographSheets, seenBy, testCamera } from './test-scene.js';

let vision: Vision;
beforeAll(async () => {
  ({ vision } = await loadVision());
});

const SMALL = { width: 1200, height: 900 };
const TWO_SHEETS = [
  { sheet: 1, x: -260, y: -60, turnDeg: 12 },
  { sheet: 42, x: 240, y: 90, turnDeg: 200 },
];

/** How far each found corner lies from where the camera of the tests shows it, px. */
function misses(found: SeenReferences, truth: SeenReferences): number[] {
  return found.markers.flatMap(({ id, corners }) => {
    const true_ = truth.markers.find((marker) => marker.id === id)!;
    return corners.map(({ x, y }, i) => Math.hypot(x - true_.corners[i]!.x, y - true_.corners[i]!.y));
  });
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

test.each([
  { name: 'from right above', x: 0, y: 0, blurPx: 0.6 },
  { name: 'at a slant', x: 420, y: 500, blurPx: 0.6 },
  { name: 'blurred', x: 100, y: 0, blurPx: 1.4 },
])('when sheets are photographed $name, all corners are found within 0.1 px', ({ x, y, blurPx }) => {
  // At a height of 950 mm a field has 7 px and more here; the places are those of the camera in test-scene.ts.
  const camera = testCamera({ ...SMALL, x, y, heightMm: 950, k1: -0.02 });
  const photo = photographSheets(camera, TWO_SHEETS, { blurPx, noise: 0.006 });
  const found = findReferences(photo, vision);
  const truth = seenBy(camera, TWO_SHEETS);
  expect(found.markers.map(({ id }) => id).sort()).toEqual(truth.markers.map(({ id }) => id).sort());
  expect(rms(misses(found, truth))).toBeLessThan(0.06);
  expect(Math.max(...misses(found, truth))).toBeLessThan(0.1);
});

test('when fields have only 5 px, corners are still found within 0.1 px on the whole', () => {
  const camera = testCamera({ ...SMALL, x: 0, y: 0, heightMm: 1620 });
  const photo = photographSheets(camera, TWO_SHEETS, { blurPx: 0.6, noise: 0.006 });
  const found = findReferences(photo, vision);
  expect(found.markers).toHaveLength(2 * MARKERS_PER_SHEET);
  expect(rms(misses(found, seenBy(camera, TWO_SHEETS)))).toBeLessThan(0.1);
});

test('when edges are measured, their blur is told', () => {
  const camera = testCamera({ ...SMALL, x: 0, y: 0, heightMm: 950 });
  const photo = photographSheets(camera, TWO_SHEETS, { blurPx: 1.4 });
  for (const { blurPx } of findReferences(photo, vision).markers) {
    expect(blurPx).toBeGreaterThan(1.2);
    expect(blurPx).toBeLessThan(1.7);
  }
});

test('when a sheet was copied, the markers that fit their sheet are kept, each once', () => {
  const camera = testCamera({ ...SMALL, x: 0, y: 0, heightMm: 950 });
  const photo = photographSheets(camera, [TWO_SHEETS[0]!, { ...TWO_SHEETS[1]!, sheet: 1 }]);
  const ids = findReferences(photo, vision).markers.map(({ id }: SeenMarker) => id);
  expect(ids).toEqual([0, 1, 2, 3].map((place) => markerId({ sheet: 1, place })));
});

test('when a photo shows no sheet, nothing is found', () => {
  const camera = testCamera({ ...SMALL, x: 0, y: 0, heightMm: 950 });
  expect(findReferences(photographSheets(camera, []), vision).markers).toEqual([]);
});
