// Gets a checkout ready with nothing but Node and npm: installs what the lock file names, and with --build compiles.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const { packageManager } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

function run(command, args) {
  const result = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2] });
  if (result.status !== 0) process.exit(result.status ?? 1);
}

/** pnpm writes this file last, so an older one means an install that is stale or was cut short. */
function isInstalled() {
  const done = join(root, 'node_modules', '.modules.yaml');
  return existsSync(done) && statSync(done).mtimeMs >= statSync(join(root, 'pnpm-lock.yaml')).mtimeMs;
}

const [major] = process.versions.node.split('.').map(Number);
if (major < 20) {
  console.error(`Hidebound needs Node 20 or newer; this is ${process.versions.node}.`);
  process.exit(2);
}
if (!isInstalled()) run('npx', ['-y', packageManager, 'install', '--frozen-lockfile']);
if (process.argv.includes('--build')) {
  run(process.execPath, [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-b', 'packages/cli']);
}
