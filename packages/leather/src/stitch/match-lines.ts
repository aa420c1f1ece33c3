import type { StitchMarks } from '../model/stitch.js';
import { awlSpread, stitchesIn, stretchesOf } from './awl-spread.js';
import type { Stretch } from './awl-spread.js';
import { ironHoles, ironSpread } from './iron-spread.js';
import type { LineWalk } from './line-walk.js';
import { gaveWay, marksOf } from './marks.js';
import type { Spread } from './marks.js';
import { marksAlone } from './marks-along.js';
import type { MarkRule } from './marks-along.js';

/** Lines that are sewn together, with as many holes on each. */
export interface MatchedMarks {
  /** Which line the others are eased to. */
  readonly main: number;
  readonly marks: readonly StitchMarks[];
}

/**
 * The same number of holes on every line of a seam.
 *
 * With an iron, lines that differ by no more than one pitch all get the iron's exact pitch, and their ends give. Where
 * they differ by more, the first line is pricked with the iron; on the others as many holes are spread evenly.
 * With an awl, the line with the most corners is divided first; a line with as many stretches is divided stretch by
 * stretch alike (whichever way round it was drawn), any other evenly.
 */
export function matchedMarks(walks: readonly LineWalk[], rule: MarkRule): MatchedMarks {
  if (walks.length === 1) return { main: 0, marks: [marksAlone(walks[0]!, rule)] };
  return rule.with === 'iron' ? matchWithIron(walks, rule) : matchWithAwl(walks, rule);
}

function matchWithIron(walks: readonly LineWalk[], rule: MarkRule): MatchedMarks {
  const { pitchMm, cornerDeg } = rule;
  const lengths = walks.map(({ lengthMm }) => lengthMm);
  if (Math.max(...lengths) - Math.min(...lengths) <= pitchMm) {
    const counts = walks.map((walk) => ironHoles(walk, rule));
    const holes = rule.gives === 'length' ? counts[0]! : Math.min(...counts);
    const marks = walks.map((walk) => marksOf(walk, ironSpread(walk, holes, rule), pitchMm, cornerDeg));
    return { main: 0, marks };
  }
  const [first, ...others] = walks;
  const main = marksAlone(first!, rule);
  const eased = others.map((walk) => marksOf(walk, evenSpread(walk, main), pitchMm, cornerDeg));
  return { main: 0, marks: [main, ...eased] };
}

function matchWithAwl(walks: readonly LineWalk[], rule: MarkRule): MatchedMarks {
  const { pitchMm, cornerDeg } = rule;
  const stretches = walks.map((walk) => stretchesOf(walk, rule));
  const most = Math.max(...stretches.map(({ length }) => length));
  const main = stretches.findIndex(({ length }) => length === most);
  const first = walks[main]!;
  const mainMarks = marksAlone(first, rule);
  const stitches = stretches[main]!.map(({ lengthMm }) => stitchesIn(lengthMm, pitchMm));
  const marks = walks.map((walk, i) => {
    if (i === main) return mainMarks;
    const own = stretches[i]!;
    const isAlike = walk.isClosed === first.isClosed && own.length === most && most > 1;
    const spread = isAlike
      ? alikeSpread(walk, own, { stretches: stretches[main]!, stitches, mainMm: first.lengthMm, pitchMm })
      : evenSpread(walk, mainMarks);
    return marksOf(walk, spread, pitchMm, cornerDeg);
  });
  return { main, marks };
}

/** As many holes as the main line has, evenly, with end gaps in proportion to its own. */
function evenSpread(walk: LineWalk, main: StitchMarks): Spread {
  const count = main.holes.length;
  const gave = gaveWay('gathering', walk.lengthMm - main.lengthMm);
  const evenly = (fromMm: number, pitchMm: number): Spread => ({
    alongMm: Array.from({ length: count }, (_, i) => fromMm + i * pitchMm),
    gave,
  });
  if (walk.isClosed) return evenly(0, walk.lengthMm / count);
  // The ends of an open line meet where it goes around a closed one: half a stitch each.
  if (main.isClosed) return evenly(walk.lengthMm / count / 2, walk.lengthMm / count);
  const scale = walk.lengthMm / main.lengthMm;
  return evenly(main.startGapMm * scale, (main.sewnMm * scale) / (count - 1));
}

interface MainStretches {
  readonly stretches: readonly Stretch[];
  readonly stitches: readonly number[];
  readonly mainMm: number;
  readonly pitchMm: number;
}

/** Corner to corner, each stretch gets the stitches of the stretch that it is sewn to. */
function alikeSpread(walk: LineWalk, own: readonly Stretch[], main: MainStretches): Spread {
  const partner = bestPairing(
    own.map(({ lengthMm }) => lengthMm),
    main.stretches.map(({ lengthMm }) => lengthMm),
    walk.isClosed,
  );
  const stitches = own.map((_, i) => main.stitches[partner(i)]!);
  const spread = awlSpread(walk, own, stitches, main.pitchMm);
  const gathered = gaveWay('gathering', walk.lengthMm - main.mainMm);
  return gathered.what === 'nothing' ? spread : { ...spread, gave: gathered };
}

/** Which stretch of the one line belongs to which of the other: as drawn or the other way round, turned if closed. */
function bestPairing(
  own: readonly number[],
  other: readonly number[],
  isClosed: boolean,
): (i: number) => number {
  const count = own.length;
  const turns = isClosed ? own.map((_, i) => i) : [0];
  const candidates = turns.flatMap((turn) => [
    (i: number) => (i + turn) % count,
    (i: number) => (2 * count - 1 - i - turn) % count,
  ]);
  const off = (pairing: (i: number) => number): number =>
    own.reduce((sum, lengthMm, i) => sum + Math.abs(lengthMm - other[pairing(i)]!), 0);
  return candidates.reduce((best, each) => (off(each) < off(best) ? each : best));
}
