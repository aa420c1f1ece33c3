import { hideRegion } from '../hide/hide-region.js';
import type { Hide } from '../model/hide.js';
import { compareNumbers } from '../layout/cutting-numbers.js';
import { withoutSpoiledSeats } from '../layout/seats.js';
import type { CuttingStep, Layout, PieceCopy } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { baseLineOf } from './base-line.js';
import { knownFlaws } from './flaws-beside.js';
import type { KnownFlaw } from './flaws-beside.js';
import type { SettingFrame } from './frame.js';
import { laneSetting } from './lane-setting.js';
import type { SettingOut, SettingStep } from './model.js';
import { laneOffMm, pieceOffMm } from './off-place.js';
import { pieceSetting } from './piece-setting.js';
import { plannedCopies } from './placed-copy.js';
import type { PlacedCopy } from './placed-copy.js';
import { roughCutFrame, roughCutSetting } from './rough-cut-setting.js';

interface Setting {
  readonly layout: Layout;
  readonly hide: Hide;
  readonly frame: SettingFrame;
  readonly copies: ReadonlyMap<string, PlacedCopy>;
  readonly flaws: readonly KnownFlaw[];
}

/**
 * How the layout of one hide gets onto the leather: one base line, and from it the marks of every piece that is still to
 * be cut, in the order of cutting. Throws `unknown-piece` if the layout places a piece that it doesn't hold.
 */
export function settingOut(given: Layout, hide: Hide): SettingOut {
  const layout = { ...given, ...withoutSpoiledSeats(given) };
  const baseLine = baseLineOf(hide, layout.order.useFrom);
  const { frame } = baseLine;
  const setting = { layout, hide, frame, copies: plannedCopies(layout, hide.id), flaws: knownFlaws(hide) };
  const steps = stepsOf(setting);
  return {
    hide: hide.id,
    baseLine,
    steps,
    offByMm: Math.max(0, ...steps.map((step) => stepOffMm(step, setting))),
  };
}

function stepsOf(setting: Setting): SettingStep[] {
  const { layout, hide } = setting;
  const roughCuts = layout.roughCuts.filter((block) => block.hide === hide.id);
  const inBlocks = new Set(roughCuts.flatMap(({ members }) => members).map(pieceCopyKey));
  const steps = layout.cuttingOrder
    .filter((step) => step.hide === hide.id)
    .sort((a, b) => a.number - b.number)
    .flatMap((step) => stepOf(step, setting, inBlocks));
  return [...steps, ...untold(steps, setting)];
}

/** What the order of cutting does not name as a piece of its own is set out all the same, last. */
function untold(steps: readonly SettingStep[], { copies, frame, flaws }: Setting): SettingStep[] {
  const told = new Set(steps.flatMap(copiesOf).map(pieceCopyKey));
  return [...copies]
    .filter(([key]) => !told.has(key))
    .sort(([, a], [, b]) => compareNumbers(a.number, b.number))
    .map(([, placed]) => ({
      kind: 'piece',
      number: Math.floor(Number(placed.number)),
      piece: pieceSetting(placed, frame, flaws),
    }));
}

/** The copies whose measures a step tells. */
function copiesOf(step: SettingStep): readonly PieceCopy[] {
  switch (step.kind) {
    case 'piece':
      return [step.piece.copy];
    case 'lane':
      return step.lane.rows.flatMap(({ straps }) => straps.map(({ copy }) => copy));
    case 'rough cut':
      return step.roughCut.pieces.map(({ copy }) => copy);
    case 'block':
      return [];
  }
}

function stepOf(step: CuttingStep, setting: Setting, inBlocks: ReadonlySet<string>): SettingStep[] {
  const { layout, hide, frame, copies, flaws } = setting;
  const { number, of } = step;
  switch (step.kind) {
    case 'straight edge': {
      const lane = layout.lanes.find((each) => each.id === of && each.hide === hide.id);
      if (lane === undefined) return [];
      return [{ kind: 'lane', number, lane: laneSetting(lane, frame, hideRegion(hide), copies) }];
    }
    case 'lane':
      // It is told with its first cut.
      return [];
    case 'rough cut': {
      const block = layout.roughCuts.find((each) => each.id === of && each.hide === hide.id);
      if (block === undefined) return [];
      return [{ kind: 'rough cut', number, roughCut: roughCutSetting(block, frame, copies) }];
    }
    case 'block':
      return [{ kind: 'block', number, pieces: step.pieces }];
    case 'piece':
      return step.pieces.flatMap((copy): SettingStep[] => {
        const placed = copies.get(pieceCopyKey(copy));
        // The pieces of a rough cut are told with it.
        if (placed === undefined || inBlocks.has(pieceCopyKey(copy))) return [];
        return [{ kind: 'piece', number, piece: pieceSetting(placed, frame, flaws) }];
      });
  }
}

function stepOffMm(step: SettingStep, { layout, frame, copies }: Setting): number {
  const pointsOf = (key: string) => copies.get(key)?.region.outer ?? [];
  switch (step.kind) {
    case 'piece':
      return pieceOffMm(step.piece, frame, pointsOf(pieceCopyKey(step.piece.copy)));
    case 'lane': {
      const points = copiesOf(step).flatMap((copy) => pointsOf(pieceCopyKey(copy)));
      return laneOffMm(step.lane, frame, points);
    }
    case 'rough cut': {
      const { id, baseSide, pieces } = step.roughCut;
      const block = layout.roughCuts.find((each) => each.id === id)!;
      const own = roughCutFrame(block, baseSide);
      return Math.max(
        0,
        ...pieces.map((piece) => pieceOffMm(piece, own, pointsOf(pieceCopyKey(piece.copy)))),
      );
    }
    case 'block':
      return 0;
  }
}
