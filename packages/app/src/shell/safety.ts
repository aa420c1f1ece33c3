import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import type { WordKey } from '../words/words.js';
import { saveJobFile } from './job-files.js';

/** A line below the bar wherever the work is not where it belongs, or another tab works on the job. */
export function safetyLine(app: App, isLookingOn: boolean): TemplateResult | typeof nothing {
  if (isLookingOn)
    return line(
      'looks-on',
      app.say('shell.looksOn'),
      html`<button @click=${() => app.session.takePen()}>${app.say('shell.workHere')}</button>`,
    );
  const state = app.saved.get();
  if (state.kind !== 'waiting' && state.kind !== 'unsafe') return nothing;
  const reason = app.say(`shell.reason.${state.reason}` satisfies WordKey);
  const save = (): void => {
    saveJobFile(app).catch((error: unknown) => app.tellFailure(error));
  };
  return line(
    state.kind,
    app.say(state.kind === 'waiting' ? 'shell.waitingWhy' : 'shell.unsafeWhy', { reason }),
    html`<button @click=${() => app.session.retry()}>${app.say('shell.retry')}</button>
      <button @click=${save}>${app.say('job.save')}</button>`,
  );
}

function line(style: string, words: string, buttons: TemplateResult): TemplateResult {
  return html`<div class="safety ${style}" role="alert">
    <span>${words}</span>
    ${buttons}
  </div>`;
}
