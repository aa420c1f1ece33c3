import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hideboundHere, smallJob, startHidebound, testFolder } from './cli-support.js';

const folder = testFolder();

describe('stopping by hand', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)(
    'when %s comes, the best so far is saved, proven, and it ends with 130',
    async (signal) => {
      const { at, order, layout: out } = smallJob(folder);
      const child = startHidebound(['lay', order, '--seconds', '600', '--out', out], at);
      let stderr = '';
      let isSent = false;
      const ended = new Promise<number | null>((resolve) => {
        child.once('exit', resolve);
      });
      child.stderr!.on('data', (chunk: Buffer) => {
        stderr += chunk.toString();
        // The first line of progress: it is searching.
        if (!isSent && stderr.includes('of 600 s')) isSent = child.kill(signal);
      });
      expect(await ended, stderr).toBe(130);
      expect(stderr).toMatch(/stopping; the best so far is being saved/);
      expect(JSON.parse(readFileSync(out, 'utf8'))).toMatchObject({ format: 'hidebound/layout@1' });
      expect((await hideboundHere(['check', out])).status).toBe(0);
    },
  );
});
