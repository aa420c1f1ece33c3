import type { Point } from '@hidebound/geometry';
import type { PageFacts } from './page-facts.js';
import { CLASH_WEIGHT, CONTRADICTION_WEIGHT } from './limits.js';
import type { PageLink } from './agreement.js';
import type { Axis } from './overlaps.js';
import { borders } from './overlaps.js';

/** Where pages lie: by page number from 0; pages without a place are left out. */
export type Places = ReadonlyMap<number, Point>;

/** Groups of pages that lie together, and what speaks for them. */
export interface Arrangement {
  readonly groups: readonly Places[];
  readonly links: readonly PageLink[];
  readonly score: number;
}

/** What speaks for a link, less what speaks against it. */
export function scoreOf({
  fits,
  contradictions,
  clashes,
}: Pick<PageLink, 'fits' | 'contradictions' | 'clashes'>): number {
  return fits - CONTRADICTION_WEIGHT * contradictions - CLASH_WEIGHT * clashes;
}

/** The shift of b against a if it lies on the right of a (or below) with windows at one height and so far one over the other. */
export function besideShift(a: PageFacts, b: PageFacts, axis: Axis, overlap: number): Point {
  const ofA = borders(a, axis);
  const ofB = borders(b, axis);
  const step = ofA.high - overlap - ofB.low;
  const side = ofA.side - ofB.side;
  return axis === 'x' ? { x: step, y: side } : { x: side, y: step };
}
