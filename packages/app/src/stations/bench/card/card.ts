import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import { effectRow } from '../../hide/marks/cards/flaw-card.js';
import { sizeOf } from '../../hide/marks/logic/flaws.js';
import { layTable } from '../../lay/table.js';
import { benchNow } from '../bench-now.js';
import type { BenchNow } from '../bench-now.js';
import { benchTable } from '../table.js';
import { articlesPage } from './articles-page.js';
import { stockPage } from './stock-page.js';
import type { BenchPage } from '../table.js';
import { endCard } from './end-card.js';
import { pieceCard } from './piece-card.js';
import { remarkLine } from './remark.js';

/** The pages of the card, in their order. */
const PAGES: readonly BenchPage[] = ['cutting', 'articles', 'stock'];

export function benchCard(app: App): TemplateResult {
  const page = benchTable(app).page.get();
  return html`<div class="bench-card is-${page}">${pageOf(app, page)} ${pageRow(app, page)}</div>`;
}

function pageOf(app: App, page: BenchPage): TemplateResult {
  switch (page) {
    case 'cutting':
      return cuttingPage(app);
    case 'articles':
      return articlesPage(app);
    case 'stock':
      return stockPage(app);
  }
}

function pageRow(app: App, page: BenchPage) {
  return html`<div class="row bench-pages" role="group" aria-label=${app.say('bench.pages')}>
    ${PAGES.map(
      (each) =>
        html`<button aria-pressed=${String(each === page)} @click=${() => benchTable(app).page.set(each)}>
          ${app.say(`bench.page.${each}`)}
        </button>`,
    )}
  </div>`;
}

function cuttingPage(app: App): TemplateResult {
  const now = benchNow(app);
  if (now === undefined)
    return html`<h2>${app.say('place.bench')}</h2>
      <p>${app.say('bench.noLayout')}</p>
      <p><button class="main" @click=${() => app.goTo('lay')}>${app.say('bench.toLay')}</button></p>`;
  return html`${progressLine(app, now)} ${remarkLine(app)} ${inFront(app, now)} ${darkWords(app)}`;
}

function progressLine(app: App, { progress: { cut, all } }: BenchNow): TemplateResult {
  return html`<div class="bench-progress">
    <label for="bench-cut">${app.say('bench.progress', { cut, all })}</label>
    <progress id="bench-cut" max=${all} value=${cut}></progress>
  </div>`;
}

function inFront(app: App, now: BenchNow) {
  const run = layTable(app).run.get();
  if (run !== undefined)
    return html`<p class="bench-big" role="status">
      ${app.say(run.wish === 'missing' ? 'bench.looking' : 'bench.beingLaid')}
    </p>`;
  if (benchTable(app).flaw.get() !== undefined) return flawCard(app);
  return now.item === undefined ? endCard(app, now) : pieceCard(app, now, now.item);
}

function flawCard(app: App): TemplateResult {
  const { flaw } = benchTable(app);
  const { shape, effect } = flaw.get()!;
  const size = shape === undefined ? undefined : sizeOf(shape);
  return html`<h2>${app.say('bench.flaw.title')}</h2>
    ${
      shape === undefined
        ? html`<p>${app.say('bench.flaw.how')}</p>`
        : html`<p class="bench-big">
            ${
              size === undefined
                ? app.say('bench.flaw.around')
                : app.say(shape.kind === 'point' ? 'bench.flaw.size' : 'bench.flaw.broad', {
                    across: app.measures().length(shape.kind === 'point' ? 2 * size : size),
                  })
            }
          </p>`
    }
    ${effectRow(app, effect, (next) => flaw.update((now) => now && { ...now, effect: next }))}
    <p class="soft">${app.say('bench.flaw.words')}</p>`;
}

function darkWords(app: App) {
  return benchTable(app).staysAwake.get() === false
    ? html`<p class="soft">${app.say('bench.goesDark')}</p>`
    : nothing;
}
