/** Cells looked at for a median over a whole map; more of them change it by less than a hundredth. */
const SAMPLES = 40_000;

/** From the median of absolute values to the deviation, for numbers that are spread as by many small causes. */
export const DEVIATION_OF_MEDIAN = 1.4826;

/**
 * The deviation of the values from the ground where nothing stands out: from the median, which marks hardly change.
 */
export function deviationFrom(values: Float32Array, ground: Float32Array, mask: Uint8Array): number {
  const step = Math.max(1, Math.floor(values.length / SAMPLES));
  const picked = new Float32Array(Math.ceil(values.length / step));
  let count = 0;
  for (let i = 0; i < values.length; i += step) {
    if (mask[i] !== 0) picked[count++] = Math.abs(values[i]! - ground[i]!);
  }
  return count === 0 ? 0 : DEVIATION_OF_MEDIAN * nthSmallest(picked, count, count >> 1);
}

/**
 * The number with this index (from 0) were the first `count` ones sorted; changes their order. By C. A. R. Hoare (1961): a
 * fraction of the work of sorting all of them.
 */
export function nthSmallest(values: Float32Array, count: number, index: number): number {
  let first = 0;
  let last = count - 1;
  while (first < last) {
    const pivot = values[(first + last) >> 1]!;
    let i = first;
    let j = last;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const held = values[i]!;
      values[i++] = values[j]!;
      values[j--] = held;
    }
    if (index <= j) last = j;
    else if (index >= i) first = i;
    else break;
  }
  return values[index]!;
}
