/** Below 0 if `a` is better (lower), above 0 if `b` is, 0 if they tie: the first entries that differ decide. */
export function compareEntries(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    if (a[i]! < b[i]!) return -1;
    if (a[i]! > b[i]!) return 1;
  }
  return 0;
}
