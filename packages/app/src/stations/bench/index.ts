import { html } from 'lit-html';
import type { Station } from '../../shell/station.js';

export const BENCH_STATION: Station = {
  card: (app) => html`<h2>${app.say('place.bench')}</h2>`,
  tray: () => html``,
  open: () => () => undefined,
  keys: [],
};
