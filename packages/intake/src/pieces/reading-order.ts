import type { Box } from '@hidebound/geometry';

/** Numbers from 1 in rows from the top, each from the left: a row reaches down to the middle of its first box. */
export function readingNumbers(boxes: readonly Box[]): number[] {
  const order = boxes.map((_, i) => i).sort((a, b) => boxes[a]!.minY - boxes[b]!.minY || a - b);
  const numbers: number[] = [];
  let next = 1;
  for (let from = 0; from < order.length;) {
    const middle = (boxes[order[from]!]!.minY + boxes[order[from]!]!.maxY) / 2;
    let to = from + 1;
    while (to < order.length && boxes[order[to]!]!.minY < middle) to++;
    const row = order.slice(from, to).sort((a, b) => boxes[a]!.minX - boxes[b]!.minX || a - b);
    for (const i of row) numbers[i] = next++;
    from = to;
  }
  return numbers;
}
