import type { SepSheet } from './world.js';

/** Net area of a sheet up to a limit, in mm², about: for choosing how far to squeeze, never for a score. */
export function areaUpTo(sheet: SepSheet, limit: number): number {
  const ground = sheet.grounds[0];
  if (ground === undefined) return Math.max(0, limit - sheet.minU) * (sheet.maxV - sheet.minV);
  return pointsBelow(ground.cellU, limit, ground.pitch) * ground.pitch * ground.pitch;
}

/** The limit up to which the net area is about so much. */
export function limitForArea(sheet: SepSheet, areaMm2: number): number {
  let low = sheet.minU;
  let high = sheet.maxU;
  for (let k = 0; k < BISECTIONS; k++) {
    const middle = (low + high) / 2;
    if (areaUpTo(sheet, middle) < areaMm2) low = middle;
    else high = middle;
  }
  return high;
}

const BISECTIONS = 48;

/** Points of the grid below the limit, the last column counted by its share. */
function pointsBelow(cellU: Float64Array, limit: number, pitch: number): number {
  const before = countBelow(cellU, limit - pitch / 2);
  const after = countBelow(cellU, limit + pitch / 2);
  const column = cellU[before];
  const share = column === undefined ? 0 : (limit + pitch / 2 - column) / pitch;
  return before + (after - before) * Math.min(1, Math.max(0, share));
}

function countBelow(cellU: Float64Array, limit: number): number {
  let low = 0;
  let high = cellU.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (cellU[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
