import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { App } from '../../../../app/app.js';

export interface MeasureField {
  readonly id: string;
  readonly label: string;
  readonly value: number | undefined;
  readonly kind: 'length' | 'area';
  /** What was given; undefined where the field was emptied. */
  readonly take: (value: number | undefined) => void;
}

/** Fields with something in them that can't be read. */
const WRONG = new WeakMap<App, Set<string>>();

/** A field for a measure: read when it is left, in the person's units or one that she writes. */
export function measureField(app: App, { id, label, value, kind, take }: MeasureField): TemplateResult {
  const measures = app.measures();
  const wrong = WRONG.get(app) ?? new Set<string>();
  WRONG.set(app, wrong);
  const isArea = kind === 'area';
  const shown = value === undefined ? '' : isArea ? measures.areaField(value) : measures.lengthField(value);
  const unit = isArea ? measures.area(0).replace(/^[^a-z]*/i, '') : measures.lengthUnit;
  const change = (event: Event): void => {
    const text = (event.target as HTMLInputElement).value;
    const read = isArea ? measures.readAreaMm2(text) : measures.readLengthMm(text);
    const isRight = text.trim() === '' || (read !== undefined && read >= 0);
    if (isRight) wrong.delete(id);
    else wrong.add(id);
    if (isRight) take(text.trim() === '' ? undefined : read);
    app.redraw();
  };
  const isWrong = wrong.has(id);
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <span class="with-unit">
      <input
        id=${id}
        inputmode="decimal"
        autocomplete="off"
        .value=${isWrong ? nothing : live(shown)}
        aria-invalid=${isWrong ? 'true' : 'false'}
        aria-describedby=${isWrong ? `${id}-wrong` : nothing}
        @change=${change}
      />
      ${unit}
    </span>
    ${isWrong ? html`<p class="hide-wrong" id="${id}-wrong">${app.say('hide.wrongNumber')}</p>` : nothing}
  </div>`;
}
