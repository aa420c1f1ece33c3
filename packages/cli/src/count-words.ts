/** "1 piece", "3 pieces"; for words whose plural is no mere "s", both are given. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
