import { distanceBetween, pointInRing, pointToRing, polylineNearest, ringBox } from '@hidebound/geometry';
import type { Box, Point, Polyline, Ring } from '@hidebound/geometry';
import type { FlawKind } from '@hidebound/leather';

/** A mark before it is numbered. */
export interface Possible {
  readonly shape:
    | { readonly kind: 'point'; readonly at: Point; readonly radiusMm: number }
    | { readonly kind: 'line'; readonly line: Polyline; readonly widthMm: number }
    | { readonly kind: 'area'; readonly ring: Ring };
  readonly flaw: FlawKind;
  readonly confidence: number;
  readonly strength: number;
  /** L* above or below what lies around. */
  readonly contrast: number;
  /** Seen in raking light. */
  readonly isRelief?: boolean;
}

/** Marks nearer than this are one, seen at two coarsenesses. */
const NEAR_MM = 3;

/** Filters answer beside a line, and around a spot, as to a weaker one of the other sign, about so far off. */
const BESIDE_MM = 7;

/** Along the edge of a patch they answer as to a line. */
const PATCH_EDGE_MM = 10;

/** In raking light a ridge has a bright and a dark side. */
const RELIEF_NEAR_MM = 8;

/** So much of a mark lies on a surer one if it is the same. */
const SAME_SHARE = 0.6;

/**
 * The surest first; of marks that lie on each other the surest one. Patches come before all others of their confidence,
 * since their edges and middles look like lines and spots.
 */
export function withoutDoubles(found: readonly Possible[]): Possible[] {
  const order = [...found].sort(
    (one, other) =>
      rank(other) - rank(one) || other.confidence - one.confidence || other.strength - one.strength,
  );
  const kept: Bounded[] = [];
  for (const mark of order) {
    const box = boxOf(mark);
    if (!kept.some((surer) => areNear(box, surer.box) && liesOn(mark, surer.mark))) kept.push({ mark, box });
  }
  return kept
    .map(({ mark }) => mark)
    .sort((one, other) => other.confidence - one.confidence || other.strength - one.strength);
}

interface Bounded {
  readonly mark: Possible;
  readonly box: Box;
}

/** All that a mark covers, and half of the farthest that another one may lie from it and still be the same. */
function boxOf(mark: Possible): Box {
  const { minX, minY, maxX, maxY } = ringBox(placesOf(mark));
  const { shape } = mark;
  const own = shape.kind === 'point' ? shape.radiusMm : shape.kind === 'line' ? shape.widthMm / 2 : 0;
  const room = own + PATCH_EDGE_MM / 2;
  return { minX: minX - room, minY: minY - room, maxX: maxX + room, maxY: maxY + room };
}

function areNear(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

const SURE_PATCH = 0.5;

function rank({ shape, confidence }: Possible): number {
  return shape.kind === 'area' && confidence >= SURE_PATCH ? 1 : 0;
}

function liesOn(mark: Possible, surer: Possible): boolean {
  const near = nearFor(mark, surer);
  const points = placesOf(mark);
  let count = 0;
  for (const point of points) if (isOn(point, surer, near + radiusOf(mark))) count++;
  return count >= SAME_SHARE * points.length;
}

function nearFor(mark: Possible, surer: Possible): number {
  if (mark.isRelief === true) return RELIEF_NEAR_MM;
  if (surer.shape.kind === 'area') return mark.shape.kind === 'line' ? PATCH_EDGE_MM : NEAR_MM;
  return mark.contrast * surer.contrast < 0 && mark.strength < surer.strength ? BESIDE_MM : NEAR_MM;
}

function placesOf({ shape }: Possible): readonly Point[] {
  if (shape.kind === 'point') return [shape.at];
  return shape.kind === 'line' ? shape.line : shape.ring;
}

function radiusOf({ shape }: Possible): number {
  if (shape.kind === 'point') return Math.min(3, shape.radiusMm);
  return shape.kind === 'line' ? shape.widthMm / 2 : 0;
}

function isOn(point: Point, { shape }: Possible, near: number): boolean {
  switch (shape.kind) {
    case 'point':
      return distanceBetween(point, shape.at) <= shape.radiusMm + near;
    case 'line':
      return polylineNearest(shape.line, point).distance <= shape.widthMm / 2 + near;
    case 'area':
      return pointInRing(point, shape.ring) !== 'outside' || pointToRing(point, shape.ring) <= near;
  }
}
