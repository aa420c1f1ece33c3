import { html } from 'lit-html';
import type { Station } from '../../shell/station.js';

export const PIECES_STATION: Station = {
  card: (app) => html`<h2>${app.say('place.pieces')}</h2>`,
  tray: () => html``,
  open: () => () => undefined,
  keys: [],
};
