import { ROTATION_DECIMALS, roundCoordinate } from '@hidebound/geometry';
import type { CopyRef, NestAnswer, Placement } from '@hidebound/geometry';
import { hideRegion } from '../hide/hide-region.js';
import { useFromVector } from '../hide/use-from.js';
import { hashHide } from '../hash/index.js';
import type {
  Layout,
  LayoutHide,
  LayoutOrigin,
  PieceCopy,
  PiecePlacement,
  RoughCutBlock,
  StrapLane,
} from '../model/layout.js';
import type { ResolvedOrder } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { markMeanings } from '../parts/effects.js';
import { offcutsOf } from '../offcuts/offcuts-of.js';
import { bareCopy, pieceCopyKey, pieceCopyOf } from '../order/item-id.js';
import type { ItemMeaning } from '../order/item-id.js';
import type { LayoutProblem } from '../order/problem.js';
import type { NamedHide, SheetOptions } from '../order/sheets.js';
import { hideUses, yieldOfHide, sumOfYields } from '../yield/layout-yield.js';
import { cuttingOrder } from './cutting-order.js';
import { placedRegions } from './placed-region.js';
import { withoutSpoiledSeats } from './seats.js';

export interface LayoutInput extends SheetOptions {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly hides: readonly NamedHide[];
  readonly problem: LayoutProblem;
  readonly answer: NestAnswer;
  /** The layout that was kept: its placements' locks, accepted rules and states are carried over. */
  readonly keep?: Pick<Layout, 'placements'>;
  readonly origin: Omit<LayoutOrigin, 'joins'>;
  /** Names a hide's file as seen from the layout's folder. Default: as in the order. */
  readonly fileFor?: (file: string) => string;
}

/**
 * The layout of an answer, complete: placements, lanes, rough cuts, what did not fit, order of cutting, yield and
 * offcuts. The order within it names hides by the same paths as the layout, so that the layout can be checked alone.
 */
export function layoutFrom(input: LayoutInput): Layout {
  const { answer, problem, pieces } = input;
  const order = orderWithFiles(input.order, input.fileFor);
  const used = input.hides.filter(({ hide }) => problem.problem.sheets.some(({ id }) => id === hide.id));
  const placements = placementsOf(input);
  const lanes = lanesOf(answer, problem.items);
  const roughCuts = roughCutsOf(answer, problem.items, order);
  const hides = used.map(({ hide }) => hide);
  const marks = markMeanings(input.workshop, input.avoidCandidates === true);
  const reading = { workshop: marks, avoidCandidates: marks.avoidCandidates };
  const uses = hideUses({ order, pieces, placements, roughCuts, hides, ...reading });
  const yields = uses.map((use) => yieldOfHide(use, reading));
  return {
    order,
    hides: used.map((named) => layoutHide(named, input.fileFor)),
    pieces,
    placements,
    lanes,
    roughCuts,
    swatches: [],
    cuttingOrder: cuttingOrder({
      hides: hides.map((hide) => ({
        id: hide.id,
        outline: hideRegion(hide).outer,
        useFrom: useFromVector(hide, order.useFrom).vector,
        placed: placedRegions(
          placements.filter(({ state }) => state === 'planned'),
          pieces,
          hide.id,
        ),
      })),
      ...withoutSpoiledSeats({ placements, lanes, roughCuts }),
      ...(order.table === undefined ? {} : { table: order.table }),
    }),
    unplaced: answer.unplaced.flatMap((copy) => {
      const named = pieceCopyOf(copy, problem.items);
      return named === undefined ? [] : [{ ...named, reason: copy.reason }];
    }),
    yield: { hides: yields, total: sumOfYields(yields) },
    offcuts: uses.flatMap(offcutsOf),
    origin: { ...input.origin, joins: answer.joins },
    marks,
  };
}

function layoutHide({ file, hide }: NamedHide, fileFor: LayoutInput['fileFor']): LayoutHide {
  return { id: hide.id, hash: hashHide(hide), file: fileFor?.(file) ?? file };
}

function orderWithFiles(order: ResolvedOrder, fileFor: LayoutInput['fileFor']): ResolvedOrder {
  if (fileFor === undefined) return order;
  return {
    ...order,
    leathers: order.leathers.map((leather) => ({ ...leather, hides: leather.hides.map(fileFor) })),
  };
}

const ROTATION_STEPS = 10 ** ROTATION_DECIMALS;

function placementsOf(input: LayoutInput): PiecePlacement[] {
  const kept = new Map<string, PiecePlacement>();
  for (const placement of input.keep?.placements ?? []) {
    if (placement.state !== 'spoiled') kept.set(pieceCopyKey(placement), placement);
  }
  return input.answer.placements.flatMap((placement) => {
    const copy = pieceCopyOf(placement, input.problem.items);
    if (copy === undefined) return [];
    if (input.problem.items.get(placement.item)?.kind === 'spoiled') {
      const gone = { locked: false, accepted: [], state: 'spoiled' } as const;
      return [piecePlacement(bareCopy(copy), placement, gone)];
    }
    const before = kept.get(pieceCopyKey(copy));
    return [piecePlacement(copy, placement, isStillThere(before, placement) ? before : undefined)];
  });
}

function isStillThere(before: PiecePlacement | undefined, placement: Placement): boolean {
  return (
    before !== undefined &&
    before.hide === placement.sheet &&
    before.x === placement.x &&
    before.y === placement.y &&
    before.rotationDeg === placement.rotationDeg
  );
}

function piecePlacement(
  copy: PieceCopy,
  at: Placement,
  before: Pick<PiecePlacement, 'locked' | 'accepted' | 'state'> | undefined,
): PiecePlacement {
  return {
    ...copy,
    hide: at.sheet,
    x: roundCoordinate(at.x),
    y: roundCoordinate(at.y),
    rotationDeg: Math.round(at.rotationDeg * ROTATION_STEPS) / ROTATION_STEPS + 0,
    locked: before?.locked ?? false,
    accepted: before?.accepted ?? [],
    state: before?.state ?? 'planned',
  };
}

function lanesOf(answer: NestAnswer, items: ReadonlyMap<string, ItemMeaning>): StrapLane[] {
  return answer.lanes.map(({ id, sheet, from, to, openAt, kerfMm, rows }) => ({
    id,
    hide: sheet,
    from,
    to,
    openAt,
    kerfMm,
    rows: rows.map((row) => ({ widthMm: row.widthMm, straps: copiesOf(row.straps, items) })),
  }));
}

function roughCutsOf(
  answer: NestAnswer,
  items: ReadonlyMap<string, ItemMeaning>,
  order: ResolvedOrder,
): RoughCutBlock[] {
  return answer.roughCuts.map(({ id, sheet, group, outline, marginMm, members }) => {
    const preparation = order.leathers.find(({ name }) => name === group)?.preparation?.name;
    return {
      id,
      hide: sheet,
      leather: group,
      ...(preparation === undefined ? {} : { preparation }),
      outline,
      marginMm,
      members: copiesOf(members, items),
    };
  });
}

function copiesOf(refs: readonly CopyRef[], items: ReadonlyMap<string, ItemMeaning>): PieceCopy[] {
  return refs.flatMap((ref) => {
    const copy = pieceCopyOf(ref, items);
    return copy === undefined ? [] : [bareCopy(copy)];
  });
}
