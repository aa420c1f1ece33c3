import { html, nothing } from 'lit-html';
import type { App } from '../../../app/app.js';
import { chosenPlacement, takeOff, toggleLocked } from '../hand/piece-changes.js';
import { turnChosen } from '../keys.js';
import type { LayTable } from '../table.js';

const QUARTER_DEG = 90;
const HALF_DEG = 180;

/** What can be done with the chosen piece. */
export function chosenPiece(app: App, table: LayTable) {
  const chosen = chosenPlacement(app, table);
  if (chosen === undefined) return nothing;
  const { piece, article, set, copy, locked, state, accepted, mirrored } = chosen;
  return html`<section class="chosen-piece">
    <h3>${piece}</h3>
    <p class="soft">
      ${app.say(mirrored ? 'lay.chosen.mirrored' : 'lay.chosen.plain', { article, set, copy })}
    </p>
    ${accepted.length === 0 ? nothing : html`<p>${app.say('lay.chosen.accepted')}</p>`}
    ${state === 'planned' ? doings(app, table, locked) : html`<p>${app.say('lay.chosen.cut')}</p>`}
  </section>`;
}

function doings(app: App, table: LayTable, locked: boolean) {
  return html`<div class="row">
    <button aria-pressed=${String(locked)} @click=${() => toggleLocked(app, table)}>
      ${app.say('lay.stay')}
    </button>
    ${
      locked
        ? nothing
        : html`<button @click=${() => turnChosen(app, QUARTER_DEG)}>${app.say('lay.quarter')}</button>
            <button @click=${() => turnChosen(app, HALF_DEG)}>${app.say('lay.half')}</button>
            <button @click=${() => takeOff(app, table)}>${app.say('lay.takeOff')}</button>`
    }
  </div>`;
}
