import { html, nothing } from 'lit-html';
import type { Layout } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { hideAt } from '../../../job/job.js';
import { takeFromTray } from '../hand/in-hand.js';
import { middleInView } from '../middle.js';
import { startRun } from '../run.js';
import type { LayTable } from '../table.js';
import { leftOver } from '../words.js';
import type { LeftOver } from '../words.js';

/** What lies on no hide, and why; each can be taken in hand. */
export function leftOverList(app: App, table: LayTable, { unplaced, placements }: Layout) {
  if (unplaced.length === 0) return nothing;
  return html`<section class="left-over">
    <h3>${app.say('lay.left', { n: unplaced.length })}</h3>
    <ul>
      ${leftOver(unplaced).map((group) => row(app, table, group))}
    </ul>
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
      ?disabled=${hide === undefined}
      @click=${() => takeFromTray(app, table, copy!, { hide: hide!.id, ...middleInView(app), rotationDeg: 0 })}
    >
      ${app.say('lay.takeOne')}
      <span class="for-listeners">${copy!.piece}</span>
    </button>
  </li>`;
}
