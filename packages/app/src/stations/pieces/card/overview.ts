import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { isArticleReference } from '@hidebound/leather';
import type { OrderFile } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { placeOfOrder } from '../../../app/settle-place.js';
import { checkField, countField, listField, textField } from '../../../fields/index.js';
import { filesOfKind, freePath } from '../../../job/job.js';
import { nextStepLine } from '../../../shell/next-step-line.js';
import { articleFile, benchOf, choose, editOrder, nameInOrder, orderOf } from '../bench.js';
import {
  articleForLater,
  changeArticle,
  withArticleWritten,
  withSets,
  withoutArticle,
} from '../order/articles.js';
import { piecesOfArticle } from '../pieces-of.js';
import { addArticleFile, addPatterns, workshopFor } from '../take.js';
import { beginNumbers } from './numbers.js';
import { cuttingSection, leathersSection } from './leathers.js';
import { tradeId, tradeWord } from '../../../words/trade.js';

const MOST_SETS = 10_000;

/** The order as what it is for her: what is made, of what, from which pieces. */
export function overviewCard(app: App): TemplateResult {
  const order = orderOf(app);
  if (order === undefined)
    return html`<h2>${app.say('place.pieces')}</h2>
      <p>${app.say('pieces.none')}</p>
      <p class="soft">${app.say('pieces.dropHere')}</p>
      <div class="row">
        <button class="main" @click=${() => void addPatterns(app)}>${app.say('pieces.add')}</button>
        <button @click=${() => beginNumbers(app)}>${app.say('pieces.addByNumbers')}</button>
      </div>
      ${patternsSection(app, undefined)} ${articleFilesSection(app, undefined)}`;
  const { board } = benchOf(app);
  return html`<h2>${app.say('pieces.whatIsMade')}</h2>
    ${orderChoice(app)}
    ${
      board?.refused === undefined
        ? nothing
        : html`<p class="finding is-warning">
            <b>${app.say('pieces.notReady')}</b> ${app.sentence(board.refused)}
          </p>`
    }
    ${order.articles.map((_, i) => articleSection(app, order, i))} ${leathersSection(app, order)}
    ${patternsSection(app, order)} ${articleFilesSection(app, order)} ${cuttingSection(app, order)}
    ${board?.refused === undefined ? nextStepLine(app) : nothing}`;
}

/** Which of several orders lies in front. */
function orderChoice(app: App): TemplateResult | typeof nothing {
  const orders = filesOfKind(app.job.get(), 'order');
  if (orders.length < 2) return nothing;
  return listField(
    'which-order',
    app.say('pieces.order'),
    orders.map(([path, { order }]) => [path, order.name] as const),
    app.place.get().order ?? '',
    (path) => app.place.update((place) => placeOfOrder(place, app.job.get(), path)),
  );
}

function articleSection(app: App, order: OrderFile, index: number): TemplateResult {
  const article = order.articles[index]!;
  const isFile = isArticleReference(article);
  const body = isFile ? articleFile(app, article.file) : article;
  const found = benchOf(app).board?.articles[index];
  const name = body?.name ?? (isFile ? article.file : article.name);
  const pieces = piecesOfArticle(app, index);
  return html`<section class="article">
    <h3>${name}</h3>
    ${
      found?.refused === undefined
        ? nothing
        : html`<p class="finding is-error">${app.sentence(found.refused)}</p>`
    }
    <div class="counts">
      ${
        article.sets === 'as many as fit'
          ? html`<div class="count">
              <span>${app.say('pieces.sets')}</span> <b>${app.say('pieces.asMany')}</b>
            </div>`
          : countField(app, {
              id: `sets-${index}`,
              label: app.say('pieces.sets'),
              name: app.say('pieces.setsOf', { article: name }),
              value: article.sets,
              least: 1,
              most: MOST_SETS,
              take: (sets) =>
                editOrder(app, app.say('pieces.setsLabel', { article: name }), (now) =>
                  withSets(now, index, sets),
                ),
            })
      }
    </div>
    <ul class="piece-list">
      ${pieces.map((piece, i) => {
        const has = found?.pieces[i];
        const isTroubled = has?.refused !== undefined || (has?.findings.length ?? 0) > 0;
        return html`<li>
          <button class="quiet" @click=${() => choose(app, { kind: 'piece', article: index, piece: i })}>
            <span class="grow">${isTroubled ? '! ' : ''}${piece.name}</span>
            <span class="soft">${app.say('pieces.times', { n: piece.count })} · ${piece.leather}</span>
          </button>
        </li>`;
      })}
    </ul>
    <details>
      <summary>${app.say('pieces.moreOfArticle')}</summary>
      ${articleMore(app, order, index, name)}
    </details>
  </section>`;
}

function articleMore(app: App, order: OrderFile, index: number, name: string): TemplateResult {
  const article = order.articles[index]!;
  const label = app.say('pieces.articleChangedLabel', { article: name });
  const change = (patch: Parameters<typeof changeArticle>[2]): void =>
    editOrder(app, label, (now) => changeArticle(now, index, patch));
  return html`${checkField(app.say('pieces.asManyAsFit'), article.sets === 'as many as fit', (isOn) =>
      editOrder(app, label, (now) => withSets(now, index, isOn ? 'as many as fit' : 1)),
    )}
    ${
      isArticleReference(article)
        ? html`<p class="soft">${app.say('pieces.fromFile', { file: article.file })}</p>
            ${fileButton(app, index, article.file, label)}`
        : html`${textField(app, {
              id: `article-${index}`,
              label: app.say('pieces.articleName'),
              value: article.name,
              take: (value) => change({ name: value }),
            })}
            ${goodsField(app, `goods-${index}`, article.goods, (goods) => change({ goods }))}
            <button @click=${() => keepForLater(app, order, index)}>${app.say('pieces.keepArticle')}</button>`
    }
    <button
      class="quiet danger"
      @click=${() =>
        editOrder(app, app.say('pieces.articleGoneLabel', { article: name }), (now) =>
          withoutArticle(now, index),
        )}
    >
      ${app.say('pieces.removeArticle')}
    </button>`;
}

function fileButton(app: App, index: number, file: string, label: string): TemplateResult | typeof nothing {
  const read = articleFile(app, file);
  if (read === undefined) return nothing;
  return html`<button @click=${() => editOrder(app, label, (now) => withArticleWritten(now, index, read))}>
    ${app.say('pieces.writeHere')}
  </button>`;
}

/** Kinds of goods of the workshop's table are offered; any other word is as good. */
export function goodsField(
  app: App,
  id: string,
  goods: string,
  take: (goods: string) => void,
): TemplateResult {
  const names = workshopFor(app).goods.map((row) => tradeWord(app, 'goods', row.goods));
  return html`${textField(app, {
      id,
      label: app.say('pieces.goods'),
      value: tradeWord(app, 'goods', goods),
      take: (written) => take(tradeId(app, 'goods', written)),
      list: `${id}-list`,
    })} <datalist id="${id}-list">${names.map((name) => html`<option value=${name}></option>`)}</datalist>`;
}

function keepForLater(app: App, order: OrderFile, index: number): void {
  const article = articleForLater(order, index);
  if (article === undefined) return;
  const stem = article.name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-');
  const path = freePath(app.job.get(), stem, '.article.yaml');
  app.change(
    app.say('pieces.keptLabel', { article: article.name }),
    new Map([[path, { kind: 'article', article }]]),
  );
  app.tell({ tone: 'calm', text: app.say('pieces.kept', { file: path }) });
}

function patternsSection(app: App, order: OrderFile | undefined): TemplateResult | typeof nothing {
  const files = filesOfKind(app.job.get(), 'pattern');
  if (files.length === 0) return nothing;
  return html`<details ?open=${order === undefined}>
    <summary>${app.say('pieces.patternFiles', { n: files.length })}</summary>
    <ul class="piece-list">
      ${files.map(([path]) => {
        const named = nameInOrder(app, path);
        const n = (order?.articles ?? [])
          .flatMap((_, i) => piecesOfArticle(app, i))
          .filter(({ from }) => from.kind === 'pattern' && from.file === named).length;
        return html`<li>
          <button class="quiet" @click=${() => choose(app, { kind: 'patterns', paths: [path] })}>
            <span class="grow">${path.replace(/^.*\//, '')}</span>
            <span class="soft">${n === 0 ? app.say('pieces.notUsed') : app.say('pieces.used', { n })}</span>
          </button>
        </li>`;
      })}
    </ul>
  </details>`;
}

/** Articles that the job keeps for later and the order does not make yet. */
function articleFilesSection(app: App, order: OrderFile | undefined): TemplateResult | typeof nothing {
  const used = new Set((order?.articles ?? []).map((each) => (isArticleReference(each) ? each.file : '')));
  const names = new Set((order?.articles ?? []).map((each) => (isArticleReference(each) ? '' : each.name)));
  const files = filesOfKind(app.job.get(), 'article').filter(
    ([path, { article }]) => !used.has(nameInOrder(app, path)) && !names.has(article.name),
  );
  if (files.length === 0) return nothing;
  return html`<details>
    <summary>${app.say('pieces.articleFiles', { n: files.length })}</summary>
    <ul class="piece-list">
      ${files.map(
        ([path, { article }]) =>
          html`<li class="row">
            <span class="grow">${article.name}</span>
            <button @click=${() => addArticleFile(app, path, article)}>${app.say('pieces.makeIt')}</button>
          </li>`,
      )}
    </ul>
  </details>`;
}
