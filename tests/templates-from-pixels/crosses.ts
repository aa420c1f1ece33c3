import { isBlack } from './bitmap.js';
import type { Bitmap, Point } from './bitmap.js';
import { emptyEquations, observe, solve } from './least-squares.js';

/** How far from where it is expected a cross is looked for, mm. */
const SEARCH = 4;
/** Half of the length of a line of a cross that is asked to be black, mm; it is 4. */
const ARM = 3.6;
const CIRCLE_RADIUS = 2;
const CIRCLE_POINTS = 72;
const BLACK_SHARE = 0.85;
/** The circle's line is 0.25 mm wide; more than this is crossed by something, mm. */
const LINE_MOST = 0.4;

/** Finds the centre of a corner cross near a place; all in pixels, to a fraction of one. */
export function findCross(bitmap: Bitmap, near: Point, pxPerMm: number): Point | undefined {
  let best: Point | undefined;
  let bestShare = BLACK_SHARE;
  for (const centre of crossings(bitmap, near, pxPerMm)) {
    const share = circleShare(bitmap, centre, pxPerMm);
    if (share <= bestShare) continue;
    best = centre;
    bestShare = share;
  }
  return best === undefined ? undefined : refine(bitmap, best, pxPerMm);
}

/** Pixels in which a level and an upright black line of twice the arm cross. */
function* crossings(bitmap: Bitmap, near: Point, pxPerMm: number): Generator<Point> {
  const arm = Math.round(ARM * pxPerMm);
  const half = Math.round(SEARCH * pxPerMm);
  const size = 2 * (half + arm) + 1;
  const x0 = Math.round(near.x) - half - arm;
  const y0 = Math.round(near.y) - half - arm;
  // Black pixels before each place, along rows and down columns.
  const alongRow = new Int32Array(size * (size + 1));
  const downColumn = new Int32Array((size + 1) * size);
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const black = isBlack(bitmap, x0 + x, y0 + y) ? 1 : 0;
      alongRow[y * (size + 1) + x + 1] = alongRow[y * (size + 1) + x]! + black;
      downColumn[(y + 1) * size + x] = downColumn[y * size + x]! + black;
    }
  }
  const least = BLACK_SHARE * (2 * arm + 1);
  for (let y = arm; y < size - arm; y++) {
    for (let x = arm; x < size - arm; x++) {
      const level = alongRow[y * (size + 1) + x + arm + 1]! - alongRow[y * (size + 1) + x - arm]!;
      if (level < least) continue;
      const upright = downColumn[(y + arm + 1) * size + x]! - downColumn[(y - arm) * size + x]!;
      if (upright >= least) yield { x: x0 + x + 0.5, y: y0 + y + 0.5 };
    }
  }
}

function circleShare(bitmap: Bitmap, centre: Point, pxPerMm: number): number {
  let black = 0;
  for (let i = 0; i < CIRCLE_POINTS; i++) {
    const angle = (2 * Math.PI * i) / CIRCLE_POINTS;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    if (isBlack(bitmap, centre.x + CIRCLE_RADIUS * pxPerMm * x, centre.y + CIRCLE_RADIUS * pxPerMm * y))
      black++;
  }
  return black / CIRCLE_POINTS;
}

/**
 * The centre of the circle that fits best to the middle of its line. The lines of the cross say nothing here: an edge
 * of the layout that runs along one of them hides it over its whole length, but never the whole circle.
 */
function refine(bitmap: Bitmap, rough: Point, pxPerMm: number): Point | undefined {
  let centre = rough;
  for (let round = 0; round < ROUNDS; round++) {
    // Distance from the centre in a direction: radius + dx · cos + dy · sin.
    const equations = emptyEquations(3);
    let seen = 0;
    for (let i = 0; i < CIRCLE_POINTS; i++) {
      const angle = (2 * Math.PI * i) / CIRCLE_POINTS;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const radius = middleOfRing(
        (r) => isBlack(bitmap, centre.x + r * pxPerMm * cos, centre.y + r * pxPerMm * sin),
        round === 0 ? WIDE : NARROW,
      );
      if (radius === undefined) continue;
      seen++;
      observe(
        equations,
        [
          [0, cos],
          [1, sin],
          [2, 1],
        ],
        radius,
      );
    }
    if (seen < LEAST_SEEN) return undefined;
    const [dx, dy] = solve(equations) as unknown as [number, number];
    centre = { x: centre.x + dx * pxPerMm, y: centre.y + dy * pxPerMm };
  }
  return centre;
}

const ROUNDS = 4;
/** Directions in which the ring must be seen alone, of 72: a quarter. */
const LEAST_SEEN = 18;
/** How far from its radius the ring is looked for, mm: wide while the centre is rough. */
const [WIDE, NARROW] = [0.5, 0.25];
const STEP = 0.01;

/** Where, on a ray from the centre, the middle of the one thin black stretch near the circle is, mm. */
function middleOfRing(black: (radius: number) => boolean, reach: number): number | undefined {
  let [from, to, stretches] = [0, 0, 0];
  let was = false;
  for (let r = CIRCLE_RADIUS - reach; r <= CIRCLE_RADIUS + reach; r += STEP) {
    const is = black(r);
    if (is && !was) {
      stretches++;
      from = r - STEP / 2;
    }
    if (is) to = r + STEP / 2;
    was = is;
  }
  const isCutOff = from < CIRCLE_RADIUS - reach || was;
  return stretches !== 1 || isCutOff || to - from > LINE_MOST ? undefined : (from + to) / 2;
}
