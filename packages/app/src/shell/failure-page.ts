import { html, render } from 'lit-html';
import type { Prefs } from '../app/prefs.js';
import { openDatabase } from '../store/database.js';
import type { JobRecord } from '../store/database.js';
import { jobsToRescue, rescuedJob } from '../store/rescue.js';
import { wordsFor } from '../words/words.js';
import type { WordKey, WordParams, WordTable } from '../words/words.js';
import { download } from './download.js';

/** In place of the table, where it broke while it was opened: what happened, and every job of this browser to take away. */
export async function failurePage(
  root: HTMLElement,
  words: WordTable,
  { language, light }: Prefs,
  error: unknown,
): Promise<void> {
  document.documentElement.lang = language;
  document.documentElement.dataset['light'] = light;
  const say = (key: WordKey, params?: WordParams): string => wordsFor(words, language, key, params);
  // A place of its own: what broke may still try to draw into the one that it had.
  const place = document.createElement('div');
  place.id = root.id;
  root.replaceWith(place);
  const database = openDatabase();
  const sentence = error instanceof Error ? error.message : String(error);
  let failed: string | undefined;
  const take = (job: JobRecord) => (): void => {
    rescuedJob(database, job)
      .then((bytes) => download(`${job.name}.job.json`, bytes, 'application/json'))
      .catch((reason: unknown) => {
        failed = reason instanceof Error ? reason.message : String(reason);
        draw(jobs);
      });
  };
  const draw = (all: readonly JobRecord[]): void => {
    render(
      html`<main class="start">
        <div class="card-paper">
          <h1>${say('failure.title')}</h1>
          <p>${say('failure.why', { sentence })}</p>
          <p><button class="main" @click=${() => location.reload()}>${say('start.again')}</button></p>
          ${
            all.length === 0
              ? html`<p>${say('failure.folder')}</p>`
              : html`<h2>${say('failure.take')}</h2>
                  <p>${say('failure.takeWhy')}</p>
                  <ul class="jobs">
                    ${all.map(
                      (job) =>
                        html`<li>
                          <button @click=${take(job)}>${say('failure.takeJob', { name: job.name })}</button>
                        </li>`,
                    )}
                  </ul>`
          }
          ${failed === undefined ? '' : html`<p role="alert">${failed}</p>`}
        </div>
      </main>`,
      place,
    );
  };
  draw([]);
  const jobs = await jobsToRescue(database);
  draw(jobs);
}
