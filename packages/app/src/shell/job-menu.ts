import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../app/app.js';
import { textField } from '../fields/index.js';
import { binJob, fetchBack, listBin, listJobs, renameJob, throwAway } from '../store/browser-jobs.js';
import type { JobRecord } from '../store/database.js';
import { demoJob, goToJob, newJob, openJobFile, saveJobFile } from './job-files.js';
import { sheet } from './sheet.js';
import type { Shell } from './shell.js';

/** Jobs of this browser as they were last looked up, for each app. */
const LISTED = new WeakMap<
  App,
  { readonly jobs: readonly JobRecord[]; readonly bin: readonly JobRecord[] }
>();

/** Looks up the other jobs; the sheet is drawn anew when they are there. */
export async function lookUpJobs(app: App): Promise<void> {
  if (app.session.kind === 'folder') return;
  const { database } = app.session;
  LISTED.set(app, { jobs: await listJobs(database), bin: await listBin(database) });
  app.redraw();
}

/** The job as a whole: its name, saving it as one file, opening another. */
export function jobMenu(shell: Shell) {
  const { app } = shell;
  const attempt = (work: () => Promise<unknown>) => (): void => {
    work().catch((error: unknown) => app.tellFailure(error));
  };
  return sheet(shell, 'job', app.say('shell.job'), () => {
    const isFolder = app.session.kind === 'folder';
    return html`
      ${isFolder ? '' : nameField(app, attempt)}
      <p class="soft">
        ${app.say(isFolder ? 'job.inFolder' : 'job.inBrowser', { name: app.job.get().name })}
      </p>
      ${deed(
        app.say('job.save'),
        app.say('job.saveWhy'),
        attempt(() => saveJobFile(app)),
      )}
      ${deed(
        app.say('job.open'),
        app.say(isFolder ? 'job.openFolderWhy' : 'job.openWhy'),
        attempt(() => openJobFile(app)),
      )}
      ${isFolder ? '' : otherJobs(app, attempt)} ${whatWasSaid(app)}
      <div class="row narrow-only">
        <button @click=${() => shell.openSheet('settings')}>${app.say('shell.settings')}</button>
        <button @click=${() => shell.openSheet('keys')}>${app.say('shell.keys')}</button>
      </div>
    `;
  });
}

/** Where the list of what was said is unfolded. */
const READ_AGAIN = new WeakSet<App>();

/** What was put away, or left by itself, can be read again here. */
function whatWasSaid(app: App): TemplateResult | string {
  const still = new Set(app.notices.get().map(({ id }) => id));
  const said = app.said.get().filter(({ id }) => !still.has(id));
  if (said.length === 0) return '';
  const toggle = (event: Event): void => {
    if ((event.currentTarget as HTMLDetailsElement).open) READ_AGAIN.add(app);
    else READ_AGAIN.delete(app);
    app.redraw();
  };
  return html`<details class="said" ?open=${READ_AGAIN.has(app)} @toggle=${toggle}>
    <summary>${app.say('shell.said', { n: said.length })}</summary>
    ${
      READ_AGAIN.has(app)
        ? html`<ul>
            ${said.map(({ tone, text }) => html`<li class="notice ${tone}"><p>${text}</p></li>`)}
          </ul>`
        : ''
    }
  </details>`;
}

type Attempt = (work: () => Promise<unknown>) => () => void;

function deed(words: string, why: string, run: () => void): TemplateResult {
  return html`<div class="deed">
    <button @click=${run}>${words}</button>
    <span class="soft">${why}</span>
  </div>`;
}

function nameField(app: App, attempt: Attempt): TemplateResult {
  const { browserJob, database } = app.session;
  return textField(app, {
    id: 'job-name',
    label: app.say('job.name'),
    value: app.job.get().name,
    mostLetters: 80,
    take: (name) => {
      if (browserJob !== undefined)
        attempt(async () => app.rename(await renameJob(database, browserJob, name)))();
    },
  });
}

function otherJobs(app: App, attempt: Attempt): TemplateResult {
  const { browserJob, database } = app.session;
  const { jobs, bin } = LISTED.get(app) ?? { jobs: [], bin: [] };
  const others = jobs.filter(({ id }) => id !== browserJob);
  const then = (work: () => Promise<unknown>) =>
    attempt(async () => {
      await work();
      await lookUpJobs(app);
    });
  return html`
    ${others.length === 0 ? '' : html`<h3>${app.say('job.others')}</h3>`}
    <ul class="jobs">
      ${others.map(
        ({ id, name }) =>
          html`<li>
            <span>${name}</span>
            <button @click=${() => goToJob(id)}>${app.say('job.go')}</button>
            <button class="quiet" @click=${then(() => binJob(database, id))}>${app.say('job.away')}</button>
          </li>`,
      )}
    </ul>
    <div class="row">
      <button @click=${attempt(() => newJob(app))}>${app.say('job.new')}</button>
      <button @click=${attempt(() => demoJob(app))}>${app.say('job.demo')}</button>
    </div>
    ${
      bin.length === 0
        ? ''
        : html`<details>
            <summary>${app.say('job.bin')}</summary>
            <ul class="jobs">
              ${bin.map(
                ({ id, name }) =>
                  html`<li>
                    <span>${name}</span>
                    <button @click=${then(() => fetchBack(database, id))}>${app.say('job.back')}</button>
                    <button class="quiet" @click=${then(() => throwAway(database, id))}>
                      ${app.say('job.discard')}
                    </button>
                  </li>`,
              )}
            </ul>
          </details>`
    }
  `;
}
