import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { App } from '../../../../app/app.js';

export interface PressOption<T extends string> {
  readonly value: T;
  readonly words: string;
  /** Class of a swatch that shows how it looks in the drawing. */
  readonly swatch?: string;
}

/** A few choices as buttons, one of them pressed. */
export function pressRow<T extends string>(
  legend: string,
  options: readonly PressOption<T>[],
  now: T | undefined,
  pick: (value: T) => void,
): TemplateResult {
  return html`<fieldset class="press-row">
    <legend>${legend}</legend>
    ${options.map(
      ({ value, words, swatch }) =>
        html`<button type="button" aria-pressed=${String(value === now)} @click=${() => pick(value)}>
          ${swatch === undefined ? nothing : html`<span class="swatch ${swatch}" aria-hidden="true"></span>`}${words}
        </button>`,
    )}
  </fieldset>`;
}

export interface TextField {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  readonly isNumber?: boolean;
  /** What is wrong with what was typed, or undefined where it was taken. */
  readonly commit: (text: string) => string | undefined;
}

/** A field that is taken when it is left or by Enter; what can't be read is told, and what was there stays. */
export function textField(app: App, { id, label, value, unit, isNumber, commit }: TextField): TemplateResult {
  const take = (event: Event): void => {
    const input = event.currentTarget as HTMLInputElement;
    const wrong = commit(input.value.trim());
    if (wrong === undefined) return;
    app.tell({ tone: 'warning', text: wrong });
    input.value = value;
  };
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <span class="with-unit"
      ><input
        id=${id}
        type="text"
        autocomplete="off"
        inputmode=${isNumber === true ? 'decimal' : 'text'}
        .value=${live(value)}
        @change=${take}
        @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && (event.currentTarget as HTMLElement).blur()}
      />${unit === undefined ? nothing : html`<span>${unit}</span>`}</span
    >
  </div>`;
}

/** A length that is more than nothing. */
export function lengthField(
  app: App,
  id: string,
  label: string,
  mm: number,
  take: (mm: number) => void,
): TemplateResult {
  const measures = app.measures();
  const value = measures.lengthField(mm);
  return textField(app, {
    id,
    label,
    value,
    unit: measures.lengthUnit,
    isNumber: true,
    commit: (text) => {
      if (text === value) return undefined;
      const read = measures.readLengthMm(text);
      if (read === undefined || !(read > 0)) return app.say('marks.wrongLength', { text });
      take(read);
      return undefined;
    },
  });
}

export function selectField<T extends string>(
  id: string,
  label: string,
  options: readonly (readonly [T, string])[],
  now: T,
  pick: (value: T) => void,
): TemplateResult {
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <select id=${id} @change=${(event: Event) => pick((event.currentTarget as HTMLSelectElement).value as T)}>
      ${options.map(([value, words]) => html`<option value=${value} .selected=${live(value === now)}>${words}</option>`)}
    </select>
  </div>`;
}
