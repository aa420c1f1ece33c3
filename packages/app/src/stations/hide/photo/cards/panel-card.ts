import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../../app/app.js';
import { hideDesk } from '../bring-in.js';
import type { Problem } from '../bring-in.js';
import { bringPanel } from '../deeds/other-ways.js';
import { problemNote } from './ways-card.js';

/** A plain rectangle of leather, told by its measures. */
export function panelCard(app: App, problem: Problem | undefined): TemplateResult {
  const refuse = (): void =>
    hideDesk(app).bringIn.set({
      kind: 'panel',
      problem: { code: 'bad-panel', sentence: app.say('hide.panelWrong') },
    });
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const data = new FormData(event.target as HTMLFormElement);
    const readLengthMm = (written: string) => app.measures().readLengthMm(written);
    const text = (name: string): string => {
      const value = data.get(name);
      return typeof value === 'string' ? value.trim() : '';
    };
    const [widthMm, heightMm] = [readLengthMm(text('width')), readLengthMm(text('height'))];
    const thicknessMm = text('thickness') === '' ? 0 : readLengthMm(text('thickness'));
    const least = text('least');
    const isRight =
      widthMm !== undefined &&
      heightMm !== undefined &&
      thicknessMm !== undefined &&
      widthMm > 0 &&
      heightMm > 0;
    if (!isRight || thicknessMm < 0) {
      refuse();
      return;
    }
    bringPanel(app, {
      widthMm,
      heightMm,
      ...(thicknessMm === 0 ? {} : { thicknessMm }),
      ...(least === 'across' || least === 'down' ? { least } : {}),
    });
  };
  return html`<h2>${app.say('hide.fromNumbers')}</h2>
    ${problemNote(problem)}
    <form id="hide-panel" @submit=${submit}>
      ${numberField(app, 'width', app.say('hide.panelWidth'))}
      ${numberField(app, 'height', app.say('hide.panelHeight'))}
      ${numberField(app, 'thickness', app.say('hide.thickness'))}
      <fieldset class="choice">
        <legend>${app.say('hide.panelLeast')}</legend>
        ${(['across', 'down', 'unknown'] as const).map(
          (least) =>
            html`<label>
              <input type="radio" name="least" value=${least} ?checked=${least === 'unknown'} />
              ${app.say(`hide.panelLeast.${least}`)}
            </label>`,
        )}
      </fieldset>
      <button class="main">${app.say('hide.panelMake')}</button>
    </form>`;
}

function numberField(app: App, name: string, label: string): TemplateResult {
  return html`<div class="field">
    <label for="hide-panel-${name}">${label}</label>
    <span class="with-unit">
      <input id="hide-panel-${name}" name=${name} inputmode="decimal" autocomplete="off" />
      ${app.measures().lengthUnit}
    </span>
  </div>`;
}
