// The demo job on the cutting table: its files are put into a folder of their own, and the app is served from there.
// What was done there before stays: delete the folder to start anew.
import { spawn } from 'node:child_process';
import { copyFileSync, cpSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Files of the demo that are about other ways to begin. */
const NOT_OF_THE_JOB = new Set(['make', 'bought-patterns.order.yaml', 'shoulder-traced.svg', 'patterns']);

/** The app calls a job by its folder's name. */
const FOLDER = 'bicycle-goods';

/** Runs until it is stopped by hand; gives its exit status. */
export function demoOnTable({ root, out, main }) {
  const folder = join(root, out, FOLDER);
  const demo = join(root, 'fixtures', 'demo');
  if (!existsSync(folder)) {
    mkdirSync(folder, { recursive: true });
    for (const name of readdirSync(demo).filter((each) => !NOT_OF_THE_JOB.has(each)))
      copyFileSync(join(demo, name), join(folder, name));
    cpSync(join(demo, 'patterns'), join(folder, 'patterns'), { recursive: true });
  }
  console.log(
    `The demo job lies in ${join(out, FOLDER)} (all data is invented). Open the address in a browser:\n`,
  );
  const table = spawn(process.execPath, [main, 'table', folder], { cwd: root, stdio: 'inherit' });
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => table.kill('SIGTERM'));
  return new Promise((done) => table.on('exit', (status) => done(status ?? 0)));
}
