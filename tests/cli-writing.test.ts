import {
  mkdirSync,
  readFileSync,
  readdirSync,
  statSync,
  symlinkSync,
  watch,
  lstatSync,
  writeFileSync,
  chmodSync,
  existsSync,
} from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { testWith } from './tools/outside.js';
import type { Needed } from './tools/outside.js';
import {
  DEMO,
  MAIN,
  expectOneSentence,
  hidebound,
  hideboundHere,
  startHidebound,
  testFolder,
} from './cli-support.js';

const folder = testFolder();
const TRACED = join(DEMO, 'shoulder-traced.svg');
const OLD = '{ "old": true }\n';

/** A new folder with an old file in it that is to be written over. */
function oldFile(name: string): { readonly at: string; readonly path: string } {
  const at = join(folder, name);
  mkdirSync(at);
  const path = join(at, 'shoulder.hide.json');
  writeFileSync(path, OLD);
  return { at, path };
}

const FULL_DEVICE: Needed = { name: '/dev/full', isThere: existsSync('/dev/full') };
const SMALL_DISK: Needed = { name: 'a file system of its own', isThere: canMount() };

describe('writing a file', () => {
  it('when the file is there already, it is replaced whole, keeps its rights, and nothing is left beside it', async () => {
    const { at, path } = oldFile('replace');
    chmodSync(path, 0o640);
    const run = await hideboundHere(['hide', TRACED, '--out', path]);
    expect(run.status, run.stderr).toBe(0);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ format: 'hidebound/hide@1' });
    expect(statSync(path).mode & 0o777).toBe(0o640);
    expect(readdirSync(at)).toEqual(['shoulder.hide.json']);
  });

  it('when the file is a link, the file behind it is replaced and the link stays', async () => {
    const { at, path } = oldFile('link');
    const link = join(at, 'link.hide.json');
    symlinkSync(path, link);
    expect((await hideboundHere(['hide', TRACED, '--out', link])).status).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(path, 'utf8')).toContain('hidebound/hide@1');
  });

  it('when the folder does not exist, it ends with 4 and says so', () => {
    const run = hidebound(['hide', TRACED, '--out', join(folder, 'nowhere', 'a.hide.json')]);
    expect(expectOneSentence(run)).toMatch(/nowhere.*folder does not exist; make it first/);
    expect(run.status).toBe(4);
  });

  it('when a part of the path is a file, it ends with 4 and the file is untouched', async () => {
    const { path } = oldFile('under-a-file');
    const run = await hideboundHere(['hide', TRACED, '--out', join(path, 'a.hide.json')]);
    expect(expectOneSentence(run)).toMatch(/a part of its path is a file/);
    expect(run.status).toBe(4);
    expect(readFileSync(path, 'utf8')).toBe(OLD);
  });

  it('when the name is that of a folder, it ends with 4 and says so', async () => {
    const run = await hideboundHere(['hide', TRACED, '--out', folder]);
    expect(expectOneSentence(run)).toMatch(/This is a folder; give a file name/);
    expect(run.status).toBe(4);
  });

  testWith(
    FULL_DEVICE,
    'when the device is full, it ends with 4 and says that the disk is full',
    async () => {
      const run = await hideboundHere(['hide', TRACED, '--out', '/dev/full']);
      expect(expectOneSentence(run)).toMatch(/the disk is full; free some space/);
      expect(run.status).toBe(4);
    },
  );

  it('when the file would pass the limit of the system, it ends with 4, and the old file is whole', () => {
    const { at, path } = oldFile('limited');
    // ulimit -f counts in blocks of 512 bytes (POSIX): 4 are less than the hide file needs.
    const run = spawnSync(
      'sh',
      ['-c', 'ulimit -f 4; exec "$0" "$@"', process.execPath, MAIN, 'hide', TRACED, '--out', path],
      { encoding: 'utf8' },
    );
    expect(readFileSync(path, 'utf8')).toBe(OLD);
    expect(run.status, run.stderr).toBe(4);
    expect(expectOneSentence(run)).toMatch(/larger than the system allows/);
    expect(readdirSync(at)).toEqual(['shoulder.hide.json']);
  });

  testWith(SMALL_DISK, 'when the disk is full, it ends with 4, and the old file is whole', () => {
    const run = onSmallDisk('size=64k', `head -c 60000 /dev/zero > filler`);
    expect(run.stdout).toContain('old file whole');
    expect(run.stderr).toMatch(/^hidebound: .*the disk is full; free some space.*\n$/);
    expect(run.stdout).toContain('status 4');
    expect(run.stdout).toContain('files: filler shoulder.hide.json');
  });

  testWith(SMALL_DISK, 'when the folder is read-only, it ends with 4, and the old file is whole', () => {
    const run = onSmallDisk('size=256k', 'mount -o remount,ro .');
    expect(run.stdout).toContain('old file whole');
    expect(run.stderr).toMatch(/^hidebound: .*the folder is read-only; choose another one.*\n$/);
    expect(run.stdout).toContain('status 4');
  });

  it('when several files are asked for and one can not be written, none is', async () => {
    const { path } = oldFile('several');
    const run = await hideboundHere([
      'hide',
      TRACED,
      '--out',
      path,
      '--picture',
      join(folder, 'nowhere', 'a.svg'),
    ]);
    expect(run.status).toBe(4);
    expect(readFileSync(path, 'utf8')).toBe(OLD);
  });

  it('when a killed run left its half-written file, the next one clears it away, and nothing else', () => {
    const { at, path } = oldFile('leftovers');
    const gone = spawnSync(process.execPath, ['-e', '']).pid;
    const stale = `shoulder.hide.json.${gone}.part`;
    const others = [
      // Of a process that is running, of another target, and of no process.
      `shoulder.hide.json.${process.pid}.part`,
      `other.hide.json.${gone}.part`,
      'shoulder.hide.json.mine.part',
    ];
    for (const name of [stale, ...others]) writeFileSync(join(at, name), 'half');
    expect(hidebound(['hide', TRACED, '--out', path]).status).toBe(0);
    expect(readdirSync(at).sort()).toEqual(['shoulder.hide.json', ...others].sort());
  });

  it('when it is killed at any moment, the file is the old one or the new one, whole', async () => {
    const { at, path } = oldFile('killed');
    const fresh = join(at, 'fresh.hide.json');
    const started = performance.now();
    expect(hidebound(['hide', TRACED, '--out', fresh]).status).toBe(0);
    const fullMs = performance.now() - started;
    const whole = readFileSync(fresh, 'utf8');
    const seen = new Set<string>();
    for (let round = 0; round < ROUNDS; round++) {
      writeFileSync(path, OLD);
      const child = startHidebound(['hide', TRACED, '--out', path], at);
      await killAtSomeMoment(child, { round, at, fullMs });
      const content = readFileSync(path, 'utf8');
      expect([OLD, whole]).toContain(content);
      seen.add(content === OLD ? 'old' : 'new');
    }
    expect([...seen].sort()).toEqual(['new', 'old']);
    expect(hidebound(['hide', TRACED, '--out', path]).status).toBe(0);
    expect(readdirSync(at).sort()).toEqual(['fresh.hide.json', 'shoulder.hide.json']);
  });
});

const ROUNDS = 8;

/**
 * The first round is killed at once and the last one not at all, so that both files are seen on any machine. Of the
 * moments between, half are spread over the whole run, half follow the first sign of writing by 0 to 4 ms.
 */
async function killAtSomeMoment(
  child: ReturnType<typeof startHidebound>,
  { round, at, fullMs }: { readonly round: number; readonly at: string; readonly fullMs: number },
): Promise<void> {
  if (round === 0) return killAfter(child, 0);
  if (round === ROUNDS - 1) return killAfter(child, LONGER_THAN_ANY_RUN_MS);
  if (round % 2 === 0) return killAfter(child, fullMs * (0.4 + spread(round)));
  return killOnceWriting(child, at, round - 1);
}

const LONGER_THAN_ANY_RUN_MS = 120_000;

/** Evenly spread over 0 to 1 in an order that looks like chance: multiples of the golden ratio. */
function spread(round: number): number {
  return (round * 0.618034) % 1;
}

async function killAfter(child: ReturnType<typeof startHidebound>, ms: number): Promise<void> {
  const ended = new Promise((resolve) => {
    child.once('exit', resolve);
  });
  const timer = setTimeout(() => child.kill('SIGKILL'), ms);
  await ended;
  clearTimeout(timer);
}

/** Kills a process so many ms after it has touched a file in the folder. */
async function killOnceWriting(
  child: ReturnType<typeof startHidebound>,
  at: string,
  afterMs: number,
): Promise<void> {
  const watcher = watch(at, () => {
    watcher.close();
    setTimeout(() => child.kill('SIGKILL'), afterMs);
  });
  await new Promise((resolve) => {
    child.once('exit', resolve);
  });
  watcher.close();
}

/** A mount in a name space of its own needs rights that not every machine gives. */
function canMount(): boolean {
  if (process.platform !== 'linux') return false;
  const run = spawnSync('unshare', ['-m', 'sh', '-c', 'mount -t tmpfs -o size=64k tmpfs /mnt'], {
    encoding: 'utf8',
  });
  return run.status === 0;
}

/** Writes over an old file on a small disk of its own, after `prepare`; the mount ends with its name space. */
function onSmallDisk(
  mountOptions: string,
  prepare: string,
): { readonly stdout: string; readonly stderr: string } {
  const script = `
    set -e
    mount -t tmpfs -o ${mountOptions} tmpfs /mnt
    cd /mnt
    printf 'old' > shoulder.hide.json
    ${prepare}
    set +e
    "$0" "$@" --out shoulder.hide.json
    echo "status $?"
    [ "$(cat shoulder.hide.json)" = old ] && echo 'old file whole'
    echo "files:" *`;
  return spawnSync('unshare', ['-m', 'sh', '-c', script, process.execPath, MAIN, 'hide', TRACED], {
    encoding: 'utf8',
  });
}
