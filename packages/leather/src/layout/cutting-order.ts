import { boxUnion, outlineDistance } from '@hidebound/geometry';
import type { Box, Point, Region, Ring } from '@hidebound/geometry';
import type { CuttingStep, PieceCopy, PlacedRegion, RoughCutBlock, StrapLane } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { boxAlong } from './placed-region.js';

export interface HideToCut {
  readonly id: string;
  readonly outline: Ring;
  /** Unit vector from the end that is used first into the hide. */
  readonly useFrom: Point;
  readonly placed: readonly PlacedRegion[];
}

export interface CuttingOrderInput {
  readonly hides: readonly HideToCut[];
  readonly lanes: readonly StrapLane[];
  readonly roughCuts: readonly RoughCutBlock[];
  readonly table?: { readonly widthMm: number; readonly lengthMm: number };
}

type Step = Omit<CuttingStep, 'number'>;

/**
 * In which order a layout is cut, hide by hide: the straight first cut of each lane and then its straps; the rough
 * cuts; then, where the hide is larger than the cutting table, blocks that fit it, parted by straight cuts through no
 * piece; and the pieces, from the edge inwards, block by block. A piece of a rough cut is named twice: in its block
 * and, at the end, on its own. A block that no straight cut can part stays larger than the table.
 */
export function cuttingOrder(input: CuttingOrderInput): CuttingStep[] {
  const steps = input.hides.flatMap((hide) => hideSteps(hide, input));
  return steps.map((step, i) => ({ number: i + 1, ...step }));
}

function hideSteps(hide: HideToCut, input: CuttingOrderInput): Step[] {
  const lanes = input.lanes.filter((lane) => lane.hide === hide.id);
  const roughCuts = input.roughCuts.filter((cut) => cut.hide === hide.id);
  const straps = new Set(lanes.flatMap(strapsOf).map(pieceCopyKey));
  const inBlocks = new Set(roughCuts.flatMap(({ members }) => members).map(pieceCopyKey));
  const nearEdge = byDistanceToEdge(hide);
  const free = nearEdge.filter(
    ({ copy }) => !straps.has(pieceCopyKey(copy)) && !inBlocks.has(pieceCopyKey(copy)),
  );
  const blocks = tableBlocks(free, hide, input.table);
  const prepared = nearEdge.filter(({ copy }) => inBlocks.has(pieceCopyKey(copy)));
  return [
    ...lanes.flatMap((lane): Step[] => [
      { kind: 'straight edge', hide: hide.id, of: lane.id, pieces: [] },
      { kind: 'lane', hide: hide.id, of: lane.id, pieces: strapsOf(lane) },
    ]),
    ...roughCuts.map(({ id, members }): Step => ({
      kind: 'rough cut',
      hide: hide.id,
      of: id,
      pieces: members,
    })),
    ...(blocks.length > 1
      ? blocks.map((block): Step => ({ kind: 'block', hide: hide.id, pieces: block.map(({ copy }) => copy) }))
      : []),
    ...[...blocks.flat(), ...prepared].map(({ copy }): Step => ({
      kind: 'piece',
      hide: hide.id,
      pieces: [copy],
    })),
  ];
}

function strapsOf(lane: StrapLane): readonly PieceCopy[] {
  return lane.rows.flatMap(({ straps }) => straps);
}

function byDistanceToEdge({ placed, outline }: HideToCut): PlacedRegion[] {
  return placed
    .map((one, i) => ({ one, i, distance: outlineDistance(one.region.outer, outline) }))
    .sort((a, b) => a.distance - b.distance || a.i - b.i)
    .map(({ one }) => one);
}

interface Boxed {
  readonly piece: PlacedRegion;
  readonly box: Box;
}

/** The pieces in blocks that fit the table, each in the given order; one block if there is no table or all fits. */
function tableBlocks(
  placed: readonly PlacedRegion[],
  hide: HideToCut,
  table: CuttingOrderInput['table'],
): PlacedRegion[][] {
  if (placed.length === 0) return [];
  const boxed = placed.map((piece) => ({ piece, box: boxAlong(piece.region, hide.useFrom) }));
  const whole: Region = { outer: hide.outline, openings: [] };
  if (table === undefined || fitsTable(boxAlong(whole, hide.useFrom), table)) return [[...placed]];
  return partIntoBlocks(boxed, table).map((block) => block.map(({ piece }) => piece));
}

function partIntoBlocks(block: readonly Boxed[], table: NonNullable<CuttingOrderInput['table']>): Boxed[][] {
  const box = block.map((one) => one.box).reduce(boxUnion);
  if (block.length === 1 || fitsTable(box, table)) return [[...block]];
  const parts = cutInTwo(block, box);
  if (parts === undefined) return [[...block]];
  return parts.flatMap((part) => partIntoBlocks(part, table));
}

/** Parts the block by the straight cut nearest to its middle, across its longer side if there is one. */
function cutInTwo(block: readonly Boxed[], box: Box): [Boxed[], Boxed[]] | undefined {
  const isLong = box.maxX - box.minX >= box.maxY - box.minY;
  const across = (along: boolean): [Boxed[], Boxed[]] | undefined =>
    along
      ? cutAlong(block, ({ box: b }) => [b.minX, b.maxX], (box.minX + box.maxX) / 2)
      : cutAlong(block, ({ box: b }) => [b.minY, b.maxY], (box.minY + box.maxY) / 2);
  return across(isLong) ?? across(!isLong);
}

function cutAlong(
  block: readonly Boxed[],
  span: (one: Boxed) => readonly [number, number],
  middle: number,
): [Boxed[], Boxed[]] | undefined {
  const sorted = [...block].sort((a, b) => span(a)[0] - span(b)[0]);
  let reach = -Infinity;
  let best: { readonly at: number; readonly off: number } | undefined;
  for (const [i, one] of sorted.entries()) {
    const [from, to] = span(one);
    if (i > 0 && from >= reach) {
      const off = Math.abs((from + reach) / 2 - middle);
      if (best === undefined || off < best.off) best = { at: from, off };
    }
    reach = Math.max(reach, to);
  }
  if (best === undefined) return undefined;
  const { at } = best;
  return [block.filter((one) => span(one)[0] < at), block.filter((one) => span(one)[0] >= at)];
}

function fitsTable(box: Box, table: { readonly widthMm: number; readonly lengthMm: number }): boolean {
  const [w, l] = [box.maxX - box.minX, box.maxY - box.minY];
  const { widthMm, lengthMm } = table;
  return (w <= widthMm && l <= lengthMm) || (w <= lengthMm && l <= widthMm);
}
