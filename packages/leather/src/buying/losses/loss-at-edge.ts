import { curveLength } from '@hidebound/geometry';
import type { CutSizeRule } from '../../model/workshop-rules.js';
import { madeUpHide } from '../hides/made-up-hide.js';

/** No strip is wider than leaves this share of the hide. */
const LEAST_LEFT = 0.1;

/**
 * What is lost at a hide's edge, on top of what the pieces take with what lies between them: a strip along the whole
 * outline that holds no piece. It is so many widths of the mean piece wide, and wider by the distance that every piece
 * keeps from the edge. So the share falls as the hide grows against the piece, with the square root of how many go
 * into it; published allowances for footwear fall the same way, read from tables (Boston 1922), or more slowly.
 * @param hide area and length of the outline, mm² and mm
 */
export function lossAtEdge(
  hide: { readonly areaMm2: number; readonly outlineMm: number },
  piece: { readonly widthMm: number; readonly strip: number; readonly edgeMm: number },
): number {
  const lost = (hide.outlineMm * (piece.strip * piece.widthMm + piece.edgeMm)) / hide.areaMm2;
  return 1 / Math.max(LEAST_LEFT, 1 - lost) - 1;
}

/** Outlines that are drawn to tell the length of the usual one. */
const OUTLINES = 4;
const SEED = 1;

/** The usual length of the outline of a cut, mm, told from trial hides of its row. */
export function outlineOfCut(rule: CutSizeRule, areaMm2: number): number {
  let sum = 0;
  for (let number = 1; number <= OUTLINES; number++) {
    const { outline } = madeUpHide(rule, {
      seed: SEED,
      number,
      areaMm2: { min: areaMm2, max: areaMm2 },
      usableShare: { min: 1, max: 1 },
    });
    sum += curveLength(outline);
  }
  return sum / OUTLINES;
}
