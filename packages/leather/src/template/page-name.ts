import type { GridPlace } from './tile-plan.js';

const LETTERS = 26;

/** Column in letters and row in figures, both from one: "A1", "B1", "AA12". */
export function pageName({ column, row }: GridPlace): string {
  return `${columnLetters(column)}${row + 1}`;
}

function columnLetters(column: number): string {
  const last = String.fromCharCode('A'.charCodeAt(0) + (column % LETTERS));
  return column < LETTERS ? last : `${columnLetters(Math.floor(column / LETTERS) - 1)}${last}`;
}
