import type { Hide, LayoutHide } from '@hidebound/leather';
import { RenderError } from '../error.js';

/** The hides that a layout names, in any order. */
export type GivenHides = ReadonlyMap<string, Hide> | readonly Hide[];

/** The hide that a layout names. Throws `unknown-hide` if it was not given. */
export function findHide(hides: GivenHides, entry: LayoutHide): Hide {
  const hide = Array.isArray(hides)
    ? (hides as readonly Hide[]).find((each) => each.id === entry.id)
    : (hides as ReadonlyMap<string, Hide>).get(entry.id);
  if (hide === undefined) {
    throw new RenderError('unknown-hide', `The layout lays pieces on hide ${entry.id}, which was not given.`);
  }
  return hide;
}
