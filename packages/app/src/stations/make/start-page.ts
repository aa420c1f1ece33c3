import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { PlaceName } from '../../app/place.js';
import { nextStepLine } from '../../shell/next-step-line.js';
import type { MakeMoment, SheetRow } from './sheets.js';
import { SHEETS, missingFor } from './sheets.js';
import { openSheet } from './steps.js';

/** All that can be made, by when it is needed; what can't be made yet says what is missing. */
export function startPage(app: App): TemplateResult {
  return html`<div class="make-start">
    <h2>${app.say('place.make')}</h2>
    ${missingLines(app)}
    <div class="make-moments">${SHEETS.map(([moment, rows]) => momentList(app, moment, rows))}</div>
    ${app.prefs.get().language === 'en' ? '' : html`<p class="soft">${app.say('make.inEnglish')}</p>`}
    ${nextStepLine(app)}
  </div>`;
}

function momentList(app: App, moment: MakeMoment, rows: readonly SheetRow[]): TemplateResult {
  return html`<section>
    <h3>${app.say(`make.when.${moment}`)}</h3>
    <ul class="make-list">
      ${rows.map((row) => html`<li>${sheetEntry(app, row)}</li>`)}
    </ul>
  </section>`;
}

function sheetEntry(app: App, row: SheetRow): TemplateResult {
  if (missingFor(app, row) !== undefined) return missingEntry(app, row);
  return html`<button class="make-entry" data-sheet=${row.name} @click=${() => openSheet(app, row.name)}>
    <strong>${app.say(`make.${row.name}`)}</strong>
    <span>${app.say(`make.${row.name}.is`)}</span>
  </button>`;
}

function missingEntry(app: App, { name }: SheetRow): TemplateResult {
  return html`<div class="make-entry is-missing">
    <strong>${app.say(`make.${name}`)} <span class="make-not-yet">${app.say('make.notYet')}</span></strong>
    <span>${app.say(`make.${name}.is`)}</span>
  </div>`;
}

/** What has to be done before the rest can be made: told once, with the way there. */
function missingLines(app: App): TemplateResult | typeof nothing {
  const rows = SHEETS.flatMap(([, all]) => all);
  const [where] = rows.flatMap((row): readonly PlaceName[] => {
    const missing = missingFor(app, row);
    return missing === undefined ? [] : [missing];
  });
  if (where === undefined) return nothing;
  return html`<div class="make-missing">
    <p>${app.say(where === 'lay' ? 'make.missing.layout' : 'make.missing.order')}</p>
    <button class="main" @click=${() => app.goTo(where)}>
      ${app.say('make.goTo', { place: app.say(`place.${where}`) })}
    </button>
  </div>`;
}
