import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { BenchNow } from '../bench-now.js';
import { blocksOf } from '../logic/order-of-work.js';
import type { WorkItem } from '../logic/order-of-work.js';
import { measures } from './measures.js';

/** What is in front: its number and name, what it belongs to, and where it goes. */
export function pieceCard(app: App, now: BenchNow, item: WorkItem): TemplateResult {
  return html`<section class="bench-item">
    <h2 class="bench-name"><span class="bench-number">${item.number}</span> ${nameOf(app, item)}</h2>
    ${stateOf(app, item)} ${measures(app, item)}
    ${item.kind === 'piece' ? pieceWords(app, now, item) : stepWords(app, item)}
  </section>`;
}

function stateOf(app: App, item: WorkItem) {
  const state = item.kind === 'piece' ? item.placement.state : 'planned';
  return state === 'planned'
    ? nothing
    : html`<p class="bench-state is-${state}">${app.say(`bench.state.${state}`)}</p>`;
}

function nameOf(app: App, item: WorkItem): string {
  if (item.kind === 'piece') return item.placement.piece;
  const { kind, of = '' } = item.step;
  switch (kind) {
    case 'straight edge':
      return app.say('bench.step.edge', { lane: of });
    case 'rough cut':
      return app.say('bench.step.roughCut', { block: of });
    default:
      return app.say('bench.step.block');
  }
}

function pieceWords(app: App, { layout }: BenchNow, item: WorkItem & { kind: 'piece' }) {
  const { article, set, copy, mirrored, hide } = item.placement;
  const customer = layout.order.articles.find(({ name }) => name === article)?.for;
  const steps = blocksOf(layout, item.key);
  const lane = item.step?.kind === 'lane' ? item.step.of : undefined;
  return html`<p>
      ${app.say('bench.of', { article, set, copy })}${mirrored ? html`, ${app.say('bench.mirrored')}` : nothing}
      ${customer === undefined ? nothing : html`<br />${app.say('bench.for', { customer })}`}
    </p>
    <p class="soft">
      ${app.say('bench.onHide', { hide })}${lane === undefined ? nothing : ` ${app.say('bench.inLane', { lane })}`}
      ${steps.map((step) =>
        step.kind === 'block'
          ? app.say('bench.inPart', { number: step.number })
          : app.say('bench.inRoughCut', { block: step.of ?? '', number: step.number }),
      )}
    </p>`;
}

function stepWords(app: App, { step: { kind }, before, hide }: WorkItem & { kind: 'step' }) {
  const n = before.length;
  const words =
    kind === 'straight edge'
      ? 'bench.edge.words'
      : kind === 'rough cut'
        ? 'bench.roughCut.words'
        : 'bench.block.words';
  return html`<p>${app.say(words, { n })}</p>
    <p class="soft">${app.say('bench.onHide', { hide })}</p>`;
}
