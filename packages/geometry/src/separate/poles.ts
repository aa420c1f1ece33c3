import { POLE_FIRST_SHARE, POLE_COVER, POLE_GRID, POLE_LAST_STEP } from './constants.js';

/** Inscribed circles of a shape, largest first: three numbers each, x, y and radius. */
export type Poles = Float64Array;

/**
 * Circles that fill a shape: the widest inscribed one, then again and again the widest that keeps clear of those
 * before it (Gardeyn, Vanden Berghe & Wauters 2025). `rings` are flat corners, openings included; even-odd.
 */
export function polesOf(rings: readonly Float64Array[], areaMm2: number, most: number): Poles {
  const box = boxOf(rings);
  const poles: number[] = [];
  let covered = 0;
  for (let k = 0; k < most; k++) {
    const found = widestBeside(rings, box, poles);
    if (found.r <= 0 || (k > 0 && found.r < POLE_FIRST_SHARE * poles[2]!)) break;
    poles.push(found.x, found.y, found.r);
    covered += Math.PI * found.r * found.r;
    if (covered > POLE_COVER * areaMm2) break;
  }
  return Float64Array.from(poles);
}

interface Found {
  x: number;
  y: number;
  r: number;
}

interface Extent {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

function boxOf(rings: readonly Float64Array[]): Extent {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      box.minX = Math.min(box.minX, ring[i]!);
      box.maxX = Math.max(box.maxX, ring[i]!);
      box.minY = Math.min(box.minY, ring[i + 1]!);
      box.maxY = Math.max(box.maxY, ring[i + 1]!);
    }
  }
  return box;
}

/** From the best points of a grid, uphill in ever smaller steps. */
function widestBeside(rings: readonly Float64Array[], box: Extent, poles: readonly number[]): Found {
  const stepX = (box.maxX - box.minX) / POLE_GRID;
  const stepY = (box.maxY - box.minY) / POLE_GRID;
  const starts: Found[] = [];
  for (let a = 0; a < POLE_GRID; a++) {
    for (let b = 0; b < POLE_GRID; b++) {
      const x = box.minX + (a + 0.5) * stepX;
      const y = box.minY + (b + 0.5) * stepY;
      starts.push({ x, y, r: clearance(rings, poles, x, y) });
    }
  }
  starts.sort((p, q) => q.r - p.r);
  const best = { ...starts[0]! };
  for (const start of starts.slice(0, 6)) {
    const top = climb(rings, poles, start, Math.max(stepX, stepY));
    if (top.r > best.r) Object.assign(best, top);
  }
  return best;
}

const DIAGONAL = 0.7;
const WAYS: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [DIAGONAL, DIAGONAL],
  [-DIAGONAL, DIAGONAL],
  [DIAGONAL, -DIAGONAL],
  [-DIAGONAL, -DIAGONAL],
];

function climb(
  rings: readonly Float64Array[],
  poles: readonly number[],
  start: Found,
  firstStep: number,
): Found {
  const at = { ...start };
  let step = firstStep;
  while (step > firstStep * POLE_LAST_STEP) {
    let moved = false;
    for (const [dx, dy] of WAYS) {
      const r = clearance(rings, poles, at.x + dx * step, at.y + dy * step);
      if (r <= at.r) continue;
      at.x += dx * step;
      at.y += dy * step;
      at.r = r;
      moved = true;
      break;
    }
    if (!moved) step *= 0.5;
  }
  return at;
}

/** Distance to the nearest edge or earlier circle; negative outside. */
function clearance(rings: readonly Float64Array[], poles: readonly number[], x: number, y: number): number {
  let inside = false;
  let least = Infinity;
  for (const ring of rings) {
    const n = ring.length;
    let ax = ring[n - 2]!;
    let ay = ring[n - 1]!;
    for (let i = 0; i < n; i += 2) {
      const bx = ring[i]!;
      const by = ring[i + 1]!;
      const dx = bx - ax;
      const dy = by - ay;
      if (ay > y !== by > y && x < (dx * (y - ay)) / dy + ax) inside = !inside;
      const length2 = dx * dx + dy * dy;
      const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
      const ex = ax + t * dx - x;
      const ey = ay + t * dy - y;
      least = Math.min(least, ex * ex + ey * ey);
      ax = bx;
      ay = by;
    }
  }
  let clear = inside ? Math.sqrt(least) : -Math.sqrt(least);
  for (let i = 0; i < poles.length; i += 3) {
    const ex = poles[i]! - x;
    const ey = poles[i + 1]! - y;
    clear = Math.min(clear, Math.sqrt(ex * ex + ey * ey) - poles[i + 2]!);
  }
  return clear;
}
