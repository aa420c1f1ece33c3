import type { CuttingStep, Layout } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';

/**
 * Each copy's number in the order of cutting, by `pieceCopyKey`: that of its step, with a counter behind it where a step
 * holds several pieces ("3.2"). Copies that no step names come last, in the layout's order.
 */
export function cuttingNumbers(layout: Pick<Layout, 'cuttingOrder' | 'placements'>): Map<string, string> {
  const numbers = new Map<string, string>();
  let last = 0;
  for (const step of layout.cuttingOrder) {
    last = Math.max(last, step.number);
    step.pieces.forEach((copy, i) => {
      const key = pieceCopyKey(copy);
      if (!numbers.has(key)) numbers.set(key, stepNumber(step, i));
    });
  }
  for (const placement of layout.placements) {
    const key = pieceCopyKey(placement);
    if (!numbers.has(key)) numbers.set(key, String(++last));
  }
  return numbers;
}

function stepNumber(step: CuttingStep, index: number): string {
  return step.pieces.length === 1 ? String(step.number) : `${step.number}.${index + 1}`;
}

/** Orders "2" before "10", and "3.2" before "3.10". */
export function compareNumbers(a: string, b: string): number {
  const [a1 = 0, a2 = 0] = a.split('.').map(Number);
  const [b1 = 0, b2 = 0] = b.split('.').map(Number);
  return a1 - b1 || a2 - b2;
}
