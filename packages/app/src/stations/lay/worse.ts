import type { Layout } from '@hidebound/leather';
import type { Run } from './table.js';

/** Fewer pieces, or as many on more leather, than what lay there and was good; what she asked to be filled up is hers. */
export function isWorse(
  {
    wish,
    isBeforeGood,
    beforeMm2 = 0,
    beforeLaid = 0,
  }: Pick<Run, 'wish' | 'isBeforeGood' | 'beforeMm2' | 'beforeLaid'>,
  { placements, yield: { total } }: Pick<Layout, 'placements' | 'yield'>,
): boolean {
  if (wish !== 'anew' || !isBeforeGood) return false;
  if (placements.length !== beforeLaid) return placements.length < beforeLaid;
  return total.usedUpMm2 > beforeMm2;
}
