import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import { thousandth } from '../order/patch.js';

export interface TextFieldOptions {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly list?: string;
  readonly placeholder?: string;
}

/** A line of text; an empty one leaves what was. */
export function textField({ id, label, value, set, list, placeholder }: TextFieldOptions): TemplateResult {
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <input
      id=${id}
      type="text"
      maxlength="200"
      .value=${value}
      placeholder=${placeholder ?? nothing}
      list=${list ?? nothing}
      @change=${({ target }: Event) => {
        const field = target as HTMLInputElement;
        const text = field.value.trim().replace(/\s+/g, ' ');
        if (text === '') field.value = value;
        else if (text !== value) set(text);
      }}
    />
  </div>`;
}

export interface LengthFieldOptions {
  readonly id: string;
  readonly label: string;
  readonly mm: number | undefined;
  /** Undefined where the field was emptied, which only an optional one may be. */
  readonly set: (mm: number | undefined) => void;
  readonly isOptional?: boolean;
  readonly usual?: string;
}

/** A length in her unit. What is no length is told beside the field and changes nothing. */
export function lengthField(app: App, options: LengthFieldOptions): TemplateResult {
  const { id, label, mm, set, isOptional, usual } = options;
  const measures = app.measures();
  const value = mm === undefined ? '' : measures.lengthField(mm);
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <span class="with-unit"
      ><input
        id=${id}
        type="text"
        inputmode="decimal"
        .value=${value}
        placeholder=${usual ?? nothing}
        aria-describedby="${id}-error"
        @change=${({ target }: Event) => {
          const field = target as HTMLInputElement;
          if (field.value === value) return;
          const isEmpty = field.value.trim() === '';
          const read = isEmpty ? undefined : measures.readLengthMm(field.value);
          const isFine = isEmpty ? isOptional === true : read !== undefined && read >= 0 && read <= 50_000;
          showError(field, isFine ? '' : app.say('pieces.noLength'));
          if (isFine) set(read === undefined ? undefined : thousandth(read));
        }}
      /><span class="soft">${measures.lengthUnit}</span></span
    >
    <span class="field-error" id="${id}-error"></span>
  </div>`;
}

/** The words stand below the field until it is right. */
export function showError(field: HTMLInputElement, words: string): void {
  field.setAttribute('aria-invalid', String(words !== ''));
  const place = field.ownerDocument.getElementById(`${field.id}-error`);
  if (place !== null) place.textContent = words;
}

export interface StepperOptions {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly set: (value: number) => void;
}

/** A count with a button to each side. */
export function stepper(app: App, { id, label, value, least, most, set }: StepperOptions): TemplateResult {
  const step = (by: number): void => set(Math.max(least, Math.min(most, value + by)));
  return html`<div class="stepper" role="group" aria-label=${label}>
    <button
      aria-label=${app.say('pieces.less', { what: label })}
      ?disabled=${value <= least}
      @click=${() => step(-1)}
    >
      −
    </button>
    <input
      id=${id}
      type="text"
      inputmode="numeric"
      aria-label=${label}
      .value=${String(value)}
      @change=${({ target }: Event) => {
        const field = target as HTMLInputElement;
        const read = app.measures().readNumber(field.value);
        if (read === undefined || read < least || read > most || !Number.isInteger(read)) {
          field.value = String(value);
        } else if (read !== value) set(read);
      }}
    />
    <button
      aria-label=${app.say('pieces.more', { what: label })}
      ?disabled=${value >= most}
      @click=${() => step(1)}
    >
      +
    </button>
  </div>`;
}

export interface Option {
  readonly value: string;
  readonly words: string;
}

export function selectField(
  id: string,
  label: string,
  value: string,
  options: readonly Option[],
  set: (value: string) => void,
): TemplateResult {
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <select id=${id} @change=${({ target }: Event) => set((target as HTMLSelectElement).value)}>
      ${options.map(
        (option) =>
          html`<option
            value=${option.value}
            ?selected=${option.value === value}
            .selected=${option.value === value}
          >
            ${option.words}
          </option>`,
      )}
    </select>
  </div>`;
}

export function checkField(label: string, isOn: boolean, set: (isOn: boolean) => void): TemplateResult {
  return html`<label
    ><input
      type="checkbox"
      .checked=${isOn}
      @change=${({ target }: Event) => set((target as HTMLInputElement).checked)}
    />${label}</label
  >`;
}
