import { html } from 'lit-html';
import type { App } from '../app/app.js';
import type { WordKey } from '../words/words.js';
import { sheet } from './sheet.js';
import type { Shell } from './shell.js';

const EVERYWHERE: readonly (readonly [string, WordKey])[] = [
  ['Ctrl+Z', 'keys.undo'],
  ['Ctrl+Shift+Z', 'keys.redo'],
  ['1 – 5', 'keys.places'],
  ['?', 'keys.help'],
];
const DRAWING: readonly (readonly [string, WordKey])[] = [
  ['← ↑ → ↓', 'keys.cross'],
  ['Enter', 'keys.tap'],
  ['Space', 'keys.hold'],
  ['Esc', 'keys.leave'],
  ['+  −', 'keys.zoom'],
  ['0', 'keys.fit'],
  ['<  >', 'keys.turn'],
];

/** What the keys do, here and everywhere. */
export function keySheet(shell: Shell) {
  const { app } = shell;
  return sheet(shell, 'keys', app.say('keys.title'), () => {
    const own = shell.frame().station?.keys ?? [];
    return html`${
      own.length === 0
        ? ''
        : keyTable(
            app,
            app.say(`place.${app.place.get().name}`),
            own.map(({ key, words }) => [key, words] as const),
          )
    }
    ${keyTable(app, app.say('keys.drawing'), DRAWING)}
    ${keyTable(app, app.say('keys.everywhere'), EVERYWHERE)}`;
  });
}

function keyTable(app: App, title: string, rows: readonly (readonly [string, WordKey])[]) {
  return html`<h3>${title}</h3>
    <dl class="keys">
      ${rows.map(
        ([key, words]) =>
          html`<div>
            <dt><kbd>${key}</kbd></dt>
            <dd>${app.say(words)}</dd>
          </div>`,
      )}
    </dl>`;
}
