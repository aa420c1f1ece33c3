/**
 * Where a solid must be moved to so that it touches another one at a distance. For two polygons these travels form
 * segments (a corner of one along a side of the other) and arcs (corner about corner): the boundary of their Minkowski
 * difference, grown by the distance, is made of such pieces, and of those only the ones are kept at which neither
 * reaches into the other right there. Places deeper in the other still have to be sifted out.
 */
import type { Box } from '../types/shape.js';
import { FLUSH } from './constants.js';
import type { SolidLoops } from './solid-loops.js';

/** A travel along which contact is kept; `obstacle` says with what. */
export type ContactCurve = ContactSegment | ContactArc;

interface ContactSegment {
  readonly kind: 'segment';
  readonly obstacle: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

interface ContactArc {
  readonly kind: 'arc';
  readonly obstacle: number;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** True where the two corners face each other in the direction (ux, uy) from the standing to the moving one. */
  readonly faces: (ux: number, uy: number) => boolean;
}

/** All curves of a moving and a standing solid that come within `reach` (mm) of no travel at all. */
export function contactCurves(
  moving: SolidLoops,
  standing: SolidLoops,
  { distance, reach, obstacle }: { distance: number; reach: number; obstacle: number },
): ContactCurve[] {
  const curves: ContactCurve[] = [];
  const around = grownBox(moving, reach + distance);
  const keep = (curve: ContactCurve): void => {
    if (comesWithin(curve, reach)) curves.push(curve);
  };
  for (let i = 0; i < standing.count; i++) {
    if (isBeyond(standing, i, around)) continue;
    addSideContacts(moving, standing, i, distance, obstacle, keep);
    if (standing.isConvex[i] === 1) addCornerContacts(moving, standing, i, distance, obstacle, keep);
  }
  return curves;
}

/** The travel on the curve that is nearest to no travel; undefined where only the ends of an arc come near. */
export function nearestTravel(curve: ContactCurve): { readonly x: number; readonly y: number } | undefined {
  if (curve.kind === 'arc') {
    const length = Math.sqrt(curve.x * curve.x + curve.y * curve.y);
    if (length === 0) return undefined;
    const ux = -curve.x / length;
    const uy = -curve.y / length;
    if (!curve.faces(ux, uy)) return undefined;
    return { x: curve.x + curve.radius * ux, y: curve.y + curve.radius * uy };
  }
  const { x0, y0, x1, y1 } = curve;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const lengthSq = dx * dx + dy * dy;
  const t = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, -(x0 * dx + y0 * dy) / lengthSq));
  return { x: x0 + t * dx, y: y0 + t * dy };
}

/** Of an arc the whole circle is asked. */
function comesWithin(curve: ContactCurve, reach: number): boolean {
  if (curve.kind === 'arc') {
    return Math.abs(Math.sqrt(curve.x * curve.x + curve.y * curve.y) - curve.radius) <= reach;
  }
  const { x, y } = nearestTravel(curve)!;
  return x * x + y * y <= reach * reach;
}

/** Corners of the moving solid along side `i` of the standing one. */
function addSideContacts(
  moving: SolidLoops,
  standing: SolidLoops,
  i: number,
  distance: number,
  obstacle: number,
  keep: (curve: ContactCurve) => void,
): void {
  const nx = standing.uy[i]!;
  const ny = -standing.ux[i]!;
  const offX = distance * nx;
  const offY = distance * ny;
  for (let k = 0; k < moving.count; k++) {
    if (moving.isConvex[k] === 0 || !isAhead(moving, k, nx, ny)) continue;
    const dx = offX - moving.ax[k]!;
    const dy = offY - moving.ay[k]!;
    keep({
      kind: 'segment',
      obstacle,
      x0: standing.ax[i]! + dx,
      y0: standing.ay[i]! + dy,
      x1: standing.bx[i]! + dx,
      y1: standing.by[i]! + dy,
    });
  }
}

/** Sides and corners of the moving solid along corner `i` of the standing one. */
function addCornerContacts(
  moving: SolidLoops,
  standing: SolidLoops,
  i: number,
  distance: number,
  obstacle: number,
  keep: (curve: ContactCurve) => void,
): void {
  const sx = standing.ax[i]!;
  const sy = standing.ay[i]!;
  for (let k = 0; k < moving.count; k++) {
    const mx = moving.uy[k]!;
    const my = -moving.ux[k]!;
    if (isAhead(standing, i, mx, my)) {
      const dx = sx - distance * mx;
      const dy = sy - distance * my;
      keep({
        kind: 'segment',
        obstacle,
        x0: dx - moving.ax[k]!,
        y0: dy - moving.ay[k]!,
        x1: dx - moving.bx[k]!,
        y1: dy - moving.by[k]!,
      });
    }
    if (distance === 0 || moving.isConvex[k] === 0) continue;
    keep({
      kind: 'arc',
      obstacle,
      x: sx - moving.ax[k]!,
      y: sy - moving.ay[k]!,
      radius: distance,
      faces: (ux, uy) => isAhead(standing, i, -ux, -uy) && isAhead(moving, k, ux, uy),
    });
  }
}

/** Both sides at corner `k` lead, from there, in the direction (nx, ny) or along it. */
function isAhead(loops: SolidLoops, k: number, nx: number, ny: number): boolean {
  const before = loops.before[k]!;
  return (
    loops.ux[k]! * nx + loops.uy[k]! * ny >= -FLUSH &&
    -loops.ux[before]! * nx - loops.uy[before]! * ny >= -FLUSH
  );
}

function isBeyond(loops: SolidLoops, i: number, box: Box): boolean {
  return (
    Math.max(loops.ax[i]!, loops.bx[i]!) < box.minX ||
    Math.min(loops.ax[i]!, loops.bx[i]!) > box.maxX ||
    Math.max(loops.ay[i]!, loops.by[i]!) < box.minY ||
    Math.min(loops.ay[i]!, loops.by[i]!) > box.maxY
  );
}

function grownBox(loops: SolidLoops, by: number): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < loops.count; i++) {
    minX = Math.min(minX, loops.ax[i]!);
    maxX = Math.max(maxX, loops.ax[i]!);
    minY = Math.min(minY, loops.ay[i]!);
    maxY = Math.max(maxY, loops.ay[i]!);
  }
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
