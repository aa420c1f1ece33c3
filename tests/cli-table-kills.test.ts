import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  realpathSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { settleFolder } from '../packages/cli/src/table/save-files.js';
import { MAIN, ROOT, expectOneSentence, hidebound, startHidebound, testFolder } from './cli-support.js';
import { bundle } from './support/chromium.js';
import { runScript } from './stock-support.js';
import { askAt, contentsOf, jobFolder, smallSite, sum, testTable } from './table-support.js';
import { testWith } from './tools/outside.js';

const at = testFolder();
/** In one script with all that it imports: it is started some eighty times. */
const SCRIPT = join(at, 'save-and-die.mjs');

beforeAll(() =>
  bundle({
    entry: join(ROOT, 'tests', 'support', 'save-and-die.mjs'),
    format: 'esm',
    platform: 'node',
    outfile: SCRIPT,
  }),
);

const OLD = { 'a.hide.json': '{ "old": 1 }', 'b.layout.json': '{ "old": 2 }', 'c.svg': '<old/>' };
const NEW = { 'a.hide.json': '{ "new": 1 }', 'b.layout.json': '{ "new": 2 }', 'd/e.svg': '<new/>' };
/** Two are changed, one is taken away, one is new. */
const WRITES = [
  { path: 'a.hide.json', base: sum(OLD['a.hide.json']), text: NEW['a.hide.json'] },
  { path: 'c.svg', base: sum(OLD['c.svg']), remove: true },
  { path: 'd/e.svg', base: null, text: NEW['d/e.svg'] },
  { path: 'b.layout.json', base: sum(OLD['b.layout.json']), text: NEW['b.layout.json'] },
];

function writesFile(writes: readonly object[] = WRITES): string {
  const file = join(at, `writes-${sum(JSON.stringify(writes)).slice(0, 8)}.json`);
  writeFileSync(file, JSON.stringify({ writes }));
  return file;
}

/** A process is started for each thing that is done to the disk; a busy machine takes its time. */
const MOST_MS = 600_000;

/** What lies in the table's own folder apart from kept versions. */
function ownNames(folder: string): readonly string[] {
  return readdirSync(join(folder, '.hidebound')).filter((name) => !['kept', 'before'].includes(name));
}

/** Folders as kills left them of which the record of the save was written already. */
const recorded: string[] = [];

describe('a save that is killed', () => {
  test(
    'when it is killed before any one thing that it does to the disk, after the next start all of it is there or nothing',
    async () => {
      const first = jobFolder(at, OLD);
      const file = writesFile();
      const whole = realpathSync(copyOf(first, 'whole'));
      const steps = Number((await runScript(SCRIPT, [whole, file, '0'])).stdout);
      expect(steps).toBeGreaterThan(40);
      expect(contentsOf(whole)).toEqual(NEW);
      const seen: string[] = [];
      for (let n = 1; n <= steps; n++) {
        const folder = realpathSync(copyOf(first, `killed-${n}`));
        const { signal, stderr } = await runScript(SCRIPT, [folder, file, String(n)]);
        expect(signal, stderr).toBe('SIGKILL');
        if (existsSync(join(folder, '.hidebound', 'saving.json'))) recorded.push(copyOf(folder, `left-${n}`));
        await settleFolder(folder);
        const now = contentsOf(folder);
        const isNew = 'd/e.svg' in now;
        expect(now, `killed at ${n}`).toEqual(isNew ? NEW : OLD);
        expect(ownNames(folder), `killed at ${n}`).toEqual([]);
        seen.push(isNew ? 'new' : 'old');
        // What was there before is never lost.
        if (isNew) {
          for (const [path, content] of Object.entries(OLD))
            expect(readFileSync(join(folder, '.hidebound', 'before', path), 'utf8')).toBe(content);
        }
        // Settling is itself killed nowhere worse: it is done twice here, and changes nothing more.
        expect(await settleFolder(folder)).toBe(false);
        expect(contentsOf(folder)).toEqual(now);
      }
      // There is one moment from which it counts.
      const counts = seen.indexOf('new');
      expect(counts).toBeGreaterThan(0);
      expect(seen.slice(counts).every((each) => each === 'new')).toBe(true);
    },
    MOST_MS,
  );

  it('when a new content is gone after a kill, the whole save is taken back', async () => {
    let taken = 0;
    for (const killed of recorded) {
      const folder = realpathSync(copyOf(killed, `back-${taken}`));
      const part = readdirSync(folder).find((name) => /^b\.layout\.json\.\d+\.part$/.test(name));
      if (part === undefined) continue;
      writeFileSync(join(folder, part), 'half');
      expect(await settleFolder(folder)).toBe(true);
      expect(contentsOf(folder), killed).toEqual(OLD);
      taken += 1;
    }
    // Also after each of the changes before the last one.
    expect(taken).toBeGreaterThan(4);
  });

  it('when somebody else changed a file after a kill, theirs stays', async () => {
    expect(recorded.length).toBeGreaterThan(4);
    for (const [i, killed] of recorded.entries()) {
      const folder = realpathSync(copyOf(killed, `else-${i}`));
      writeFileSync(join(folder, 'a.hide.json'), 'theirs');
      await settleFolder(folder);
      expect(contentsOf(folder)).toEqual({ ...NEW, 'a.hide.json': 'theirs' });
    }
  });
});

function copyOf(folder: string, name: string): string {
  const copy = join(at, name);
  cpSync(folder, copy, { recursive: true });
  return copy;
}

describe('two tables on one folder', () => {
  it('when two processes save from the same revision at once, one does and the other is told', async () => {
    for (let round = 1; round <= 6; round++) {
      const folder = jobFolder(at, { 'a.svg': 'old' });
      const files = ['left', 'right'].map((text) =>
        writesFile([{ path: 'a.svg', base: sum('old'), text: `${text} ${round}` }]),
      );
      const runs = await Promise.all(files.map((file) => runScript(SCRIPT, [folder, file, '0'])));
      const refused = runs.filter(({ stdout }) => stdout.startsWith('{'));
      expect(refused, JSON.stringify(runs)).toHaveLength(1);
      expect(JSON.parse(refused[0]!.stdout)).toMatchObject({ status: 409 });
      expect(contentsOf(folder)['a.svg']).toBe(`${refused[0] === runs[0] ? 'right' : 'left'} ${round}`);
    }
  });
});

/** A mount in a name space of its own needs rights that not every machine gives; nobody else sees it. */
const OWN_DISK = { name: 'a file system of its own', isThere: canMount() };

function canMount(): boolean {
  if (process.platform !== 'linux') return false;
  const script = 'mount -t tmpfs -o size=64k tmpfs "$1"';
  return spawnSync('unshare', ['-m', 'sh', '-c', script, 'sh', mountPoint('probe')]).status === 0;
}

function mountPoint(name: string): string {
  const folder = join(realpathSync(at), `disk-${name}`);
  mkdirSync(folder, { recursive: true });
  return folder;
}

/** Saves on a small disk; tells what was answered, and what lies there then. */
function saveOnDisk(name: string, prepare: string, writes: readonly object[]) {
  const disk = mountPoint(name);
  const script = `set -e
    mount -t tmpfs -o size=256k tmpfs "$1"
    cd "$1"
    printf old > a.svg
    printf old > b.svg
    ${prepare}
    "$2" "$3" "$1" "$4" 0
    echo
    cat a.svg b.svg
    echo
    find . -name '*.part' -o -name saving.json -o -name c.svg`;
  const args = ['-m', 'sh', '-c', script, 'sh', disk, process.execPath, SCRIPT, writesFile(writes)];
  const run = spawnSync('unshare', args, { encoding: 'utf8' });
  expect(run.status, run.stderr).toBe(0);
  const [answer = '', contents = '', left = ''] = run.stdout.split('\n');
  return { answer: JSON.parse(answer) as Record<string, unknown>, contents, left };
}

const TOO_MUCH = [
  { path: 'a.svg', base: sum('old'), text: 'new' },
  { path: 'b.svg', base: sum('old'), text: 'x'.repeat(200_000) },
  { path: 'c.svg', base: null, text: 'x'.repeat(200_000) },
];

describe('a disk that takes no more', () => {
  testWith(
    OWN_DISK,
    'when it is full, the answer says so, every file is as it was, and nothing is left',
    () => {
      const { answer, contents, left } = saveOnDisk('full', '', TOO_MUCH);
      expect(answer).toMatchObject({ status: 507 });
      expect(answer['sentence']).toMatch(/disk is full/);
      expect([contents, left]).toEqual(['oldold', '']);
    },
  );

  testWith(OWN_DISK, 'when it is read-only, the answer says so and every file is as it was', () => {
    const { answer, contents } = saveOnDisk('read-only', 'mount -o remount,ro "$1"', TOO_MUCH);
    expect(answer).toMatchObject({ status: 507 });
    expect(answer['sentence']).toMatch(/read-only/);
    expect(contents).toBe('oldold');
  });
});

interface Started {
  readonly address: string;
  readonly port: number;
  readonly key: string;
  readonly stop: (signal: 'SIGINT' | 'SIGTERM' | 'SIGKILL') => Promise<number | null>;
  readonly errors: () => string;
}

/** Starts the command and waits for the line with its address. */
async function start(folder: string, args: readonly string[] = []): Promise<Started> {
  const child = startHidebound(['table', folder, '--json', ...args], at);
  let [out, errors] = ['', ''];
  const ended = new Promise<number | null>((resolve) => {
    child.once('exit', resolve);
  });
  child.stderr!.on('data', (chunk: Buffer) => (errors += chunk.toString()));
  const line = await new Promise<string>((resolve, reject) => {
    child.stdout!.on('data', (chunk: Buffer) => {
      out += chunk.toString();
      if (out.includes('\n')) resolve(out);
    });
    void ended.then(() => reject(new Error(errors)));
  });
  const told = JSON.parse(line) as { address: string; folder: string };
  expect(told.folder).toBe(folder);
  const { port, hash } = new URL(told.address);
  return {
    address: told.address,
    port: Number(port),
    key: hash.replace('#key=', ''),
    errors: () => errors,
    stop: async (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}

const BUILT = { name: 'the built app', isThere: existsSync(join(ROOT, 'packages/app/dist/site/index.html')) };

describe('the command', () => {
  testWith(
    BUILT,
    'when it is stopped by hand and started again, address and key are the same and it ended with 0',
    async () => {
      const folder = jobFolder(at, { 'a.svg': 'old' });
      const first = await start(folder);
      // RFC 6335, section 6: these ports are nobody's.
      expect(first.port).toBeGreaterThanOrEqual(49152);
      // 128 bits in base64url (RFC 4648): 22 letters.
      expect(first.key).toMatch(/^[\w-]{22}$/);
      const list = await askAt(first.port, '/api/files', { headers: { 'X-Hidebound-Key': first.key } });
      expect(list.json()).toMatchObject({ files: [{ path: 'a.svg', revision: sum('old') }] });
      const waiting = askAt(first.port, '/api/changes?after=', { headers: { 'X-Hidebound-Key': first.key } });
      await waiting;
      expect(await first.stop('SIGINT')).toBe(0);
      const again = await start(folder);
      expect(again.address).toBe(first.address);
      expect(await again.stop('SIGKILL')).toBeNull();
      const last = await start(folder);
      expect(last.address).toBe(first.address);
      expect(await last.stop('SIGTERM')).toBe(0);
    },
  );

  testWith(
    BUILT,
    'when a second one is opened on the folder, it takes the next port and says so',
    async () => {
      const folder = jobFolder(at, { 'a.svg': 'old' });
      const [one, other] = [await start(folder), await start(folder)];
      expect(other.port).not.toBe(one.port);
      expect(other.key).toBe(one.key);
      expect(other.errors()).toContain(String(one.port));
      const run = hidebound(['table', folder, '--port', String(one.port)]);
      expect(expectOneSentence(run)).toMatch(/is in use by another program; give a free one with --port/);
      expect(run.status).toBe(2);
      expect(await Promise.all([one.stop('SIGINT'), other.stop('SIGINT')])).toEqual([0, 0]);
    },
  );

  testWith(BUILT, 'when a folder brings a key that others know or may read, it does not count', async () => {
    const folder = jobFolder(at, { 'a.svg': 'old' });
    const own = join(folder, '.hidebound');
    const first = await start(folder);
    await first.stop('SIGINT');
    const copy = realpathSync(copyOf(folder, 'copied'));
    const second = await start(copy);
    await second.stop('SIGINT');
    expect(second.key).not.toBe(first.key);
    chmodSync(join(own, 'table-key'), 0o644);
    const third = await start(folder);
    await third.stop('SIGINT');
    expect(third.key).not.toBe(first.key);
  });

  it('when there is no such folder, or it is a file, one sentence says so', () => {
    const run = hidebound(['table', join(at, 'nowhere')]);
    expect(expectOneSentence(run)).toMatch(/There is no such folder/);
    expect(run.status).toBe(3);
    const file = hidebound(['table', MAIN]);
    expect(expectOneSentence(file)).toMatch(/is a file; give the folder/);
    expect(file.status).toBe(2);
  });

  it('when the app is not built, it says how to build it', async () => {
    const folder = jobFolder(at, { 'a.svg': 'old' });
    await expect(testTable(folder, join(at, 'no-site'))).rejects.toThrow(
      /not built yet; run "npm run build"/,
    );
    expect((await (await testTable(folder, smallSite(at))).ask('/')).status).toBe(200);
  });
});
