import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { App } from '../app/app.js';
import { leaveFields, standsIn, typeInto, typedTexts } from './typing.js';
import type { Reading } from './typing.js';

/** One place to type into. */
export interface InputPlace {
  readonly id: string;
  /** What stands there while nobody types. */
  readonly shown: string;
  /** Its name for listeners, where no label belongs to it. */
  readonly name?: string;
  readonly type?: 'text' | 'time' | 'datetime-local';
  /** Which keys a phone offers. */
  readonly keys?: 'decimal' | 'numeric' | 'text';
  readonly placeholder?: string;
  /** Id of a datalist with what is offered. */
  readonly list?: string;
  readonly mostLetters?: number;
}

export interface TypedInputs<T> {
  readonly places: readonly InputPlace[];
  /** Whose they are, where the same fields serve several things: a slip of the one is none of the other. */
  readonly of?: string | undefined;
  readonly read: (texts: readonly string[]) => Reading<T>;
  readonly take: (value: T) => void;
  readonly hintId?: string;
}

export interface DrawnInputs {
  readonly inputs: readonly TemplateResult[];
  /** Stands below the fields until they are right. */
  readonly slip: TemplateResult;
}

/**
 * Fields that are taken when one of them is left, or by Enter; Escape puts back what was there. What can't be taken stays as
 * it was typed, with the reason beside it.
 */
export function typedInputs<T>(app: App, group: TypedInputs<T>): DrawnInputs {
  const { places, of = '', read, take, hintId } = group;
  const typed = typedTexts(app);
  const keys = places.map(({ id }) => `${of}#${id}`);
  const shown = places.map((place) => place.shown);
  const stands = keys.map((key, i) => standsIn(typed, key, shown[i]!));
  const isRefused = stands.some((each) => each.isRefused);
  const reading = isRefused ? read(stands.map(({ text }) => text.trim())) : undefined;
  const slip = reading !== undefined && 'slip' in reading ? reading.slip : undefined;
  const slipId = `${places[0]!.id}-slip`;
  const leave = (): void => {
    const taken = leaveFields(typed, keys, shown, read);
    if (taken !== undefined) take(taken.value);
    app.redraw();
  };
  const described = [hintId, slip === undefined ? undefined : slipId].filter((id) => id !== undefined);
  return {
    inputs: places.map(
      (place, i) =>
        html`<input
          id=${place.id}
          type=${place.type ?? 'text'}
          inputmode=${place.keys ?? nothing}
          autocomplete="off"
          maxlength=${place.mostLetters ?? nothing}
          placeholder=${place.placeholder ?? nothing}
          list=${place.list ?? nothing}
          aria-label=${place.name ?? nothing}
          aria-invalid=${String(slip !== undefined && stands[i]!.isRefused)}
          aria-describedby=${described.length === 0 ? nothing : described.join(' ')}
          .value=${live(stands[i]!.text)}
          @input=${(event: Event) =>
            typeInto(typed, keys[i]!, shown[i]!, (event.currentTarget as HTMLInputElement).value)}
          @change=${leave}
          @keydown=${(event: KeyboardEvent) => {
            if (event.key !== 'Escape' || !typed.has(keys[i]!)) return;
            event.preventDefault();
            event.stopPropagation();
            typed.delete(keys[i]!);
            (event.currentTarget as HTMLInputElement).value = shown[i]!;
            app.redraw();
          }}
        />`,
    ),
    slip: html`<span class="slip" id=${slipId} aria-live="polite">${slip ?? nothing}</span>`,
  };
}

/**
 * Asks for what is needed now and stands in no field yet: an empty one says so, a slip stays as it was typed. The first of
 * them gets the focus.
 */
export function askFor(app: App, ids: readonly string[], of = ''): void {
  const typed = typedTexts(app);
  for (const id of ids) {
    const key = `${of}#${id}`;
    const { text } = standsIn(typed, key, '');
    typed.set(key, { text, shown: '', isOpen: false, isRefused: true });
  }
  app.redraw();
  document.getElementById(ids[0] ?? '')?.focus();
}
