import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { App } from '../../app/app.js';

/** One of a few, all of them seen. */
export function oneOf<T extends string>(
  name: string,
  label: string,
  options: readonly (readonly [T, string])[],
  now: T,
  pick: (value: T) => void,
): TemplateResult {
  return html`<fieldset class="choice">
    <legend>${label}</legend>
    ${options.map(
      ([value, words]) =>
        html`<label
          ><input
            type="radio"
            name=${`make-${name}`}
            .checked=${live(value === now)}
            @change=${() => pick(value)}
          />${words}</label
        >`,
    )}
  </fieldset>`;
}

/** One of many. */
export function listOf<T extends string>(
  name: string,
  label: string,
  options: readonly (readonly [T, string])[],
  now: T,
  pick: (value: T) => void,
): TemplateResult {
  return html`<div class="field">
    <label for=${`make-${name}`}>${label}</label>
    <select
      id=${`make-${name}`}
      @change=${(event: Event) => pick((event.target as HTMLSelectElement).value as T)}
    >
      ${options.map(
        ([value, words]) => html`<option value=${value} ?selected=${value === now}>${words}</option>`,
      )}
    </select>
  </div>`;
}

export function check(label: string, isOn: boolean, pick: (isOn: boolean) => void): TemplateResult {
  return html`<label class="make-check"
    ><input
      type="checkbox"
      .checked=${live(isOn)}
      @change=${(event: Event) => pick((event.target as HTMLInputElement).checked)}
    />${label}</label
  >`;
}

export interface FieldOptions {
  readonly unit?: string;
  readonly hint?: string;
}

/** A field that is read when it is left; what can't be read is told and put back. */
export function field<T>(
  app: App,
  name: string,
  label: string,
  now: string,
  read: (text: string) => T | undefined,
  pick: (value: T) => void,
  { unit, hint }: FieldOptions = {},
): TemplateResult {
  const id = `make-${name}`;
  const take = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const value = read(input.value);
    if (value !== undefined) return pick(value);
    app.tell({ tone: 'warning', text: app.say('make.notRead', { label, text: input.value }) });
    input.value = now;
  };
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <span class="with-unit"
      ><input
        id=${id}
        type="text"
        .value=${now}
        aria-describedby=${hint === undefined ? nothing : `${id}-hint`}
        @change=${take}
      />${unit ?? nothing}</span
    >
    ${hint === undefined ? nothing : html`<small id=${`${id}-hint`} class="soft">${hint}</small>`}
  </div>`;
}

/** A length in the person's own unit. */
export function lengthOf(
  app: App,
  name: string,
  label: string,
  mm: number | undefined,
  pick: (mm: number) => void,
  hint?: string,
): TemplateResult {
  const measures = app.measures();
  const now = mm === undefined ? '' : measures.lengthField(mm);
  return field(app, name, label, now, (text) => measures.readLengthMm(text), pick, {
    unit: measures.lengthUnit,
    ...(hint === undefined ? {} : { hint }),
  });
}
