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
  const open = new Float32Array(ground.length);
  for (let i = 0; i < open.length; i++) if (ground[i] === GROUND.open) open[i] = 1;
  const own = windowMean(level, said, open, 1, 0);
  const share = learned.byStrokes ? STROKES_SHARE : COARSE_SHARE;
  const mostFloor = learned.byStrokes ? STROKES_MOST_FLOOR : COARSE_MOST_FLOOR;
  const mostHide = learned.byStrokes ? STROKES_MOST_HIDE : COARSE_MOST_HIDE;
  const across = Array.from({ length: level.width }, (_, x) =>
    between(coarse, toFine(level, x), coarse.width),
  );
  const lefts = Int32Array.from(across, ({ first }) => first);
  const shares = Float64Array.from(across, ({ share }) => share);
  const { odds } = learned;
  const right = coarse.width > 1 ? 1 : 0;
  const down = coarse.height > 1 ? coarse.width : 0;
  for (let y = 0; y < level.height; y++) {
    const { first: top, share: v } = between(coarse, toFine(level, y), coarse.height);
    for (let x = 0; x < level.width; x++) {
      const pixel = y * level.width + x;
      const kind = ground[pixel]!;
      const at = top * coarse.width + lefts[x]!;
      const u = shares[x]!;
      const log =
        (1 - v) * ((1 - u) * odds[at]! + u * odds[at + right]!) +
        v * ((1 - u) * odds[at + down]! + u * odds[at + down + right]!);
      if (kind === GROUND.unseen) own[pixel] = -MOST_SAID;
      else if (kind === GROUND.hide) own[pixel] = MOST_SAID;
      else if (kind === GROUND.floor) own[pixel] = -MOST_SAID;
      else if (kind === GROUND.paper) own[pixel] = log;
      else own[pixel]! += Math.max(-mostFloor, Math.min(mostHide, share * log));
    }
  }
  return own;
}

/** Which pixel of the coarse level comes before a place along one axis, and how far on towards the next one it lies. */
function between(
  coarse: Pick<Level, 'step'>,
  fine: number,
  size: number,
): { readonly first: number; readonly share: number } {
  const place = Math.max(0, Math.min(size - 1.001, toLevel(coarse, fine)));
  const first = Math.floor(place);
  return { first, share: place - first };
}
