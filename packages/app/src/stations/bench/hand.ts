import type { App } from '../../app/app.js';
import { copyKey } from '../../drawing/piece-layer.js';
import type { At, Hand } from '../../drawing/hand.js';
import { benchNow } from './bench-now.js';
import { goTo } from './deeds.js';
import type { WorkItem } from './logic/order-of-work.js';
import { benchTable } from './table.js';

/** A tap on a piece brings it in front; while a flaw is marked, a tap says where it is. */
export function handAtBench(app: App): Hand {
  const { flaw } = benchTable(app);
  return {
    tap: (at) => {
      const marked = flaw.get();
      if (marked !== undefined) {
        flaw.set({ ...marked, at: at.place });
        return true;
      }
      return goTo(app, itemAt(app, at));
    },
    describe: (at) => {
      const item = itemAt(app, at);
      return item === undefined ? undefined : `${item.placement.piece} ${item.number}`;
    },
  };
}

function itemAt(app: App, { target }: At): (WorkItem & { kind: 'piece' }) | undefined {
  const id = target?.closest('[data-kind="piece"]')?.getAttribute('data-id');
  if (id === undefined || id === null) return undefined;
  const found = benchNow(app)?.items.find((item) => item.kind === 'piece' && copyKey(item.placement) === id);
  return found?.kind === 'piece' ? found : undefined;
}
