import { distanceBetween, ringCentroid } from '@hidebound/geometry';
import type { RoughCutBlock } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { frameBetween } from './frame.js';
import type { SettingFrame } from './frame.js';
import type { RoughCutSetting } from './model.js';
import { markAt, pieceSetting } from './piece-setting.js';
import type { PlacedCopy } from './placed-copy.js';

/** Where a rough cut goes, corner by corner, and within it its pieces, measured from its longest side. */
export function roughCutSetting(
  block: RoughCutBlock,
  frame: SettingFrame,
  copies: ReadonlyMap<string, PlacedCopy>,
): RoughCutSetting {
  const baseSide = longestSide(block);
  const own = roughCutFrame(block, baseSide);
  return {
    id: block.id,
    corners: block.outline.map((at) => markAt(frame, at)),
    baseSide,
    pieces: block.members
      .flatMap((copy) => copies.get(pieceCopyKey(copy)) ?? [])
      // Flaws are on the hide as it was; on the prepared block they are under the dye.
      .map((placed) => pieceSetting(placed, own, [])),
  };
}

/** The frame of a rough cut's own side: into the block. */
export function roughCutFrame(
  { outline }: Pick<RoughCutBlock, 'outline'>,
  [from, to]: readonly [number, number],
): SettingFrame {
  return frameBetween(outline[from]!, outline[to]!, ringCentroid(outline));
}

function longestSide({ outline }: RoughCutBlock): readonly [number, number] {
  let best = 0;
  const length = (i: number): number => distanceBetween(outline[i]!, outline[(i + 1) % outline.length]!);
  outline.forEach((_, i) => {
    if (length(i) > length(best)) best = i;
  });
  return [best, (best + 1) % outline.length];
}
