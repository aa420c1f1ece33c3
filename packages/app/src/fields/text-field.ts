import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import { typedInputs } from './typed-inputs.js';
import type { InputPlace } from './typed-inputs.js';
import type { Reading } from './typing.js';

export interface FieldLook extends Omit<InputPlace, 'shown' | 'name' | 'type'> {
  readonly label: string;
  /** Whose field it is, where the same one serves several things. */
  readonly of?: string | undefined;
  readonly unit?: string;
  readonly hint?: string;
  /** Stands behind the field: a button that uses it. */
  readonly after?: TemplateResult;
}

export interface ReadField<T> extends FieldLook, Pick<InputPlace, 'type'> {
  readonly shown: string;
  readonly read: (text: string) => Reading<T>;
  readonly take: (value: T) => void;
}

/** A field that is read in a way of its own. */
export function readField<T>(app: App, field: ReadField<T>): TemplateResult {
  const { id, label, of, unit, hint, after, read, take, ...place } = field;
  const hintId = `${id}-hint`;
  const { inputs, slip } = typedInputs(app, {
    places: [{ id, ...place }],
    of,
    read: ([text = '']) => read(text),
    take,
    ...(hint === undefined ? {} : { hintId }),
  });
  return html`<div class="field">
    <label for=${id}>${label}</label>
    ${
      unit === undefined && after === undefined
        ? inputs
        : html`<span class="with-unit"
            >${inputs}${unit === undefined ? nothing : html`<span>${unit}</span>`}${after ?? nothing}</span
          >`
    }
    ${hint === undefined ? nothing : html`<small id=${hintId} class="soft">${hint}</small>`} ${slip}
  </div>`;
}

export interface TextField extends FieldLook {
  readonly value: string;
  readonly take: (text: string) => void;
  /** It may be left empty. */
  readonly isOptional?: boolean;
}

const MOST_LETTERS = 200;

/** A line of text. */
export function textField(app: App, { value, isOptional, ...field }: TextField): TemplateResult {
  return readField(app, {
    mostLetters: MOST_LETTERS,
    ...field,
    shown: value,
    read: (text) =>
      text === '' && isOptional !== true
        ? { slip: app.say('field.empty') }
        : { value: text.replace(/\s+/g, ' ') },
  });
}
