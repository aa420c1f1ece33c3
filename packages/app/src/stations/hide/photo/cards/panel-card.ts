import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../../app/app.js';
import { askFor, lengthField, oneOf, thicknessField } from '../../../../fields/index.js';
import { hideDesk } from '../bring-in.js';
import type { PanelSteps } from '../bring-in.js';
import { bringPanel } from '../deeds/other-ways.js';
import { problemNote } from './ways-card.js';

const LEAST = ['across', 'down', 'unknown'] as const;

/** A plain rectangle of leather, told by its measures. */
export function panelCard(app: App, steps: PanelSteps): TemplateResult {
  const { widthMm, heightMm, thicknessMm, least = 'unknown' } = steps;
  const change = (part: Partial<PanelSteps>): void =>
    hideDesk(app).bringIn.update((now) => (now?.kind === 'panel' ? { ...now, ...part } : now));
  return html`<h2>${app.say('hide.fromNumbers')}</h2>
    ${problemNote(steps.problem)}
    <div class="pair">
      ${lengthField(app, {
        id: 'hide-panel-width',
        label: app.say('hide.panelWidth'),
        value: widthMm,
        take: (mm) => change({ widthMm: mm }),
      })}
      ${lengthField(app, {
        id: 'hide-panel-height',
        label: app.say('hide.panelHeight'),
        value: heightMm,
        take: (mm) => change({ heightMm: mm }),
      })}
      ${thicknessField(app, {
        id: 'hide-panel-thickness',
        label: app.say('hide.thickness'),
        mm: thicknessMm,
        take: (mm) => change({ thicknessMm: mm }),
      })}
    </div>
    ${oneOf(
      'hide-panel-least',
      app.say('hide.panelLeast'),
      LEAST.map((value) => [value, app.say(`hide.panelLeast.${value}`)] as const),
      least,
      (next) => change({ least: next }),
    )}
    <button class="main" @click=${() => layPanel(app)}>${app.say('hide.panelMake')}</button>`;
}

/** What was typed last is taken by now: a field is left before a button is pressed. */
function layPanel(app: App): void {
  const steps = hideDesk(app).bringIn.get();
  if (steps?.kind !== 'panel') return;
  const { widthMm, heightMm, thicknessMm, least } = steps;
  if (widthMm === undefined || heightMm === undefined) {
    askFor(app, [
      ...(widthMm === undefined ? ['hide-panel-width'] : []),
      ...(heightMm === undefined ? ['hide-panel-height'] : []),
    ]);
    return;
  }
  bringPanel(app, {
    widthMm,
    heightMm,
    ...(thicknessMm === undefined ? {} : { thicknessMm }),
    ...(least === 'across' || least === 'down' ? { least } : {}),
  });
}
