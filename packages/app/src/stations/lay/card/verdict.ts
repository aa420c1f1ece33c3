import { html, nothing } from 'lit-html';
import type { App } from '../../../app/app.js';
import { presentLayout } from '../present.js';
import { startRun } from '../run.js';
import type { LayTable } from '../table.js';
import { brokenSentence } from '../words.js';

/** More than so many sentences nobody reads at once. */
const MOST_TOLD = 8;

/** Proven, or what is wrong; and whether it is of an older order or hide. */
export function verdictWords(app: App, table: LayTable) {
  const looked = table.looked.get();
  if (looked === undefined || looked.layout !== presentLayout(app)?.layout)
    return html`<p class="verdict soft">${app.say('lay.verdict.looking')}</p>`;
  const { verdict, isOlderOrder, changedHides } = looked.found;
  const open = verdict.broken.filter(({ accepted }) => !accepted);
  const accepted = verdict.broken.filter((each) => each.accepted);
  const isOlder = isOlderOrder || changedHides.length > 0;
  const faults = [
    ...open.map((each) => brokenSentence(app, each)),
    ...verdict.told.map((each) => app.sentence(each)),
  ];
  return html`<section class="verdict" role="status">
    ${isOlderOrder ? html`<p class="older">${app.say('lay.older.order')}</p>` : nothing}
    ${
      changedHides.length > 0
        ? html`<p class="older">${app.say('lay.older.hide', { hides: changedHides.join(', ') })}</p>`
        : nothing
    }
    ${
      isOlder
        ? html`<p>${app.say('lay.older.nothingLost')}</p>
            <p>
              <button @click=${() => startRun(app, table, 'anew')}>${app.say('lay.anew')}</button>
            </p>`
        : nothing
    }
    ${
      faults.length === 0
        ? presentLayout(app)?.layout.placements.length === 0
          ? html`<p class="older">${app.say('lay.nothingLies')}</p>`
          : verdict.proven
            ? html`<p class="proven">${app.say('lay.proven')}</p>`
            : nothing
        : html`<p class="not-proven">${app.say('lay.notProven', { n: faults.length })}</p>
            ${sentences(app, faults)}`
    }
    ${
      accepted.length === 0
        ? nothing
        : html`<p>${app.say('lay.acceptedHere')}</p>
            ${sentences(
              app,
              accepted.map((each) => brokenSentence(app, each)),
            )}`
    }
  </section>`;
}

function sentences(app: App, all: readonly string[]) {
  const more = all.length - MOST_TOLD;
  return html`<ul>
    ${all.slice(0, MOST_TOLD).map((sentence) => html`<li>${sentence}</li>`)}
    ${more > 0 ? html`<li>${app.say('lay.more', { n: more })}</li>` : nothing}
  </ul>`;
}
