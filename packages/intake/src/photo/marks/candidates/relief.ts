import type { Level } from './level.js';

/** Where the two differ in size or place, they can't be compared cell by cell. */
const SAME_WITHIN_MM = 0.3;

/**
 * What a raking light shows besides what an even light does: the share of the plain picture that best explains the lit
 * one is taken off it. Colour goes, shadows of relief stay.
 */
export function reliefOf(lit: Level, plain: Level): Level {
  if (!isSameGrid(lit, plain)) return lit;
  let both = 0;
  let squares = 0;
  for (let i = 0; i < lit.off.length; i++) {
    if (lit.mask[i] === 0 || plain.mask[i] === 0) continue;
    both += lit.off[i]! * plain.off[i]!;
    squares += plain.off[i]! ** 2;
  }
  const share = squares === 0 ? 0 : both / squares;
  return { ...lit, off: lit.off.map((value, i) => value - share * plain.off[i]!) };
}

function isSameGrid({ grid: a }: Level, { grid: b }: Level): boolean {
  const isSameSize = a.width === b.width && a.height === b.height;
  return isSameSize && Math.abs(a.x - b.x) < SAME_WITHIN_MM && Math.abs(a.y - b.y) < SAME_WITHIN_MM;
}
