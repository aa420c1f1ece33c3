// What `npm test` runs, in this order: lint, generated docs, types, units, end-to-end. Stops at the first that fails.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const reports = mkdtempSync(join(tmpdir(), 'hidebound-verify-'));
const bin = (...parts) => join(root, 'node_modules', ...parts);

const STEPS = [
  { name: 'lint', args: [bin('eslint', 'bin', 'eslint.js'), '.'] },
  { name: 'format', args: [bin('prettier', 'bin', 'prettier.cjs'), '--check', '--log-level', 'warn', '.'] },
  { name: 'generated docs', args: [join(root, 'scripts', 'docs.mjs'), '--check'] },
  { name: 'types', args: [bin('typescript', 'bin', 'tsc'), '-p', 'tsconfig.json'] },
  { name: 'units', args: vitest('unit') },
  { name: 'end to end', args: vitest('e2e', 'apart') },
];

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

let failedStep;
for (const { name, args } of STEPS) {
  const started = performance.now();
  console.log(`\n== ${name}`);
  const { status } = spawnSync(process.execPath, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  console.log(
    `== ${name}: ${status === 0 ? 'ok' : 'FAILED'} (${((performance.now() - started) / 1000).toFixed(1)} s)`,
  );
  if (status !== 0) {
    failedStep = name;
    break;
  }
}
const { passed, failed, skipped } = countTests();
rmSync(reports, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`);
if (failedStep !== undefined) {
  console.error(`Stopped: ${failedStep} failed.`);
  process.exit(1);
}
