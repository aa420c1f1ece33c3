import type { CuttingStep, Layout, PieceCopy, PiecePlacement } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';

/**
 * The order of cutting of a layout that was laid again: steps whose pieces all lie where they lay keep their numbers,
 * also once they are cut, because these stand on printed sheets and on the leather. All others come after the last
 * number that was used, so that no number ever means another piece than before.
 */
export function keepNumbers(before: Layout, after: Layout): CuttingStep[] {
  const settled = settledCopies(before, after);
  const kept = before.cuttingOrder.flatMap((step): CuttingStep[] => {
    const isSettled = step.pieces.every((copy) => settled.has(pieceCopyKey(copy)));
    if (!isSettled) return [];
    if (step.of === undefined) return [step];
    const of = sameBlock(step, before, after);
    return of === undefined ? [] : [{ ...step, of }];
  });
  const keptOf = new Set(kept.flatMap(({ kind, of }) => (of === undefined ? [] : [`${kind} ${of}`])));
  const named = new Set(kept.flatMap(namesOf));
  let number = Math.max(0, ...before.cuttingOrder.map((step) => step.number));
  const fresh = after.cuttingOrder.flatMap((step): CuttingStep[] => {
    if (step.of !== undefined) {
      return keptOf.has(`${step.kind} ${step.of}`) ? [] : [{ ...step, number: ++number }];
    }
    const pieces = step.pieces.filter((copy) => !named.has(nameIn(step.kind, copy)));
    return pieces.length === 0 ? [] : [{ ...step, pieces, number: ++number }];
  });
  return [...kept, ...fresh];
}

function namesOf({ kind, pieces }: CuttingStep): string[] {
  return pieces.map((copy) => nameIn(kind, copy));
}

/** A piece can be named in a block and on its own. */
function nameIn(kind: CuttingStep['kind'], copy: PieceCopy): string {
  return `${kind} ${pieceCopyKey(copy)}`;
}

/** Copies that lie, or were cut, where they lay; none of which one was spoiled. */
function settledCopies(before: Layout, after: Layout): ReadonlySet<string> {
  const spoiled = new Set(
    after.placements.filter(({ state }) => state === 'spoiled').map((placement) => pieceCopyKey(placement)),
  );
  const places = new Map(after.placements.map((placement) => [pieceCopyKey(placement), placeOf(placement)]));
  return new Set(
    before.placements
      .filter((placement) => places.get(pieceCopyKey(placement)) === placeOf(placement))
      .map((placement) => pieceCopyKey(placement))
      .filter((key) => !spoiled.has(key)),
  );
}

function placeOf({ hide, x, y, rotationDeg }: PiecePlacement): string {
  return JSON.stringify([hide, x, y, rotationDeg]);
}

/** The lane or rough cut of now that has the same copies; a first cut of a lane goes with its lane. */
function sameBlock(step: CuttingStep, before: Layout, after: Layout): string | undefined {
  const namesOfBlock = (layout: Layout): { readonly id: string; readonly names: string }[] => [
    ...layout.lanes.map(({ id, hide, rows }) => ({
      id,
      names: joined(
        hide,
        rows.flatMap(({ straps }) => straps),
      ),
    })),
    ...layout.roughCuts.map(({ id, hide, members }) => ({ id, names: joined(hide, members) })),
  ];
  const was = namesOfBlock(before).find(({ id }) => id === step.of);
  return was === undefined ? undefined : namesOfBlock(after).find(({ names }) => names === was.names)?.id;
}

function joined(hide: string, copies: readonly PieceCopy[]): string {
  return JSON.stringify([hide, ...copies.map(pieceCopyKey).sort()]);
}
