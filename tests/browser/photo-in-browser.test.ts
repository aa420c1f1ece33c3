import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHide } from '@hidebound/leather';
import { decodePhoto } from '@hidebound/intake/node';
import { beforeAll, describe, expect } from 'vitest';
import { chromiumProgram } from '../support/chromium.js';
import { workerPage } from '../support/worker-page.js';
import { photograph, sceneNamed } from '../photo-trace-support.js';
import { testWith } from '../tools/outside.js';
import { traceJob } from './trace-job.js';

interface Answer {
  readonly hide?: string;
  readonly failure?: string;
  /** How often the page's own clock struck while the worker worked. */
  readonly strikes: number;
}

describe('a photo in Chromium and in Node', () => {
  const { folder, url, browser } = workerPage(join(import.meta.dirname, 'trace-worker.ts'));

  beforeAll(async () => {
    if (!chromiumProgram.isThere) return;
    await photograph(sceneNamed('side-300'), join(folder, 'side.jpg'));
  });

  testWith(
    chromiumProgram,
    'when a worker of the browser traces it, the page goes on and the hide file has the same bytes',
    async () => {
      const photo = await decodePhoto(readFileSync(join(folder, 'side.jpg')), 'side.jpg');
      const page = await browser().newPage();
      await page.goto(url());
      const { file, width, height, rgb } = photo;
      const answer = await page.evaluate(
        ({ base64, ...size }) =>
          new Promise<Answer>((done) => {
            const rgb = Uint8Array.from(atob(base64), (byte) => byte.charCodeAt(0));
            let strikes = 0;
            const clock = setInterval(() => strikes++, 10);
            const end = (data: object) => {
              clearInterval(clock);
              done({ ...data, strikes });
            };
            const worker = new Worker('/worker.js');
            worker.onmessage = (event) => end(event.data as object);
            worker.onerror = (event) => end({ failure: event.message });
            worker.postMessage({ ...size, rgb });
          }),
        { file, width, height, base64: Buffer.from(rgb).toString('base64') },
      );
      expect(answer.failure).toBeUndefined();
      expect(answer.strikes).toBeGreaterThan(5);

      const inNode = await traceJob({ file, width, height, rgb });
      expect(answer.hide).toBe(inNode);
      expect(parseHide(inNode, { file: 'side.hide.json' }).photo!.scaledBy).toMatch(/sheets/);
    },
  );
});
