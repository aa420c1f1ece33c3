import { regionBox, roundCoordinate } from '@hidebound/geometry';
import type { CopyRef, NestProblem, Random, RuleName } from '@hidebound/geometry';
import { judgeMove, lockedProblem, movePiece, openBench } from '@hidebound/geometry/live';
import type { LockedCopy, SheetPlace } from '@hidebound/geometry/live';

/** Places that are tried before a copy is left to the search, and copies that are fixed at most. */
const TRIES = 150;
const MOST_FIXED = 4;

/** Rules that someone may accept by hand when a copy is fixed: of the leather, not of other pieces. */
const ACCEPTABLE: readonly RuleName[] = ['looks', 'strength', 'zone', 'angle', 'thickness', 'void'];

/** The problem with some copies of first sets fixed at random places: most of them valid, some with rules accepted. */
export function withFixed(random: Random, problem: NestProblem): NestProblem {
  let bench = openBench(problem, []);
  const locked: LockedCopy[] = [];
  // What is fixed stays, even where the rest of its set finds no room: someone has to have accepted that.
  const ownSet: readonly RuleName[] = problem.objective.mode === 'sets' ? ['set'] : [];
  const copies = problem.setKinds.flatMap(({ members }) =>
    members.map(({ item }): CopyRef => ({ item, set: 1, copy: 1 })),
  );
  for (const copy of copies) {
    if (locked.length >= MOST_FIXED || random.next() < 0.3) continue;
    const bears: readonly RuleName[] = random.next() < 0.25 ? ACCEPTABLE : [];
    for (let tries = 0; tries < TRIES; tries++) {
      const place = randomPlace(random, problem);
      const broken = judgeMove(bench, copy, place).map(({ rule }) => rule);
      if (!broken.every((rule) => bears.includes(rule))) continue;
      bench = movePiece(bench, copy, place);
      locked.push({ ...copy, accepted: [...new Set([...broken, ...ownSet])] });
      break;
    }
  }
  return lockedProblem(problem, bench.answer.placements, locked);
}

function randomPlace(random: Random, { sheets }: NestProblem): SheetPlace {
  const sheet = sheets[random.integer(sheets.length)]!;
  const { minX, minY, maxX, maxY } = regionBox(sheet.region);
  return {
    sheet: sheet.id,
    x: roundCoordinate(random.between(minX, maxX)),
    y: roundCoordinate(random.between(minY, maxY)),
    rotationDeg: random.next() < 0.5 ? 90 * random.integer(4) : roundCoordinate(random.between(0, 360)),
  };
}
