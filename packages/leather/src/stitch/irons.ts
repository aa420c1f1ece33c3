import type { Iron } from '../model/stitch.js';
import { INCH_MM, timesFactor } from '../units/constants.js';

const GUIDE = 'hand-stitch community guide 2016 [S106]';

/**
 * The usual irons: what is sold as so many teeth to the inch, and the pitch that it has. The pitch is stored; measure
 * your own over ten teeth and write it into the workshop file.
 */
export const DEFAULT_IRONS: readonly Iron[] = (
  [
    [5, 5.4],
    [6, 4.5],
    [7, 3.9],
    [8, 3.4],
    [9, 3],
    [10, 2.7],
    [12, 2.3],
    [14, 1.9],
  ] as const
).map(([teethPerInch, pitchMm]) => ({ name: `${pitchMm} mm`, pitchMm, teethPerInch, source: GUIDE }));

const MM_PER_INCH = timesFactor(1, INCH_MM);

/**
 * The pitch of an iron with n teeth to the inch, by the rule 25.4 / (n - 0.5): n teeth of some breadth lie within an
 * inch, and between them n - 1 gaps. A rough rule (the table is off it by up to 0.25 mm), for checking and for asking back.
 */
export function ironPitchOfTeethMm(teethPerInch: number): number {
  return MM_PER_INCH / (teethPerInch - 0.5);
}

/** The pitch of n true stitches to the inch. */
export function pitchOfStitchesMm(stitchesPerInch: number): number {
  return MM_PER_INCH / stitchesPerInch;
}
