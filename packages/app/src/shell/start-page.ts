import { html, render } from 'lit-html';
import type { Prefs } from '../app/prefs.js';
import type { Opening } from '../store/open-job.js';
import { wordsFor } from '../words/words.js';
import type { WordKey, WordTable } from '../words/words.js';

/** In place of the table, where no job could be opened: why, and what helps. */
export function startPage(
  root: HTMLElement,
  words: WordTable,
  { language, light }: Prefs,
  opening: Exclude<Opening, { kind: 'open' }>,
): void {
  document.documentElement.lang = language;
  document.documentElement.dataset['light'] = light;
  const say = (key: WordKey): string => wordsFor(words, language, key);
  const isKey = opening.kind === 'key needed';
  render(
    html`<main class="start">
      <div class="card-paper">
        <h1>${say(isKey ? 'start.keyTitle' : 'start.reachTitle')}</h1>
        <p>${isKey ? say('start.key') : opening.sentence}</p>
        <button class="main" @click=${() => location.reload()}>${say('start.again')}</button>
      </div>
    </main>`,
    root,
  );
}
