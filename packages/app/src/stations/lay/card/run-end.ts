import { html, nothing } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { LayTable, RunEnd } from '../table.js';
import { takeWorse } from '../run.js';
import { curve } from './curve.js';

/** What came of the last run. */
export function runEnd(app: App, table: LayTable) {
  const end = table.end.get();
  if (end === undefined) return nothing;
  const seconds = app.measures().number(end.elapsedMs / 1000, 0);
  return html`<section class="run-end" role="status">
    ${
      end.worse === undefined
        ? html`<p>${app.say(end.found ? 'lay.end.found' : 'lay.end.nothingBetter', { seconds })}</p>
            ${besideBefore(app, end)}`
        : worseThanBefore(app, table, end)
    }
    ${end.endedEarly ? html`<p>${app.say('lay.end.early')}</p>` : nothing}
  </section>`;
}

/** How the last run went on; below what counts, which on a phone is all that is seen. */
export function runCurve(app: App, table: LayTable) {
  const end = table.end.get();
  return end === undefined ? nothing : curve(app, end.curve, end.beforeMm2);
}

/** The better one stays without being asked for; the other is there for who wants it. */
function worseThanBefore(app: App, table: LayTable, { beforeMm2, beforeLaid, nowMm2, nowLaid }: RunEnd) {
  const measures = app.measures();
  const words =
    beforeLaid === nowLaid
      ? app.say('lay.end.worse', { now: measures.area(nowMm2!), before: measures.area(beforeMm2!) })
      : app.say('lay.end.fewer', { now: nowLaid!, before: beforeLaid! });
  return html`<p>${words}</p>
    <p><button @click=${() => takeWorse(app, table)}>${app.say('lay.end.takeWorse')}</button></p>`;
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
