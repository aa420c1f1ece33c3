import { html, nothing } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { LayTable, RunEnd } from '../table.js';
import { curve } from './curve.js';

/** What came of the last run. */
export function runEnd(app: App, table: LayTable) {
  const end = table.end.get();
  if (end === undefined) return nothing;
  const seconds = app.measures().number(end.elapsedMs / 1000, 0);
  return html`<section class="run-end" role="status">
    <p>${app.say(end.found ? 'lay.end.found' : 'lay.end.nothingBetter', { seconds })}</p>
    ${besideBefore(app, end)} ${end.endedEarly ? html`<p>${app.say('lay.end.early')}</p>` : nothing}
    ${curve(app, end.curve, end.beforeMm2)}
  </section>`;
}

/** Less or more leather than before; told only where as many pieces lie, since else it says nothing. */
function besideBefore(app: App, { beforeMm2, beforeLaid, nowMm2, nowLaid }: RunEnd) {
  if (beforeMm2 === undefined || nowMm2 === undefined || beforeLaid !== nowLaid) return nothing;
  const measures = app.measures();
  const params = { now: measures.area(nowMm2), before: measures.area(beforeMm2) };
  if (params.now === params.before) return nothing;
  if (nowMm2 < beforeMm2) return html`<p>${app.say('lay.end.less', params)}</p>`;
  return html`<p class="older">${app.say('lay.end.more', params)}</p>`;
}
