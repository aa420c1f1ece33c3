import type { Point } from '@hidebound/geometry';
import type { Lens } from './camera.js';

/** Newton's steps that are enough for lenses of phones; near the axis two are. */
const MOST_STEPS = 25;
/** Far below anything that a pixel shows, far above the rounding of places in the thousands. */
const CLOSE_PX = 1e-9;

/** Where the lens shows what a lens without distortion would show at this place; px. */
export function throughLens(lens: Lens, ideal: Point): Point {
  const dx = (ideal.x - lens.axis.x) / lens.radiusPx;
  const dy = (ideal.y - lens.axis.y) / lens.radiusPx;
  const rSq = dx * dx + dy * dy;
  const radial = 1 + rSq * (lens.k1 + rSq * lens.k2);
  return {
    x: lens.axis.x + lens.radiusPx * (dx * radial + 2 * lens.p1 * dx * dy + lens.p2 * (rSq + 2 * dx * dx)),
    y: lens.axis.y + lens.radiusPx * (dy * radial + lens.p1 * (rSq + 2 * dy * dy) + 2 * lens.p2 * dx * dy),
  };
}

/** Where a lens without distortion would show what this one shows there; px. The inverse of `throughLens`. */
export function withoutLens(lens: Lens, shown: Point): Point {
  const wantX = (shown.x - lens.axis.x) / lens.radiusPx;
  const wantY = (shown.y - lens.axis.y) / lens.radiusPx;
  let dx = wantX;
  let dy = wantY;
  for (let step = 0; step < MOST_STEPS; step++) {
    const rSq = dx * dx + dy * dy;
    const radial = 1 + rSq * (lens.k1 + rSq * lens.k2);
    const slope = 2 * (lens.k1 + 2 * lens.k2 * rSq);
    const missX = dx * radial + 2 * lens.p1 * dx * dy + lens.p2 * (rSq + 2 * dx * dx) - wantX;
    const missY = dy * radial + lens.p1 * (rSq + 2 * dy * dy) + 2 * lens.p2 * dx * dy - wantY;
    const xx = radial + slope * dx * dx + 2 * lens.p1 * dy + 6 * lens.p2 * dx;
    const xy = slope * dx * dy + 2 * lens.p1 * dx + 2 * lens.p2 * dy;
    const yy = radial + slope * dy * dy + 6 * lens.p1 * dy + 2 * lens.p2 * dx;
    const determinant = xx * yy - xy * xy;
    const stepX = (yy * missX - xy * missY) / determinant;
    const stepY = (xx * missY - xy * missX) / determinant;
    if (!Number.isFinite(stepX + stepY)) break;
    dx -= stepX;
    dy -= stepY;
    if (Math.abs(stepX) + Math.abs(stepY) < CLOSE_PX / lens.radiusPx) break;
  }
  return { x: lens.axis.x + lens.radiusPx * dx, y: lens.axis.y + lens.radiusPx * dy };
}
