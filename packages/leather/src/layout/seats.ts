import { pointInRing } from '@hidebound/geometry';
import type { Layout, PieceCopy, PiecePlacement, RoughCutBlock, StrapLane } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';

/** Which placement each seat of a lane or rough cut means; none where the copy does not lie on its hide. */
export interface Seats {
  /** By row, then by strap, as the lane lists them. */
  readonly ofLane: (lane: StrapLane) => readonly (readonly (PiecePlacement | undefined)[])[];
  readonly ofRoughCut: (block: RoughCutBlock) => readonly (PiecePlacement | undefined)[];
}

/**
 * A spoiled copy and the one that was laid again in its stead bear one name, so that a name alone does not tell which
 * of them sits in a lane or rough cut: the one does that lies there. Each placement is given one seat at most.
 */
export function seatsOf(placements: readonly PiecePlacement[]): Seats {
  const byKey = new Map<string, PiecePlacement[]>();
  for (const placement of placements) {
    const key = seatKey(placement.hide, placement);
    byKey.set(key, [...(byKey.get(key) ?? []), placement]);
  }
  const pick = (
    hide: string,
    copy: PieceCopy,
    lies: (placement: PiecePlacement) => boolean,
    used: Set<PiecePlacement>,
  ): PiecePlacement | undefined => {
    const here = byKey.get(seatKey(hide, copy)) ?? [];
    const free = here.filter((placement) => !used.has(placement));
    const found =
      here.length < 2
        ? here[0]
        : (free.find(lies) ?? free.find(({ state }) => state !== 'spoiled') ?? free[0]);
    if (found !== undefined) used.add(found);
    return found;
  };
  return {
    ofLane: (lane) => {
      const used = new Set<PiecePlacement>();
      return lane.rows.map((row, i) =>
        row.straps.map((copy) => pick(lane.hide, copy, (placement) => liesInRow(placement, lane, i), used)),
      );
    },
    ofRoughCut: (block) => {
      const used = new Set<PiecePlacement>();
      const lies = (placement: PiecePlacement): boolean =>
        pointInRing(placement, block.outline) !== 'outside';
      return block.members.map((copy) => pick(block.hide, copy, lies, used));
    },
  };
}

function seatKey(hide: string, copy: PieceCopy): string {
  return JSON.stringify([hide, pieceCopyKey(copy)]);
}

/** A strap's origin lies on its middle line. Rows follow each other on the right of the way from `from` to `to`. */
function liesInRow({ x, y }: PiecePlacement, lane: StrapLane, row: number): boolean {
  const [dx, dy] = [lane.to.x - lane.from.x, lane.to.y - lane.from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return false;
  const [px, py] = [x - lane.from.x, y - lane.from.y];
  const along = (px * dx + py * dy) / length;
  const across = (py * dx - px * dy) / length;
  const before = lane.rows.slice(0, row).reduce((sum, { widthMm }) => sum + widthMm + lane.kerfMm, 0);
  return along >= 0 && along <= length && across >= before && across <= before + lane.rows[row]!.widthMm;
}

/** The lanes and rough cuts with the seats of spoiled copies left out: what a worker still has to do with them. */
export function withoutSpoiledSeats(
  layout: Pick<Layout, 'placements' | 'lanes' | 'roughCuts'>,
): Pick<Layout, 'lanes' | 'roughCuts'> {
  if (layout.placements.every(({ state }) => state !== 'spoiled')) return layout;
  const seats = seatsOf(layout.placements);
  const isWanted = (placement: PiecePlacement | undefined): boolean =>
    placement !== undefined && placement.state !== 'spoiled';
  return {
    lanes: layout.lanes.map((lane) => {
      const seated = seats.ofLane(lane);
      const rows = lane.rows.map((row, i) => ({
        ...row,
        straps: row.straps.filter((_, k) => isWanted(seated[i]![k])),
      }));
      return { ...lane, rows };
    }),
    roughCuts: layout.roughCuts.map((block) => {
      const seated = seats.ofRoughCut(block);
      return { ...block, members: block.members.filter((_, i) => isWanted(seated[i])) };
    }),
  };
}

/** Ids of the rough cuts that lie on the table already: a piece of theirs is cut, or was spoiled. */
export function startedRoughCuts(layout: Pick<Layout, 'placements' | 'roughCuts'>): ReadonlySet<string> {
  const seats = seatsOf(layout.placements);
  return new Set(
    layout.roughCuts
      .filter((block) =>
        seats.ofRoughCut(block).some((placement) => placement !== undefined && placement.state !== 'planned'),
      )
      .map(({ id }) => id),
  );
}
