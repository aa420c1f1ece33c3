import { checkLayout } from '@hidebound/leather';
import type { HoldTasks, Inspection } from '../hold-tasks.js';
import { verdictOf } from '../laying/found.js';
import { changedHides, isOfOrder } from '../laying/same-order.js';

/** Whether a layout is proven on the hides as they are, and whether it is of today's order. */
export function inspect({ layout, hides, read }: HoldTasks['inspect']['input']): Inspection {
  return {
    verdict: verdictOf(checkLayout(layout, hides)),
    isOlderOrder: read !== undefined && !isOfOrder(layout, read),
    changedHides: changedHides(layout, hides),
  };
}
