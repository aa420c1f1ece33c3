/** Choices and picture lie side by side, as look/make.css has it. */
export function isWide(): boolean {
  return matchMedia('(min-width: 52rem)').matches;
}
