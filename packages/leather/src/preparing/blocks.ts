import { regionArea, regionBox, regionsArea, ringArea, subtractRegions } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { hideRegion, netRegions } from '../hide/hide-region.js';
import { pieceOfPlacement, placedRegion } from '../layout/placed-region.js';
import { startedRoughCuts, withoutSpoiledSeats } from '../layout/seats.js';
import type { Layout, PieceCopy, PiecePlacement, RoughCutBlock } from '../model/layout.js';
import type { ResolvedPiece } from '../model/order.js';
import { bareCopy, pieceCopyKey } from '../order/item-id.js';
import type { NamedHide } from '../order/sheets.js';
import type { Worked } from './order-of-work.js';

/** One piece of leather that is prepared in one go: a rough cut, or a whole hide. */
export interface PreparedBlock {
  /** The rough cut’s or the hide’s. */
  readonly id: string;
  readonly hide: string;
  readonly leather: string;
  /** Absent: the whole hide is prepared. */
  readonly roughCut?: string;
  readonly worked?: Worked;
  /** Of one side. */
  readonly areaMm2: number;
  readonly piecesMm2: number;
  /** Of a whole hide: what is used up of it, where that is less. */
  readonly usedUpMm2?: number;
  readonly marginMm?: number;
  readonly pieces: readonly PieceCopy[];
  /** The longest of them. */
  readonly longestMm: number;
  /** Pieces or rough cuts of other leathers lie on the hide, and are cut out before. */
  readonly takesOut: boolean;
  /** Some of these are no rough cuts: they are to be cut to the line before the leather is prepared. */
  readonly hasLooseOthers?: boolean;
}

export interface BlocksOfLayout {
  readonly blocks: readonly PreparedBlock[];
  /** Rough cuts that are not prepared any more: a piece of theirs is cut. */
  readonly done: readonly string[];
}

/** All that a layout’s leathers with a preparation are prepared in, in the layout’s order: rough cuts, then whole hides. */
export function blocksOf(given: Layout, hides: readonly NamedHide[]): BlocksOfLayout {
  const layout = { ...given, ...withoutSpoiledSeats(given) };
  const started = startedRoughCuts(given);
  const prepared = layout.roughCuts.filter(({ leather }) => isPrepared(layout, leather));
  const open = prepared.filter(({ id }) => !started.has(id));
  return {
    blocks: [...open.map((block) => roughBlock(block, layout)), ...wholeHides(layout, hides)],
    done: prepared.filter(({ id }) => started.has(id)).map(({ id }) => id),
  };
}

function isPrepared({ order }: Layout, leather: string): boolean {
  return order.leathers.find(({ name }) => name === leather)?.preparation !== undefined;
}

function roughBlock(block: RoughCutBlock, layout: Layout): PreparedBlock {
  const members = new Set(block.members.map(pieceCopyKey));
  const placed = layout.placements.filter(
    (placement) => placement.hide === block.hide && members.has(pieceCopyKey(placement)),
  );
  return {
    id: block.id,
    hide: block.hide,
    leather: block.leather,
    roughCut: block.id,
    areaMm2: Math.abs(ringArea(block.outline)),
    marginMm: block.marginMm,
    takesOut: false,
    ...piecesOf(placed, layout),
  };
}

/** Hides of which pieces without a rough cut are still to be cut. */
function wholeHides(layout: Layout, hides: readonly NamedHide[]): PreparedBlock[] {
  const inBlocks = new Set(
    layout.roughCuts.flatMap(({ hide, members }) => members.map((copy) => `${hide} ${pieceCopyKey(copy)}`)),
  );
  const isLoose = (placement: PiecePlacement): boolean =>
    !inBlocks.has(`${placement.hide} ${pieceCopyKey(placement)}`);
  const leathers = layout.order.leathers.filter(({ preparation }) => preparation !== undefined);
  return leathers.flatMap(({ name }) =>
    hides.flatMap(({ hide }): PreparedBlock[] => {
      const here = layout.placements.filter((placement) => placement.hide === hide.id);
      const isOwn = (placement: PiecePlacement): boolean =>
        orderPieceOf(layout, placement)?.leather === name && isLoose(placement);
      const own = here.filter((placement) => placement.state === 'planned' && isOwn(placement));
      if (own.length === 0) return [];
      const others = here
        .filter((placement) => !isOwn(placement) || placement.state !== 'planned')
        .filter(isLoose)
        .map((placement) => placedRegion(placement, layout.pieces).region);
      const cuts = layout.roughCuts
        .filter((block) => block.hide === hide.id)
        .map(({ outline }): Region => ({ outer: outline, openings: [] }));
      const gone = [...cuts, ...others];
      const areaMm2 = regionsArea(subtractRegions(netRegions(hideRegion(hide)), gone));
      const usedUp = layout.yield.hides.find((line) => line.hide === hide.id)?.usedUpMm2;
      return [
        {
          id: hide.id,
          hide: hide.id,
          leather: name,
          areaMm2,
          ...(usedUp === undefined || gone.length > 0 ? {} : { usedUpMm2: usedUp }),
          takesOut: gone.length > 0,
          ...(others.length > 0 ? { hasLooseOthers: true } : {}),
          ...piecesOf(own, layout),
        },
      ];
    }),
  );
}

function piecesOf(
  placed: readonly PiecePlacement[],
  layout: Layout,
): Pick<PreparedBlock, 'pieces' | 'piecesMm2' | 'longestMm' | 'worked'> {
  const regions = placed.map((placement) => pieceOfPlacement(placement, layout.pieces).region);
  const worked = workedOf(placed.map((placement) => orderPieceOf(layout, placement)));
  return {
    pieces: placed.map(bareCopy),
    piecesMm2: regions.reduce((sum, region) => sum + regionArea(region), 0),
    longestMm: Math.max(0, ...regions.map(longerSide)),
    ...(worked === undefined ? {} : { worked }),
  };
}

function longerSide(region: Region): number {
  const { minX, minY, maxX, maxY } = regionBox(region);
  return Math.max(maxX - minX, maxY - minY);
}

function workedOf(pieces: readonly (ResolvedPiece | undefined)[]): Worked | undefined {
  const isTooled = pieces.some((piece) => piece?.isTooled === true);
  const isMoulded = pieces.some((piece) => piece?.part === 'moulded');
  if (isTooled && isMoulded) return 'tooled and moulded';
  if (isTooled) return 'tooled';
  return isMoulded ? 'moulded' : undefined;
}

function orderPieceOf({ order }: Layout, { article, piece }: PieceCopy): ResolvedPiece | undefined {
  return order.articles.find(({ name }) => name === article)?.pieces.find(({ name }) => name === piece);
}
