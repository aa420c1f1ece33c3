import {
  MIRROR_X,
  applyAffine,
  composeAffine,
  rotationDeg,
  scaling,
  transformRegion,
  transformRing,
  translation,
} from '@hidebound/geometry';
import type { Affine, Box, Point, Region, Ring } from '@hidebound/geometry';
import { hideRegion } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import { RenderError } from '../error.js';

export type SeenFrom = 'grain' | 'flesh';

/** How a hide is shown: mirrored if seen from the flesh side, turned, reduced, moved into its place. */
export interface HideView {
  /** From the hide's frame to the drawing's. */
  readonly toDrawing: Affine;
  /** Drawing mm per hide mm: 1 is true scale. */
  readonly scale: number;
}

/** Corners closer together than this on the drawing are one; labels are placed by these rings, lines drawn by curves. */
const SAME_CORNER_MM = 0.12;

/** The turned and mirrored hide before it is reduced. */
export function turnHide(side: SeenFrom, turnDeg: 0 | 90): Affine {
  const mirrored = side === 'flesh' ? MIRROR_X : rotationDeg(0);
  return composeAffine(rotationDeg(turnDeg), mirrored);
}

/** Puts the turned hide's box, reduced, into the middle of the place. */
export function viewInto(turned: Affine, hideBox: Box, scale: number, place: Box): HideView {
  const middle = { x: (hideBox.minX + hideBox.maxX) / 2, y: (hideBox.minY + hideBox.maxY) / 2 };
  const moved = applyAffine(composeAffine(scaling(scale), turned), middle);
  const shift = translation((place.minX + place.maxX) / 2 - moved.x, (place.minY + place.maxY) / 2 - moved.y);
  return { toDrawing: composeAffine(shift, composeAffine(scaling(scale), turned)), scale };
}

/** The leather of the hide in its own frame. Throws `empty-hide` if the outline has no area. */
export function hideShape(hide: Hide): Region {
  const region = hideRegion(hide);
  if (region.outer.length < 3)
    throw new RenderError('empty-hide', `The outline of hide ${hide.id} has no area.`);
  return region;
}

/** The region on the drawing, without corners that the eye can't tell apart. */
export function regionOnDrawing(toDrawing: Affine, region: Region): Region {
  const moved = transformRegion(toDrawing, region);
  return { outer: thinRing(moved.outer), openings: moved.openings.map(thinRing) };
}

/** The ring on the drawing, without corners that the eye can't tell apart. */
export function ringOnDrawing(toDrawing: Affine, ring: Ring): Ring {
  return thinRing(transformRing(toDrawing, ring));
}

function thinRing(ring: Ring): Ring {
  const kept: Point[] = [];
  for (const p of ring) {
    const last = kept[kept.length - 1];
    if (last === undefined || Math.abs(p.x - last.x) + Math.abs(p.y - last.y) >= SAME_CORNER_MM) kept.push(p);
  }
  return kept.length >= 3 ? kept : ring;
}
