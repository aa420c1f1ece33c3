import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';

/** A value and what it is called. */
export type Choice<T> = readonly [T, string];

/** One of a few, all of them seen. The name tells the group from others on the page. */
export function oneOf<T extends string | undefined>(
  name: string,
  label: string,
  choices: readonly Choice<T>[],
  now: T | undefined,
  take: (value: T) => void,
  { isColumn = false }: { readonly isColumn?: boolean } = {},
): TemplateResult {
  return html`<fieldset class="choice ${isColumn ? 'column' : ''}">
    <legend>${label}</legend>
    ${choices.map(
      ([value, words]) =>
        html`<label
          ><input
            type="radio"
            name=${name}
            .checked=${live(value === now)}
            @change=${() => take(value)}
          />${words}</label
        >`,
    )}
  </fieldset>`;
}

export interface PressChoice<T extends string> {
  readonly value: T;
  readonly words: string;
  /** Class of a swatch that shows how it looks in the drawing. */
  readonly swatch?: string;
}

/** A few choices as buttons, one of them pressed: for what is changed again and again while working. */
export function pressRow<T extends string>(
  label: string,
  choices: readonly PressChoice<T>[],
  now: T | undefined,
  take: (value: T) => void,
): TemplateResult {
  return html`<fieldset class="press-row">
    <legend>${label}</legend>
    ${choices.map(
      ({ value, words, swatch }) =>
        html`<button type="button" aria-pressed=${String(value === now)} @click=${() => take(value)}>
          ${swatch === undefined ? nothing : html`<span class="swatch ${swatch}" aria-hidden="true"></span>`}${words}
        </button>`,
    )}
  </fieldset>`;
}

/** One of many, behind a list. */
export function listField<T extends string>(
  id: string,
  label: string,
  choices: readonly Choice<T>[],
  now: T,
  take: (value: T) => void,
): TemplateResult {
  const change = (event: Event): void => {
    const at = (event.currentTarget as HTMLSelectElement).selectedIndex;
    const chosen = choices[at];
    if (chosen !== undefined) take(chosen[0]);
  };
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <select id=${id} @change=${change}>
      ${choices.map(
        ([value, words]) =>
          html`<option value=${value} ?selected=${value === now} .selected=${live(value === now)}>
            ${words}
          </option>`,
      )}
    </select>
  </div>`;
}

/** Yes or no. */
export function checkField(label: string, isOn: boolean, take: (isOn: boolean) => void): TemplateResult {
  return html`<label class="check"
    ><input
      type="checkbox"
      .checked=${live(isOn)}
      @change=${(event: Event) => take((event.currentTarget as HTMLInputElement).checked)}
    />${label}</label
  >`;
}
