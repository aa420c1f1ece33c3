import type { Box } from '../types/shape.js';

/** Cells between grid lines, row by row: cell (i, j) lies between xs[i], xs[i+1], ys[j] and ys[j+1]; 1 is free. */
export interface CellGrid {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly free: Uint8Array;
}

/** The largest box of free cells (by area in mm²), none if no cell is free: the largest rectangle under a histogram, row by row. */
export function boxOfLargestHistogram({ xs, ys, free }: CellGrid): Box | undefined {
  const columns = xs.length - 1;
  /** Upper end, as a line number, of the free run of each column that ends in this row. */
  const top = new Int32Array(columns);
  let best: Box | undefined;
  let bestArea = 0;
  for (let j = 0; j + 1 < ys.length; j++) {
    for (let i = 0; i < columns; i++) if (free[j * columns + i] === 0) top[i] = j + 1;
    largestUnder(top, j + 1, (from, to, upper) => {
      const area = (xs[to]! - xs[from]!) * (ys[j + 1]! - ys[upper]!);
      if (area <= bestArea) return;
      bestArea = area;
      best = { minX: xs[from]!, minY: ys[upper]!, maxX: xs[to]!, maxY: ys[j + 1]! };
    });
  }
  return best;
}

/** Visits every maximal rectangle that stands on the line `bottom`, by a stack of columns of growing height. */
function largestUnder(
  top: Int32Array,
  bottom: number,
  visit: (from: number, to: number, upper: number) => void,
): void {
  const starts: number[] = [];
  const uppers: number[] = [];
  for (let i = 0; i <= top.length; i++) {
    const upper = i < top.length ? top[i]! : bottom;
    let start = i;
    while (uppers.length > 0 && uppers[uppers.length - 1]! < upper) {
      start = starts.pop()!;
      const closed = uppers.pop()!;
      visit(start, i, closed);
    }
    if (upper < bottom && (uppers.length === 0 || uppers[uppers.length - 1]! > upper)) {
      starts.push(start);
      uppers.push(upper);
    }
  }
}
