import type { Point } from '@hidebound/geometry';

/** Where a piece gets its stitch holes: centres in the piece's own frame, mm. */
export interface StitchHoles {
  readonly article: string;
  readonly piece: string;
  readonly at: readonly Point[];
}

/** The holes of one piece. */
export function stitchHolesOf(
  holes: readonly StitchHoles[],
  { article, piece }: { readonly article: string; readonly piece: string },
): Point[] {
  return holes.filter((each) => each.article === article && each.piece === piece).flatMap(({ at }) => at);
}
