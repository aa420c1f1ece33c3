import { html } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { LayTable } from '../table.js';

/** How long a run may look for better layouts, s; undefined: until it is stopped. */
const CHOICES: readonly (number | undefined)[] = [10, 30, 120, 600, undefined];

export function howLong(app: App, table: LayTable) {
  const now = table.seconds.get();
  return html`<div class="field how-long">
    <label for="lay-seconds">${app.say('lay.howLong')}</label>
    <select
      id="lay-seconds"
      @change=${({ target }: Event) => {
        const { value } = target as HTMLSelectElement;
        table.seconds.set(value === '' ? undefined : Number(value));
      }}
    >
      ${CHOICES.map(
        (seconds) =>
          html`<option value=${seconds ?? ''} ?selected=${seconds === now}>${words(app, seconds)}</option>`,
      )}
    </select>
  </div>`;
}

function words(app: App, seconds: number | undefined): string {
  if (seconds === undefined) return app.say('lay.untilStopped');
  return seconds < 60 ? app.say('lay.seconds', { n: seconds }) : app.say('lay.minutes', { n: seconds / 60 });
}
