import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { areasOf } from '../areas.js';

/** How much of the hide can be used; the whole of it and the invoice stand at the card's head. */
export function areaCard(app: App, hide: Hide): TemplateResult {
  const measures = app.measures();
  const { netMm2, usableMm2 } = areasOf(hide);
  return html`<dl class="figures">
    ${
      hide.openings.length === 0
        ? nothing
        : html`<dt>${app.say('marks.area.net')}</dt>
            <dd>${measures.area(netMm2)}</dd>`
    }
    <dt>${app.say('marks.area.usable')}</dt>
    <dd>${measures.area(usableMm2)}</dd>
    <dt>${app.say('marks.flawCount')}</dt>
    <dd>${measures.number(hide.flaws.length)}</dd>
  </dl>`;
}
