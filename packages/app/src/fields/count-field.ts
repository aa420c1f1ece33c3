import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import { readWithin } from './measure-fields.js';
import { typedInputs } from './typed-inputs.js';

export interface CountField {
  readonly id: string;
  readonly of?: string;
  /** What stands before it. */
  readonly label: string;
  /** Its name for listeners, where the label alone does not tell whose count it is. */
  readonly name?: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly take: (value: number) => void;
}

/** A count with a button to each side. */
export function countField(app: App, field: CountField): TemplateResult {
  const { id, of, label, name = label, value, least, most, take } = field;
  const measures = app.measures();
  const step = (by: number): void => take(Math.max(least, Math.min(most, value + by)));
  const kind = {
    read: (text: string) => {
      const read = measures.readNumber(text);
      return Number.isInteger(read) ? read : undefined;
    },
    words: (count: number) => measures.number(count, 0),
    slip: (text: string) => app.say(text === '' ? 'field.empty' : 'field.noWhole', { text }),
  };
  const { inputs, slip } = typedInputs(app, {
    places: [{ id, shown: measures.number(value, 0), name, keys: 'numeric' }],
    of,
    read: ([text = '']) => readWithin(app, kind, { least, most }, text),
    take: (read) => read !== value && take(read),
  });
  return html`<div class="count">
    <span>${label}</span>
    <div class="stepper" role="group" aria-label=${name}>
      <button
        type="button"
        aria-label=${app.say('field.less', { what: name })}
        ?disabled=${value <= least}
        @click=${() => step(-1)}
      >
        −
      </button>
      ${inputs}
      <button
        type="button"
        aria-label=${app.say('field.more', { what: name })}
        ?disabled=${value >= most}
        @click=${() => step(1)}
      >
        +
      </button>
    </div>
    ${slip}
  </div>`;
}
