import { html } from 'lit-html';
import type { Layout } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import type { WordKey } from '../../../words/words.js';

/** The figures by which layouts are judged, in words of the trade. */
export function figuresOf(app: App, layout: Layout): readonly (readonly [WordKey, string])[] {
  const measures = app.measures();
  const { total } = layout.yield;
  const laid = layout.placements.filter(({ state }) => state !== 'spoiled').length;
  const hides = new Set(layout.placements.map(({ hide }) => hide)).size;
  return [
    ['lay.figure.laid', app.say('lay.of', { laid, asked: laid + layout.unplaced.length })],
    ['lay.figure.hides', measures.number(hides, 0)],
    ['lay.figure.usedUp', measures.area(total.usedUpMm2)],
    ['lay.figure.usedUpYield', measures.percent(total.usedUpYield)],
    ['lay.figure.grossYield', measures.percent(total.grossYield)],
    ['lay.figure.offcuts', measures.area(total.offcutMm2)],
  ];
}

export function layoutFigures(app: App, layout: Layout) {
  return html`<dl class="figures">
    ${figuresOf(app, layout).map(
      ([key, value]) =>
        html`<dt>${app.say(key)}</dt>
          <dd>${value}</dd>`,
    )}
  </dl>`;
}
