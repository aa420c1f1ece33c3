import { placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { GRADED_AREA_SHARE, GRADED_ASPECT_FACTOR, GRADED_AT_LEAST } from '../limits.js';
import type { Outline } from './outline.js';
import type { SortedOutline } from './sort-outlines.js';

/**
 * Warns of pieces that look like several sizes drawn one in the other without names for them: three or more outlines
 * of one shape, each within the last, all of different colours or dashes.
 */
export function tellLooksGraded(sorted: readonly SortedOutline[], findings: Findings): void {
  const nests = new Map<number, Outline[]>();
  sorted.forEach(({ outline, kind, piece }, i) => {
    if (kind === 'piece') nests.set(i, [outline]);
    const nest = piece === undefined || piece === i ? undefined : nests.get(piece);
    if (nest !== undefined && (kind === 'stitch' || kind === 'cut-out') && goesOn(nest, outline))
      nest.push(outline);
  });
  for (const nest of nests.values()) {
    if (nest.length < GRADED_AT_LEAST) continue;
    const { source, curve } = nest[0]!.line;
    tell(
      findings,
      'warning',
      'looks-graded',
      { count: nest.length },
      { ...placeOf(source), point: curve.start },
    );
  }
}

function goesOn(nest: readonly Outline[], next: Outline): boolean {
  const last = nest.at(-1)!;
  if (next.area < GRADED_AREA_SHARE * last.area) return false;
  const stretch = aspectOf(next) / aspectOf(last);
  if (stretch > GRADED_ASPECT_FACTOR || stretch < 1 / GRADED_ASPECT_FACTOR) return false;
  return !nest.some((outline) => lookOf(outline) === lookOf(next));
}

function aspectOf({ box }: Outline): number {
  return (box.maxX - box.minX) / (box.maxY - box.minY);
}

function lookOf({ line }: Outline): string {
  return `${line.stroke ?? ''}|${line.isDashed}|${line.widthMm}`;
}
