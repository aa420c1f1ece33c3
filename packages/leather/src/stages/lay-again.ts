import { drawRoughCuts, roomAround } from '@hidebound/geometry';
import type {
  Budget,
  CopyRef,
  FixedPlacement,
  NestAnswer,
  NestProblem,
  Placement,
  QualityRegion,
  RoughCut,
} from '@hidebound/geometry';
import { layoutFrom } from '../layout/layout-from.js';
import { seatsOf, startedRoughCuts } from '../layout/seats.js';
import type { Layout, LayoutOrigin, PiecePlacement, RoughCutBlock } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { nestProblemFor, ownSetKind, plainObstacle } from '../order/problem.js';
import type { LayoutProblem } from '../order/problem.js';
import type { NamedHide } from '../order/sheets.js';
import { keepNumbers } from './keep-numbers.js';
import { meaningsIn, withFigures } from './with-figures.js';

export interface AgainInput {
  readonly layout: Layout;
  /** Under the names that the layout gives them. */
  readonly hides: readonly NamedHide[];
  /** Pieces that are not cut yet may move, too, but for those of rough cuts that lie on the table. */
  readonly anew: boolean;
  readonly budget: Budget;
}

/** What is to be searched, and what is needed to make a layout of its answer. */
export interface AgainProblem {
  /** For the search: rough cuts that are cut out, and swatches, are room that is taken. */
  readonly problem: NestProblem;
  /** What stays where it lies, as locked placements: the check holds the new layout against it. */
  readonly keep: Pick<Layout, 'placements' | 'lanes'>;
  readonly own: LayoutProblem;
  readonly held: readonly RoughCutBlock[];
}

/**
 * The problem of laying again what a layout has not laid: spoiled copies, those taken up because of a flaw, those that
 * never had room. Everything else stays, or with `anew` all that is cut.
 */
export function problemAgain({ layout, hides, anew, budget }: AgainInput): AgainProblem {
  const held = heldRoughCuts(layout);
  const seats = seatsOf(layout.placements);
  const inHeld = new Set(held.flatMap((block) => seats.ofRoughCut(block)));
  const keep = {
    placements: layout.placements.map((placement): PiecePlacement =>
      placement.state === 'planned' && (!anew || inHeld.has(placement))
        ? { ...placement, locked: true }
        : placement,
    ),
    lanes: layout.lanes,
  };
  const { order, pieces } = layout;
  const own = nestProblemFor({ order, pieces, hides, keep, budget, ...meaningsIn(layout) });
  return { problem: withRoomTaken(own.problem, layout, held), keep, own, held };
}

/** Rough cuts that are cut out already, or hold a swatch: they stay as they are. */
function heldRoughCuts(layout: Layout): RoughCutBlock[] {
  const started = startedRoughCuts(layout);
  const withSwatch = new Set(layout.swatches.map(({ roughCut }) => roughCut));
  return layout.roughCuts.filter(({ id }) => started.has(id) || withSwatch.has(id));
}

/** New pieces keep off what is taken by the gap, and by the room that their rough cuts need. */
function withRoomTaken(problem: NestProblem, layout: Layout, held: readonly RoughCutBlock[]): NestProblem {
  const taken = [
    ...held.map(({ id, hide, outline }) => ({ id: `rough cut ${id}`, hide, outline })),
    ...layout.swatches
      .filter(({ roughCut }) => !held.some(({ id }) => id === roughCut))
      .map(({ id, hide, outline }) => ({ id: `swatch ${id}`, hide, outline })),
  ];
  if (taken.length === 0) return problem;
  const { gap, void: fromVoid } = problem.distances;
  return {
    ...problem,
    sheets: problem.sheets.map((sheet) => {
      const own = problem.items.filter(({ sheets }) => sheets.includes(sheet.id));
      const room = Math.max(gap, ...own.map(roomAround));
      const regions = taken
        .filter(({ hide }) => hide === sheet.id)
        .map(({ id, outline }): QualityRegion => ({
          id,
          areas: [{ outer: outline, openings: [] }],
          grade: 0,
          weak: false,
          isVoid: true,
          uncertaintyMm: Math.max(0, room - fromVoid),
        }));
      return { ...sheet, qualities: [...sheet.qualities, ...regions] };
    }),
    // What stays lies there rightly, near to what is taken or within it.
    fixed: problem.fixed.map((one) => ({ ...one, accepted: [...one.accepted, 'void'] })),
  };
}

/** The layout of the answer: rough cuts on the table as they were, numbers kept where pieces stayed. */
export function layoutAgain(
  { layout, hides }: AgainInput,
  again: AgainProblem,
  answer: NestAnswer,
  origin: Omit<LayoutOrigin, 'joins'>,
): Layout {
  const { order, pieces } = layout;
  const laid = layoutFrom({
    order,
    pieces,
    hides,
    problem: again.own,
    answer: again.held.length === 0 ? answer : withHeldBlocks(answer, again, layout),
    keep: layout,
    origin,
    ...meaningsIn(layout),
  });
  const whole = { ...laid, swatches: layout.swatches };
  return withFigures(
    { ...whole, cuttingOrder: keepNumbers(layout, whole) },
    hides.map(({ hide }) => hide),
  );
}

/** The search draws rough cuts around all pieces; here those on the table stay, and the others are drawn around them. */
function withHeldBlocks(answer: NestAnswer, { own, held }: AgainProblem, layout: Layout): NestAnswer {
  const seats = seatsOf(layout.placements);
  const members = held.map((block) => {
    const places = new Set(
      seats.ofRoughCut(block).flatMap((seat) => (seat === undefined ? [] : [seatPlace(seat)])),
    );
    return answer.placements.filter((placement) => places.has(placeKey(placement)));
  });
  const inHeld = new Set(members.flat());
  const items = held.map(({ outline, hide }, i) =>
    plainObstacle(`on-the-table/${i + 1}`, { outer: outline, openings: [] }, hide),
  );
  const there = items.map(({ id, sheets }): FixedPlacement => ({
    item: id,
    set: 1,
    copy: 1,
    sheet: sheets[0]!,
    x: 0,
    y: 0,
    rotationDeg: 0,
    accepted: [],
  }));
  const drawn = drawRoughCuts(
    {
      ...own.problem,
      items: [...own.problem.items, ...items],
      setKinds: [...own.problem.setKinds, ...items.map(ownSetKind)],
      fixed: [...own.problem.fixed, ...there],
    },
    [...answer.placements.filter((placement) => !inHeld.has(placement)), ...there],
  );
  const lifted = new Set(drawn.lifted.map(refKey));
  const kept = held.map(({ id, hide, leather, outline, marginMm }, i): RoughCut => ({
    id,
    sheet: hide,
    group: leather,
    outline,
    marginMm,
    members: members[i]!.map(refOf),
  }));
  return {
    ...answer,
    placements: answer.placements.filter((placement) => !lifted.has(refKey(placement))),
    roughCuts: withOwnNames(kept, drawn.roughCuts),
    unplaced: [
      ...answer.unplaced,
      ...drawn.lifted.map((placement) => ({ ...refOf(placement), reason: 'no-room' as const })),
    ],
  };
}

function withOwnNames(kept: readonly RoughCut[], drawn: readonly RoughCut[]): RoughCut[] {
  const used = new Set(kept.map(({ id }) => id));
  return [
    ...kept,
    ...drawn.map((block) => {
      let number = 1;
      while (used.has(`${block.group} ${number}`)) number += 1;
      const id = `${block.group} ${number}`;
      used.add(id);
      return { ...block, id };
    }),
  ];
}

function seatPlace({ hide, x, y, rotationDeg }: PiecePlacement): string {
  return JSON.stringify([hide, x, y, rotationDeg]);
}

function placeKey({ sheet, x, y, rotationDeg }: Placement): string {
  return JSON.stringify([sheet, x, y, rotationDeg]);
}

function refOf({ item, set, copy }: CopyRef): CopyRef {
  return { item, set, copy };
}

function refKey({ item, set, copy }: CopyRef): string {
  return JSON.stringify([item, set, copy]);
}

/** Copies that did not lie where they lie now, or were not laid. */
export function movedCopies(before: Layout, after: Layout): PiecePlacement[] {
  const places = new Map(
    before.placements
      .filter(({ state }) => state !== 'spoiled')
      .map((placement) => [pieceCopyKey(placement), seatPlace(placement)]),
  );
  return after.placements.filter(
    (placement) =>
      placement.state === 'planned' && places.get(pieceCopyKey(placement)) !== seatPlace(placement),
  );
}
