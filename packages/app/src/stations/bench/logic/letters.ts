/** Names of corners: a, b, … z, aa, ab. */
export function letterOf(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : letterOf(Math.floor(index / 26) - 1) + letter;
}
