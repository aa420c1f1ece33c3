import type { Point } from '@hidebound/geometry';
import { APART_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import type { Settled } from './settle.js';
import { plus } from './vectors.js';

/** Groups below each other with a gap, each with its least x, and the first with its least y, at 0. On the 1 µm grid. */
export function stackGroups(facts: readonly PageFacts[], settled: readonly Settled[]): Settled[] {
  let top = 0;
  return settled.map((group) => {
    const places = [...group.places];
    const minX = Math.min(...places.map(([, { x }]) => x));
    const minY = Math.min(...places.map(([, { y }]) => y));
    const by: Point = { x: -minX, y: top - minY };
    const moved = new Map(
      places.map(([page, place]) => {
        const { x, y } = plus(place, by);
        return [page, { x: Math.round(x * 1000) / 1000 + 0, y: Math.round(y * 1000) / 1000 + 0 }] as const;
      }),
    );
    for (const [page, { y }] of moved) top = Math.max(top, y + facts[page]!.page.heightMm);
    top += APART_MM;
    return { ...group, places: moved };
  });
}
