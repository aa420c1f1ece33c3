import type { Random } from '../number/random.js';
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

/** Largest first, more or less: each area is multiplied by a number between 1 and 1 + noise. */
export function roughlyBySize(
  layout: Layout,
  copies: readonly number[],
  random: Random,
  noise: number,
): number[] {
  const keyed = copies.map((copy) => ({
    copy,
    key: layout.demand.copies[copy]!.prepared.areaMm2 * (1 + noise * random.next()),
  }));
  keyed.sort((a, b) => b.key - a.key || a.copy - b.copy);
  return keyed.map(({ copy }) => copy);
}

export function shuffled(copies: readonly number[], random: Random): number[] {
  const list = [...copies];
  for (let i = list.length - 1; i > 0; i--) {
    const k = random.integer(i + 1);
    const swap = list[i]!;
    list[i] = list[k]!;
    list[k] = swap;
  }
  return list;
}
