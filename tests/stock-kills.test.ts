import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Layout } from '@hidebound/leather';
import { MAIN, ROOT, hideboundHere, testFolder } from './cli-support.js';
import { bundle } from './support/chromium.js';
import { copyOf, hideFilesOf, readLayout, runScript, stockJob, sumOfStock } from './stock-support.js';
import type { StockJob } from './stock-support.js';

const folder = testFolder();
/** In one script with all that it imports: it is started some eighty times. */
const SCRIPT = join(folder, 'take-and-die.mjs');

let job: StockJob;
let layouts: Readonly<Record<string, Layout>>;
let wholeMm2: number;

beforeAll(async () => {
  await bundle({
    entry: join(ROOT, 'tests', 'support', 'take-and-die.mjs'),
    format: 'esm',
    platform: 'node',
    outfile: SCRIPT,
  });
  job = await stockJob(folder);
  layouts = {
    'both.layout.json': readLayout(job.layout),
    'first.layout.json': readLayout(job.first),
    'second.layout.json': readLayout(job.second),
  };
  wholeMm2 = sumOfStock(job.stock, layouts).totalMm2;
});

/** Areas are sums of booleans on a grid of 1 µm. */
const SAME_MM2 = 10;

const WHOLE = ['panel-1', 'panel-2'];
const OFFCUTS = ['panel-1a', 'panel-2a'];

/** All or nothing: read at once, then by the next command, after which nothing is left half done. */
async function expectWhole(stock: string, what: string): Promise<'before' | 'after'> {
  const read = sumOfStock(stock, layouts);
  expect(Math.abs(read.totalMm2 - wholeMm2), what).toBeLessThan(SAME_MM2);
  expect(new Set(read.ids).size, what).toBe(read.ids.length);
  const isTaken = read.taken === 1;
  expect(read.whole, what).toEqual(isTaken ? OFFCUTS : WHOLE);
  const run = await hideboundHere(['offcuts', stock, '--history']);
  expect(run.status, `${what}: ${run.stderr}`).toBe(0);
  expect(sumOfStock(stock, layouts), what).toEqual(read);
  const offcutFiles = Object.keys(hideFilesOf(stock)).filter((name) => name.startsWith('panel'));
  expect(offcutFiles, what).toEqual(isTaken ? OFFCUTS.map((id) => `${id}.hide.json`) : []);
  return isTaken ? 'after' : 'before';
}

/** A process is started for each thing that is done to the disk; a busy machine takes its time. */
const MOST_MS = 900_000;

describe('a command that is killed', () => {
  test(
    'when it is killed before any one thing that it does to the disk, the stock is as before or as after',
    async () => {
      const all = copyOf(job, 'all');
      const steps = Number((await runScript(SCRIPT, ['take', all, job.layout, '0'])).stdout);
      expect(steps).toBeGreaterThan(30);
      const seen: string[] = [];
      for (let n = 1; n <= steps; n++) {
        const stock = copyOf(job, `take-${n}`);
        const { signal, stderr } = await runScript(SCRIPT, ['take', stock, job.layout, String(n)]);
        expect(signal, stderr).toBe('SIGKILL');
        seen.push(await expectWhole(stock, `killed at ${n}`));
        // The next one takes what the killed one did not, and nothing twice.
        const again = await hideboundHere(['offcuts', stock, '--take', job.layout]);
        expect(again.status, again.stderr).toBe(seen[n - 1] === 'before' ? 0 : 3);
        expect(await expectWhole(stock, `taken again after ${n}`)).toBe('after');
        expect(readdirSync(stock).filter((name) => /lock|part/.test(name))).toEqual([]);
      }
      // There is one moment from which it counts.
      expect(seen.indexOf('after')).toBeGreaterThan(0);
      expect(seen.slice(seen.indexOf('after')).every((each) => each === 'after')).toBe(true);
    },
    MOST_MS,
  );

  test(
    'when undoing is killed anywhere, the stock is as before or as after, and hide files are the same bytes again',
    async () => {
      const taken = copyOf(job, 'taken');
      await runScript(SCRIPT, ['take', taken, job.layout, '0']);
      const all = copyOf({ ...job, stock: taken }, 'undone');
      const steps = Number((await runScript(SCRIPT, ['undo', all, '', '0'])).stdout);
      expect(steps).toBeGreaterThan(20);
      const seen: string[] = [];
      for (let n = 1; n <= steps; n++) {
        const stock = copyOf({ ...job, stock: taken }, `undo-${n}`);
        const { signal, stderr } = await runScript(SCRIPT, ['undo', stock, '', String(n)]);
        expect(signal, stderr).toBe('SIGKILL');
        seen.push(await expectWhole(stock, `undoing killed at ${n}`));
        if (seen[n - 1] === 'after') await hideboundHere(['offcuts', stock, '--undo', 'last']);
        expect(hideFilesOf(stock)).toEqual(hideFilesOf(job.stock));
      }
      expect(seen[0]).toBe('after');
      expect(seen.at(-1)).toBe('before');
    },
    MOST_MS,
  );
});

const ROUNDS = 6;

describe('two commands at once', () => {
  test('when both take from the same hide, one does and the other is told so', async () => {
    for (let round = 1; round <= ROUNDS; round++) {
      const stock = copyOf(job, `same-${round}`);
      const runs = await Promise.all([
        runScript(MAIN, ['offcuts', stock, '--take', job.layout]),
        runScript(MAIN, ['offcuts', stock, '--take', job.layout]),
      ]);
      expect(runs.map(({ status }) => status).sort(), JSON.stringify(runs)).toEqual([0, 3]);
      expect(runs.find(({ status }) => status === 3)!.stderr).toMatch(/was cut already on .* \(step 1\)/);
      expect(await expectWhole(stock, `round ${round}`)).toBe('after');
    }
  });

  test('when they take from different hides, both do, one after the other', async () => {
    for (let round = 1; round <= ROUNDS; round++) {
      const stock = copyOf(job, `other-${round}`);
      const runs = await Promise.all([
        runScript(MAIN, ['offcuts', stock, '--take', job.first]),
        runScript(MAIN, ['offcuts', stock, '--take', job.second]),
      ]);
      expect(
        runs.map(({ status }) => status),
        JSON.stringify(runs),
      ).toEqual([0, 0]);
      const sum = sumOfStock(stock, layouts);
      expect(sum.taken).toBe(2);
      expect(sum.whole).toEqual(OFFCUTS);
      expect(Math.abs(sum.totalMm2 - wholeMm2)).toBeLessThan(SAME_MM2);
      expect(existsSync(join(stock, 'stock.lock'))).toBe(false);
    }
  });
});
