import { containingRing, orientRing, sinCosDeg, unionRegions } from '@hidebound/geometry';
import type { Point, Polyline, Region, Ring } from '@hidebound/geometry';
import type { FlawShape } from '../model/hide.js';

/** Corners of a polygon around a circle: 32 tangents reach 0.5 % of the radius beyond it. */
const CIRCLE_TANGENTS = 32;
/** Tangents round each end and bend of a line with a width: they reach 2 % of the half width beyond it. */
const BEND_TANGENTS = 16;
/** A point or line without an extent of its own still marks a place: the tip of an awl. */
export const LEAST_FLAW_RADIUS_MM = 0.1;

/** The regions that contain a flaw's true shape. */
export function flawRegions(shape: FlawShape): Region[] {
  switch (shape.kind) {
    case 'point':
      return [
        asRegion(
          circumscribedCircle(shape.at, Math.max(shape.radiusMm, LEAST_FLAW_RADIUS_MM), CIRCLE_TANGENTS),
        ),
      ];
    case 'line':
      return bufferedLine(shape.line, shape.widthMm / 2);
    case 'area':
      return [asRegion(containingRing(shape.outline))];
  }
}

/** All within `halfWidth` mm of a chain of lines, round ends included; contains the true shape. */
export function bufferedLine(line: Polyline, halfWidth: number): Region[] {
  const half = Math.max(halfWidth, LEAST_FLAW_RADIUS_MM);
  const parts: Region[] = line.map((p) => asRegion(circumscribedCircle(p, half, BEND_TANGENTS)));
  for (let i = 0; i + 1 < line.length; i++) {
    const band = bandAround(line[i]!, line[i + 1]!, half);
    if (band !== undefined) parts.push(band);
  }
  return unionRegions(parts);
}

function bandAround(a: Point, b: Point, half: number): Region | undefined {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return undefined;
  const nx = (-dy / length) * half;
  const ny = (dx / length) * half;
  return asRegion([
    { x: a.x + nx, y: a.y + ny },
    { x: a.x - nx, y: a.y - ny },
    { x: b.x - nx, y: b.y - ny },
    { x: b.x + nx, y: b.y + ny },
  ]);
}

/** A polygon whose sides touch the circle from outside. */
function circumscribedCircle(at: Point, radius: number, corners: number): Ring {
  const step = 360 / corners;
  const reach = radius / sinCosDeg(step / 2).cos;
  return Array.from({ length: corners }, (_, i) => {
    const { sin, cos } = sinCosDeg(i * step);
    return { x: at.x + reach * cos, y: at.y + reach * sin };
  });
}

function asRegion(ring: Ring): Region {
  return { outer: orientRing(ring, 'outer'), openings: [] };
}
