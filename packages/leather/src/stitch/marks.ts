import type { StitchGave, StitchHole, StitchMarks } from '../model/stitch.js';
import { cornersOf, placeAlong } from './line-walk.js';
import type { Corner, LineWalk } from './line-walk.js';
import { HOLE_IN_CORNER_MM, NOTHING_GAVE_MM, SAME_PITCH_MM } from './stitch-constants.js';

/** Where the holes of a line lie, in mm along it, ascending, and what gave way for it. */
export interface Spread {
  readonly alongMm: readonly number[];
  readonly gave: StitchGave;
}

/** What gave, or nothing where it is too little to tell. */
export function gaveWay(what: StitchGave['what'], changeMm: number): StitchGave {
  const leastMm = what === 'pitch' ? SAME_PITCH_MM : NOTHING_GAVE_MM;
  return Math.abs(changeMm) < leastMm ? { what: 'nothing', changeMm: 0 } : { what, changeMm };
}

/** The holes of a spread as points of the line. */
export function marksOf(walk: LineWalk, spread: Spread, pitchMm: number, cornerDeg: number): StitchMarks {
  const { alongMm } = spread;
  const corners = cornersOf(walk, cornerDeg);
  const holes = alongMm.map((mm) => holeAt(walk, mm, corners));
  const first = alongMm[0]!;
  const last = alongMm[alongMm.length - 1]!;
  return {
    isClosed: walk.isClosed,
    lengthMm: walk.lengthMm,
    sewnMm: walk.isClosed ? walk.lengthMm : last - first,
    holes,
    pitchMm,
    usedPitchMm: usedPitch(walk, alongMm),
    startGapMm: walk.isClosed ? 0 : first,
    endGapMm: walk.isClosed ? 0 : walk.lengthMm - last,
    gave: spread.gave,
    cornersMissed: corners.length - holes.filter(({ isCorner }) => isCorner).length,
  };
}

function holeAt(walk: LineWalk, mm: number, corners: readonly Corner[]): StitchHole {
  const { at, angleDeg } = placeAlong(walk, mm);
  const corner = corners.find((each) => Math.abs(distanceAlong(walk, each.alongMm, mm)) <= HOLE_IN_CORNER_MM);
  return corner === undefined
    ? { at, angleDeg, isCorner: false }
    : { at, angleDeg: corner.angleDeg, isCorner: true };
}

/** From one place to another along the line, around a closed one by the shorter way. */
function distanceAlong({ isClosed, lengthMm }: LineWalk, a: number, b: number): number {
  const plain = b - a;
  return isClosed ? plain - Math.round(plain / lengthMm) * lengthMm : plain;
}

function usedPitch({ isClosed, lengthMm }: LineWalk, alongMm: readonly number[]): StitchMarks['usedPitchMm'] {
  const stitches = alongMm.slice(1).map((mm, i) => mm - alongMm[i]!);
  if (isClosed) stitches.push(lengthMm - (alongMm[alongMm.length - 1]! - alongMm[0]!));
  const sum = stitches.reduce((all, each) => all + each, 0);
  return { min: Math.min(...stitches), max: Math.max(...stitches), mean: sum / stitches.length };
}
