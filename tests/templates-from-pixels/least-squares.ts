/** Normal equations that grow by one observation at a time: Σ (row · x − value)² is made least. */
export interface NormalEquations {
  readonly size: number;
  readonly matrix: Float64Array;
  readonly right: Float64Array;
}

export function emptyEquations(size: number): NormalEquations {
  return { size, matrix: new Float64Array(size * size), right: new Float64Array(size) };
}

/** Adds one observation; `row` holds the few places that are not 0 as [place, factor]. */
export function observe(
  { size, matrix, right }: NormalEquations,
  row: readonly (readonly [number, number])[],
  value: number,
): void {
  for (const [i, a] of row) {
    right[i]! += a * value;
    for (const [j, b] of row) matrix[i * size + j]! += a * b;
  }
}

/** Solves by Cholesky's decomposition; throws if the observations leave something open. */
export function solve({ size, matrix, right }: NormalEquations): Float64Array {
  const lower = Float64Array.from(matrix);
  const x = Float64Array.from(right);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = lower[i * size + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * size + k]! * lower[j * size + k]!;
      if (i === j && sum <= 0) throw new Error('The marks do not hold the pages together.');
      lower[i * size + j] = i === j ? Math.sqrt(sum) : sum / lower[j * size + j]!;
    }
  }
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i]! -= lower[i * size + k]! * x[k]!;
    x[i]! /= lower[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i]! -= lower[k * size + i]! * x[k]!;
    x[i]! /= lower[i * size + i]!;
  }
  return x;
}
