import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { beforeAll, describe, expect } from 'vitest';
import { bundle, chromiumProgram } from '../support/chromium.js';
import { workerPage } from '../support/worker-page.js';
import { testWith } from '../tools/outside.js';
import type { LayJob } from './lay-job.js';

const ROOT = resolve(import.meta.dirname, '../..');
const DEMO = join(ROOT, 'fixtures/demo');
const JOB: LayJob = { orderFile: 'bicycle-goods.order.yaml', files: textsBelow(DEMO), seed: 7, joins: 1 };

function here(name: string): string {
  return join(import.meta.dirname, name);
}

function textsBelow(folder: string): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const name of readdirSync(folder, { recursive: true }) as string[]) {
    const path = join(folder, name);
    if (statSync(path).isFile())
      texts[relative(folder, path).replaceAll('\\', '/')] = readFileSync(path, 'utf8');
  }
  return texts;
}

describe('the demo order in Chromium and in Node', () => {
  const { folder, url, browser } = workerPage(here('worker.ts'));

  beforeAll(async () => {
    if (!chromiumProgram.isThere) return;
    await bundle({ entry: here('lay-job.ts'), format: 'esm', outfile: join(folder, 'lay-job.mjs') });
  });

  testWith(
    chromiumProgram,
    'when the same job runs in a worker of the browser, the layout file has the same bytes',
    async () => {
      const page = await browser().newPage();
      await page.goto(url());
      const inBrowser = await page.evaluate(
        (job) =>
          new Promise<{ layout?: string; failure?: string }>((done) => {
            const worker = new Worker('/worker.js');
            worker.onmessage = (event) => done(event.data as { layout?: string; failure?: string });
            worker.onerror = (event) => done({ failure: event.message });
            worker.postMessage(job);
          }),
        JOB,
      );
      expect(inBrowser.failure).toBeUndefined();
      const { layJob } = (await import(join(folder, 'lay-job.mjs'))) as { layJob: (job: LayJob) => string };
      const inNode = layJob(JOB);
      expect(inBrowser.layout).toBe(inNode);
      expect(layJob(JOB)).toBe(inNode);
      expect(JSON.parse(inNode)).toMatchObject({ format: 'hidebound/layout@1', unplaced: [] });
    },
  );
});
