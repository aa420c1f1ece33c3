// What `npm test` runs: lint beside format, generated docs and types; then units; then end to end. Stops at the first that fails.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const reports = mkdtempSync(join(tmpdir(), 'hidebound-verify-'));
const bin = (...parts) => join(root, 'node_modules', ...parts);

const LINT = { name: 'lint', args: [bin('eslint', 'bin', 'eslint.js'), '.'] };
const FORMAT = {
  name: 'format',
  args: [bin('prettier', 'bin', 'prettier.cjs'), '--check', '--log-level', 'warn', '.'],
};
const DOCS = { name: 'generated docs', args: [join(root, 'scripts', 'docs.mjs'), '--check'] };
const TYPES = { name: 'types', args: [bin('typescript', 'bin', 'tsc'), '-p', 'tsconfig.json'] };
const UNITS = { name: 'units', args: vitest('unit') };
const END_TO_END = { name: 'end to end', args: vitest('e2e', 'apart') };

/** One stage after another; the rows of a stage go side by side, as each of their steps takes one core. */
const STAGES = [[[LINT], [FORMAT, DOCS, TYPES]], [[UNITS]], [[END_TO_END]]];

function vitest(...projects) {
  const report = join(reports, `${projects[0]}.json`);
  return [
    bin('vitest', 'vitest.mjs'),
    'run',
    ...projects.flatMap((project) => ['--project', project]),
    // Half of the time is spent waiting for commands that were started.
    '--maxWorkers=2',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ];
}

function countTests() {
  const total = { passed: 0, failed: 0, skipped: 0 };
  for (const project of ['unit', 'e2e']) {
    try {
      const report = JSON.parse(readFileSync(join(reports, `${project}.json`), 'utf8'));
      total.passed += report.numPassedTests;
      total.failed += report.numFailedTests;
      total.skipped += report.numPendingTests + report.numTodoTests;
    } catch {
      // That project was not reached.
    }
  }
  return total;
}

/** Runs a step. Where others go on beside it, what it prints is held back until its end, so that lines stay together. */
function run({ name, args }, isAlone) {
  const started = performance.now();
  if (isAlone) console.log(`\n== ${name}`);
  const out = isAlone ? 'inherit' : 'pipe';
  const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', out, out] });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.setEncoding('utf8').on('data', (text) => (said += text));
  return new Promise((done) =>
    child.on('close', (status) => {
      const seconds = ((performance.now() - started) / 1000).toFixed(1);
      if (!isAlone) console.log(`\n== ${name}${said === '' ? '' : `\n${said.trimEnd()}`}`);
      console.log(`== ${name}: ${status === 0 ? 'ok' : 'FAILED'} (${seconds} s)`);
      done(status === 0);
    }),
  );
}

/** Gives the name of the first step of a row that fails. */
async function failedIn(row, isAlone) {
  for (const step of row) if (!(await run(step, isAlone))) return step.name;
  return undefined;
}

let failedStep;
for (const stage of STAGES) {
  const ends = await Promise.all(stage.map((row) => failedIn(row, stage.length === 1)));
  failedStep = ends.find((name) => name !== undefined);
  if (failedStep !== undefined) break;
}
const { passed, failed, skipped } = countTests();
rmSync(reports, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`);
if (failedStep !== undefined) {
  console.error(`Stopped: ${failedStep} failed.`);
  process.exit(1);
}
