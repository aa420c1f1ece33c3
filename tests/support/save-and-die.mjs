/**
 * Saves files into a folder as the table does, and ends this process hard just before the n-th thing that is done to
 * the disk. Usage: node save-and-die.mjs FOLDER WRITES.json N. Prints how many there were if N is never reached, or
 * the refusal's status and sentence as JSON.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { refusalOf } from '../../packages/cli/dist/table/answers.js';
import { saveFiles } from '../../packages/cli/dist/table/save-files.js';
import { parseSave } from '../../packages/cli/dist/table/parse-save.js';

const [folder, writes, last] = process.argv.slice(2);
let count = 0;

function watch(action, path) {
  count += 1;
  if (count !== Number(last)) return;
  // A write that is cut off leaves a part of what was to be written.
  if (action === 'write') writeFileSync(path, '{ "half');
  process.kill(process.pid, 'SIGKILL');
}

try {
  await saveFiles(folder, parseSave(readFileSync(writes)), {
    now: new Date(),
    keptOfToday: new Set(),
    watch,
  });
  process.stdout.write(String(count));
} catch (error) {
  const { status, code, message } = refusalOf(error, (unforeseen) => console.error(unforeseen));
  process.stdout.write(JSON.stringify({ status, code, sentence: message }));
}
