import { spawn, spawnSync } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';
import { runHidebound } from '@hidebound/cli';

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

/** Runs the command within this process: the same code without the time that it takes to start one. */
export async function hideboundHere(args: readonly string[]): Promise<Run> {
  let stdout = '';
  let stderr = '';
  const status = await runHidebound(args, {
    out: (text) => (stdout += text),
    err: (text) => (stderr += text),
    errIsTerminal: false,
    now: () => performance.now(),
    version: '0.0.0',
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

/** A closed outline with straight sides, as hide files hold it. */
export function closed(...points: readonly (readonly [number, number])[]): object {
  return { start: points[0], segments: [...points.slice(1), points[0]].map((to) => ({ to })), closed: true };
}

/** A panel of 600 × 400 mm without a flaw. */
export const SMALL_HIDE = {
  format: 'hidebound/hide@1',
  id: 'panel-1',
  cut: 'panel',
  outline: closed([0, 0], [600, 0], [600, 400], [0, 400]),
  backbone: [
    [10, 10],
    [590, 10],
  ],
};

/** Two plates of 60 × 90 mm. */
export const SMALL_ORDER = `format: hidebound/order@1
name: test order
date: "2026-01-05"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [100, 100]
leathers:
  body:
    hides: [panel.hide.json]
articles:
  - name: tag
    goods: tag
    sets: 2
    pieces:
      - name: plate
        leather: body
        part: stiffener
        rectangle: { width: 60, length: 90 }
`;

/** What was at the layout's place before. */
export const OLD_LAYOUT = '{ "old": true }\n';

export interface SmallJob {
  readonly at: string;
  readonly order: string;
  readonly hide: string;
  readonly layout: string;
}

export interface SmallJobFiles {
  readonly order?: string | Uint8Array;
  readonly hide?: unknown;
  readonly hideText?: string;
}

/** A folder with an order, its hide, and an old layout that would be written over. */
export function smallJob(folder: string, files: SmallJobFiles = {}): SmallJob {
  const at = mkdtempSync(join(folder, 'job-'));
  const job = {
    at,
    order: join(at, 'test.order.yaml'),
    hide: join(at, 'panel.hide.json'),
    layout: join(at, 'test.layout.json'),
  };
  writeFileSync(job.order, files.order ?? SMALL_ORDER);
  writeFileSync(job.hide, files.hideText ?? JSON.stringify(files.hide ?? SMALL_HIDE, null, 2));
  writeFileSync(job.layout, OLD_LAYOUT);
  return job;
}
