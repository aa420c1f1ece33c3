import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { MadeSheet, SheetName } from '../../work/make-tasks.js';
import { isWide } from './is-wide.js';
import { reportText } from './report-text.js';
import { makeTable, refusalWords } from './table.js';
import type { ShownSheet } from './table.js';

/** The sheet as it will be: page by page, or in words. */
export function preview(app: App, sheet: SheetName): TemplateResult {
  const { shown, refusal, isText } = makeTable(app);
  if (refusal !== undefined)
    return html`<p class="make-refusal" role="alert">${refusalWords(app, refusal)}</p>`;
  if (shown === undefined) return html`<p role="status" class="make-wait">${app.say('make.drawing')}</p>`;
  const { made } = shown;
  return html`${findings(app, made)} ${made.reports.length === 0 ? '' : wayToRead(app)}
  ${isText && made.reports.length > 0 ? made.reports.map(reportText) : pages(app, sheet, shown)}`;
}

function findings(app: App, { findings: told, lostPhotos }: MadeSheet): TemplateResult | typeof nothing {
  const count = told.length + lostPhotos.length;
  if (count === 0) return nothing;
  return html`<details class="make-findings" ?open=${count <= 3 && isWide()}>
    <summary>${app.say('make.findings', { n: count })}</summary>
    <ul>
      ${lostPhotos.map(({ hide, file, why }) => html`<li>${app.say(`make.photo.${why}`, { hide, file })}</li>`)}
      ${told.map((each) => html`<li>${app.sentence(each)}</li>`)}
    </ul>
  </details>`;
}

function wayToRead(app: App): TemplateResult {
  const table = makeTable(app);
  const pick = (isText: boolean): void => {
    table.isText = isText;
    app.redraw();
  };
  return html`<div class="row" role="group" aria-label=${app.say('make.read')}>
    <button aria-pressed=${String(!table.isText)} @click=${() => pick(false)}>
      ${app.say('make.asPages')}
    </button>
    <button aria-pressed=${String(table.isText)} @click=${() => pick(true)}>${app.say('make.asText')}</button>
  </div>`;
}

function pages(app: App, sheet: SheetName, { made, urls }: ShownSheet): TemplateResult {
  const { page } = makeTable(app);
  const url = urls[page];
  const size = made.pages[page];
  if (url === undefined || size === undefined) return html`<p>${app.say('make.noPages')}</p>`;
  const place = app.say('make.page', { page: page + 1, pages: urls.length });
  const { widthMm, heightMm } = size;
  return html`<figure class="make-page">
    <figcaption class="row">
      <span role="status">${place}</span>
      <span class="soft">${app.measures().length(widthMm)} × ${app.measures().length(heightMm)}</span>
      ${urls.length < 2 ? '' : turning(app, urls.length)}
      <a class="button" href=${url} target="_blank" rel="noopener">${app.say('make.larger')}</a>
    </figcaption>
    <img
      src=${url}
      width=${Math.round(widthMm * 4)}
      height=${Math.round(heightMm * 4)}
      alt=${app.say('make.pageAlt', { sheet: app.say(`make.${sheet}`), place })}
    />
  </figure>`;
}

function turning(app: App, count: number): TemplateResult {
  const { page } = makeTable(app);
  return html`<button ?disabled=${page === 0} @click=${() => turnPage(app, -1)}>
      ${app.say('make.before')}
    </button>
    <button ?disabled=${page === count - 1} @click=${() => turnPage(app, 1)}>
      ${app.say('make.next')}
    </button>`;
}

/** False where there is no such page. */
export function turnPage(app: App, by: number): boolean {
  const table = makeTable(app);
  const next = table.page + by;
  if (table.shown?.urls[next] === undefined) return false;
  table.page = next;
  app.redraw();
  return true;
}
