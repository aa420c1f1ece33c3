/**
 * Takes a layout's leather from a stock, or undoes the last step, and ends this process hard just before the n-th thing
 * that is done to the disk. Usage: node take-and-die.mjs take|undo FOLDER LAYOUT N. Prints how many there were if N is
 * never reached.
 */
import { writeFileSync } from 'node:fs';
import { takeLayout, undoStep } from '../../packages/cli/dist/stock/take-layout.js';
import { DEFAULT_WORKSHOP } from '../../packages/leather/dist/index.js';

const [task, folder, layout, last] = process.argv.slice(2);
let count = 0;

function watch(action, path) {
  count += 1;
  if (count !== Number(last)) return;
  // A write that is cut off leaves a part of what was to be written.
  if (action === 'write') writeFileSync(path, '{ "format": "hidebound/');
  process.kill(process.pid, 'SIGKILL');
}

const options = { workshop: DEFAULT_WORKSHOP, date: '2026-03-02', watch };
if (task === 'take') await takeLayout(folder, layout, options);
else await undoStep(folder, options);
process.stdout.write(String(count));
