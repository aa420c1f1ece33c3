import { MIRROR_X, rotationDeg } from '@hidebound/geometry';
import type { FlawBeside } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { cornerName, flawWords, mmWords, outWords, turnWords } from './setting-words.js';

test('when a measure is written, it has one decimal and a minus as wide as a plus', () => {
  expect([876.5, 12, 0, -3.5].map(mmWords)).toEqual(['876.5', '12.0', '0.0', '−3.5']);
});

test.each([
  [false, 12.5, 'R 12.5'],
  [false, -12.5, 'L 12.5'],
  [true, 12.5, 'L 12.5'],
  [true, -12.5, 'R 12.5'],
  [true, 0, '0.0'],
])(
  'when the line is in the middle and the view mirrored is %s, an out of %d reads %s',
  (isMirrored, outMm, words) => {
    expect(outWords({ outMm }, { twoSided: true, isMirrored })).toBe(words);
  },
);

test('when the line is at an edge, an out beyond it has a minus from either side', () => {
  for (const isMirrored of [false, true]) {
    expect(outWords({ outMm: -1.5 }, { twoSided: false, isMirrored })).toBe('−1.5');
  }
});

test.each([
  [12.5, false, '↻ 12.5°'],
  [12.5, true, '↺ 12.5°'],
  [-90, false, '↺ 90.0°'],
  [0, true, '0.0°'],
  [180, true, '180.0°'],
])('when an arrow is turned by %d° and the view mirrored is %s, it reads %s', (deg, isMirrored, words) => {
  expect(turnWords(deg, isMirrored)).toBe(words);
});

const scar: FlawBeside = { id: 's', kind: 'scar', side: 'grain', distanceMm: 12, towards: { x: -1, y: 0.1 } };

test('when the picture is turned or mirrored, a flaw beside a piece is named as on the picture', () => {
  expect(flawWords([scar], rotationDeg(0))).toEqual(['scar 12 mm to its left']);
  expect(flawWords([scar], MIRROR_X)).toEqual(['scar 12 mm to its right']);
  expect(flawWords([scar], rotationDeg(90))).toEqual(['scar 12 mm above it']);
  expect(flawWords([scar], rotationDeg(-90))).toEqual(['scar 12 mm below it']);
});

test('when a piece lies over flaws, they are counted and come first', () => {
  const under = (kind: 'bite' | 'stain'): FlawBeside => ({ id: kind, kind, side: 'grain', distanceMm: 0 });
  const cut: FlawBeside = { ...scar, kind: 'cut', side: 'flesh', distanceMm: 0 };
  expect(flawWords([cut, under('bite'), under('bite'), under('stain')], rotationDeg(0))).toEqual([
    'over 2 × bite',
    'over a stain',
    'cut (flesh side) 1 mm to its left',
  ]);
});

test('when a rough cut has more than 26 corners, letters are doubled', () => {
  expect([0, 25, 26, 52].map((i) => cornerName(39, i))).toEqual(['39a', '39z', '39aa', '39ba']);
});
