import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { checkField } from '../../fields/index.js';
import type { SheetRow } from './sheets.js';
import { closePrinting } from './steps.js';
import { makeTable } from './table.js';

/** What has to be minded before printing, and the way to the printer. */
export function printing(app: App, { isTrueScale = false }: SheetRow): TemplateResult {
  const table = makeTable(app);
  if (!table.isPrinting) return html``;
  const isMinded = !isTrueScale || table.isScaleMinded;
  const mind = (isOn: boolean): void => {
    table.isScaleMinded = isOn;
    app.redraw();
  };
  return html`<section class="make-print" aria-labelledby="make-print-title">
    <h3 id="make-print-title" tabindex="-1">${app.say('make.print')}</h3>
    ${isTrueScale ? scaleWords(app) : html`<p>${app.say('make.print.any')}</p>`}
    ${isTrueScale ? checkField(app.say('make.print.minded'), table.isScaleMinded, mind) : ''}
    <div class="row">
      ${wayToPrinter(app, isMinded, table.printUrl)}
      <button class="quiet" @click=${() => closePrinting(app)}>${app.say('shell.close')}</button>
    </div>
  </section>`;
}

function scaleWords(app: App): TemplateResult {
  return html`<p><strong>${app.say('make.print.scale')}</strong></p>
    <p>${app.say('make.print.measure')}</p>`;
}

function wayToPrinter(app: App, isMinded: boolean, url: string | undefined): TemplateResult {
  if (url === undefined) return html`<span role="status">${app.say('make.print.making')}</span>`;
  if (!isMinded) return html`<button class="main" disabled>${app.say('make.print.open')}</button>`;
  return html`<a class="button main" href=${url} target="_blank" rel="noopener"
    >${app.say('make.print.open')}</a
  >`;
}
