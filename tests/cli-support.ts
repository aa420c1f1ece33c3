import { spawn, spawnSync } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));
export const DEMO = join(ROOT, 'fixtures', 'demo');
export const MAIN = join(ROOT, 'packages', 'cli', 'dist', 'main.js');

if (!existsSync(MAIN)) {
  throw new Error(
    'The command is not compiled: run "tsc -b packages/cli" (npm test does) before these tests.',
  );
}

export interface Run {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

const RUN_LIMIT_MS = 120_000;

/** Runs the compiled command and waits for its end. */
export function hidebound(args: readonly string[], options: { readonly cwd?: string } = {}): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    encoding: 'utf8',
    timeout: RUN_LIMIT_MS,
    maxBuffer: 1 << 28,
    ...(options.cwd === undefined ? {} : { cwd: options.cwd }),
  });
  return { status, stdout, stderr };
}

/** Starts the compiled command and does not wait. */
export function startHidebound(args: readonly string[], cwd: string): ChildProcess {
  return spawn(process.execPath, [MAIN, ...args], { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
}

/** A folder of its own for the tests of one file, removed at their end. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-test-'));
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}

/** Standard error is one sentence of this program, without a stack trace. */
export function expectOneSentence(run: Run): string {
  const lines = run.stderr.split('\n').filter((line) => line !== '');
  expect(lines, run.stderr).toHaveLength(1);
  const [line] = lines as [string];
  expect(line).toMatch(/^hidebound: /);
  expect(line).not.toMatch(/\bat .*\.(js|ts):\d+/);
  expect(line).not.toMatch(/should not have happened/);
  return line;
}

/** The file is refused: status 3, one sentence that names it and has these words. */
export function expectRefused(run: Run, file: string, words: RegExp): void {
  const line = expectOneSentence(run);
  expect(line.split(file), line).toHaveLength(2);
  expect(line).toMatch(words);
  expect(run.status, run.stderr).toBe(3);
}
