import { html } from 'lit-html';
import type { App } from '../app/app.js';
import type { Prefs } from '../app/prefs.js';
import { oneOf } from '../fields/index.js';
import { LANGUAGE_NAMES } from '../words/words.js';
import { offlineLine } from './offline-line.js';
import { sheet } from './sheet.js';
import type { Shell } from './shell.js';

/** Language, units and light of this device. */
export function settingsSheet(shell: Shell) {
  const { app } = shell;
  return sheet(
    shell,
    'settings',
    app.say('shell.settings'),
    () => html`
      ${choice(app, 'language', app.say('shell.language'), LANGUAGE_NAMES)}
      ${choice(app, 'lengths', app.say('shell.lengths'), { mm: 'mm', in: 'in' })}
      ${choice(app, 'areas', app.say('shell.areas'), { dm2: 'dm²', ft2: 'ft²' })}
      ${choice(app, 'light', app.say('shell.light'), {
        auto: app.say('shell.light.auto'),
        light: app.say('shell.light.light'),
        dark: app.say('shell.light.dark'),
      })}
      ${offlineLine(app)}
    `,
  );
}

function choice<K extends keyof Prefs>(
  app: App,
  name: K,
  label: string,
  options: Readonly<Record<Prefs[K], string>>,
) {
  const now = app.prefs.get()[name];
  return oneOf(name, label, Object.entries<string>(options), now, (value) =>
    app.prefs.update((prefs) => ({ ...prefs, [name]: value })),
  );
}
