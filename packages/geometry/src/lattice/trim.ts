import type { Box, Point, Ring } from '../types/shape.js';
import { TRIM_WORK } from './constants.js';
import { bestOffset, pulledToEnd } from './offsets.js';
import { bestOf, createPattern, placesOf } from './pattern.js';
import type { Laid } from './pattern.js';
import type { Repeat } from './repeat.js';

/** One laid piece; numbers rounded as stored. */
export interface LaidPiece {
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
}

export interface TrimOptions {
  /** Rotations of the whole pattern to try, degrees with six decimals: see `patternRotations`. */
  readonly rotationsDeg: readonly number[];
  /** Where pieces may reach: the sheet's box, or that of the part that is to be filled. */
  readonly box: Box;
  /** Unit vector into the sheet from the end that is used up first. */
  readonly useFrom: Point;
  /** Pieces wanted; more are not laid. */
  readonly count: number;
  /** The piece's outer ring, in the item's frame: for how far it reaches. */
  readonly ring: Ring;
  /**
   * True if the piece may lie there: on the sheet, off voids and off what lies already, every rule kept. Asked with
   * numbers rounded as stored; must answer the same each time.
   */
  readonly fits: (x: number, y: number, rotationDeg: number) => boolean;
  /** Calls of `fits` at most, about; default 200,000. */
  readonly work?: number;
}

export interface TrimmedRepeat {
  /** From the end that is used up first: sorted by how far each piece reaches. */
  readonly pieces: readonly LaidPiece[];
  /** How far the last piece reaches, along `useFrom` from the sheet's (0, 0), in mm. */
  readonly reachMm: number;
  /** How the pattern was turned. */
  readonly patternDeg: number;
}

/**
 * Lays a repeat on a sheet: the rotation (of those given) and the offset of the pattern that take most pieces, and of
 * equals those whose last piece reaches least far from the end that is used up first. Offsets are looked at on an even
 * grid over one cell and wherever a piece touches the sheet's sides, as far as `fits` tells, so that a width that just
 * holds a whole number of rows is used; the best are climbed from and pulled to the end. All members keep the
 * distances of the repeat, whatever is left out. Deterministic. `undefined` if no piece fits.
 */
export function trimToContainer(repeat: Repeat, options: TrimOptions): TrimmedRepeat | undefined {
  let best: Laid | undefined;
  const share = (options.work ?? TRIM_WORK) / Math.max(1, options.rotationsDeg.length);
  for (const patternDeg of options.rotationsDeg) {
    const pattern = createPattern(repeat, patternDeg, options);
    best = bestOf(best, bestOffset(pattern, share, best));
  }
  if (best === undefined || best.places.length === 0) return undefined;
  const pulled = pulledToEnd(best);
  return {
    pieces: placesOf(pulled),
    reachMm: pulled.reachMm,
    patternDeg: pulled.pattern.patternDeg,
  };
}

/** The best of several repeats, laid as `trimToContainer` does; each is given an even part of the work. */
export function trimBestRepeat(
  repeats: readonly Repeat[],
  optionsOf: (repeat: Repeat) => TrimOptions,
): (TrimmedRepeat & { readonly repeat: Repeat }) | undefined {
  let best: (TrimmedRepeat & { readonly repeat: Repeat }) | undefined;
  for (const repeat of repeats) {
    const trimmed = trimToContainer(repeat, optionsOf(repeat));
    if (trimmed === undefined) continue;
    const isBetter =
      best === undefined ||
      trimmed.pieces.length > best.pieces.length ||
      (trimmed.pieces.length === best.pieces.length && trimmed.reachMm < best.reachMm);
    if (isBetter) best = { ...trimmed, repeat };
  }
  return best;
}
