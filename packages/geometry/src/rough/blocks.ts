import { unionRegions } from '../shape/clipper.js';
import { pointInRing } from '../shape/point-in-ring.js';
import { convexHull } from '../shape/hull.js';
import { ringBox } from '../shape/ring.js';
import type { Ring } from '../types/shape.js';
import type { Grow, Piece } from './grown.js';
import { filled, overlaps } from './overlap.js';

/** Pieces of one group that are cut out together. */
export interface Block {
  readonly group: string;
  /** Numbers of pieces of the sheet, ascending. */
  readonly members: readonly number[];
  /** The least margin of its members: each of them keeps this or its own. */
  readonly marginMm: number;
  /** What its outline must hold: all members with their margins. */
  readonly core: Ring;
}

/**
 * The blocks of a sheet that can't be parted: members whose margins overlap, and those of the group that lie in the
 * midst of others. A piece of the group without a margin joins a block that reaches over it.
 */
export function baseBlocks(pieces: readonly Piece[], grow: Grow): Block[] {
  const groups = new Set(
    pieces.flatMap(({ item }) =>
      item.roughMargin !== undefined && item.group !== undefined ? [item.group] : [],
    ),
  );
  return [...groups].flatMap((group) => blocksOfGroup(group, pieces, grow));
}

function blocksOfGroup(group: string, pieces: readonly Piece[], grow: Grow): Block[] {
  const all = pieces.flatMap(({ item }, i) => (item.group === group ? [i] : []));
  const own = all.filter((i) => pieces[i]!.item.roughMargin !== undefined);
  const margins = own.map((i) => pieces[i]!.item.roughMargin!);
  const marginMm = Math.min(...margins);
  const isFree = (i: number): boolean => pieces[i]!.item.roughMargin === undefined;
  let rings = own.map((i, k) => ({ i, ring: grow(pieces[i]!, margins[k]!) }));
  let guests = all.filter(isFree);
  for (;;) {
    const cores = mergedCores(rings.map(({ ring }) => ring));
    const drawnIn = guests.filter((i) => cores.some((core) => overlaps(filled(core), pieces[i]!.region)));
    if (drawnIn.length === 0) return cores.map((core) => blockOf(group, core, rings, pieces, marginMm));
    rings = [...rings, ...drawnIn.map((i) => ({ i, ring: grow(pieces[i]!, marginMm) }))];
    guests = guests.filter((i) => !drawnIn.includes(i));
  }
}

/** United, with all that they ring about. */
function mergedCores(rings: readonly Ring[]): Ring[] {
  const outers = unionRegions(rings.map(filled)).map(({ outer }) => outer);
  return outers.length === 1 ? outers : unionRegions(outers.map(filled)).map(({ outer }) => outer);
}

function blockOf(
  group: string,
  core: Ring,
  rings: readonly { readonly i: number; readonly ring: Ring }[],
  pieces: readonly Piece[],
  guestMarginMm: number,
): Block {
  const box = ringBox(core);
  const members = rings
    .filter(({ i }) => {
      const { x, y } = pieces[i]!.region.outer[0]!;
      if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return false;
      return pointInRing({ x, y }, core) !== 'outside';
    })
    .map(({ i }) => i)
    .sort((a, b) => a - b);
  const margins = members.map((i) => pieces[i]!.item.roughMargin ?? guestMarginMm);
  return { group, core, members, marginMm: Math.min(...margins) };
}

/** The block that holds both, around a core that holds both cores. */
export function joinedBlock(one: Block, other: Block, core: Ring): Block {
  return {
    group: one.group,
    core,
    members: [...one.members, ...other.members].sort((a, b) => a - b),
    marginMm: Math.min(one.marginMm, other.marginMm),
  };
}

/** The straightest core that holds both: their convex hull. */
export function commonHull(one: Block, other: Block): Ring {
  return convexHull([...one.core, ...other.core]);
}
