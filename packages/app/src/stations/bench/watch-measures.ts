import type { Hide, Layout } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { latest } from '../lay/latest.js';
import { benchNow, hideOfItem } from './bench-now.js';
import { benchTable } from './table.js';
import type { SetOut } from './table.js';

interface Wish {
  readonly layout: Layout;
  readonly hide: Hide;
  readonly places: string;
}

/** Keeps the measures of the hide in front true; ticking changes nothing of them. */
export function watchMeasures(app: App): () => void {
  const table = benchTable(app);
  const ask = latest<Wish, SetOut>(
    async ({ layout, hide, places }) => ({
      hide,
      places,
      out: await table.desk.ask('setOut', { layout, hide }),
    }),
    (found) => table.setOut.set(found),
    (error) => app.tellFailure(error),
  );
  let wished: Pick<SetOut, 'hide' | 'places'> | undefined = table.setOut.get();
  const update = (): void => {
    const now = benchNow(app);
    const hide = now === undefined ? undefined : hideOfItem(app, now);
    if (now === undefined || hide === undefined) return;
    const places = placesOn(now.layout, hide.id);
    if (wished?.hide === hide && wished.places === places) return;
    wished = { hide, places };
    ask.wish({ layout: now.layout, hide, places });
  };
  update();
  const ends = [app.job.watch(update), app.place.watch(update), table.front.watch(update)];
  return () => {
    ask.forget();
    for (const end of ends) end();
  };
}

/** All of a layout that the measures on one hide hang on. */
function placesOn({ placements, cuttingOrder, lanes, roughCuts }: Layout, hide: string): string {
  const lying = placements
    .filter((placement) => placement.hide === hide && placement.state !== 'spoiled')
    .map(({ state: _state, locked: _locked, accepted: _accepted, ...place }) => place);
  const own = <T extends { readonly hide: string }>(all: readonly T[]): T[] =>
    all.filter((each) => each.hide === hide);
  return JSON.stringify([lying, own(cuttingOrder), own(lanes), own(roughCuts)]);
}
