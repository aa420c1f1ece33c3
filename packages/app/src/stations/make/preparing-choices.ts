import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { MakeChoices } from '../../work/make-tasks.js';
import { choose, makeTable } from './table.js';

/** A usual working day, where a start is given. */
const USUAL = { fromMin: 8 * 60, toMin: 17 * 60 } as const;

/** When work begins, and the hours of a day in which hands work. */
export function preparingChoices(app: App): TemplateResult {
  const { start, hours } = makeTable(app).choices;
  const { fromMin, toMin } = hours ?? USUAL;
  const setHours = (change: { fromMin?: number; toMin?: number }): void => {
    const next = { fromMin, toMin, ...change };
    if (next.fromMin < next.toMin) choose(app, { hours: next });
    else app.tell({ tone: 'warning', text: app.say('make.hours.wrong') });
  };
  return html`<div class="field">
      <label for="make-start">${app.say('make.start')}</label>
      <input
        id="make-start"
        type="datetime-local"
        .value=${start}
        @change=${(event: Event) => choose(app, startAt((event.target as HTMLInputElement).value, hours))}
      />
      <small class="soft">${app.say('make.start.hint')}</small>
    </div>
    <fieldset class="choice make-hours">
      <legend>${app.say('make.hours')}</legend>
      ${clock(app.say('make.hours.from'), fromMin, (minutes) => setHours({ fromMin: minutes }))}
      ${clock(app.say('make.hours.to'), toMin, (minutes) => setHours({ toMin: minutes }))}
    </fieldset>`;
}

/** A start on a day asks for hours; without it they are left as they are. */
export function startAt(start: string, hours: MakeChoices['hours']): Partial<MakeChoices> {
  return { start, ...(start === '' || hours !== undefined ? {} : { hours: USUAL }) };
}

function clock(label: string, minutes: number, pick: (minutes: number) => void): TemplateResult {
  return html`<label
    >${label}
    <input
      type="time"
      .value=${clockText(minutes)}
      @change=${(event: Event) => {
        const read = readClock((event.target as HTMLInputElement).value);
        if (read !== undefined) pick(read);
      }}
  /></label>`;
}

export function clockText(minutes: number): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

export function readClock(text: string): number | undefined {
  const match = /^(\d{1,2}):(\d{2})/.exec(text);
  return match === null ? undefined : Number(match[1]) * 60 + Number(match[2]);
}
