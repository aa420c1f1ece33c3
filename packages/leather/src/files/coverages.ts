import type { Coverage, WeighedCoverage } from '../model/workshop.js';
import { writeAreaSpan } from '../units/area-span.js';
import { leatherError } from '../words/refuse.js';
import { definedOnly } from './defined-only.js';
import type { WrittenCoverage } from './schema/written-coverage.js';
import type { WhereOf } from './validate-hide.js';

const OWN = 'own';
/** The source of a coverage that was weighed. */
export const MEASURED = 'measured';

/**
 * Coverages of a workshop file on top of the built-in ones: a product of the same name takes the built-in one's place.
 * @throws LeatherError where a bottle got heavier, or where the least is more than the most
 */
export function readCoverages(
  usual: readonly Coverage[],
  written: Readonly<Record<string, WrittenCoverage>>,
  where: WhereOf,
): Coverage[] {
  const own = Object.entries(written).map(([product, line]) => readCoverage(product, line, where));
  const byName = new Map(own.map((line) => [line.product, line]));
  const added = own.filter(({ product }) => !usual.some((line) => line.product === product));
  return [...usual.map((line) => byName.get(line.product) ?? line), ...added];
}

function readCoverage(product: string, written: WrittenCoverage, where: WhereOf): Coverage {
  const place = where(['coverages', product]);
  if ('from' in written) {
    const { from, to, source = OWN } = written;
    if (from > to) throw leatherError('coverage-reversed', { product, from, to }, place);
    return { product, minMlPerM2: from, maxMlPerM2: to, source };
  }
  const { before, after, over, gPerMl, source = MEASURED } = written;
  if (after >= before) throw leatherError('coverage-not-lighter', { product, before, after }, place);
  const weighed = definedOnly({ beforeG: before, afterG: after, overMm2: over, gPerMl });
  const mlPerM2 = weighedMlPerM2(weighed);
  return { product, minMlPerM2: mlPerM2, maxMlPerM2: mlPerM2, weighed, source };
}

const MM2_PER_M2 = 1e6;
/** Water’s; a product that is lighter or heavier says so. */
const USUAL_G_PER_ML = 1;

/** What a coat took, mL per m²: the bottle’s loss in g, as mL by its density, over the area. */
export function weighedMlPerM2({
  beforeG,
  afterG,
  overMm2,
  gPerMl = USUAL_G_PER_ML,
}: WeighedCoverage): number {
  return ((beforeG - afterG) / gPerMl) * (MM2_PER_M2 / overMm2);
}

export function writeCoverage({ minMlPerM2, maxMlPerM2, weighed, source }: Coverage) {
  if (weighed === undefined) return { from: minMlPerM2, to: maxMlPerM2, source };
  const { beforeG, afterG, overMm2, gPerMl } = weighed;
  const over = writeAreaSpan({ min: overMm2, max: overMm2 });
  return definedOnly({ before: beforeG, after: afterG, over, gPerMl, source });
}
