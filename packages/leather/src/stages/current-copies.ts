import { cuttingNumbers } from '../layout/cutting-numbers.js';
import type { Layout, PiecePlacement } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';

/** What is there of one copy now: the one that counts, or the last one that was spoiled where none was laid again. */
export interface CurrentCopy {
  readonly key: string;
  readonly placement: PiecePlacement;
  /** In the layout's placements. */
  readonly index: number;
  /** As sheet and list show it: "12", or "3.2". */
  readonly number: string;
  /** Numbers of all steps of cutting that name it. */
  readonly steps: readonly number[];
}

/** The copies of a layout, in the order of their numbers' first mention. */
export function currentCopies(layout: Pick<Layout, 'placements' | 'cuttingOrder'>): CurrentCopy[] {
  const numbers = cuttingNumbers(layout);
  const steps = stepsByCopy(layout);
  const found = new Map<string, CurrentCopy>();
  layout.placements.forEach((placement, index) => {
    const key = pieceCopyKey(placement);
    const before = found.get(key);
    if (before !== undefined && before.placement.state !== 'spoiled') return;
    found.set(key, {
      key,
      placement,
      index,
      number: numbers.get(key)!,
      steps: steps.get(key) ?? [],
    });
  });
  return [...found.values()];
}

function stepsByCopy({ cuttingOrder }: Pick<Layout, 'cuttingOrder'>): Map<string, number[]> {
  const steps = new Map<string, number[]>();
  for (const step of cuttingOrder) {
    for (const copy of step.pieces) {
      const key = pieceCopyKey(copy);
      steps.set(key, [...(steps.get(key) ?? []), step.number]);
    }
  }
  return steps;
}
