import { moveSoup } from './soup.js';
import type { Soup } from './soup.js';
import { SKIN_MM } from './constants.js';
import { toU, toV } from './frame.js';
import type { Layer } from './raster.js';
import { addRuns, edgeRuns, interiorRuns } from './raster.js';
import { createMemos, nextMark } from './scan-memo.js';
import type { ScanMemos } from './scan-memo.js';
import type { SheetSpace } from './sheet-space.js';
import { layerForPieces } from './sheet-space.js';
import type { Variant } from './variant.js';

/** A turned item at a place of a sheet, on the 0.001 mm grid. */
export interface Place {
  readonly variant: Variant;
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
}

/** A copy where it lies. */
export interface Laid extends Place {
  readonly copy: number;
  readonly u: number;
  readonly v: number;
  readonly standing: Soup;
  /** What it covers on each layer of its sheet. */
  readonly runs: readonly Int32Array[];
}

/** One sheet and what lies on it; changes as pieces come and go. */
export interface SheetState {
  readonly space: SheetSpace;
  /** One layer, or one a group where groups keep farther apart than the gap. */
  readonly layers: readonly Layer[];
  readonly laid: Laid[];
  readonly gaps: Gaps;
  /** One a laid piece: told anew each time that one is laid, so that a memo can tell what has lain since. */
  readonly marks: number[];
  readonly memos: ScanMemos;
}

/** Distances between items, skin included. */
export interface Gaps {
  readonly sameGroup: number;
  readonly otherGroup: number;
}

export function gapsOf(distances: { readonly gap: number; readonly betweenGroups?: number }): Gaps {
  const between = Math.max(distances.gap, distances.betweenGroups ?? 0);
  return { sameGroup: distances.gap + SKIN_MM, otherGroup: between + SKIN_MM };
}

export function createSheetState(space: SheetSpace, gaps: Gaps, groups: number): SheetState {
  const layers: Layer[] = [];
  const count = gaps.otherGroup > gaps.sameGroup ? groups : 1;
  for (let i = 0; i < count; i++) layers.push(layerForPieces(space));
  return { space, layers, laid: [], gaps, marks: [], memos: createMemos() };
}

/** The layer that a body of this group must keep off. */
export function layerFor(state: SheetState, group: number): Layer {
  return state.layers.length === 1 ? state.layers[0]! : state.layers[group]!;
}

export function gapBetween(state: SheetState, a: Variant, b: Variant): number {
  return a.prepared.group === b.prepared.group ? state.gaps.sameGroup : state.gaps.otherGroup;
}

export function lay(state: SheetState, copy: number, place: Place): Laid {
  const { frame, lattice } = state.space;
  const u = toU(frame, place.x, place.y);
  const v = toV(frame, place.x, place.y);
  const standing = moveSoup(place.variant.standing, u, v);
  const interior = interiorRuns(standing, lattice);
  const runs = state.layers.map((layer, group) => {
    const same = state.layers.length === 1 || group === place.variant.prepared.group;
    const distance = same ? state.gaps.sameGroup : state.gaps.otherGroup;
    const all = Int32Array.from([...interior, ...edgeRuns(standing, distance, lattice)]);
    addRuns(layer, all, 1);
    return all;
  });
  const laid: Laid = { ...place, copy, u, v, standing, runs };
  state.laid.push(laid);
  state.marks.push(nextMark(state.memos));
  return laid;
}

export function lift(state: SheetState, laid: Laid): void {
  const at = state.laid.indexOf(laid);
  state.laid.splice(at, 1);
  state.marks.splice(at, 1);
  laid.runs.forEach((runs, i) => {
    addRuns(state.layers[i]!, runs, -1);
  });
}

/** Lays again what was lifted, as it was. */
export function layAgain(state: SheetState, laid: Laid): void {
  state.laid.push(laid);
  state.marks.push(nextMark(state.memos));
  laid.runs.forEach((runs, i) => {
    addRuns(state.layers[i]!, runs, 1);
  });
}
