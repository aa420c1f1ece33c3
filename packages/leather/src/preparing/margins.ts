import type { Span } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import type { PreparedBlock } from './blocks.js';

/** The room that a preparation asks around its pieces, and what the layout gives them. */
export interface MarginNeed {
  /** What the largest block asks for, at least; its margin must not be less. */
  readonly needMm: number;
  /** The least that a rough cut has; absent where hides are prepared whole. */
  readonly hasMm?: number;
  /** Rough cuts whose margin is less than their own need. */
  readonly tooSmall: readonly { readonly id: string; readonly hasMm: number; readonly needMm: number }[];
  /** By how much the longest piece may get shorter. */
  readonly shrinkageMm: Span;
}

const PERCENT = 100;

/**
 * Margins: so much for pieces that are only dyed, more for those that are tooled, moulded or large, and never less than
 * a share of the piece’s length. (Common practice, no source; figures of the workshop.)
 */
export function marginNeed(
  blocks: readonly PreparedBlock[],
  isWorked: boolean,
  workshop: Pick<Workshop, 'figures'>,
): MarginNeed {
  const needOf = ({ longestMm }: PreparedBlock): number => leastMargin(longestMm, isWorked, workshop);
  const rough = blocks.flatMap((block) =>
    block.marginMm === undefined ? [] : [{ id: block.id, hasMm: block.marginMm, needMm: needOf(block) }],
  );
  const longest = Math.max(0, ...blocks.map(({ longestMm }) => longestMm));
  const shrinkage = figureOf(workshop, 'shrinkage, wetted and dried').value;
  return {
    needMm: Math.max(0, ...blocks.map(needOf)),
    ...(rough.length === 0 ? {} : { hasMm: Math.min(...rough.map(({ hasMm }) => hasMm)) }),
    tooSmall: rough.filter(({ hasMm, needMm }) => hasMm < needMm),
    shrinkageMm: {
      min: (longest * shrinkage.min) / PERCENT,
      max: (longest * shrinkage.max) / PERCENT,
    },
  };
}

/** Least margin of a block whose longest piece is so long, mm. */
export function leastMargin(
  longestMm: number,
  isWorked: boolean,
  workshop: Pick<Workshop, 'figures'>,
): number {
  const figure = (name: string): Span => figureOf(workshop, name).value;
  const isLarge = longestMm >= figure('large piece').min;
  const plain = figure(
    isWorked || isLarge ? 'margin of a rough cut, tooled or moulded' : 'margin of a rough cut',
  );
  return Math.max(plain.min, (longestMm * figure('margin as a share').min) / PERCENT);
}
