import { mkdtempSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { parseLayout } from '@hidebound/leather';
import { DEMO, hidebound, testFolder } from '../cli-support.js';
import { launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { newcomer } from './support/newcomer.js';
import type { Aim, Answer } from './support/newcomer.js';
import { TABLE, unpackJob } from './support/real-table.js';
import { photographSmallHide } from './support/small-hide.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';
import { watchPage } from './support/watch-page.js';

const folder = testFolder();
const PHOTO = join(folder, 'goat.jpg');
const PATTERNS = ['saddlebag-pockets.svg', 'saddlebag-gusset.svg'].map((name) =>
  join(DEMO, 'patterns', name),
);

let browser: Browser;
let host: StaticHost;
beforeAll(async () => {
  if (!TABLE.isThere) return;
  await photographSmallHide(PHOTO);
  [host, browser] = await Promise.all([staticHost(), launchChromium()]);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});

interface Person {
  readonly locale: string;
  readonly viewport: { readonly width: number; readonly height: number };
  readonly isTouch: boolean;
  readonly hint: RegExp;
  readonly answers: readonly Answer[];
  /** From the first look at the app to the first cut, and the job taken home. */
  readonly aims: readonly Aim[];
}

/** The words are a reader's own guesses at what would stand there: nothing of the app's tables is read here. */
const ENGLISH: Person = {
  locale: 'en-GB',
  viewport: { width: 1440, height: 900 },
  isTouch: false,
  hint: /^Next:/,
  answers: [{ question: /which side/i, answer: 'Grain side' }],
  aims: [
    { aim: 'a job of her own', words: ['empty', 'job'], done: /Take a photo/ },
    { aim: 'her hide on the table', words: ['a photo', 'hide'], files: [PHOTO], done: /^Area$/m },
    {
      aim: 'the photo’s doubts settled',
      words: ['look through', 'not a flaw'],
      done: /^Next: what is made/m,
    },
    { aim: 'her patterns read', words: ['patterns'], files: PATTERNS, done: /Take these 3 pieces/ },
    { aim: 'these pieces made', words: ['take these'], done: /What is made/ },
    { aim: 'the pieces on the hide', words: ['lay the pieces', 'lay'], done: /3 of 3 pieces lie/ },
    { aim: 'an end of it, as all lie', words: ['stop'], isUrgent: true, done: /Proven/ },
    { aim: 'templates to print', words: ['save', 'templates', 'print'], done: 'a file is saved' },
    { aim: 'the first piece cut', words: ['cut', 'bench'], done: /1 of 3 cut/ },
    { aim: 'the job as a file', words: ['as one file', 'job'], done: 'a file is saved' },
  ],
};

const GERMAN: Person = {
  locale: 'de-DE',
  viewport: { width: 390, height: 780 },
  isTouch: true,
  hint: /^Als Nächstes:/,
  answers: [{ question: /welche seite/i, answer: 'Narbenseite' }],
  aims: [
    { aim: 'einen eigenen Auftrag', words: ['leeren', 'Auftrag'], done: /Foto aufnehmen/ },
    { aim: 'ihre Haut auf dem Tisch', words: ['Haut', 'Foto'], files: [PHOTO], done: /^Fläche$/m },
    {
      aim: 'die Zweifel des Fotos geklärt',
      words: ['durchsehen', 'kein Fehler'],
      done: /^Als Nächstes: was daraus/m,
    },
    {
      aim: 'ihre Schnittmuster gelesen',
      words: ['Schnittmuster'],
      files: PATTERNS,
      done: /Diese 3 Teile nehmen/,
    },
    { aim: 'diese Teile gemacht', words: ['Teile nehmen'], done: /Was gemacht wird/ },
    { aim: 'die Teile auf der Haut', words: ['Teile auslegen', 'auslegen'], done: /3 von 3 Teilen liegen/ },
    {
      aim: 'ein Ende, weil alle liegen',
      words: ['Halt', 'Stopp', 'anhalten'],
      isUrgent: true,
      done: /Geprüft/,
    },
    { aim: 'Schablonen zum Drucken', words: ['sichern', 'Schablonen', 'drucken'], done: 'a file is saved' },
    {
      aim: 'das erste Teil geschnitten',
      words: ['geschnitten', 'schneiden', 'Tisch'],
      done: /1 von 3 geschnitten/,
    },
    { aim: 'den Auftrag als Datei', words: ['als eine Datei', 'Auftrag'], done: 'a file is saved' },
  ],
};

/** Two for each aim, to where it is done and to do it, and one for each place that the photo doubts: no wandering about. */
const MOST_PRESSES = 2 * ENGLISH.aims.length + 10;

/** Where pictures of each step are put to be looked at; nowhere unless it is asked for. */
const PICTURES = process.env['HIDEBOUND_PICTURES'];

describe('somebody who has never seen the app, and goes by what stands on the screen', () => {
  for (const [title, person] of [
    ['in English on a wide screen', ENGLISH],
    ['in German on a phone', GERMAN],
  ] as const)
    testWith(TABLE, `when she wants a piece cut from her own hide, she gets there ${title}`, async () => {
      const { locale, viewport, isTouch, hint, answers, aims } = person;
      const page = await browser.newPage({
        ...{ locale, viewport, hasTouch: isTouch, isMobile: isTouch, deviceScaleFactor: isTouch ? 2 : 1 },
      });
      const faults = watchPage(page, host.url);
      try {
        await page.goto(host.url);
        let taken = 0;
        const watch = async (): Promise<void> => {
          if (PICTURES === undefined) return;
          const name = `${locale}-${String(++taken).padStart(2, '0')}.png`;
          await page.waitForTimeout(400);
          await page.screenshot({ path: join(PICTURES, name) });
        };
        const she = newcomer({ page, isTouch, answers, hint, watch });
        const saved: string[] = [];
        for (const aim of aims) {
          const file = await she.reach(aim);
          if (file !== undefined) saved.push(file);
        }
        if (PICTURES !== undefined) console.log(she.diary.join('\n'));
        expect(she.diary.length, she.diary.join('\n')).toBeLessThanOrEqual(MOST_PRESSES);
        const [templates, job] = saved;
        expect(readFileSync(templates!).subarray(0, 5).toString('latin1')).toBe('%PDF-');
        const home = mkdtempSync(join(folder, 'home-'));
        unpackJob(readFileSync(job!, 'utf8'), home);
        const layout = readdirSync(home).find((name) => name.endsWith('.layout.json'))!;
        const { placements } = parseLayout(readFileSync(join(home, layout), 'utf8'), { file: layout });
        expect(placements.filter(({ state }) => state === 'cut')).toHaveLength(1);
        const checked = hidebound(['check', layout], { cwd: home });
        expect(checked.status, checked.stdout + checked.stderr).toBe(0);
        expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });
      } finally {
        await page.close();
      }
    });
});
