import { boxUnion, ringBox } from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import type { Findings } from '../../findings.js';
import { tell } from '../../findings.js';
import { bestPhoto, floorErrorWithin } from './floor-error.js';
import { pxPerMmAt } from './places.js';
import type { SolvedFloor } from './solved-floor.js';
import { round1 } from './tell-floor.js';

/** Fewer pixels for a mm than this, and an edge is not found within a mm. */
const FEWEST_PX_PER_MM = 1;
/** References that reach over less than this share of the hide's length and width are small beside it. */
const SMALL_SHARE = 0.5;
/** The hide reaches farther beyond the references, on one side, than this share of its size. */
const BEYOND_SHARE = 0.25;
/** An error below this needs no advice, mm. */
const WORTH_TELLING_MM = 3;
/** Places looked at along each side of the box. */
const STEPS = 8;

/** What can be said of a part of the floor, such as where the hide lies: pixels, and how the references lie about it. */
export function tellWithin(
  floor: Pick<SolvedFloor, 'cameras' | 'references' | 'unsureness'>,
  box: Box,
  findings: Findings,
): void {
  const resolutions = placesIn(box).map((at) => {
    const photo = bestPhoto(floor.cameras, at);
    return photo === undefined ? undefined : pxPerMmAt(floor.cameras[photo]!, at);
  });
  const seen = resolutions.filter((value) => value !== undefined);
  const fewest = Math.min(...seen);
  if (seen.length > 0 && fewest < FEWEST_PX_PER_MM) {
    tell(findings, 'warning', 'too-few-pixels', { value: Math.round(fewest * 100) / 100 });
  }
  tellOfReach(floor, box, findings);
}

function tellOfReach(
  floor: Pick<SolvedFloor, 'cameras' | 'references' | 'unsureness'>,
  box: Box,
  findings: Findings,
): void {
  const worst = Math.max(0, ...floorErrorWithin(floor, box).at.map(({ mm }) => mm));
  if (worst < WORTH_TELLING_MM || floor.references.length === 0) return;
  const span = floor.references.map(({ ring }) => ringBox(ring)).reduce(boxUnion);
  const mm = round1(worst);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const covered = [(span.maxX - span.minX) / width, (span.maxY - span.minY) / height];
  const beyond = [
    (span.minX - box.minX) / width,
    (box.maxX - span.maxX) / width,
    (span.minY - box.minY) / height,
    (box.maxY - span.maxY) / height,
  ];
  const farOff = beyond.filter((share) => share > BEYOND_SHARE).length;
  const opposite = Math.min(beyond[0]!, beyond[1]!) > BEYOND_SHARE / 2;
  const opposed = opposite || Math.min(beyond[2]!, beyond[3]!) > BEYOND_SHARE / 2;
  if (farOff > 0 && !opposed) tell(findings, 'warning', 'references-to-one-side', { mm });
  else if (Math.min(...covered) < SMALL_SHARE) tell(findings, 'warning', 'references-too-small', { mm });
}

function placesIn(box: Box): Point[] {
  const places: Point[] = [];
  for (let row = 0; row <= STEPS; row++) {
    for (let column = 0; column <= STEPS; column++) {
      places.push({
        x: box.minX + ((box.maxX - box.minX) * column) / STEPS,
        y: box.minY + ((box.maxY - box.minY) * row) / STEPS,
      });
    }
  }
  return places;
}
