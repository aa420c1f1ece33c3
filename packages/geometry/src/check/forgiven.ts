import { CHECK_FORGIVES_DEG, CHECK_FORGIVES_MM } from '../tolerance.js';

/**
 * What doubles may lose in the check's own arithmetic (mm, degrees). Stored numbers lie on a grid, so that
 * distances of exactly 2 µm do occur: without this, the last bit would decide on them.
 */
const ARITHMETIC_MM = 1e-7;
const ARITHMETIC_DEG = 1e-9;

/** The distance or depth (mm) up to which a rule counts as kept. */
export const FORGIVEN_MM = CHECK_FORGIVES_MM + ARITHMETIC_MM;

/** The angle (degrees) up to which a rule counts as kept. */
export const FORGIVEN_DEG = CHECK_FORGIVES_DEG + ARITHMETIC_DEG;

/**
 * The depth of overlap (mm) that is forgiven of two things that are to keep a distance: what is forgiven less
 * that distance, but never quite nothing.
 */
export function forgivenOverlap(required: number): number {
  return Math.max(FORGIVEN_MM - required, ARITHMETIC_MM);
}
