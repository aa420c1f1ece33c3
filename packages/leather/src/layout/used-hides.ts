import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';

/** The hides on which something is still to be cut; all of them where nothing is. */
export function usedHides(layout: Pick<Layout, 'placements'>, hides: readonly Hide[]): readonly Hide[] {
  const used = new Set(layout.placements.filter(({ state }) => state === 'planned').map(({ hide }) => hide));
  const some = hides.filter(({ id }) => used.has(id));
  return some.length === 0 ? hides : some;
}
