import type { StitchRule } from '../model/stitch.js';
import { cornersOf } from './line-walk.js';
import type { LineWalk } from './line-walk.js';
import { gaveWay } from './marks.js';
import type { Spread } from './marks.js';

/** What an awl's marks depend on. */
export type AwlRule = Pick<StitchRule, 'pitchMm' | 'cornerDeg' | 'endGapMm'>;

/** A run of a line between two places that get a hole: ends and corners. */
export interface Stretch {
  readonly fromMm: number;
  readonly lengthMm: number;
}

/**
 * The line cut at what must get a hole. A closed line without corners is one stretch from its start around; with
 * corners it begins at the first of them.
 */
export function stretchesOf(walk: LineWalk, rule: Pick<AwlRule, 'cornerDeg' | 'endGapMm'>): Stretch[] {
  const { isClosed, lengthMm } = walk;
  const corners = cornersOf(walk, rule.cornerDeg).map(({ alongMm }) => alongMm);
  const from = isClosed ? (corners[0] ?? 0) : rule.endGapMm;
  const to = isClosed ? from + lengthMm : lengthMm - rule.endGapMm;
  const stops = [from, ...corners.filter((mm) => mm > from && mm < to), to];
  return stops.slice(1).map((stop, i) => ({ fromMm: stops[i]!, lengthMm: stop - stops[i]! }));
}

/** The number of stitches whose pitch comes nearest to the one that is wanted, at least one. */
export function stitchesIn(lengthMm: number, pitchMm: number): number {
  return Math.max(1, Math.round(lengthMm / pitchMm));
}

/** Stretch by stretch so many stitches, each of a stretch as long as the others of it. */
export function awlSpread(
  walk: LineWalk,
  stretches: readonly Stretch[],
  stitches: readonly number[],
  pitchMm: number,
): Spread {
  const alongMm = stretches.flatMap(({ fromMm, lengthMm }, i) =>
    Array.from({ length: stitches[i]! }, (_, k) => fromMm + (lengthMm * k) / stitches[i]!),
  );
  const last = stretches[stretches.length - 1]!;
  if (!walk.isClosed) alongMm.push(last.fromMm + last.lengthMm);
  const changes = stretches.map(({ lengthMm }, i) => lengthMm / stitches[i]! - pitchMm);
  const most = changes.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  return { alongMm, gave: gaveWay('pitch', most) };
}
