import { pointInRing, ringCentroid } from '@hidebound/geometry';
import type { CopyRef, Item, Lane, NestAnswer, NestProblem, Placement, RoughCut } from '@hidebound/geometry';
import type { Layout, PieceCopy, PiecePlacement, RoughCutBlock } from '../model/layout.js';
import { copyRefOf } from '../order/item-id.js';
import type { ItemMeaning } from '../order/item-id.js';
import { ownSetKind, placementOf, plainObstacle } from '../order/problem.js';
import type { LayoutProblem } from '../order/problem.js';
import { seatsOf } from './seats.js';

export interface LayoutAnswer {
  /** The order's problem with the layout's swatches added to it. */
  readonly problem: NestProblem;
  readonly items: ReadonlyMap<string, ItemMeaning>;
  readonly answer: NestAnswer;
}

/**
 * A layout read back as the answer to its own problem. Spoiled copies are items of their own (`spoiled/1`, in the
 * order of the placements, as `nestProblemFor` numbers them), and so are swatches (`swatch/…`).
 */
export function answerOfLayout(layout: Layout, { problem, items }: LayoutProblem): LayoutAnswer {
  const spoiled = spoiledRefs(layout.placements);
  const swatches = layout.swatches.map((swatch) => swatchItem(swatch, layout));
  const meanings = new Map(items);
  for (const [i, item] of swatches.entries()) {
    meanings.set(item.id, { kind: 'swatch', id: layout.swatches[i]!.id });
  }
  const seats = seatsOf(layout.placements);
  const refOf = (copy: PieceCopy, seated: PiecePlacement | undefined): CopyRef =>
    (seated === undefined ? undefined : spoiled.get(seated)) ?? copyRefOf(copy);
  return {
    problem: {
      ...problem,
      items: [...problem.items, ...swatches],
      setKinds: [...problem.setKinds, ...swatches.map(ownSetKind)],
    },
    items: meanings,
    answer: {
      placements: [
        ...layout.placements.map((placement) => asPlacement(placement, spoiled)),
        ...layout.swatches.map((swatch, i): Placement => {
          const item = swatches[i]!.id;
          return { item, set: 1, copy: 1, sheet: swatch.hide, x: 0, y: 0, rotationDeg: 0 };
        }),
      ],
      lanes: layout.lanes.map((lane): Lane => {
        const { id, hide, from, to, openAt, kerfMm } = lane;
        const seated = seats.ofLane(lane);
        const rows = lane.rows.map(({ widthMm, straps }, i) => ({
          widthMm,
          straps: straps.map((copy, k) => refOf(copy, seated[i]![k])),
        }));
        return { id, sheet: hide, from, to, openAt, kerfMm, rows };
      }),
      roughCuts: layout.roughCuts.map((block): RoughCut => ({
        id: block.id,
        sheet: block.hide,
        group: block.leather,
        outline: block.outline,
        marginMm: block.marginMm,
        members: [
          ...seats.ofRoughCut(block).map((seated, i) => refOf(block.members[i]!, seated)),
          ...layout.swatches.flatMap((swatch, i): CopyRef[] =>
            isWithin(swatch, block) ? [{ item: swatches[i]!.id, set: 1, copy: 1 }] : [],
          ),
        ],
      })),
      unplaced: layout.unplaced.map((copy) => ({ ...copyRefOf(copy), reason: copy.reason })),
      joins: layout.origin.joins,
    },
  };
}

function swatchItem(swatch: Layout['swatches'][number], layout: Layout): Item {
  const block = layout.roughCuts.find(({ id }) => id === swatch.roughCut);
  const item = plainObstacle(`swatch/${swatch.id}`, { outer: swatch.outline, openings: [] }, swatch.hide);
  return block === undefined ? item : { ...item, group: block.leather };
}

/** The item of each spoiled placement. */
function spoiledRefs(placements: readonly PiecePlacement[]): ReadonlyMap<PiecePlacement, CopyRef> {
  const spoiled = placements.filter(({ state }) => state === 'spoiled');
  return new Map(spoiled.map((placement, i) => [placement, { item: `spoiled/${i + 1}`, set: 1, copy: 1 }]));
}

function asPlacement(placement: PiecePlacement, spoiled: ReadonlyMap<PiecePlacement, CopyRef>): Placement {
  const own = spoiled.get(placement);
  const ref = own ?? copyRefOf(placement);
  return { ...placementOf(placement, ref.item), ...ref };
}

/** A test piece of a rough cut lies within it, to be prepared with it, or beside it, to be tried before. */
function isWithin(swatch: Layout['swatches'][number], { id, outline }: RoughCutBlock): boolean {
  return swatch.roughCut === id && pointInRing(ringCentroid(swatch.outline), outline) !== 'outside';
}
