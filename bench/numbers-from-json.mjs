// Each number on the printed pages of suit, buy, prepare, cost and offcuts is reckoned anew from what the same command gives
// with --json, by code of its own. A number that nothing explains is listed, and ends the script with 1.
// Needs poppler's pdftotext. Options: --layout FILE (else the demo order is laid quickly), --only suit,cost, --all (lists each
// number with what explains it).
import { rmSync } from 'node:fs';
import { demoJob } from './numbers/demo-job.mjs';
import { judgeCommand } from './numbers/judge-command.mjs';
import { blindness } from './numbers/judge-page.mjs';
import { hasPoppler } from './numbers/page-words.mjs';
import { PAGES } from './numbers/pages.mjs';

const option = (name) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
};

if (!hasPoppler()) {
  console.error('This needs pdftotext of poppler (Debian: poppler-utils).');
  process.exit(2);
}
const only = option('only')?.split(',');
const job = demoJob(option('layout'));
let wrong = 0;
try {
  for (const page of PAGES.filter(({ name }) => only === undefined || only.includes(name))) {
    const judged = judgeCommand(page, job);
    wrong += judged.open.length + judged.off.length;
    report(page.name, judged);
  }
} finally {
  rmSync(job.at, { recursive: true, force: true });
}
process.exit(wrong === 0 ? 0 : 1);

function report(name, judged) {
  const { numbers, open, relations, off } = judged;
  const { changed, unseen } = blindness(judged);
  console.log(
    `${name.padEnd(14)} ${numbers.length} numbers, ${open.length} unexplained; ` +
      `${relations.length} sums reckoned anew, ${off.length} wrong; ` +
      `of ${changed} numbers changed in the last place ${changed - unseen} are noticed`,
  );
  for (const { text, unit, cell, row } of open) {
    console.log(`  page ${row.page}: ${text} ${unit ?? ''} in "${cell}"`);
  }
  for (const { what, told, reckoned } of off) console.log(`  ${what}: told ${told}, reckoned ${reckoned}`);
  if (!process.argv.includes('--all')) return;
  for (const { text, cell, explained } of numbers) {
    console.log(`  ${text.padEnd(12)} ${explained?.how ?? '-'} ${explained?.path ?? ''} in "${cell}"`);
  }
}
