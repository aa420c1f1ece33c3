import { expect, test } from 'vitest';
import { PAPERS, paperNamed, rollOf } from './paper.js';

// ISO 216:2007, table 1, in mm; ASME Y14.1, sizes A to E, in inches.
const SIZES_MM: readonly (readonly [string, number, number])[] = [
  ['A4', 210, 297],
  ['A3', 297, 420],
  ['A2', 420, 594],
  ['A1', 594, 841],
  ['A0', 841, 1189],
];
const SIZES_IN: readonly (readonly [string, number, number])[] = [
  ['Letter', 8.5, 11],
  ['Tabloid', 11, 17],
  ['ANSI-C', 17, 22],
  ['ANSI-D', 22, 34],
  ['ANSI-E', 34, 44],
];

test.each(SIZES_MM)('when %s is asked for, it is %d × %d mm', (name, widthMm, heightMm) => {
  expect(paperNamed(name)).toMatchObject({ widthMm, heightMm });
});

test.each(SIZES_IN)('when %s is asked for, it is %d × %d in', (name, width, height) => {
  const { widthMm, heightMm } = paperNamed(name);
  expect(widthMm / 25.4).toBeCloseTo(width, 9);
  expect(heightMm / 25.4).toBeCloseTo(height, 9);
});

test('when papers are listed, none is left out of these tables', () => {
  expect(PAPERS).toHaveLength(SIZES_MM.length + SIZES_IN.length);
});

test('when a name is not known, the error names those that are', () => {
  expect(() => paperNamed('A7')).toThrow(
    expect.objectContaining({
      code: 'template-paper',
      message: expect.stringContaining('A4, A3') as string,
    }),
  );
});

test('when a roll is narrower than any, the error says how wide one is', () => {
  expect(() => rollOf(80)).toThrow(expect.objectContaining({ code: 'template-roll' }));
  expect(rollOf(914).widthMm).toBe(914);
});
