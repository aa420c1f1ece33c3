import type { Station } from '../../shell/station.js';
import { layCard } from './card/card.js';
import { openDrawing } from './drawing.js';
import { LAY_KEYS } from './keys.js';
import { rememberStage } from './middle.js';
import { layTray } from './tray.js';

/** Laying the pieces on the hides: by the engine, by hand, or both. */
export const LAY_STATION: Station = {
  card: layCard,
  tray: layTray,
  open: (app, stage) => {
    const forget = rememberStage(app, stage);
    const close = openDrawing(app, stage);
    return () => {
      close();
      forget();
    };
  },
  keys: LAY_KEYS,
};
