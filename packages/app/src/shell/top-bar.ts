import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import type { Shell } from './shell.js';

/** Above all: the job, whether it is saved, and the ways back and forth. */
export function topBar(shell: Shell): TemplateResult {
  const { app } = shell;
  const { done, undone } = app.history.get();
  const [undo, redo] = [done.at(-1), undone.at(-1)];
  return html`<header class="top">
    <h1 class="for-listeners">${app.say('app.name')}</h1>
    <button class="quiet job-name" @click=${() => shell.openSheet('job')}>
      <span class="job-word">${app.say('shell.job')}<span class="for-listeners">:</span></span>
      <span class="job-title">${app.job.get().name}</span>
    </button>
    <span class="saved ${app.saved.get().kind}" role="status">${savedWords(app)}</span>
    <span class="grow"></span>
    <button
      class="quiet"
      ?disabled=${undo === undefined}
      title=${undo === undefined ? app.say('shell.nothingToUndo') : app.say('shell.undoStep', { step: undo.label })}
      @click=${() => app.undo()}
    >
      ${app.say('shell.undo')}
    </button>
    <button
      class="quiet"
      ?disabled=${redo === undefined}
      title=${redo === undefined ? app.say('shell.nothingToRedo') : app.say('shell.redoStep', { step: redo.label })}
      @click=${() => app.redo()}
    >
      ${app.say('shell.redo')}
    </button>
    <button class="quiet wide-only" @click=${() => shell.openSheet('keys')}>${app.say('shell.keys')}</button>
    <button class="quiet wide-only" @click=${() => shell.openSheet('settings')}>
      ${app.say('shell.settings')}
    </button>
  </header>`;
}

function savedWords(app: App): string {
  return app.say(`shell.${app.saved.get().kind}`);
}
