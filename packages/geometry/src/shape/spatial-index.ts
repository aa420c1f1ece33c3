import type { Box } from '../types/shape.js';

/** Boxes a node holds; 8 to 16 measure alike. */
const FAN_OUT = 12;

/** Finds the boxes that touch a box. */
export interface SpatialIndex {
  /**
   * Calls `visit` with the number of every indexed box that shares a point with `box`; stops when `visit` returns
   * true. The order follows from the indexed boxes alone.
   */
  query(box: Box, visit: (index: number) => boolean | void): void;
}

/**
 * A packed tree of fixed boxes: sorted into columns by x, the columns by y, then boxed bottom up
 * (sort-tile-recursive, Leutenegger, Lopez & Edgington 1997). Building takes n log n.
 */
export function createSpatialIndex(boxes: readonly Box[]): SpatialIndex {
  if (boxes.length === 0) return { query: () => undefined };
  const order = tileOrder(boxes);
  const levels: Float64Array[] = [flatBoxes(boxes, order)];
  while (levels[levels.length - 1]!.length > 4) levels.push(parentsOf(levels[levels.length - 1]!));
  return { query: (box, visit) => void search(levels, order, box, visit) };
}

function tileOrder(boxes: readonly Box[]): Uint32Array {
  const order = Array.from(boxes, (_, i) => i);
  const x = (i: number) => boxes[i]!.minX + boxes[i]!.maxX;
  const y = (i: number) => boxes[i]!.minY + boxes[i]!.maxY;
  order.sort((i, j) => x(i) - x(j) || i - j);
  const leaves = Math.ceil(boxes.length / FAN_OUT);
  const columnSize = Math.ceil(Math.sqrt(leaves)) * FAN_OUT;
  const tiled = new Uint32Array(boxes.length);
  for (let from = 0; from < order.length; from += columnSize) {
    const column = order.slice(from, from + columnSize).sort((i, j) => y(i) - y(j) || i - j);
    tiled.set(column, from);
  }
  return tiled;
}

function flatBoxes(boxes: readonly Box[], order: Uint32Array): Float64Array {
  const flat = new Float64Array(order.length * 4);
  order.forEach((index, i) => {
    const { minX, minY, maxX, maxY } = boxes[index]!;
    flat.set([minX, minY, maxX, maxY], i * 4);
  });
  return flat;
}

function parentsOf(level: Float64Array): Float64Array {
  const count = level.length / 4;
  const parents = new Float64Array(Math.ceil(count / FAN_OUT) * 4);
  for (let p = 0; p * 4 < parents.length; p++) {
    const box = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = p * FAN_OUT; i < Math.min((p + 1) * FAN_OUT, count); i++) {
      box[0] = Math.min(box[0]!, level[i * 4]!);
      box[1] = Math.min(box[1]!, level[i * 4 + 1]!);
      box[2] = Math.max(box[2]!, level[i * 4 + 2]!);
      box[3] = Math.max(box[3]!, level[i * 4 + 3]!);
    }
    parents.set(box, p * 4);
  }
  return parents;
}

function search(
  levels: readonly Float64Array[],
  order: Uint32Array,
  box: Box,
  visit: (index: number) => boolean | void,
): boolean {
  const walk = (depth: number, from: number, to: number): boolean => {
    const level = levels[depth]!;
    for (let i = from; i < to; i++) {
      const at = i * 4;
      if (level[at]! > box.maxX || level[at + 1]! > box.maxY) continue;
      if (level[at + 2]! < box.minX || level[at + 3]! < box.minY) continue;
      if (depth === 0) {
        if (visit(order[i]!) === true) return true;
      } else {
        const end = Math.min((i + 1) * FAN_OUT, levels[depth - 1]!.length / 4);
        if (walk(depth - 1, i * FAN_OUT, end)) return true;
      }
    }
    return false;
  };
  const top = levels.length - 1;
  return walk(top, 0, levels[top]!.length / 4);
}
