import { curveArea, curveBox, pointInRing, ringBox } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import { parseHide, writeHide } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import type { FoundOutline } from '../outline/find-outlines.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { readScraps } from './read-scraps.js';
import type { ScrapOptions } from './read-scraps.js';

// Invented scraps on an invented floor; the expected figures are plain arithmetic on their corners.

/** Each pixel says where it is: red its column, green its row. */
const PICTURE: StraightPicture = {
  width: 250,
  height: 200,
  rgb: Uint8Array.from({ length: 250 * 200 * 3 }, (_, i) =>
    i % 3 === 0 ? Math.floor(i / 3) % 250 : i % 3 === 1 ? Math.floor(i / 750) : 0,
  ),
  pxPerMm: 0.5,
  origin: { x: -10, y: -20 },
  seen: new Uint8Array(250 * 200).fill(255),
};

function scrap(x: number, y: number, hole = false): FoundOutline {
  const outline: Ring = [
    { x, y },
    { x: x + 120, y },
    { x: x + 120, y: y + 60 },
    { x: x + 40, y: y + 80 },
    { x, y: y + 60 },
  ];
  const opening: Ring = [
    { x: x + 50, y: y + 20 },
    { x: x + 50, y: y + 40 },
    { x: x + 70, y: y + 40 },
    { x: x + 70, y: y + 20 },
  ];
  return { outline, openings: hole ? [opening] : [], unsure: [], leavesPicture: [], offByMm: 0.8 };
}

const OPTIONS: ScrapOptions = {
  picture: PICTURE,
  sideUp: 'grain',
  idPrefix: 'box-2',
  scaledBy: '2 reference sheets',
  takenFrom: ['scraps.jpg'],
  errorWithin: () => ({ scaleShare: 0.002, areaShare: 0.004, at: [{ at: { x: 100, y: 100 }, mm: 1 }] }),
  pictureFileOf: (id) => `${id}.jpg`,
  leather: { thickness: { minMm: 1.8, maxMm: 2 }, colour: 'natural' },
  lot: 'spring',
};

const FOUND = [scrap(200, 200), scrap(10, 10, true), scrap(240, 20)];

describe('scraps of one picture', () => {
  test('when they lie anywhere, they are numbered as one reads, from the number asked for', () => {
    const scraps = readScraps(FOUND, { ...OPTIONS, firstNumber: 7 });
    expect(scraps.map(({ number, hide }) => [number, hide.id])).toEqual([
      [7, 'box-2-7'],
      [8, 'box-2-8'],
      [9, 'box-2-9'],
    ]);
    expect(scraps.map(({ onFloor }) => ringBox(onFloor.outer).minX)).toEqual([10, 240, 200]);
  });

  test('when one is read, it is an offcut in its own frame with what was typed once', () => {
    const { hide } = readScraps(FOUND, OPTIONS)[0]!;
    expect(hide.cut).toBe('offcut');
    expect(hide.lot).toBe('spring');
    expect(hide.leather).toMatchObject({ colour: 'natural', thickness: { minMm: 1.8, maxMm: 2 } });
    expect(curveBox(hide.outline)).toEqual({ minX: 0, minY: 0, maxX: 120, maxY: 80 });
    // 120 × 60 and a triangle of 120 × 20 / 2; the hole is 20 × 20.
    expect(hide.area.measuredMm2).toBe(8400);
    expect(curveArea(hide.openings[0]!)).toBeCloseTo(-400, 0);
    const text = writeHide(hide);
    expect(writeHide(parseHide(text, { file: 'box-2-1.hide.json' }))).toBe(text);
  });

  test('when the flesh side lay upwards, shape and picture are mirrored alike', () => {
    const { hide, picture } = readScraps(FOUND, { ...OPTIONS, sideUp: 'flesh' })[0]!;
    expect(hide.outline.segments.some(({ to }) => to.x === 80 && to.y === 80)).toBe(true);
    // The floor's x = 11 (column 10) lies 119 mm from the left edge of the mirrored scrap.
    const column = (119 - picture.origin.x) * picture.pxPerMm - 0.5;
    expect(picture.rgb[3 * column]).toBe(10);
  });

  test('when its number is placed, it stands on leather, clear of the hole', () => {
    const { onFloor } = readScraps(FOUND, OPTIONS)[0]!;
    const { numberAt, numberHeightMm, outer, openings } = onFloor;
    const half = numberHeightMm / 2;
    for (const [dx, dy] of [
      [0, half],
      [0, -half],
      [0.3 * numberHeightMm, half],
      [-0.3 * numberHeightMm, -half],
    ] as const) {
      const corner = { x: numberAt.x + dx, y: numberAt.y + dy };
      expect(pointInRing(corner, outer)).not.toBe('outside');
      expect(pointInRing(corner, openings[0]!)).not.toBe('inside');
    }
  });
});
