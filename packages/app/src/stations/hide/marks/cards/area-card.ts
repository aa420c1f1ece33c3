import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { hideAreas } from '@hidebound/leather';
import type { Hide, HideAreas } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';

/** A hide never changes, so its areas are reckoned once. */
const known = new WeakMap<Hide, HideAreas>();

export function areasOf(hide: Hide): HideAreas {
  const areas = known.get(hide) ?? hideAreas(hide);
  known.set(hide, areas);
  return areas;
}

/** How large the hide is, how much of it can be used, and what the invoice says. */
export function areaCard(app: App, hide: Hide): TemplateResult {
  const measures = app.measures();
  const { grossMm2, netMm2, usableMm2 } = areasOf(hide);
  const share = hide.photo?.areaErrorShare;
  const off = share === undefined ? '' : ` ± ${measures.percent(share)}`;
  const { invoicedMm2 } = hide.area;
  return html`<dl class="figures">
      <dt>${app.say('marks.area.gross')}</dt>
      <dd>${measures.area(grossMm2)}${off}</dd>
      ${
        hide.openings.length === 0
          ? nothing
          : html`<dt>${app.say('marks.area.net')}</dt>
              <dd>${measures.area(netMm2)}</dd>`
      }
      <dt>${app.say('marks.area.usable')}</dt>
      <dd>${measures.area(usableMm2)}</dd>
      ${
        invoicedMm2 === undefined
          ? nothing
          : html`<dt>${app.say('marks.area.invoiced')}</dt>
              <dd>${measures.area(invoicedMm2)}</dd>`
      }
      <dt>${app.say('marks.flawCount')}</dt>
      <dd>${measures.number(hide.flaws.length)}</dd>
    </dl>
    ${invoicedMm2 === undefined ? nothing : html`<p class="soft">${invoiceWords(app, grossMm2, invoicedMm2, share)}</p>`}`;
}

/** What no photo tells: a difference below this is none (common practice, no source). */
const SAME_SHARE = 0.01;

function invoiceWords(app: App, grossMm2: number, invoicedMm2: number, share = 0): string {
  const off = (grossMm2 - invoicedMm2) / invoicedMm2;
  const params = { percent: app.measures().percent(Math.abs(off)) };
  if (Math.abs(off) <= Math.max(SAME_SHARE, share)) return app.say('marks.invoice.same');
  return app.say(off < 0 ? 'marks.invoice.less' : 'marks.invoice.more', params);
}
