/**
 * How the light falls off over the picture: added to each pixel's lightness (colour.ts), a second-degree surface over
 * shares of width and height, without its constant. Terms: x, y, x², xy, y².
 */
export type Light = readonly number[];

export const EVEN_LIGHT: Light = [0, 0, 0, 0, 0];

export function lightAt(light: Light, x: number, y: number): number {
  const u = x - 0.5;
  const v = y - 0.5;
  return light[0]! * u + light[1]! * v + light[2]! * u * u + light[3]! * u * v + light[4]! * v * v;
}

/** A place, how far its lightness lies from what its colour should have, and which of two grounds it is of. */
export interface LightSample {
  readonly x: number;
  readonly y: number;
  readonly off: number;
  readonly group: number;
}

/** Keeps the surface flat where samples say little. */
const RIDGE = 1e-3;
/** A vignette or a window to one side takes less than this off the lightness; more is something else. */
const MOST = 40;

/** The surface that the samples ask for, each group free to be lighter or darker as a whole. Least squares. */
export function fitLight(samples: readonly LightSample[], groups: number): Light {
  const size = 5 + groups;
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1));
  const row = new Float64Array(size);
  for (const { x, y, off, group } of samples) {
    const u = x - 0.5;
    const v = y - 0.5;
    row.fill(0);
    row.set([u, v, u * u, u * v, v * v]);
    row[5 + group] = 1;
    for (let i = 0; i < size; i++) {
      if (row[i] === 0) continue;
      for (let j = 0; j < size; j++) matrix[i]![j]! += row[i]! * row[j]!;
      matrix[i]![size]! += row[i]! * off;
    }
  }
  for (let i = 0; i < size; i++) matrix[i]![i]! += RIDGE * samples.length + 1e-9;
  const solved = solve(matrix);
  return solved.slice(0, 5).map((term) => Math.max(-MOST, Math.min(MOST, term)));
}

/** Gauss with pivots; the matrix is square with one column more, and is used up. */
function solve(matrix: Float64Array[]): number[] {
  const size = matrix.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++)
      if (Math.abs(matrix[row]![column]!) > Math.abs(matrix[pivot]![column]!)) pivot = row;
    [matrix[column], matrix[pivot]] = [matrix[pivot]!, matrix[column]!];
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = matrix[row]![column]! / matrix[column]![column]!;
      for (let k = column; k <= size; k++) matrix[row]![k]! -= factor * matrix[column]![k]!;
    }
  }
  return matrix.map((row, i) => row[size]! / row[i]!);
}
