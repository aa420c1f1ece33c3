import { applyAffine, circleCurve, curveFromPolyline, sinCosDeg, transformCurve } from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import type { StitchHole, StitchTool } from '@hidebound/leather';
import { path } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { FINE_LINE_MM, INDIGO } from '../sheet/palette.js';

/** An iron's tooth leaves a slanted cut: so long, and so much turned against the line. */
const TOOTH_MM = 1.8;
const SLANT_DEG = -45;
/** An awl's mark is a dot. */
const DOT_MM = 0.45;

/** All holes of a piece as one element: slanted strokes for an iron, dots for an awl. */
export function stitchMarkPath(
  { with: tool, holes }: { readonly with: StitchTool; readonly holes: readonly StitchHole[] },
  move: Affine,
): DrawingElement {
  if (tool === 'awl') {
    return path(
      holes.map(({ at }) => circleCurve(applyAffine(move, at), DOT_MM)),
      { fill: INDIGO },
    );
  }
  return path(
    holes.map((hole) => transformCurve(move, toothCut(hole))),
    { stroke: { colour: INDIGO, widthMm: FINE_LINE_MM * 2 } },
  );
}

function toothCut({ at, angleDeg }: StitchHole): Curve {
  const { sin, cos } = sinCosDeg(angleDeg + SLANT_DEG);
  const half = TOOTH_MM / 2;
  return curveFromPolyline(
    [
      { x: at.x - cos * half, y: at.y - sin * half },
      { x: at.x + cos * half, y: at.y + sin * half },
    ],
    false,
  );
}
