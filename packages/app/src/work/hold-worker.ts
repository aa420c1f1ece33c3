import type { HoldTasks } from './hold-tasks.js';
import { withLifted, withPut } from './hold/hand-layout.js';
import { judge, settle, takeInHand } from './hold/hand.js';
import type { InHand } from './hold/hand.js';
import { inspect } from './hold/inspect.js';
import { openTable } from './hold/open-table.js';
import type { OpenTable } from './hold/open-table.js';
import { serveTasks } from './serve-tasks.js';
import type { Layout, NamedHide } from '@hidebound/leather';

// What lies open, for as long as the worker lives.
let layout: Layout | undefined;
let hides: readonly NamedHide[] = [];
let table: OpenTable | undefined;
let hand: InHand | undefined;

serveTasks<HoldTasks>({
  inspect: (input) => inspect(input),
  open: (input) => {
    ({ layout, hides } = input);
    table = undefined;
    hand = undefined;
    return undefined;
  },
  take: ({ copy }) => {
    if (layout === undefined) return { isTaken: false };
    table ??= openTable(layout, hides);
    hand = takeInHand(table, copy);
    return { isTaken: hand !== undefined };
  },
  judge: ({ at }) => ({ broken: judge(held(), at) }),
  settle: ({ at, snugMm }) => settle(held(), at, snugMm),
  put: ({ at, accepted }) => ({ layout: withPut(opened(), hides, held().copy, at, accepted) }),
  lift: ({ copy }) => ({ layout: withLifted(opened(), hides, copy) }),
});

function opened(): Layout {
  if (layout === undefined) throw new Error('No layout lies open.');
  return layout;
}

function held(): InHand {
  if (hand === undefined) throw new Error('No piece is in hand.');
  return hand;
}
