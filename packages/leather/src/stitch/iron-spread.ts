import type { StitchRule } from '../model/stitch.js';
import type { LineWalk } from './line-walk.js';
import { gaveWay } from './marks.js';
import type { Spread } from './marks.js';
import { PITCH_ROUNDING } from './stitch-constants.js';

/** What an iron's marks depend on. */
export type IronRule = Pick<StitchRule, 'pitchMm' | 'gives' | 'endGapMm'>;

/**
 * How many holes an iron makes along the line. An open line holds whole pitches only, at least one; where its length
 * gives, the nearest number. Around a closed line the nearest number goes, at least two.
 */
export function ironHoles({ isClosed, lengthMm }: LineWalk, rule: IronRule): number {
  if (isClosed) return Math.max(2, Math.round(lengthMm / rule.pitchMm));
  const pitches = (lengthMm - 2 * rule.endGapMm) / rule.pitchMm;
  const whole = rule.gives === 'length' ? Math.round(pitches) : Math.floor(pitches + PITCH_ROUNDING);
  return Math.max(1, whole) + 1;
}

/**
 * So many holes, each exactly one pitch along the line from the one before. What is left over goes to the end gaps,
 * or the line would have to be longer or shorter; around a closed line, the last stitch is.
 */
export function ironSpread(walk: LineWalk, holes: number, rule: IronRule): Spread {
  const { isClosed, lengthMm } = walk;
  const { pitchMm, endGapMm, gives } = rule;
  const fromTo = (firstMm: number): number[] =>
    Array.from({ length: holes }, (_, i) => firstMm + i * pitchMm);
  if (isClosed) {
    const overMm = lengthMm - holes * pitchMm;
    const gave = gives === 'length' ? gaveWay('length', -overMm) : gaveWay('last stitch', overMm);
    return { alongMm: fromTo(0), gave };
  }
  const spareMm = lengthMm - 2 * endGapMm - (holes - 1) * pitchMm;
  switch (gives) {
    case 'length':
      return { alongMm: fromTo(endGapMm), gave: gaveWay('length', -spareMm) };
    case 'end':
      return { alongMm: fromTo(endGapMm), gave: gaveWay('end gap', spareMm) };
    case 'start':
      return { alongMm: fromTo(endGapMm + spareMm), gave: gaveWay('end gap', spareMm) };
    case 'both ends':
      return { alongMm: fromTo(endGapMm + spareMm / 2), gave: gaveWay('end gap', spareMm) };
  }
}
