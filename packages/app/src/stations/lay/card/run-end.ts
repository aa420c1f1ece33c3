import { html, nothing } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { LayTable } from '../table.js';
import { curve } from './curve.js';

/** What came of the last run. */
export function runEnd(app: App, table: LayTable) {
  const end = table.end.get();
  if (end === undefined) return nothing;
  const seconds = app.measures().number(end.elapsedMs / 1000, 0);
  return html`<section class="run-end" role="status">
    <p>${app.say(end.found ? 'lay.end.found' : 'lay.end.nothingBetter', { seconds })}</p>
    ${end.endedEarly ? html`<p>${app.say('lay.end.early')}</p>` : nothing}
    ${curve(app, end.curve, end.beforeMm2)}
  </section>`;
}
