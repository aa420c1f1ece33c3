// Runs the command from a checkout: compiles what has changed since last time, then hands over.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const build = spawnSync(
  process.execPath,
  [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-b', join(root, 'packages', 'cli')],
  { cwd: root, stdio: ['ignore', 2, 2] },
);
if (build.status !== 0) process.exit(1);
await import(new URL('../packages/cli/dist/main.js', import.meta.url).href);
