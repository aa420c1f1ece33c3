import type { App } from '../../app/app.js';
import { copyKey } from '../../drawing/piece-layer.js';
import type { At, Hand } from '../../drawing/hand.js';
import { benchNow } from './bench-now.js';
import { goTo } from './deeds.js';
import type { WorkItem } from './logic/order-of-work.js';

/** A tap on a piece brings it in front. */
export function handAtBench(app: App): Hand {
  return {
    tap: (at) => goTo(app, itemAt(app, at)),
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
