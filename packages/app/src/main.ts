import { createApp } from './app/app.js';
import { keptPrefs } from './app/prefs.js';
import type { Edits } from './job/job.js';
import { openShell } from './shell/shell.js';
import { openDesk } from './work/desk.js';
import { loadWords } from './words/words.js';

await start();

async function start(): Promise<void> {
  const root = document.querySelector<HTMLElement>('#table')!;
  const prefs = keptPrefs();
  const desk = openDesk();
  const words = await loadWords(prefs.get().language);
  const response = await fetch('./demo.job.json');
  const bytes = new Uint8Array(await response.arrayBuffer());
  const { name, files } = await desk.ask('readBundle', { path: 'demo.job.json', bytes });
  const read = await desk.ask('readFiles', files);
  const keep = (_: Edits): void => undefined;
  openShell(createApp({ job: { name, files: new Map(read) }, prefs, words, desk, keep }), root);
}
