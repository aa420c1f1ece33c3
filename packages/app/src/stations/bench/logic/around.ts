import { curveBox, transformCurve } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import { pieceCopyKey, placementTransform } from '@hidebound/leather';
import type { Layout, PiecePlacement } from '@hidebound/leather';
import { pieceOf } from '../../../drawing/piece-layer.js';
import type { WorkItem } from './order-of-work.js';

/** So much of its size is seen around a piece, and never less than this, mm: one has to see where on the hide it lies. */
const AROUND_SHARE = 0.7;
const LEAST_AROUND_MM = 70;

/** The part of the hide that is shown for an item; undefined where nothing of it is drawn. */
export function boxAround(layout: Layout, item: WorkItem): Box | undefined {
  const own = itemBox(layout, item);
  if (own === undefined) return undefined;
  const air = Math.max(LEAST_AROUND_MM, AROUND_SHARE * Math.min(own.maxX - own.minX, own.maxY - own.minY));
  return { minX: own.minX - air, minY: own.minY - air, maxX: own.maxX + air, maxY: own.maxY + air };
}

function itemBox(layout: Layout, item: WorkItem): Box | undefined {
  if (item.kind === 'piece') return aroundAll(placedBoxes(layout, [item.placement]));
  const { of } = item.step;
  const block = layout.roughCuts.find(({ id, hide }) => id === of && hide === item.hide);
  if (block !== undefined)
    return aroundAll(block.outline.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
  const keys = new Set(item.before);
  return aroundAll(
    placedBoxes(
      layout,
      layout.placements.filter((placement) => keys.has(pieceCopyKey(placement))),
    ),
  );
}

function placedBoxes(layout: Layout, placements: readonly PiecePlacement[]): Box[] {
  return placements.flatMap((placement) => {
    const piece = pieceOf(layout, placement);
    return piece === undefined
      ? []
      : [curveBox(transformCurve(placementTransform(placement), piece.shape.cut))];
  });
}

function aroundAll(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  return {
    minX: Math.min(...boxes.map(({ minX }) => minX)),
    minY: Math.min(...boxes.map(({ minY }) => minY)),
    maxX: Math.max(...boxes.map(({ maxX }) => maxX)),
    maxY: Math.max(...boxes.map(({ maxY }) => maxY)),
  };
}
