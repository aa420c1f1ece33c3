import { html } from 'lit-html';
import type { Station } from '../../shell/station.js';

export const LAY_STATION: Station = {
  card: (app) => html`<h2>${app.say('place.lay')}</h2>`,
  tray: () => html``,
  open: () => () => undefined,
  keys: [],
};
