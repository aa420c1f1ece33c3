import type { Point } from '@hidebound/geometry';
import type { HolePlaces } from '@hidebound/leather';

/** The stitch holes of one piece, in its own frame. */
export function stitchHolesOf(
  holes: readonly HolePlaces[],
  { article, piece }: { readonly article: string; readonly piece: string },
): Point[] {
  return holes.filter((each) => each.article === article && each.piece === piece).flatMap(({ at }) => at);
}
