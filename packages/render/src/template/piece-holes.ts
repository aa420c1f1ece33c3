import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';
import { notchLine } from '../picture/piece-layers.js';

/** From this diameter on a punch has room for a cross at its centre, mm. */
const CROSS_FROM_MM = 2.5;
/** Half an arm of the cross, as a share of the punch's radius. */
const CROSS_SHARE = 0.45;

/** Punches at their true diameter with a cross at the centre, for the tool to be set down on, and notches. */
export function pieceHoles(shape: Piece): Curve[] {
  return [
    ...shape.punches.flatMap(({ at, diameterMm }) => [
      circleCurve(at, diameterMm / 2),
      ...(diameterMm < CROSS_FROM_MM ? [] : cross(at, (diameterMm / 2) * CROSS_SHARE)),
    ]),
    ...shape.notches.map(notchLine),
  ];
}

const STITCH_HOLE_MM = 0.5;

/** A stitch hole: a small saltire, which an awl's point finds. */
export function stitchHole(at: Point): Curve[] {
  const r = STITCH_HOLE_MM;
  return [stroke(at, r, r), stroke(at, r, -r)];
}

function cross(at: Point, arm: number): Curve[] {
  return [stroke(at, arm, 0), stroke(at, 0, arm)];
}

function stroke(at: Point, dx: number, dy: number): Curve {
  return curveFromPolyline(
    [
      { x: at.x - dx, y: at.y - dy },
      { x: at.x + dx, y: at.y + dy },
    ],
    false,
  );
}
