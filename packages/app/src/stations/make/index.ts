import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { Station } from '../../shell/station.js';
import { saveAs } from './give-out.js';
import { turnPage } from './preview.js';
import { sheetPage } from './sheet-page.js';
import { missingFor, sheetRow } from './sheets.js';
import { startPage } from './start-page.js';
import { closeSheet, openPrinting } from './steps.js';
import { makeTable } from './table.js';

export const MAKE_STATION: Station = {
  card,
  tray,
  keys: [
    { key: 'Escape', words: 'make.all', run: (app) => withSheet(app, () => closeSheet(app)) },
    { key: 's', words: 'make.save', run: (app) => withSheet(app, () => void save(app)) },
    { key: 'p', words: 'make.print', run: (app) => withSheet(app, () => void print(app)) },
    { key: 'PageDown', words: 'make.next', run: (app) => turnPage(app, 1) },
    { key: 'PageUp', words: 'make.before', run: (app) => turnPage(app, -1) },
  ],
};

function card(app: App): TemplateResult {
  const { sheet } = makeTable(app);
  // What it was made from may have been taken away meanwhile.
  return sheet === undefined || missingFor(app, sheetRow(sheet)) !== undefined
    ? startPage(app)
    : sheetPage(app, sheet);
}

function tray(app: App): TemplateResult {
  const { sheet, shown, isSaving } = makeTable(app);
  if (sheet === undefined) return html``;
  const hasPages = (shown?.urls.length ?? 0) > 0 && !isSaving;
  return html`<button @click=${() => closeSheet(app)}>${app.say('make.all')}</button>
    <span class="grow"></span>
    <button class=${sheet === 'cutFiles' ? 'main' : ''} ?disabled=${!hasPages} @click=${() => void save(app)}>
      ${app.say(sheet === 'cutFiles' ? 'make.saveCut' : 'make.save', { n: shown?.urls.length ?? 0 })}
    </button>
    ${
      sheet === 'cutFiles'
        ? ''
        : html`<button class="main" ?disabled=${!hasPages} @click=${() => void print(app)}>
            ${app.say('make.print')}
          </button>`
    }`;
}

function save(app: App): Promise<void> {
  return saveAs(app, makeTable(app).sheet === 'cutFiles' ? 'cut' : 'pdf');
}

async function print(app: App): Promise<void> {
  if (makeTable(app).sheet !== 'cutFiles') await openPrinting(app);
}

function withSheet(app: App, run: () => void): boolean {
  if (makeTable(app).sheet === undefined) return false;
  run();
  return true;
}
