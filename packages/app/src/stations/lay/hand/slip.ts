import { html, nothing, render } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { Stage } from '../../../drawing/stage.js';
import { brokenWords } from '../words.js';
import type { InHand, LayTable } from '../table.js';
import { letGo, letStay, putBack } from './in-hand.js';

/** No more than these are told at once: the first ones are reason enough. */
const MOST_TOLD = 3;

/** A slip of paper over the drawing that tells of the piece in hand; gives back what takes it away. */
export function openSlip(app: App, table: LayTable, stage: Stage): () => void {
  const root = document.createElement('div');
  root.className = 'hand-slip-place';
  stage.element.append(root);
  const draw = (): void => {
    render(slip(app, table), root);
  };
  draw();
  const settlePlace = (hand: InHand): void => {
    // Where it does not cover the piece: below one that is in the upper half.
    const isHigh = stage.toScreen(hand.at).y < stage.size.get().height / 2;
    root.classList.toggle('at-foot', isHigh);
  };
  const follow = (hand: InHand | undefined, before: InHand | undefined): void => {
    if (hand !== undefined && hand.copy !== before?.copy) settlePlace(hand);
    draw();
  };
  const ends = [table.hand.watch(follow), app.redraws.watch(draw)];
  return () => {
    for (const end of ends) end();
    root.remove();
  };
}

function slip(app: App, table: LayTable): TemplateResult | typeof nothing {
  const hand = table.hand.get();
  if (hand === undefined) return nothing;
  const { broken, phase } = hand;
  const state = broken === undefined ? 'unknown' : broken.length === 0 ? 'fits' : 'breaks';
  return html`<div class="hand-slip is-${state}" role="group" aria-label=${app.say('lay.hand')}>
    <p class="hand-name">${hand.copy.piece}</p>
    ${verdict(app, hand)} ${phase === 'held' ? choices(app, table, hand) : nothing}
  </div>`;
}

function verdict(app: App, { broken }: InHand) {
  if (broken === undefined) return html`<p>…</p>`;
  if (broken.length === 0) return html`<p class="good">${app.say('lay.hand.fits')}</p>`;
  return html`<ul>
    ${broken.slice(0, MOST_TOLD).map((each) => html`<li>${brokenWords(app, each)}</li>`)}
  </ul>`;
}

function choices(app: App, table: LayTable, { broken, from }: InHand) {
  const fits = broken?.length === 0;
  return html`<div class="row">
    <button class="main" @click=${() => (fits ? letGo(app, table) : letStay(app, table))}>
      ${app.say(fits ? 'lay.hand.here' : 'lay.hand.allTheSame')}
    </button>
    <button @click=${() => putBack(app, table)}>
      ${app.say(from === undefined ? 'lay.hand.backToTray' : 'lay.hand.back')}
    </button>
  </div>`;
}
