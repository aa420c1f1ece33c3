import { regionArea } from '../shape/ring.js';
import type { CopyRef, Sheet } from '../types/problem.js';
import type { Block } from './blocks.js';
import type { Grow, Piece } from './grown.js';
import { filled, leaves, overlaps } from './overlap.js';

/**
 * Why a rough cut can't be drawn. `no-group`: a piece has a margin but no group. `over-edge`: a margin reaches over
 * the edge of the sheet. `too-near`: something foreign lies within a margin. `encloses`: something foreign lies
 * amid a block, in an opening of one of its pieces or ringed by several.
 */
export type RoughCutConflictCode = 'no-group' | 'over-edge' | 'too-near' | 'encloses';

export interface RoughCutConflict {
  readonly code: RoughCutConflictCode;
  readonly sheet: string;
  readonly group?: string;
  /** Pieces of the block that are concerned. */
  readonly members: readonly CopyRef[];
  /** The foreign ones; empty for the edge. */
  readonly others: readonly CopyRef[];
  /** Copies, none fixed, without which this conflict is gone or less; empty: only fixed ones are concerned. */
  readonly lift: readonly CopyRef[];
}

/** Copies with a margin that belong to no group: none of them can be in a rough cut. */
export function groupless(sheet: string, pieces: readonly Piece[]): RoughCutConflict[] {
  return pieces
    .filter(({ item }) => item.roughMargin !== undefined && item.group === undefined)
    .map((piece) => ({ code: 'no-group', sheet, members: [piece.copy], others: [], lift: loose([piece]) }));
}

export interface Draft {
  readonly sheet: Sheet;
  readonly pieces: readonly Piece[];
  readonly grow: Grow;
  readonly blocks: readonly Block[];
}

/** All that is in the way of the blocks that can't be parted. */
export function findConflicts(draft: Draft): RoughCutConflict[] {
  const { blocks } = draft;
  return blocks.flatMap((block, i) => [
    ...edgeConflicts(draft, block),
    ...pieceConflicts(draft, block),
    ...blocks.slice(i + 1).flatMap((other) => blockConflict(draft, block, other)),
  ]);
}

function edgeConflicts(draft: Draft, block: Block): RoughCutConflict[] {
  const outline = draft.sheet.region.outer;
  if (!leaves(block.core, outline)) return [];
  const over = membersOf(draft, block).filter((piece) => leaves(grownOf(draft, block, piece), outline));
  const members = over.length > 0 ? over : membersOf(draft, block);
  return [conflict(draft, block, { code: 'over-edge', members, others: [], lift: loose(members) })];
}

function pieceConflicts(draft: Draft, block: Block): RoughCutConflict[] {
  // Members of other blocks are told of with their blocks.
  const inBlocks = new Set(draft.blocks.flatMap(({ members }) => members));
  return draft.pieces.flatMap((piece, i) => {
    if (inBlocks.has(i) || !overlaps(filled(block.core), piece.region)) return [];
    const near = membersOf(draft, block).filter((member) =>
      overlaps(filled(grownOf(draft, block, member)), piece.region),
    );
    if (near.length > 0 && !near.some((member) => enclosesAlone(member, piece))) {
      const lift = piece.isFixed ? loose(near) : loose([piece]);
      return [conflict(draft, block, { code: 'too-near', members: near, others: [piece], lift })];
    }
    const members = membersOf(draft, block);
    const lift = piece.isFixed ? loose(smallestFirst(members)).slice(0, 1) : loose([piece]);
    return [conflict(draft, block, { code: 'encloses', members, others: [piece], lift })];
  });
}

/** True if the piece lies in an opening of the member. */
function enclosesAlone(member: Piece, piece: Piece): boolean {
  return member.region.openings.some((opening) => overlaps(filled(opening), piece.region));
}

/** Blocks that overlap. The one that lies amid the other is in the way; where margins overlap, the later piece is. */
function blockConflict(draft: Draft, one: Block, other: Block): RoughCutConflict[] {
  if (!overlaps(filled(one.core), filled(other.core))) return [];
  const pairs = membersOf(draft, one).flatMap((a) => {
    const area = filled(grownOf(draft, one, a));
    return membersOf(draft, other).flatMap((b): [Piece, Piece][] =>
      overlaps(area, filled(grownOf(draft, other, b))) ? [[a, b]] : [],
    );
  });
  const framed = pairs.filter(([a, b]) => enclosesAlone(a, b) || enclosesAlone(b, a));
  if (framed.length > 0) {
    const [a, b] = framed[0]!;
    const [frame, amid] = enclosesAlone(a, b) ? [a, b] : [b, a];
    const found = { code: 'encloses', members: [frame], others: [amid] } as const;
    return [conflict(draft, frame === a ? one : other, { ...found, lift: firstLoose([amid], [frame]) })];
  }
  if (pairs.length > 0) {
    const members = [...new Set(pairs.map(([a]) => a))];
    const others = [...new Set(pairs.map(([, b]) => b))];
    return [conflict(draft, one, { code: 'too-near', members, others, lift: firstLoose(others, members) })];
  }
  const [around, amid] = blockArea(one) >= blockArea(other) ? [one, other] : [other, one];
  const members = membersOf(draft, around);
  const others = membersOf(draft, amid);
  const lift = firstLoose(others, loosePieces(smallestFirst(members)).slice(0, 1));
  return [conflict(draft, around, { code: 'encloses', members, others, lift })];
}

/** The first that are not all fixed. */
function firstLoose(...choices: readonly (readonly Piece[])[]): CopyRef[] {
  return choices.map(loose).find((copies) => copies.length > 0) ?? [];
}

interface Found {
  readonly code: RoughCutConflictCode;
  readonly members: readonly Piece[];
  readonly others: readonly Piece[];
  readonly lift: readonly CopyRef[];
}

function conflict(
  { sheet }: Draft,
  { group }: Block,
  { code, members, others, lift }: Found,
): RoughCutConflict {
  const refs = (pieces: readonly Piece[]): CopyRef[] => pieces.map(({ copy }) => copy);
  return { code, sheet: sheet.id, group, members: refs(members), others: refs(others), lift };
}

function membersOf({ pieces }: Draft, block: Block): Piece[] {
  return block.members.map((i) => pieces[i]!);
}

function grownOf({ grow }: Draft, block: Block, piece: Piece): ReturnType<Grow> {
  return grow(piece, piece.item.roughMargin ?? block.marginMm);
}

function loose(pieces: readonly Piece[]): CopyRef[] {
  return loosePieces(pieces).map(({ copy }) => copy);
}

function loosePieces(pieces: readonly Piece[]): Piece[] {
  return pieces.filter(({ isFixed }) => !isFixed);
}

function smallestFirst(pieces: readonly Piece[]): Piece[] {
  return [...pieces].sort((a, b) => regionArea(a.region) - regionArea(b.region));
}

function blockArea({ core }: Block): number {
  return regionArea(filled(core));
}
