import { hideAreas } from '@hidebound/leather';
import type { Hide, HideAreas } from '@hidebound/leather';

/** A hide never changes, so its areas are reckoned once. */
const known = new WeakMap<Hide, HideAreas>();

export function areasOf(hide: Hide): HideAreas {
  const areas = known.get(hide) ?? hideAreas(hide);
  known.set(hide, areas);
  return areas;
}
