import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { readField, typedInputs } from '../../fields/index.js';
import type { MakeChoices } from '../../work/make-tasks.js';
import { choose, makeTable } from './table.js';

/** A usual working day, where a start is given. */
const USUAL = { fromMin: 8 * 60, toMin: 17 * 60 } as const;

/** When work begins, and the hours of a day in which hands work. */
export function preparingChoices(app: App): TemplateResult {
  const { start, hours } = makeTable(app).choices;
  return html`${readField(app, {
    id: 'make-start',
    label: app.say('make.start'),
    hint: app.say('make.start.hint'),
    type: 'datetime-local',
    shown: start,
    read: (text) => ({ value: text }),
    take: (text) => choose(app, startAt(text, hours)),
  })}
  ${hoursFields(app, hours ?? USUAL)}`;
}

function hoursFields(app: App, { fromMin, toMin }: NonNullable<MakeChoices['hours']>): TemplateResult {
  const { inputs, slip } = typedInputs<NonNullable<MakeChoices['hours']>>(app, {
    places: [
      { id: 'make-hours-from', type: 'time', shown: clockText(fromMin) },
      { id: 'make-hours-to', type: 'time', shown: clockText(toMin) },
    ],
    read: (texts) => {
      const [from, to] = texts.map(readClock);
      if (from === undefined || to === undefined) return { slip: app.say('field.empty') };
      return from < to ? { value: { fromMin: from, toMin: to } } : { slip: app.say('make.hours.wrong') };
    },
    take: (next) => choose(app, { hours: next }),
  });
  return html`<fieldset class="choice make-hours">
    <legend>${app.say('make.hours')}</legend>
    <label>${app.say('make.hours.from')} ${inputs[0]}</label>
    <label>${app.say('make.hours.to')} ${inputs[1]}</label>
    ${slip}
  </fieldset>`;
}

/** A start on a day asks for hours; without it they are left as they are. */
export function startAt(start: string, hours: MakeChoices['hours']): Partial<MakeChoices> {
  return { start, ...(start === '' || hours !== undefined ? {} : { hours: USUAL }) };
}

export function clockText(minutes: number): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

export function readClock(text: string): number | undefined {
  const match = /^(\d{1,2}):(\d{2})/.exec(text);
  return match === null ? undefined : Number(match[1]) * 60 + Number(match[2]);
}
