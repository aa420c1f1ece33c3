import { html } from 'lit-html';
import { sheet } from './sheet.js';
import type { Shell } from './shell.js';

/** The job as a whole: opening, saving as one file. */
export function jobMenu(shell: Shell) {
  const { app } = shell;
  return sheet(shell, 'job', app.say('shell.job'), () => html`<p>${app.job.get().name}</p>`);
}
