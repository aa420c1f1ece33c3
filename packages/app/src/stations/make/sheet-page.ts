import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { SheetName } from '../../work/make-tasks.js';
import { choicesOf } from './choices.js';
import { saveAs } from './give-out.js';
import { isWide } from './is-wide.js';
import { preview } from './preview.js';
import { printing } from './printing.js';
import { sheetRow } from './sheets.js';
import { makeTable } from './table.js';
import { TRY_SECONDS, tryHides } from './trials.js';

/** One sheet: its few choices, and what it looks like. */
export function sheetPage(app: App, sheet: SheetName): TemplateResult {
  const { isDrawing, isSaving, shown } = makeTable(app);
  return html`<div class="make-sheet" aria-busy=${String(isDrawing || isSaving)}>
    <div class="make-side">
      <h2 tabindex="-1">${app.say(`make.${sheet}`)}</h2>
      <p>${app.say(`make.${sheet}.is`)}</p>
      ${sheet === 'list' ? saveTable(app) : ''} ${printing(app, sheetRow(sheet))}
      ${sheet === 'buying' ? trying(app) : ''}
      ${sheet === 'cutFiles' ? html`<p class="make-caution">${app.say('make.cut.caution')}</p>` : ''}
      <details class="make-choices" ?open=${isWide()}>
        <summary>${app.say('make.choices')}</summary>
        ${choicesOf(app, sheet)}
      </details>
      ${
        (shown?.made.cutApart ?? 0) > 0
          ? html`<p class="soft">${app.say('make.cutApart', { n: shown!.made.cutApart })}</p>`
          : ''
      }
    </div>
    <div class="make-preview">${preview(app, sheet)}</div>
  </div>`;
}

function saveTable(app: App): TemplateResult {
  const { shown, isSaving } = makeTable(app);
  return html`<p>
    <button ?disabled=${shown === undefined || isSaving} @click=${() => void saveAs(app, 'csv')}>
      ${app.say('make.saveTable')}
    </button>
  </p>`;
}

/** The quick answer stands there at once; trial layouts make it surer. */
function trying(app: App): TemplateResult {
  const { trying: now, shown, rounds } = makeTable(app);
  if (now !== undefined) {
    const seconds = Math.min(TRY_SECONDS, Math.round((performance.now() - now.startedMs) / 1000));
    return html`<div class="make-trying">
      <p role="status">${app.say('make.trying', { n: now.trials, seconds, of: TRY_SECONDS })}</p>
      <progress max=${TRY_SECONDS} value=${seconds} aria-label=${app.say('make.try')}></progress>
      <button @click=${() => now.end.abort('hand')}>${app.say('make.try.stop')}</button>
    </div>`;
  }
  return html`<div class="make-trying">
    <p>${app.say(rounds === undefined ? 'make.try.why' : 'make.try.done')}</p>
    <button ?disabled=${(shown?.made.trials.length ?? 0) === 0} @click=${() => void tryHides(app)}>
      ${app.say('make.try')}
    </button>
  </div>`;
}
