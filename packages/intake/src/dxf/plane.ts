import { IDENTITY } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import { numberField } from './fields.js';
import type { Fields } from './fields.js';

/** How far an entity's own plane may lean before it is no drawing on paper: the lengths in it are then off by 5e-7. */
const LEAN = 1e-6;

/** Seen from below: x runs the other way. */
const FROM_BELOW: Affine = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/**
 * From the entity's own frame to that of the drawing, by the arbitrary axis algorithm (DXF reference, "Arbitrary Axis
 * Algorithm"): of the extrusion direction (0, 0, -1) it gives the x axis (-1, 0, 0) and the y axis (0, 1, 0). Nothing
 * for a plane that is not that of the drawing.
 */
export function planeOf(fields: Fields): Affine | undefined {
  const { first } = fields;
  if (first[210] === 0 && first[220] === 0 && first[230] === 0) return IDENTITY;
  const x = numberField(fields, 210);
  const y = numberField(fields, 220);
  const z = numberField(fields, 230, 1);
  const length = Math.sqrt(x * x + y * y + z * z);
  if (length === 0 || Math.abs(z) < (1 - LEAN) * length) return undefined;
  return z > 0 ? IDENTITY : FROM_BELOW;
}
