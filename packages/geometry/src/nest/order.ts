import type { Copy } from './demand.js';
import type { Layout } from './layout.js';

/** Copies by priority, then those of rough cuts, then by size, largest first: what is hard to place goes first. */
export function inOrder(layout: Layout, copies: readonly number[]): number[] {
  const { demand } = layout;
  return [...copies].sort((i, k) => compareCopies(layout, demand.copies[i]!, demand.copies[k]!));
}

function compareCopies(layout: Layout, a: Copy, b: Copy): number {
  const kindA = layout.demand.sets[a.set]!.kind;
  const kindB = layout.demand.sets[b.set]!.kind;
  return (
    b.prepared.item.priority - a.prepared.item.priority ||
    kindB.priority - kindA.priority ||
    a.prepared.rank - b.prepared.rank ||
    b.prepared.areaMm2 - a.prepared.areaMm2 ||
    a.index - b.index
  );
}
