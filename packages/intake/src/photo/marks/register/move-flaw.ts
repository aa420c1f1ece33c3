import {
  affineDeterminant,
  applyAffine,
  reverseCurve,
  roundPoint,
  transformCurveToGrid,
} from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import type { Flaw, FlawShape } from '@hidebound/leather';

/**
 * The flaw where the transform brings it, lengths included; one that mirrors, as from a photo of the other side,
 * keeps rings turned the right way. Its side stays what it is: the caller knows which one the photo showed.
 */
export function moveFlaw<F extends Flaw>(flaw: F, transform: Affine): F {
  return { ...flaw, shape: moveShape(flaw.shape, transform) };
}

function moveShape(shape: FlawShape, transform: Affine): FlawShape {
  const scale = Math.sqrt(Math.abs(affineDeterminant(transform)));
  switch (shape.kind) {
    case 'point':
      return { ...shape, at: roundPoint(applyAffine(transform, shape.at)), radiusMm: shape.radiusMm * scale };
    case 'line':
      return {
        ...shape,
        line: shape.line.map((point) => roundPoint(applyAffine(transform, point))),
        widthMm: shape.widthMm * scale,
      };
    case 'area': {
      const outline = transformCurveToGrid(transform, shape.outline);
      return { ...shape, outline: affineDeterminant(transform) < 0 ? reverseCurve(outline) : outline };
    }
  }
}
