import type { Patch } from './thin.js';

/**
 * The sets of cells that touch each other, corners included, each as a bitmap of its own with a border of unset cells.
 * Sets of fewer than `least` cells are left out.
 */
export function patchesOf(mask: Uint8Array, width: number, height: number, least: number): Patch[] {
  const seen = new Uint8Array(mask.length);
  const patches: Patch[] = [];
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0 || seen[i] !== 0) continue;
    const cells = flooded(mask, seen, width, height, i);
    if (cells.length >= least) patches.push(cutOut(cells, width));
  }
  return patches;
}

function flooded(mask: Uint8Array, seen: Uint8Array, width: number, height: number, start: number): number[] {
  const cells = [start];
  seen[start] = 1;
  for (let head = 0; head < cells.length; head++) {
    const x = cells[head]! % width;
    const y = (cells[head]! - x) / width;
    for (let j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
      for (let i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
        const k = j * width + i;
        if (mask[k] === 0 || seen[k] !== 0) continue;
        seen[k] = 1;
        cells.push(k);
      }
    }
  }
  return cells;
}

function cutOut(indices: readonly number[], width: number): Patch {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = 0;
  let maxY = 0;
  for (const k of indices) {
    const x = k % width;
    const y = (k - x) / width;
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  }
  const patch = { x: minX - 1, y: minY - 1, width: maxX - minX + 3, height: maxY - minY + 3 };
  const cells = new Uint8Array(patch.width * patch.height);
  for (const k of indices) {
    const x = k % width;
    const y = (k - x) / width;
    cells[(y - patch.y) * patch.width + x - patch.x] = 1;
  }
  return { ...patch, cells };
}

/** The index on the whole grid, of so many cells a row, of a cell of the patch. */
export function globalIndex(patch: Patch, i: number, gridWidth: number): number {
  const x = i % patch.width;
  return (patch.y + (i - x) / patch.width) * gridWidth + patch.x + x;
}
