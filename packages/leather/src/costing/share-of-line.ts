import { mapSpan, timesSpan } from './cost-span.js';
import type { MaterialLine } from './set-price.js';

/** So much of a line, with its cost. */
export function shareOfLine(line: MaterialLine, share: number): MaterialLine {
  return {
    ...line,
    quantity: mapSpan(line.quantity, (value) => value * share),
    ...(line.cost === undefined ? {} : { cost: timesSpan(line.cost, share) }),
  };
}
