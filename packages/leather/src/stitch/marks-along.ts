import type { Curve } from '@hidebound/geometry';
import type { StitchMarks, StitchRule } from '../model/stitch.js';
import { leatherError } from '../words/refuse.js';
import { trimmed } from '../units/length.js';
import { awlSpread, stitchesIn, stretchesOf } from './awl-spread.js';
import { ironHoles, ironSpread } from './iron-spread.js';
import { walkLine } from './line-walk.js';
import type { LineWalk } from './line-walk.js';
import { marksOf } from './marks.js';
import { PITCH_ROUNDING } from './stitch-constants.js';

/** What the marks of one line depend on. */
export type MarkRule = Pick<
  StitchRule,
  'pitchMm' | 'with' | 'gives' | 'adjustShare' | 'cornerDeg' | 'endGapMm'
>;

/** What a line is called where it is refused. */
export interface LineName {
  readonly article?: string;
  readonly piece: string;
  readonly line: string;
}

/**
 * The holes along one line that is sewn alone: with an iron exactly one pitch apart along the line, with an awl
 * evenly between ends and corners.
 * @throws LeatherError `stitch-line-too-short` if the line does not hold one stitch
 */
export function stitchMarks(curve: Curve, rule: MarkRule, name: LineName): StitchMarks {
  const walk = walkLine(curve);
  refuseTooShort(walk, rule, name);
  return marksAlone(walk, rule);
}

/** The same for a line that is known to be long enough. */
export function marksAlone(walk: LineWalk, rule: MarkRule): StitchMarks {
  const { pitchMm, cornerDeg } = rule;
  if (rule.with === 'iron')
    return marksOf(walk, ironSpread(walk, ironHoles(walk, rule), rule), pitchMm, cornerDeg);
  const stretches = stretchesOf(walk, rule);
  const stitches = stretches.map(({ lengthMm }) => stitchesIn(lengthMm, pitchMm));
  return marksOf(walk, awlSpread(walk, stretches, atLeastTwo(walk, stitches), pitchMm), pitchMm, cornerDeg);
}

/** One hole alone is no seam, also around a closed line. */
function atLeastTwo({ isClosed }: LineWalk, stitches: readonly number[]): readonly number[] {
  return isClosed && stitches.length === 1 ? [Math.max(2, stitches[0]!)] : stitches;
}

/** @throws LeatherError `stitch-line-too-short` */
export function refuseTooShort(walk: LineWalk, rule: MarkRule, name: LineName): void {
  const shortestMm = rule.with === 'awl' ? rule.pitchMm * (1 - rule.adjustShare) : rule.pitchMm;
  const roomMm = walk.isClosed ? walk.lengthMm : walk.lengthMm - 2 * rule.endGapMm;
  if (roomMm >= shortestMm * (1 - PITCH_ROUNDING)) return;
  const { article, piece, line } = name;
  throw leatherError('stitch-line-too-short', {
    line,
    piece,
    ...(article === undefined ? {} : { article }),
    lengthMm: trimmed(walk.lengthMm, 2),
    pitchMm: trimmed(rule.pitchMm, 2),
    endGapMm: walk.isClosed ? '0' : trimmed(rule.endGapMm, 2),
  });
}
