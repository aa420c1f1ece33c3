import { ringArea, ringPerimeter } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import { COLOUR_NUMBERS, lightOf, redOf, yellowOf } from './colour.js';
import { railOf } from './even-steps.js';
import type { Rail } from './even-steps.js';
import type { Learned } from './learn.js';
import type { Level } from './level.js';
import { lightAt } from './light.js';
import { logDensity, withFewerNumbers } from './mixture.js';
import type { Mixture } from './mixture.js';

/** A hole of 5 mm across has 20 mm²; the pixels at its edge look like leather in part. */
const LEAST_MM2 = 12;
/** A circle has 1, a square 0.79, a strip of four times its width 0.5: chalk lines and scars are strips. */
const ROUND = 0.6;
/** A tear may have any shape if it is as wide as this on the whole, mm: no chalk draws so broadly. */
const WIDE_MM = 14;
/** How far to either side of the edge the step from leather to floor is measured, and how far the whole difference. */
const NEAR_MM = 2.5;
const FAR_MM = 9;
/** Share of the whole difference that lies right at a cut edge; in a shine on the leather it comes by and by. */
const SUDDEN = 0.4;
/** A hole's ground may be as unlike the floor as the floor's rarest hundredth, and lie in shadow (colour.ts) besides. */
const UNLIKE = -9;
const DEEPEST_SHADOW = 45;
const SHADOW_STEP = 5;

/** What something like floor within the leather is. A strip is a line of chalk, a scar, or a piece of one. */
export type WithinLeather = 'opening' | 'strip' | 'other';

/**
 * Whether something like floor within the leather is a hole right through it, and no chalk, scar, stain or shine. The
 * ring and its islands of leather are in pixels of the level.
 */
export function judgeOpening(
  level: Level,
  learned: Learned,
  ring: Ring,
  islands: readonly Ring[],
): WithinLeather {
  const area = -ringArea(ring) - islands.reduce((sum, island) => sum + ringArea(island), 0);
  const rim = ringPerimeter(ring) + islands.reduce((sum, island) => sum + ringPerimeter(island), 0);
  const { pxPerMm } = level;
  if (area < LEAST_MM2 * pxPerMm * pxPerMm) return 'other';
  const isRound = (4 * Math.PI * area) / (rim * rim) >= ROUND;
  if (!isRound && (4 * area) / rim < WIDE_MM * pxPerMm) return 'strip';
  const rail = railOf(ring, Math.max(0.7, pxPerMm));
  const depth = (2 * area) / rim;
  const deep = Math.min(0.9 * depth, FAR_MM * pxPerMm);
  const core = meanAcross(level, learned, rail, 0.75 * deep, deep);
  return looksLikeFloor(core, learned) && isSudden(level, learned, rail, depth, core) ? 'opening' : 'other';
}

type Colour = Float32Array;

function looksLikeFloor(core: Colour, { floor }: Learned): boolean {
  const plain = withFewerNumbers(floor, COLOUR_NUMBERS);
  const best = peak(plain);
  const shaded = core.slice();
  for (let shade = 0; shade <= DEEPEST_SHADOW; shade += SHADOW_STEP) {
    shaded[0] = core[0]! + shade;
    if (logDensity(plain, shaded, 0) - best > UNLIKE) return true;
  }
  return false;
}

/** The density at its highest bell. */
function peak(mixture: Mixture): number {
  let best = -Infinity;
  for (let bell = 0; bell < mixture.count; bell++)
    best = Math.max(
      best,
      logDensity(
        mixture,
        Float32Array.from(mixture.means.subarray(bell * COLOUR_NUMBERS, (bell + 1) * COLOUR_NUMBERS)),
        0,
      ),
    );
  return best;
}

function isSudden(level: Level, learned: Learned, rail: Rail, depth: number, core: Colour): boolean {
  const near = NEAR_MM * level.pxPerMm;
  const inside = meanAcross(level, learned, rail, Math.min(near, depth), Math.min(near, depth));
  const outside = meanAcross(level, learned, rail, -near, -near);
  const far = meanAcross(level, learned, rail, -FAR_MM * 3 * level.pxPerMm, -FAR_MM * level.pxPerMm);
  return difference(inside, outside) >= SUDDEN * difference(core, far);
}

function difference(a: Colour, b: Colour): number {
  return Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
}

/** The mean colour from `from` to `to` pixels across the rail, into the hole above 0, into the leather below 0. */
function meanAcross(level: Level, { light }: Learned, rail: Rail, from: number, to: number): Colour {
  const mean = new Float32Array(COLOUR_NUMBERS);
  let count = 0;
  rail.points.forEach((p, i) => {
    for (let away = from; away <= to; away += 1) {
      const x = Math.round(p.x + away * rail.out[i]!.x);
      const y = Math.round(p.y + away * rail.out[i]!.y);
      if (x < 0 || y < 0 || x >= level.width || y >= level.height) continue;
      const pixel = y * level.width + x;
      mean[0]! += lightOf(level.lab, pixel) - lightAt(light, x / level.width, y / level.height);
      mean[1]! += redOf(level.lab, pixel);
      mean[2]! += yellowOf(level.lab, pixel);
      count += 1;
    }
  });
  return mean.map((sum) => sum / Math.max(1, count));
}
