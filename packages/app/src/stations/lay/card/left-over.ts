import { html, nothing } from 'lit-html';
import type { Layout } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { hideAt } from '../../../job/job.js';
import { dragFromList } from '../hand/from-list.js';
import { takeFromTray } from '../hand/in-hand.js';
import { middleInView } from '../middle.js';
import { startRun } from '../run.js';
import type { LayTable } from '../table.js';
import { toHide } from './ready.js';
import { leftOver } from '../words.js';
import type { LeftOver } from '../words.js';

/** Reasons that are mended where the pieces are. */
const FOR_PIECES = ['larger-than-every-sheet', 'no-sheet-allowed', 'thickness'] as const;

/** What lies on no hide, and why; each can be taken in hand. */
export function leftOverList(app: App, table: LayTable, { unplaced, placements }: Layout) {
  if (unplaced.length === 0) return nothing;
  const reasons = new Set(unplaced.map(({ reason }) => reason));
  const isForHide = reasons.has('direction-unknown');
  const isForPieces = FOR_PIECES.some((reason) => reasons.has(reason));
  return html`<section class="left-over">
    <h3>${app.say('lay.left', { n: unplaced.length })}</h3>
    <p class="soft">${app.say('lay.takeHow')}</p>
    <ul>
      ${leftOver(unplaced).map((group) => row(app, table, group))}
    </ul>
    ${
      isForHide || isForPieces
        ? html`<p class="row">
            ${
              isForHide
                ? html`<button @click=${() => toHide(app, undefined)}>${app.say('lay.toHide')}</button>`
                : nothing
            }
            ${
              isForPieces
                ? html`<button @click=${() => app.goTo('pieces')}>${app.say('lay.toPieces')}</button>`
                : nothing
            }
          </p>`
        : nothing
    }
    ${
      placements.length === 0
        ? nothing
        : html`<p>
            <button @click=${() => startRun(app, table, 'missing')}>${app.say('lay.missing')}</button>
          </p>`
    }
  </section>`;
}

function row(app: App, table: LayTable, { copies, reason }: LeftOver) {
  const [copy] = copies;
  const hide = hideAt(app.job.get(), app.place.get().hide);
  return html`<li>
    <p>
      <strong>${app.say('lay.left.count', { n: copies.length })} ${copy!.piece}</strong>
      ${app.say(`lay.reason.${reason}`)}
    </p>
    <button
      class="from-list"
      @pointerdown=${(event: PointerEvent) => {
        if (hide !== undefined && event.button === 0) dragFromList(app, table, copy!, hide.id, event);
      }}
      ?disabled=${hide === undefined}
      @click=${() => takeFromTray(app, table, copy!, { hide: hide!.id, ...middleInView(app), rotationDeg: 0 })}
    >
      ${app.say('lay.takeOne')}
      <span class="for-listeners">${copy!.piece}</span>
    </button>
  </li>`;
}
