import { GREEDY_PIVOTS, MOST_PIVOTS } from './constants.js';

/** A small linear program: the greatest c · x with A x <= b (b >= 0, so that x = 0 is allowed) and |x_i| <= reach. */
export interface LinearProgram {
  readonly variables: number;
  readonly objective: Float64Array;
  /** Row after row. */
  readonly rows: Float64Array;
  readonly bounds: Float64Array;
  readonly rowCount: number;
  readonly reach: number;
}

/** Reduced costs and pivots below this are rounding. */
const ZERO = 1e-11;

/**
 * A best x, by the simplex method on a dense tableau (each variable as the difference of two that are not negative).
 * Takes the steepest column first and, later, Bland's first one, which never goes round in circles. Stopped at the
 * limit of pivots, x is still within all bounds, only not the best.
 */
export function solveLinearProgram(program: LinearProgram): Float64Array {
  const tableau = tableauOf(program);
  for (let pivots = 0; pivots < MOST_PIVOTS; pivots++) {
    const column = enteringColumn(tableau, pivots >= GREEDY_PIVOTS);
    if (column < 0) break;
    const row = leavingRow(tableau, column);
    if (row < 0) break;
    pivot(tableau, row, column);
  }
  return readSolution(tableau, program.variables);
}

interface Tableau {
  readonly cells: Float64Array;
  /** Rows without the objective's, which is the last; columns without the bounds', which is the last. */
  readonly rowCount: number;
  readonly columnCount: number;
  /** Which variable each column and each row stands for: 0..2n-1 the halves of x, above them the slacks. */
  readonly ofColumn: Int32Array;
  readonly ofRow: Int32Array;
}

function tableauOf({ variables: n, objective, rows, bounds, rowCount: m, reach }: LinearProgram): Tableau {
  const rowCount = m + 2 * n;
  const columnCount = 2 * n;
  const width = columnCount + 1;
  const cells = new Float64Array((rowCount + 1) * width);
  for (let r = 0; r < m; r++) {
    for (let i = 0; i < n; i++) {
      cells[r * width + i] = rows[r * n + i]!;
      cells[r * width + n + i] = -rows[r * n + i]!;
    }
    cells[r * width + columnCount] = bounds[r]!;
  }
  for (let i = 0; i < n; i++) {
    for (const [half, sign] of [
      [0, 1],
      [1, -1],
    ] as const) {
      const r = m + 2 * i + half;
      cells[r * width + i] = sign;
      cells[r * width + n + i] = -sign;
      cells[r * width + columnCount] = reach;
    }
    cells[rowCount * width + i] = -objective[i]!;
    cells[rowCount * width + n + i] = objective[i]!;
  }
  return {
    cells,
    rowCount,
    columnCount,
    ofColumn: Int32Array.from({ length: columnCount }, (_, i) => i),
    ofRow: Int32Array.from({ length: rowCount }, (_, r) => columnCount + r),
  };
}

function enteringColumn({ cells, rowCount, columnCount, ofColumn }: Tableau, first: boolean): number {
  const base = rowCount * (columnCount + 1);
  let best = -1;
  for (let c = 0; c < columnCount; c++) {
    const cost = cells[base + c]!;
    if (cost >= -ZERO) continue;
    const isBetter = best < 0 || (first ? ofColumn[c]! < ofColumn[best]! : cost < cells[base + best]!);
    if (isBetter) best = c;
  }
  return best;
}

function leavingRow({ cells, rowCount, columnCount, ofRow }: Tableau, column: number): number {
  const width = columnCount + 1;
  let best = -1;
  let least = Infinity;
  for (let r = 0; r < rowCount; r++) {
    const slope = cells[r * width + column]!;
    if (slope <= ZERO) continue;
    const ratio = cells[r * width + columnCount]! / slope;
    if (ratio < least || (ratio === least && ofRow[r]! < ofRow[best]!)) {
      least = ratio;
      best = r;
    }
  }
  return best;
}

function pivot(
  { cells, rowCount, columnCount, ofColumn, ofRow }: Tableau,
  row: number,
  column: number,
): void {
  const width = columnCount + 1;
  const inverse = 1 / cells[row * width + column]!;
  for (let c = 0; c < width; c++) cells[row * width + c]! *= c === column ? 0 : inverse;
  cells[row * width + column] = inverse;
  for (let r = 0; r <= rowCount; r++) {
    const factor = cells[r * width + column]!;
    if (r === row || factor === 0) continue;
    cells[r * width + column] = 0;
    for (let c = 0; c < width; c++) cells[r * width + c]! -= factor * cells[row * width + c]!;
    // Bounds that rounding makes negative would let the next pivot leave the allowed set.
    if (r < rowCount && cells[r * width + columnCount]! < 0) cells[r * width + columnCount] = 0;
  }
  const entering = ofColumn[column]!;
  ofColumn[column] = ofRow[row]!;
  ofRow[row] = entering;
}

function readSolution({ cells, rowCount, columnCount, ofRow }: Tableau, n: number): Float64Array {
  const x = new Float64Array(n);
  for (let r = 0; r < rowCount; r++) {
    const variable = ofRow[r]!;
    if (variable >= columnCount) continue;
    const value = cells[r * (columnCount + 1) + columnCount]!;
    if (variable < n) x[variable]! += value;
    else x[variable - n]! -= value;
  }
  return x;
}
