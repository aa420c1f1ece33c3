import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compareAnswers } from '@hidebound/geometry';
import type { NestAnswer } from '@hidebound/geometry';
import { createNodeWorker } from '@hidebound/geometry/node';
import { startStreams } from '@hidebound/geometry/parallel';
import { bundle, chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { STRIKES_IN_JOIN } from './mischief.js';
import type { TestPage } from './page.js';
import { searchInTest } from './search-in-test.js';
import type { TestFinding, TestSearch } from './search-in-test.js';
import { createStream, problemUnderTest } from './streams-under-test.js';
import type { StreamsUnderTest } from './streams-under-test.js';

const folder = mkdtempSync(join(tmpdir(), 'hidebound-parallel-'));
const JOINS = 4;

/** From one thread, stream by stream, without any worker: what all others are held against. */
function answerInOneThread(joins: number, streams: StreamsUnderTest = 'toy'): string {
  const run = startStreams(problemUnderTest(streams, { joins }), createStream);
  while (!run.done) run.advance();
  return JSON.stringify(run.best());
}

function inThreads(search: TestSearch): Promise<TestFinding> {
  const script = join(folder, search.isLost === true ? 'lost.mjs' : 'thread.mjs');
  return searchInTest(search, () => createNodeWorker(script, { workerData: search.mischief }));
}

/** A search that is stopped may have come one join further than when the stop was asked for. */
function expectSameAsAsked({ answer, failure, posted }: TestFinding, atLeast: number): void {
  expect(failure).toBeUndefined();
  const { joins } = JSON.parse(answer!) as { readonly joins: number };
  expect(joins).toBeGreaterThanOrEqual(atLeast);
  expect(answer).toBe(answerInOneThread(joins));
  expect(joins).toBeGreaterThanOrEqual(posted.at(-1)!);
}

const UNEVEN: readonly TestSearch[] = [1, 2, 5].flatMap((workers) =>
  (['none', 'low-streams-slow', 'high-streams-slow'] as const).map((mischief) => ({
    workers,
    mischief,
    joins: JOINS,
    end: 'asked' as const,
  })),
);
/** The search itself. */
const REAL_JOINS = 2;
const REAL: readonly TestSearch[] = (
  [
    [1, 'none'],
    [2, 'low-streams-slow'],
    [4, 'high-streams-slow'],
  ] as const
).map(([workers, mischief]) => ({ streams: 'real', workers, mischief, joins: REAL_JOINS, end: 'asked' }));
const STOPPED: readonly TestSearch[] = [1, 2, 5].map((workers) => ({
  workers,
  mischief: 'low-streams-slow',
  joins: 3,
  end: 'stopped',
}));
/** Its worker 1 never comes to the end of join 2. */
const STUCK: TestSearch = { workers: 2, mischief: 'stuck', joins: STRIKES_IN_JOIN - 1, end: 'stopped' };

let realAnswer: string;

beforeAll(async () => {
  realAnswer = answerInOneThread(REAL_JOINS, 'real');
  await bundle({
    entry: join(import.meta.dirname, 'thread.ts'),
    format: 'esm',
    platform: 'node',
    from: 'source',
    outfile: join(folder, 'thread.mjs'),
  });
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('streams in threads of Node', () => {
  it.each(UNEVEN)('when there are $workers workers ($mischief), the bytes are the same', async (search) => {
    expect((await inThreads(search)).answer).toBe(answerInOneThread(JOINS));
  });

  it('when the search goes on after its first layout, it finds a better one', () => {
    const [first, last] = [answerInOneThread(0, 'real'), realAnswer].map(
      (text) => JSON.parse(text) as NestAnswer,
    );
    expect(compareAnswers(problemUnderTest('real', {}), last!, first!)).toBeLessThan(0);
  });

  it.each(REAL)(
    'when the search has $workers workers ($mischief), the bytes are the same',
    async (search) => {
      expect((await inThreads(search)).answer).toBe(realAnswer);
    },
  );

  it.each(STOPPED)(
    'when $workers workers are stopped, it is as if asked for so many joins',
    async (search) => {
      expectSameAsAsked(await inThreads(search), search.joins);
    },
  );

  it('when a worker is stuck within a unit, a stop returns all the same', async () => {
    expect((await inThreads(STUCK)).answer).toBe(answerInOneThread(STUCK.joins));
  });

  it.each([
    ['throws', { mischief: 'throw' }, /mischief/],
    ['ends', { mischief: 'exit' }, /ended with status 3/],
    ['can not be loaded', { mischief: 'none', isLost: true }, /lost\.mjs/],
  ] as const)('when a worker %s, the search fails with one error', async (_, how, words) => {
    const { failure, answer } = await inThreads({ workers: 2, joins: 4, end: 'asked', ...how });
    expect(answer).toBeUndefined();
    expect(failure).toEqual({ code: 'worker-failed', message: expect.stringMatching(words) as string });
  });
});

describe('streams in workers of Chromium', () => {
  let server: Server;
  let browser: Browser;

  beforeAll(async () => {
    if (!chromiumProgram.isThere) return;
    for (const name of ['page', 'web-worker']) {
      await bundle({
        entry: join(import.meta.dirname, `${name}.ts`),
        format: 'iife',
        from: 'source',
        outfile: join(folder, `${name}.js`),
      });
    }
    server = serve();
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    browser = await launchChromium();
  });

  afterAll(async () => {
    await browser?.close();
    server?.close();
  });

  async function open(path: string): Promise<Page> {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}${path}`);
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(path === '/isolated');
    return page;
  }

  function inPage(page: Page, search: TestSearch): Promise<TestFinding> {
    return page.evaluate((one) => (globalThis as unknown as TestPage).search(one), search);
  }

  testWith(
    chromiumProgram,
    'when the search runs in a page, the bytes are those of Node with any number of workers',
    async () => {
      const page = await open('/isolated');
      for (const search of REAL) expect((await inPage(page, search)).answer).toBe(realAnswer);
    },
  );

  for (const path of ['/isolated', '/alone-not']) {
    const memory = path === '/isolated' ? 'memory is shared' : 'memory can not be shared';

    testWith(
      chromiumProgram,
      `when ${memory}, the bytes are those of Node with any number of workers`,
      async () => {
        const page = await open(path);
        for (const search of UNEVEN) {
          expect((await inPage(page, search)).answer).toBe(answerInOneThread(JOINS));
        }
      },
    );

    testWith(
      chromiumProgram,
      `when ${memory} and it is stopped, it is as if asked for so many joins`,
      async () => {
        const page = await open(path);
        for (const search of STOPPED) expectSameAsAsked(await inPage(page, search), search.joins);
        expect((await inPage(page, STUCK)).answer).toBe(answerInOneThread(STUCK.joins));
      },
    );
  }

  testWith(
    chromiumProgram,
    'when a worker throws or can not be loaded, the search fails with one error',
    async () => {
      const page = await open('/isolated');
      for (const how of [{ mischief: 'throw' }, { mischief: 'none', isLost: true }] as const) {
        const { failure, answer } = await inPage(page, { workers: 2, joins: 4, end: 'asked', ...how });
        expect(answer).toBeUndefined();
        expect(failure?.code).toBe('worker-failed');
      }
    },
  );
});

/** Pages and scripts; memory is shared only where a page is isolated from others, which these headers ask for. */
function serve(): Server {
  return createServer((request, response) => {
    const url = request.url ?? '';
    if (url === '/isolated' || url === '/web-worker.js') {
      response.setHeader('Cross-Origin-Opener-Policy', 'same-origin');
      response.setHeader('Cross-Origin-Embedder-Policy', 'require-corp');
    }
    if (url === '/page.js' || url === '/web-worker.js') {
      response.setHeader('Content-Type', 'text/javascript');
      response.end(readFileSync(join(folder, url)));
    } else if (url.endsWith('.js')) {
      response.statusCode = 404;
      response.end();
    } else {
      response.setHeader('Content-Type', 'text/html');
      response.end('<!doctype html><title>search</title><script src="/page.js"></script>');
    }
  });
}
