/** Small dense symmetric systems: matrices row by row. */

/** Below this share of its own diagonal a pivot is rounding alone. */
const SINGULAR_SHARE = 1e-14;

/** The lower Cholesky factor of a positive definite matrix, or undefined where it is none. */
export function choleskyFactor(matrix: Float64Array): Float64Array | undefined {
  const n = Math.sqrt(matrix.length);
  const factor = new Float64Array(matrix.length);
  for (let row = 0; row < n; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * n + column]!;
      for (let k = 0; k < column; k++) sum -= factor[row * n + k]! * factor[column * n + k]!;
      if (row === column) {
        if (!(sum > SINGULAR_SHARE * matrix[row * n + row]!)) return undefined;
        factor[row * n + row] = Math.sqrt(sum);
      } else {
        factor[row * n + column] = sum / factor[column * n + column]!;
      }
    }
  }
  return factor;
}

/** Solves `factor · factorᵀ · x = right`. */
export function solveFactored(factor: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  const x = Float64Array.from(right);
  for (let row = 0; row < n; row++) {
    for (let k = 0; k < row; k++) x[row]! -= factor[row * n + k]! * x[k]!;
    x[row]! /= factor[row * n + row]!;
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let k = row + 1; k < n; k++) x[row]! -= factor[k * n + row]! * x[k]!;
    x[row]! /= factor[row * n + row]!;
  }
  return x;
}

/** The solution of a positive definite system, or undefined. */
export function solveSymmetric(matrix: Float64Array, right: Float64Array): Float64Array | undefined {
  const factor = choleskyFactor(matrix);
  return factor === undefined ? undefined : solveFactored(factor, right);
}

/** The inverse of a positive definite matrix, or undefined. */
export function invertSymmetric(matrix: Float64Array): Float64Array | undefined {
  const factor = choleskyFactor(matrix);
  if (factor === undefined) return undefined;
  const n = Math.sqrt(matrix.length);
  const inverse = new Float64Array(matrix.length);
  for (let column = 0; column < n; column++) {
    const unit = new Float64Array(n);
    unit[column] = 1;
    const solved = solveFactored(factor, unit);
    for (let row = 0; row < n; row++) inverse[row * n + column] = solved[row]!;
  }
  return inverse;
}
