import type { App } from '../../app/app.js';
import type { NamedHide } from '@hidebound/leather';
import type { Inspection } from '../../work/hold-tasks.js';
import { latest } from './latest.js';
import { readOrderInFront } from './order-read.js';
import { hidesOf, presentLayout } from './present.js';
import type { Present } from './present.js';
import type { LayTable } from './table.js';

interface Wish {
  readonly present: Present;
  readonly hides: readonly NamedHide[];
}

/** Keeps what is known of the layout in front true, while this place is open. */
export function watchLayout(app: App, table: LayTable): () => void {
  const look = latest<Wish, Inspection>(
    async ({ present: { layout }, hides }) => {
      const read = await Promise.resolve(readOrderInFront(app)).catch(() => undefined);
      return table.checkDesk.ask('inspect', { layout, hides, read });
    },
    (found, { present: { layout } }) => table.looked.set({ layout, found }),
    (error) => app.tellFailure(error),
  );
  let seen: { readonly layout: unknown; readonly job: unknown } | undefined;
  const update = (): void => {
    const present = presentLayout(app);
    const job = app.job.get();
    if (seen?.layout === present?.layout && seen?.job === job) return;
    seen = { layout: present?.layout, job };
    look.forget();
    if (present === undefined) {
      table.looked.set(undefined);
      return;
    }
    const hides = hidesOf(app, present);
    look.wish({ present, hides });
    void table.holdDesk
      .ask('open', { layout: present.layout, hides })
      .catch((error: unknown) => app.tellFailure(error));
  };
  update();
  const ends = [app.job.watch(update), app.place.watch(update)];
  return () => {
    look.forget();
    for (const end of ends) end();
  };
}
