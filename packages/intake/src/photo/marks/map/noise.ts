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
  return count === 0 ? 0 : DEVIATION_OF_MEDIAN * picked.subarray(0, count).sort()[count >> 1]!;
}
