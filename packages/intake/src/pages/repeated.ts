import type { Figure } from './figures.js';
import { REPEATED_SHARE, SAME_PLACE_MM } from './limits.js';
import { boxMiddle } from './vectors.js';
import type { Box } from '@hidebound/geometry';

/** Something that may stand at the same place of several pages. */
export interface Placed {
  readonly page: number;
  readonly kind: string;
  readonly box: Box;
  readonly lines: readonly number[];
}

export function placedFigure(page: number, { shape, box, lines }: Figure): Placed {
  return { page, kind: shape, box, lines };
}

/** Those that stand at the same place of two pages at least, and of a fair share of all pages with content. */
export function repeatedAmong(
  placed: readonly Placed[],
  pageCount: number,
  share = REPEATED_SHARE,
): Placed[] {
  const needed = Math.max(2, Math.ceil(share * pageCount));
  const cells = new Map<string, number[]>();
  const cellOf = ({ kind, box }: Placed, dx = 0, dy = 0) => {
    const { x, y } = boxMiddle(box);
    return `${kind}@${Math.floor(x / SAME_PLACE_MM) + dx},${Math.floor(y / SAME_PLACE_MM) + dy}`;
  };
  placed.forEach((one, i) => {
    const key = cellOf(one);
    const list = cells.get(key);
    if (list === undefined) cells.set(key, [i]);
    else list.push(i);
  });
  return placed.filter((one) => {
    const pages = new Set<number>();
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const i of cells.get(cellOf(one, dx, dy)) ?? []) {
          if (isSamePlace(one.box, placed[i]!.box)) pages.add(placed[i]!.page);
        }
      }
    }
    return pages.size >= needed;
  });
}

function isSamePlace(a: Box, b: Box): boolean {
  return (
    Math.abs(a.minX - b.minX) <= SAME_PLACE_MM &&
    Math.abs(a.minY - b.minY) <= SAME_PLACE_MM &&
    Math.abs(a.maxX - b.maxX) <= SAME_PLACE_MM &&
    Math.abs(a.maxY - b.maxY) <= SAME_PLACE_MM
  );
}
