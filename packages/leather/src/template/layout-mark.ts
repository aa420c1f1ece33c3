import { sha256Hex } from '../hash/index.js';
import type { Layout } from '../model/layout.js';

/** Digits of a layout mark. */
const MARK_DIGITS = 6;

/**
 * Six hexadecimal digits that tell two layouts apart, also of one order and version: the beginning of the SHA-256 of
 * what lies where on which hide.
 */
export function layoutMark({ hides, pieces, placements, lanes, roughCuts }: Layout): string {
  const lies = {
    hides: hides.map(({ id, hash }) => [id, hash]),
    pieces: pieces.map(({ article, piece, hash }) => [article, piece, hash]),
    placements: placements.map((one) => [
      one.article,
      one.piece,
      one.set,
      one.copy,
      one.mirrored,
      one.hide,
      one.x,
      one.y,
      one.rotationDeg,
    ]),
    lanes,
    roughCuts: roughCuts.map(({ hide, outline }) => [hide, outline]),
  };
  return sha256Hex(JSON.stringify(lies)).slice(0, MARK_DIGITS);
}
