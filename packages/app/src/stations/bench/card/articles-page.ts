import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { curveBox } from '@hidebound/geometry';
import type { ArticleCard, CardLeather, LayablePiece } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { placeOfOrder } from '../../../app/settle-place.js';
import { curvePath } from '../../../drawing/path-data.js';
import type { OrderCard } from '../../../work/benching/cards.js';
import { toldError } from '../../../words/told.js';
import type { Told } from '../../../words/told.js';
import { filesWithoutPictures, otherGoods } from '../logic/goods-of-job.js';
import type { OtherGoods } from '../logic/goods-of-job.js';
import { benchTable } from '../table.js';

/** What is made in the job: what each article costs, what leather it needs, what of it is there. */
export function articlesPage(app: App): TemplateResult {
  const front = app.place.get().order;
  const others = otherGoods(app.job.get(), front);
  if (front === undefined && others.length === 0) return html`<p>${app.say('bench.articles.noOrder')}</p>`;
  return html`<h2>${app.say('bench.page.articles')}</h2>
    ${front === undefined ? nothing : reckoned(app, front)}
    ${
      others.length === 0
        ? nothing
        : html`<h3>${app.say('bench.articles.others')}</h3>
            ${others.map((goods) => other(app, goods))}`
    }`;
}

/** Another order of the job, or an article that is kept for later: reckoned when it is opened. */
function other(app: App, { path, name, isOrder }: OtherGoods): TemplateResult {
  const { opened } = benchTable(app);
  const isOpen = opened.get().has(path);
  const toggle = (event: Event): void => {
    if ((event.currentTarget as HTMLDetailsElement).open === isOpen) return;
    opened.update((all) => new Set(isOpen ? [...all].filter((each) => each !== path) : [...all, path]));
  };
  const bringForward = (): void => app.place.update((place) => placeOfOrder(place, app.job.get(), path));
  return html`<details class="more" ?open=${isOpen} @toggle=${toggle}>
    <summary>${name}</summary>
    ${isOpen ? reckoned(app, path) : nothing}
    ${
      isOpen && isOrder
        ? html`<p><button @click=${bringForward}>${app.say('bench.articles.toFront')}</button></p>`
        : nothing
    }
  </details>`;
}

function reckoned(app: App, path: string): TemplateResult {
  const job = app.job.get();
  const known = benchTable(app).cards.get().get(path);
  if (known?.job !== job) lookUp(app, path);
  if (known === undefined) return html`<p role="status">${app.say('bench.articles.reckoning')}</p>`;
  if ('sentence' in known.made) return html`<p role="alert">${app.sentence(known.made)}</p>`;
  return articles(app, known.made);
}

/** Reckoned once for each state of the job. */
function lookUp(app: App, path: string): void {
  const job = app.job.get();
  const { desk, asked, cards } = benchTable(app);
  if (asked.cards.get(path) === job) return;
  asked.cards.set(path, job);
  const tell = (made: OrderCard | Told): void => cards.update((all) => new Map(all).set(path, { job, made }));
  desk
    .ask('card', { path, files: filesWithoutPictures(job) })
    .then(tell, (error: unknown) => tell(toldError(error)));
}

function articles(app: App, { card, pieces }: OrderCard): TemplateResult {
  return html`${card.sheet.articles.map((article) => articleCard(app, article, pieces))}
    ${withoutPrice(app, card)}
    <h4>${app.say('bench.articles.needs')}</h4>
    ${card.leathers.map((leather) => leatherCard(app, leather))}`;
}

function withoutPrice(app: App, { sheet }: ArticleCard) {
  const n = sheet.withoutPrice.length;
  return n === 0 ? nothing : html`<p class="soft">${app.say('bench.articles.withoutPrice', { n })}</p>`;
}

function articleCard(
  app: App,
  { article, sets, price, for: customer }: ArticleCard['sheet']['articles'][number],
  pieces: readonly LayablePiece[],
): TemplateResult {
  return html`<section class="bench-article">
    <h3>${article}</h3>
    <div class="small-pieces" aria-hidden="true">
      ${pieces.filter((piece) => piece.article === article).map(smallPiece)}
    </div>
    <dl class="figures">
      <dt>${app.say('bench.articles.price')}</dt>
      <dd>${moneySpan(app, price)}</dd>
      <dt>${app.say('bench.articles.sets', { n: sets })}</dt>
      <dd>${customer ?? ''}</dd>
    </dl>
  </section>`;
}

function smallPiece({ shape }: LayablePiece): TemplateResult {
  const { minX, minY, maxX, maxY } = curveBox(shape.cut);
  const outlines = [shape.cut, ...shape.cutOuts].map(curvePath).join(' ');
  return html`<svg viewBox="${minX - 2} ${minY - 2} ${maxX - minX + 4} ${maxY - minY + 4}">
    <path class="piece-cut" fill-rule="evenodd" d=${outlines}></path>
  </svg>`;
}

function leatherCard(app: App, { leather, needMm2, piecesMm2, stock }: CardLeather): TemplateResult {
  const measures = app.measures();
  const { low, high } = needMm2;
  const need = low === high ? measures.area(low) : `${measures.area(low)} – ${measures.area(high)}`;
  return html`<section>
    <h5>${leather}</h5>
    <dl class="figures">
      <dt>${app.say('bench.articles.need')}</dt>
      <dd>${need}</dd>
      <dt>${app.say('bench.articles.pieces')}</dt>
      <dd>${measures.area(piecesMm2)}</dd>
    </dl>
    <p class="bench-enough">${app.say(`bench.articles.enough.${stock.enough}`)}</p>
    <ul>
      ${stock.hides.map(
        ({ id, usableMm2, isReserved, mustMeasure, storedAt }) =>
          html`<li>
            ${[
              id,
              app.say('bench.stock.usable', { area: measures.area(usableMm2) }),
              ...(storedAt === undefined ? [] : [storedAt]),
              ...(isReserved ? [app.say('bench.articles.reserved')] : []),
              ...(mustMeasure ? [app.say('bench.articles.measure')] : []),
            ].join(', ')}
          </li>`,
      )}
    </ul>
  </section>`;
}

function moneySpan(app: App, { low, high }: ArticleCard['sheet']['articles'][number]['price']): string {
  const one = money(app, low);
  const other = money(app, high);
  return one === other ? one : `${one} – ${other}`;
}

function money(
  app: App,
  { amount, currency }: { readonly amount: string; readonly currency: string },
): string {
  return new Intl.NumberFormat(app.measures().locale, { style: 'currency', currency }).format(Number(amount));
}
