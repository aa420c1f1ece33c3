import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createRandom } from '@hidebound/geometry';
import { afterEach, beforeEach, describe, expect } from 'vitest';
import { folderStore } from '../../packages/app/src/store/folder-store.js';
import { createKeeper } from '../../packages/app/src/store/keeper.js';
import { readAll } from '../../packages/app/src/store/read-all.js';
import { textFile } from '../../packages/app/src/store/test-world.js';
import type { Desk } from '../../packages/app/src/work/desk.js';
import type { JobFile } from '../../packages/app/src/job/job.js';
import { testWith } from '../tools/outside.js';

const CLI = resolve(import.meta.dirname, '../../packages/cli/dist/main.js');
const SITE = resolve(import.meta.dirname, '../../packages/app/dist/site/index.html');
const BUILT = { name: 'the built app and command', isThere: existsSync(CLI) && existsSync(SITE) };
const HINTS = 'front.hints.yaml';

const desk: Pick<Desk, 'ask'> = {
  ask: (task, input) => {
    if (task === 'writeFile') {
      const { file } = input as unknown as { file: { text: string } };
      return Promise.resolve(new TextEncoder().encode(file.text) as never);
    }
    const files = input as unknown as readonly { path: string; bytes: Uint8Array }[];
    return Promise.resolve(
      files.map(({ path, bytes }) => [path, textFile(new TextDecoder().decode(bytes))]) as never,
    );
  },
};

interface Table {
  readonly at: string;
  readonly key: string;
  readonly child: ChildProcess;
}

function startTable(folder: string): Promise<Table> {
  const child = spawn(process.execPath, [CLI, 'table', folder], { stdio: ['ignore', 'pipe', 'pipe'] });
  return new Promise((found, failed) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const [, at, key] = /(http:\/\/127\.0\.0\.1:\d+\/)#key=([\w-]+)/.exec(said) ?? [];
      if (at !== undefined && key !== undefined) found({ at, key, child });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', () => failed(new Error(`the table ended: ${said}`)));
  });
}

async function kill({ child }: Table): Promise<void> {
  const ended = new Promise((done) => child.once('exit', done));
  child.kill('SIGKILL');
  await ended;
}

describe('the folder of a real table', () => {
  let folder: string;
  let table: Table | undefined;
  const open: (() => Promise<void>)[] = [];
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'hidebound-folder-'));
    writeFileSync(join(folder, HINTS), '0');
  });
  afterEach(async () => {
    if (table?.child.exitCode === null && table.child.signalCode === null) await kill(table);
    for (const close of open.splice(0)) await close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function openKeeper({ at, key }: Table) {
    const store = folderStore({ at, key });
    const { files, revisions } = await readAll(store, desk, (await store.list()).files);
    const keeper = createKeeper({
      store,
      // Nothing ends here but the server: that the journal outlasts the tab is checked in the browser.
      journal: {
        writer: 1,
        write: () => Promise.resolve(),
        adopt: () => Promise.resolve([]),
        close: () => undefined,
      },
      desk,
      revisions,
      pause: (_, signal) =>
        new Promise((done) => {
          const timer = setTimeout(done, 50);
          signal.addEventListener('abort', () => {
            clearTimeout(timer);
            done();
          });
        }),
    });
    open.push(() => keeper.close());
    const others = new Map<string, JobFile | undefined>();
    const asides: string[] = [];
    keeper.hear({
      onOthers: (edits) => edits.forEach((file, path) => others.set(path, file)),
      onAside: (_, aside) => asides.push(aside),
    });
    return { keeper, files, others, asides };
  }

  testWith(
    BUILT,
    'when another program writes a file, it is shown; when both do, the own one lies beside it',
    async () => {
      table = await startTable(folder);
      const { keeper, files, others, asides } = await openKeeper(table);
      expect(files.get(HINTS)).toEqual(textFile('0'));
      writeFileSync(join(folder, HINTS), 'outside');
      await expect.poll(() => others.get(HINTS), { timeout: 20_000 }).toEqual(textFile('outside'));
      writeFileSync(join(folder, HINTS), 'outside again');
      keeper.keep(new Map([[HINTS, textFile('mine')]]));
      await keeper.idle();
      expect(asides).toEqual(['front-mine.hints.yaml']);
      expect(readFileSync(join(folder, HINTS), 'utf8')).toBe('outside again');
      expect(readFileSync(join(folder, 'front-mine.hints.yaml'), 'utf8')).toBe('mine');
    },
  );

  testWith(
    BUILT,
    'when the server is killed at moments of chance and started anew, all changes arrive, and none goes aside',
    async () => {
      const random = createRandom(11);
      table = await startTable(folder);
      const { keeper, asides } = await openKeeper(table);
      let number = 0;
      for (let round = 0; round < 5; round++) {
        const changing = setInterval(() => keeper.keep(new Map([[HINTS, textFile(String(++number))]])), 3);
        await new Promise((done) => setTimeout(done, 20 + random.integer(200)));
        await kill(table);
        await new Promise((done) => setTimeout(done, 20));
        clearInterval(changing);
        table = await startTable(folder);
        await expect.poll(() => keeper.state.get(), { timeout: 20_000 }).toEqual({ kind: 'saved' });
        expect(readFileSync(join(folder, HINTS), 'utf8'), `round ${round}`).toBe(String(number));
      }
      expect(asides).toEqual([]);
    },
  );
});
