import { describe, expect, test } from 'vitest';
import { DEFAULT_IRONS, ironPitchOfTeethMm, pitchOfStitchesMm } from './irons.js';

describe('the table of irons', () => {
  // Hand-stitch community guide 2016 [S106].
  test.each([
    [5, 5.4],
    [6, 4.5],
    [7, 3.9],
    [8, 3.4],
    [9, 3],
    [10, 2.7],
    [12, 2.3],
    [14, 1.9],
  ])('when an iron is sold as %d teeth to the inch, its pitch is %d mm', (teeth, pitchMm) => {
    const iron = DEFAULT_IRONS.find(({ teethPerInch }) => teethPerInch === teeth);
    expect(iron).toMatchObject({ pitchMm, name: `${pitchMm} mm` });
    expect(iron?.source).toContain('S106');
  });

  // The law 25.4 / (n - 0.5) is geometry (n teeth of some breadth, n - 1 gaps), and rough at the coarse end.
  test('when the rule of teeth to the inch is applied, it meets the table within a quarter of a millimetre', () => {
    for (const { teethPerInch, pitchMm } of DEFAULT_IRONS) {
      expect(Math.abs(ironPitchOfTeethMm(teethPerInch!) - pitchMm)).toBeLessThan(0.25);
    }
    const fine = DEFAULT_IRONS.filter(({ teethPerInch }) => [7, 8, 9, 10, 14].includes(teethPerInch!));
    for (const { teethPerInch, pitchMm } of fine) {
      expect(Math.abs(ironPitchOfTeethMm(teethPerInch!) - pitchMm)).toBeLessThan(0.05);
    }
  });

  test('when stitches are counted by the inch, an inch holds them exactly, and no iron of as many teeth agrees', () => {
    expect(pitchOfStitchesMm(8)).toBe(3.175);
    for (const { teethPerInch, pitchMm } of DEFAULT_IRONS) {
      expect(pitchMm - pitchOfStitchesMm(teethPerInch!)).toBeGreaterThan(0.05);
    }
  });
});
