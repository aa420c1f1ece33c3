import { offsetRegions, unionRegions } from '../shape/clipper.js';
import { outlineDistance } from '../shape/distance.js';
import { boxesTouch, growBox, ringBox } from '../shape/ring.js';
import type { Ring } from '../types/shape.js';
import { commonHull, joinedBlock } from './blocks.js';
import type { Block } from './blocks.js';
import { BLOCK_WORTH_MM2, BRIDGE_OVERLAP_MM, JOIN_REACH_MM } from './constants.js';
import { filled } from './overlap.js';
import { outlineCost } from './straighten.js';

/** How the outline of a block is drawn while others lie where they do. */
export interface Drawing {
  isClear(ring: Ring, block: Block, others: readonly Block[]): boolean;
  outline(block: Block, others: readonly Block[]): Ring;
}

/**
 * Blocks of one group are joined, the nearest first, where one outline is less to cut, mark and handle than two and
 * nothing foreign comes to lie within. Each pair is tried once.
 */
export function joinBlocks(base: readonly Block[], drawing: Drawing): Block[] {
  let blocks = [...base];
  const costs = new Map<Block, number>();
  const cost = (block: Block, others: readonly Block[]): number => {
    const known = costs.get(block) ?? outlineCost(drawing.outline(block, others)) + BLOCK_WORTH_MM2;
    costs.set(block, known);
    return known;
  };
  const open = nearPairs(blocks, blocks);
  while (open.length > 0) {
    const { one, other, distanceMm } = open.shift()!;
    if (!blocks.includes(one) || !blocks.includes(other)) continue;
    const others = blocks.filter((block) => block !== one && block !== other);
    const joined = bridged(one, other, distanceMm, (block) => drawing.isClear(block.core, block, others));
    if (joined === undefined) continue;
    const apart = cost(one, [other, ...others]) + cost(other, [one, ...others]);
    if (cost(joined, others) >= apart) continue;
    blocks = [...others, joined];
    open.push(...nearPairs([joined], others));
    open.sort(byDistance);
  }
  return blocks;
}

interface Pair {
  readonly one: Block;
  readonly other: Block;
  readonly distanceMm: number;
  /** First members, by which ties are told apart. */
  readonly ranks: readonly [number, number];
}

function byDistance(a: Pair, b: Pair): number {
  return a.distanceMm - b.distanceMm || a.ranks[0] - b.ranks[0] || a.ranks[1] - b.ranks[1];
}

function nearPairs(ones: readonly Block[], others: readonly Block[]): Pair[] {
  const pairs: Pair[] = [];
  for (const [i, one] of ones.entries()) {
    const reach = growBox(ringBox(one.core), JOIN_REACH_MM);
    for (const [k, other] of others.entries()) {
      if (one.group !== other.group || (ones === others && k <= i)) continue;
      if (!boxesTouch(reach, ringBox(other.core))) continue;
      const distanceMm = outlineDistance(one.core, other.core, JOIN_REACH_MM);
      if (distanceMm >= JOIN_REACH_MM) continue;
      pairs.push({ one, other, distanceMm, ranks: [one.members[0]!, other.members[0]!] });
    }
  }
  return pairs.sort(byDistance);
}

/** Both in one outline: by a bridge where they come nearest, else by their hull; none if neither is clear. */
function bridged(
  one: Block,
  other: Block,
  distanceMm: number,
  isClear: (block: Block) => boolean,
): Block | undefined {
  const cores = [bridge(one.core, other.core, distanceMm), commonHull(one, other)];
  for (const core of cores) {
    const block = core === undefined ? undefined : joinedBlock(one, other, core);
    if (block !== undefined && isClear(block)) return block;
  }
  return undefined;
}

/** Both, and what lies between them where they are near: grown by half of the distance, united and shrunk again. */
function bridge(one: Ring, other: Ring, distanceMm: number): Ring | undefined {
  const by = distanceMm / 2 + BRIDGE_OVERLAP_MM;
  const both = [filled(one), filled(other)];
  const [grown, ...more] = offsetRegions(both, by, { join: 'mitre' });
  if (grown === undefined || more.length > 0) return undefined;
  const shrunk = offsetRegions([filled(grown.outer)], -by, { join: 'mitre' });
  const [united, ...parts] = unionRegions([...both, ...shrunk]);
  return united === undefined || parts.length > 0 ? undefined : united.outer;
}
