import { atan2Deg, distanceBetween, pointInRing, sinCosDeg } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';

/** A turned rectangle: what a label or an arrow takes up, in mm of the drawing. */
export interface LabelBox {
  readonly center: Point;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Its width runs this way, clockwise from the x axis. */
  readonly angleDeg: number;
  /** Sine and cosine of the angle, where many boxes of one angle are tried: they take longer than all the rest. */
  readonly turn?: Turn;
}

/** Sine and cosine of an angle. */
export interface Turn {
  readonly sin: number;
  readonly cos: number;
}

/** The four corners, clockwise as seen. */
export function labelBoxCorners(box: LabelBox): Point[] {
  const { sin, cos } = turnOf(box);
  const at = (x: number, y: number): Point => ({
    x: box.center.x + x * cos - y * sin,
    y: box.center.y + x * sin + y * cos,
  });
  const w = box.widthMm / 2;
  const h = box.heightMm / 2;
  return [at(-w, -h), at(w, -h), at(w, h), at(-w, h)];
}

/** The line from one point to the other, as broad as a bold line. */
export function segmentBox(from: Point, to: Point): LabelBox {
  return {
    center: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
    widthMm: distanceBetween(from, to),
    heightMm: BOLD_LINE_MM,
    angleDeg: atan2Deg(to.y - from.y, to.x - from.x),
  };
}

const BOLD_LINE_MM = 0.8;

/** The box with `by` mm added on every side. */
export function growLabelBox(box: LabelBox, by: number): LabelBox {
  return { ...box, widthMm: box.widthMm + 2 * by, heightMm: box.heightMm + 2 * by };
}

/** True if the two rectangles share more than an edge: no line along a side of either one parts them. */
export function labelBoxesOverlap(a: LabelBox, b: LabelBox): boolean {
  const reach = (box: LabelBox): number => (box.widthMm + box.heightMm) / 2;
  const far = reach(a) + reach(b);
  if (Math.abs(a.center.x - b.center.x) >= far || Math.abs(a.center.y - b.center.y) >= far) return false;
  return !isPartedAlong(a, b) && !isPartedAlong(b, a);
}

/** True if a line along a side of the first rectangle parts it from the second. No objects: it runs very often. */
function isPartedAlong(a: LabelBox, b: LabelBox): boolean {
  const own = turnOf(a);
  const other = turnOf(b);
  const dx = b.center.x - a.center.x;
  const dy = b.center.y - a.center.y;
  // The angle between the two, and how far the second one reaches along the sides of the first.
  const sin = Math.abs(other.sin * own.cos - other.cos * own.sin);
  const cos = Math.abs(other.cos * own.cos + other.sin * own.sin);
  const reachX = (a.widthMm + b.widthMm * cos + b.heightMm * sin) / 2;
  const reachY = (a.heightMm + b.widthMm * sin + b.heightMm * cos) / 2;
  return Math.abs(dx * own.cos + dy * own.sin) >= reachX || Math.abs(dy * own.cos - dx * own.sin) >= reachY;
}

/** True if the whole rectangle lies in the region. */
export function labelBoxInRegion(box: LabelBox, region: Region): boolean {
  return !labelBoxMeetsEdges(box, region) && isInside(box.center, region);
}

/** True if the rectangle and the region share a point. */
export function labelBoxMeetsRegion(box: LabelBox, region: Region): boolean {
  return labelBoxMeetsEdges(box, region) || isInside(box.center, region);
}

/** True if the rectangle and an edge of the region (outline or opening) share a point. */
export function labelBoxMeetsEdges(box: LabelBox, region: Region): boolean {
  const frame = frameOf(box);
  return ringMeetsBox(region.outer, frame) || region.openings.some((ring) => ringMeetsBox(ring, frame));
}

/** True if the segment and the rectangle share a point. */
export function segmentMeetsLabelBox(from: Point, to: Point, box: LabelBox): boolean {
  const { sin, cos } = turnOf(box);
  const ax = from.x - box.center.x;
  const ay = from.y - box.center.y;
  const bx = to.x - box.center.x;
  const by = to.y - box.center.y;
  return segmentMeetsBox(
    ax * cos + ay * sin,
    -ax * sin + ay * cos,
    bx * cos + by * sin,
    -bx * sin + by * cos,
    box.widthMm / 2,
    box.heightMm / 2,
  );
}

/** The nearest point of the rectangle's edge, or the point itself if it is inside. */
export function nearestOnLabelBox(box: LabelBox, p: Point): Point {
  const frame = frameOf(box);
  const local = intoFrame(frame, p);
  const x = Math.max(-frame.halfWidth, Math.min(frame.halfWidth, local.x));
  const y = Math.max(-frame.halfHeight, Math.min(frame.halfHeight, local.y));
  return {
    x: box.center.x + x * frame.cos - y * frame.sin,
    y: box.center.y + x * frame.sin + y * frame.cos,
  };
}

/** Inside the outer ring and in no opening; what lies on an edge may count either way. */
export function isInside(p: Point, region: Region): boolean {
  return (
    pointInRing(p, region.outer) === 'inside' &&
    region.openings.every((opening) => pointInRing(p, opening) !== 'inside')
  );
}

interface BoxFrame {
  readonly center: Point;
  readonly sin: number;
  readonly cos: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

const LEVEL = { sin: 0, cos: 1 };

function turnOf(box: LabelBox): Turn {
  return box.turn ?? (box.angleDeg === 0 ? LEVEL : sinCosDeg(box.angleDeg));
}

function frameOf(box: LabelBox): BoxFrame {
  const { sin, cos } = turnOf(box);
  return { center: box.center, sin, cos, halfWidth: box.widthMm / 2, halfHeight: box.heightMm / 2 };
}

function intoFrame(frame: BoxFrame, p: Point): Point {
  const dx = p.x - frame.center.x;
  const dy = p.y - frame.center.y;
  return { x: dx * frame.cos + dy * frame.sin, y: -dx * frame.sin + dy * frame.cos };
}

/** Runs millions of times on a full sheet: no objects are made, and far segments are passed over first. */
function ringMeetsBox(ring: Ring, frame: BoxFrame): boolean {
  const { center, sin, cos, halfWidth, halfHeight } = frame;
  const last = ring[ring.length - 1]!;
  let fromX = (last.x - center.x) * cos + (last.y - center.y) * sin;
  let fromY = -(last.x - center.x) * sin + (last.y - center.y) * cos;
  for (const corner of ring) {
    const dx = corner.x - center.x;
    const dy = corner.y - center.y;
    const toX = dx * cos + dy * sin;
    const toY = -dx * sin + dy * cos;
    if (segmentMeetsBox(fromX, fromY, toX, toY, halfWidth, halfHeight)) return true;
    fromX = toX;
    fromY = toY;
  }
  return false;
}

function segmentMeetsBox(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  halfWidth: number,
  halfHeight: number,
): boolean {
  if ((fromX > halfWidth && toX > halfWidth) || (fromX < -halfWidth && toX < -halfWidth)) return false;
  if ((fromY > halfHeight && toY > halfHeight) || (fromY < -halfHeight && toY < -halfHeight)) return false;
  if (Math.abs(fromX) <= halfWidth && Math.abs(fromY) <= halfHeight) return true;
  // Both ends outside, not beyond one side: they meet unless all four corners lie on one side of the line.
  const ux = toX - fromX;
  const uy = toY - fromY;
  const reach = Math.abs(ux) * halfHeight + Math.abs(uy) * halfWidth;
  return Math.abs(ux * fromY - uy * fromX) <= reach;
}
