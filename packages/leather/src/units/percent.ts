/** A share from 0 to 1 of a percentage, without the last digits that a division leaves. */
export function shareOfPercent(percent: number): number {
  return Math.round(percent * 1e4) / 1e6;
}
