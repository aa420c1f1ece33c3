import { convexParts } from '../shape/convex-parts.js';
import { ringArea } from '../shape/ring.js';
import type { Point, Region, Ring } from '../types/shape.js';

/** A convex part: corners with positive area, and for edge k (corner k to k + 1) its outward unit normal. */
export interface SettlePart {
  readonly px: Float64Array;
  readonly py: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  /** Greatest n · corner over the part, for each edge. */
  readonly support: Float64Array;
  /** 1 for an edge that is a cut between two parts of the shape, not a piece of its outline. */
  readonly isCut: Uint8Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A rigid shape as convex parts, in its own turned frame (mm): it is laid by moving it. Immutable; bodies may share it. */
export interface SettleShape {
  readonly parts: readonly SettlePart[];
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * The shape of flat rings [x0, y0, x1, y1, …] in mm: those of positive area are outlines, those of negative area
 * openings, which belong to the outline before them. Corners stay exact: parts are cut along lines between them.
 * Throws `bad-argument` where rings cross.
 */
export function settleShapeOf(rings: readonly Float64Array[]): SettleShape {
  const regions: { readonly outer: Ring; readonly openings: Ring[] }[] = [];
  for (const flat of rings) {
    const ring = ringOf(flat);
    const last = regions[regions.length - 1];
    if (last === undefined || ringArea(ring) > 0) regions.push({ outer: ring, openings: [] });
    else last.openings.push(ring);
  }
  return shapeOfParts(regions.flatMap(partsOf));
}

/** The shape turned clockwise as seen about (0, 0), by an angle of which sine and cosine are given. */
export function turnedShape(shape: SettleShape, sin: number, cos: number): SettleShape {
  return shapeOfParts(shape.parts.map((part) => turnedPart(part, sin, cos)));
}

function ringOf(flat: Float64Array): Ring {
  const ring: Point[] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) ring.push({ x: flat[i]!, y: flat[i + 1]! });
  return ring;
}

function partsOf(region: Region): SettlePart[] {
  const rings = convexParts(region);
  const edges = new Set(
    rings.flatMap((ring) => ring.map((p, i) => edgeKey(p, ring[(i + 1) % ring.length]!))),
  );
  return rings.map((ring) => partOf(ring, edges));
}

function edgeKey(p: Point, q: Point): string {
  return `${p.x} ${p.y} ${q.x} ${q.y}`;
}

function partOf(ring: Ring, edges: ReadonlySet<string>): SettlePart {
  const px = Float64Array.from(ring, (p) => p.x);
  const py = Float64Array.from(ring, (p) => p.y);
  const isCut = Uint8Array.from(ring, (p, i) =>
    edges.has(edgeKey(ring[(i + 1) % ring.length]!, p)) ? 1 : 0,
  );
  return partOfCorners(px, py, isCut);
}

function turnedPart(part: SettlePart, sin: number, cos: number): SettlePart {
  const px = new Float64Array(part.px.length);
  const py = new Float64Array(part.px.length);
  for (let i = 0; i < px.length; i++) {
    px[i] = part.px[i]! * cos - part.py[i]! * sin;
    py[i] = part.px[i]! * sin + part.py[i]! * cos;
  }
  return partOfCorners(px, py, part.isCut);
}

function partOfCorners(px: Float64Array, py: Float64Array, isCut: Uint8Array): SettlePart {
  const count = px.length;
  const nx = new Float64Array(count);
  const ny = new Float64Array(count);
  const support = new Float64Array(count);
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < count; i++) {
    const next = i + 1 === count ? 0 : i + 1;
    const ex = px[next]! - px[i]!;
    const ey = py[next]! - py[i]!;
    const length = Math.sqrt(ex * ex + ey * ey);
    const ux = ey / length;
    const uy = -ex / length;
    nx[i] = ux;
    ny[i] = uy;
    let far = -Infinity;
    for (let k = 0; k < count; k++) far = Math.max(far, ux * px[k]! + uy * py[k]!);
    support[i] = far;
    minX = Math.min(minX, px[i]!);
    minY = Math.min(minY, py[i]!);
    maxX = Math.max(maxX, px[i]!);
    maxY = Math.max(maxY, py[i]!);
  }
  return { px, py, nx, ny, support, isCut, minX, minY, maxX, maxY };
}

function shapeOfParts(parts: readonly SettlePart[]): SettleShape {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const part of parts) {
    minX = Math.min(minX, part.minX);
    minY = Math.min(minY, part.minY);
    maxX = Math.max(maxX, part.maxX);
    maxY = Math.max(maxY, part.maxY);
  }
  return { parts, minX, minY, maxX, maxY };
}
