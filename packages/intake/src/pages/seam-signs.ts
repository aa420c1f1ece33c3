import type { DrawnLine } from '../drawing/drawn-line.js';
import type { Seam } from './cells.js';
import { figuresIn } from './figures.js';
import type { Figure } from './figures.js';
import { ON_SEAM_MM } from './limits.js';
import type { JoinedParts } from './join-parts.js';
import { pageLines } from './page-lines.js';

/**
 * The joined lines without marks that lie centred on a seam, whole or put together of halves. One such figure alone may
 * be the pattern's own; two of a shape, or one with a label that both pages have, are marks.
 */
export function withoutSeamSigns(
  { lines }: JoinedParts,
  seams: readonly Seam[],
): { readonly lines: readonly DrawnLine[]; readonly dropped: number } {
  const figures = figuresIn({ lines, texts: [] }, pageLines(lines)).filter(
    (figure) => figure.isSign && isOnSeam(figure, seams),
  );
  const counts = new Map<string, number>();
  for (const { shape } of figures) counts.set(shape, (counts.get(shape) ?? 0) + 1);
  const gone = new Set(
    figures.filter(({ shape }) => counts.get(shape)! >= 2).flatMap((figure) => figure.lines),
  );
  return { lines: lines.filter((_, i) => !gone.has(i)), dropped: gone.size };
}

function isOnSeam({ at }: Figure, seams: readonly Seam[]): boolean {
  return seams.some(({ axis, at: place, from, to }) => {
    const [off, along] = axis === 'x' ? [at.x - place, at.y] : [at.y - place, at.x];
    return Math.abs(off) <= ON_SEAM_MM && along >= from - ON_SEAM_MM && along <= to + ON_SEAM_MM;
  });
}
