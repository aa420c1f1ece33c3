import { colourOdds } from './colour-odds.js';
import { windowMean } from './grid.js';
import { GROUND } from './known-ground.js';
import type { Learned } from './learn.js';
import { toFine, toLevel } from './level.js';
import type { Level } from './level.js';

/** A single small pixel's colour says at most this (logarithm of odds). */
const MOST_SAID = 4;
/**
 * What the coarse labels say to a small pixel: less than its own colour, more than a doubtful one. They are too coarse to
 * know of small holes in the leather, so there they say less.
 */
const COARSE_SHARE = 0.5;
const COARSE_MOST_FLOOR = 2.5;
const COARSE_MOST_HIDE = 1;
/**
 * Where strokes had a say, the colours of floor and leather are alike, and the labels know better than single pixels; but
 * a hole in the leather still has to show.
 */
const STROKES_SHARE = 1;
const STROKES_MOST_FLOOR = 3.5;
const STROKES_MOST_HIDE = 2;

/** The logarithm of the odds of leather over a finer level: colour of each pixel, and the coarse labels around it. */
export function oddsField(
  level: Level,
  ground: Uint8Array,
  coarse: Pick<Level, 'width' | 'height' | 'step'>,
  learned: Learned,
): Float32Array {
  const said = colourOdds(level, learned, MOST_SAID);
  const open = Float32Array.from(ground, (kind) => (kind === GROUND.open ? 1 : 0));
  const own = windowMean(level, said, open, 1, 0);
  const share = learned.byStrokes ? STROKES_SHARE : COARSE_SHARE;
  const mostFloor = learned.byStrokes ? STROKES_MOST_FLOOR : COARSE_MOST_FLOOR;
  const mostHide = learned.byStrokes ? STROKES_MOST_HIDE : COARSE_MOST_HIDE;
  for (let y = 0; y < level.height; y++)
    for (let x = 0; x < level.width; x++) {
      const pixel = y * level.width + x;
      const kind = ground[pixel]!;
      const log = coarseAt(coarse, learned.odds, toFine(level, x), toFine(level, y));
      if (kind === GROUND.unseen) own[pixel] = -MOST_SAID;
      else if (kind === GROUND.hide) own[pixel] = MOST_SAID;
      else if (kind === GROUND.floor) own[pixel] = -MOST_SAID;
      else if (kind === GROUND.paper) own[pixel] = log;
      else own[pixel]! += Math.max(-mostFloor, Math.min(mostHide, share * log));
    }
  return own;
}

function coarseAt(
  coarse: Pick<Level, 'width' | 'height' | 'step'>,
  odds: Float32Array,
  fineX: number,
  fineY: number,
): number {
  const x = Math.max(0, Math.min(coarse.width - 1.001, toLevel(coarse, fineX)));
  const y = Math.max(0, Math.min(coarse.height - 1.001, toLevel(coarse, fineY)));
  const i = Math.floor(x);
  const j = Math.floor(y);
  const u = x - i;
  const v = y - j;
  const at = j * coarse.width + i;
  const right = coarse.width > 1 ? 1 : 0;
  const down = coarse.height > 1 ? coarse.width : 0;
  return (
    (1 - v) * ((1 - u) * odds[at]! + u * odds[at + right]!) +
    v * ((1 - u) * odds[at + down]! + u * odds[at + down + right]!)
  );
}
