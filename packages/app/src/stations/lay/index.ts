import type { App } from '../../app/app.js';
import type { Station } from '../../shell/station.js';
import { layCard } from './card/card.js';
import { hidesOfOrderInFront } from './card/ready.js';
import { openDrawing } from './drawing.js';
import { LAY_KEYS } from './keys.js';
import { rememberStage } from './middle.js';
import { layTray } from './tray.js';

/** A hide that the order does not use has no pieces to show: one that it does use comes in front. */
function bringHideInFront(app: App): void {
  const [first, ...others] = hidesOfOrderInFront(app).map(([path]) => path);
  const { hide } = app.place.get();
  if (first === undefined || hide === first || others.includes(hide ?? '')) return;
  app.place.update((place) => ({ ...place, hide: first }));
}

/** Laying the pieces on the hides: by the engine, by hand, or both. */
export const LAY_STATION: Station = {
  card: layCard,
  tray: layTray,
  open: (app, stage) => {
    bringHideInFront(app);
    const forget = rememberStage(app, stage);
    const close = openDrawing(app, stage);
    return () => {
      close();
      forget();
    };
  },
  keys: LAY_KEYS,
};
