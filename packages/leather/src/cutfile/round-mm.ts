/** A length as a sentence says it: to 0.001 mm. */
export function roundMm(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
