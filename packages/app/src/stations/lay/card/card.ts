import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import { orderAt } from '../../../job/job.js';
import { nextStepLine } from '../../../shell/next-step-line.js';
import { presentLayout } from '../present.js';
import { layTable } from '../table.js';
import type { LayTable, Run } from '../table.js';
import { chosenPiece } from './chosen-piece.js';
import { compareLayouts } from './compare.js';
import { curve } from './curve.js';
import { layoutFigures } from './figures.js';
import { hideRow } from './hide-row.js';
import { howLong } from './how-long.js';
import { leftOverList } from './left-over.js';
import { whatIsMissing } from './ready.js';
import { runCurve, runEnd } from './run-end.js';
import { verdictWords } from './verdict.js';

/** The card of this place: how the laying goes, and what there is to know of the layout. */
export function layCard(app: App): TemplateResult {
  const table = layTable(app);
  const order = orderAt(app.job.get(), app.place.get().order);
  if (order === undefined) return noOrder(app);
  const run = table.run.get();
  return html`<h2>${app.say('place.lay')}</h2>
    ${run === undefined ? atRest(app, table) : running(app, run)} ${hideRow(app, table)}
    ${run === undefined ? afterwards(app, table) : nothing}`;
}

function noOrder(app: App) {
  return html`<h2>${app.say('place.lay')}</h2>
    <p>${app.say('lay.noOrder')}</p>
    <p><button class="main" @click=${() => app.goTo('pieces')}>${app.say('lay.toPieces')}</button></p>`;
}

function running(app: App, run: Run) {
  const { placed, asked, curve: points, isStopping, placements } = run;
  const words =
    asked === 0
      ? app.say('lay.run.begins')
      : points.length === 0
        ? app.say('lay.run.first', { placed, asked })
        : app.say('lay.run.better', { placed, asked });
  return html`<section class="run" aria-live="off">
    <p class="run-words">${isStopping ? app.say('lay.run.stopping') : words}</p>
    ${asked === 0 ? nothing : html`<progress max=${asked} value=${placed} aria-label=${words}></progress>`}
    ${curve(app, points, run.beforeMm2)}
    ${
      run.wish === 'go on' && placements === undefined && points.length > 0
        ? html`<p class="soft">${app.say('lay.run.notYetBetter')}</p>`
        : nothing
    }
  </section>`;
}

function atRest(app: App, table: LayTable) {
  const present = presentLayout(app);
  if (present === undefined)
    return html`${runEnd(app, table)}
      <p>${app.say('lay.notYet')}</p>
      ${whatIsMissing(app)} ${howLong(app, table)}`;
  return html`${chosenPiece(app, table)} ${runEnd(app, table)} ${verdictWords(app, table)}
  ${leftOverList(app, table, present.layout)} ${layoutFigures(app, present.layout)} ${runCurve(app, table)}`;
}

function afterwards(app: App, table: LayTable) {
  if (presentLayout(app) === undefined) return nothing;
  return html`${howLong(app, table)} ${compareLayouts(app, table)}
  ${isProven(app, table) ? nextStepLine(app) : nothing}`;
}

function isProven(app: App, table: LayTable): boolean {
  const looked = table.looked.get();
  return looked !== undefined && looked.layout === presentLayout(app)?.layout && looked.found.verdict.proven;
}
