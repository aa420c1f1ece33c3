/** Cells looked at for a median over a whole map; more of them change it by less than a hundredth. */
const SAMPLES = 40_000;

/** From the median of absolute values to the deviation, for numbers that are spread as by many small causes. */
export const DEVIATION_OF_MEDIAN = 1.4826;

/** The deviation that the numbers have where nothing stands out: from the median, which marks hardly change. */
export function deviationOver(values: Float32Array, mask: Uint8Array): number {
  const step = Math.max(1, Math.floor(values.length / SAMPLES));
  const picked: number[] = [];
  for (let i = 0; i < values.length; i += step) if (mask[i] !== 0) picked.push(Math.abs(values[i]!));
  picked.sort((one, other) => one - other);
  return DEVIATION_OF_MEDIAN * (picked[picked.length >> 1] ?? 0);
}
