// Gets a checkout ready with nothing but Node and npm: installs what the lock file names, with --build compiles, and with --app builds the browser app.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
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

/** What the browser app is made of: its build is skipped where nothing of it is newer than the last one. */
const APP_PARTS = [
  'packages/app/src',
  'packages/app/build',
  'packages/app/public',
  'packages/app/index.html',
  'packages/app/vite.config.ts',
  'packages/geometry/src',
  'packages/leather/src',
  'packages/intake/src',
  'packages/render/src',
  'fixtures/demo',
  'pnpm-lock.yaml',
];
const BUILT_APP = join(root, 'packages', 'app', 'dist', 'site', 'index.html');

function newestBelow(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return path.endsWith('.test.ts') ? 0 : stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newestBelow(join(path, name))));
}

function isAppBuilt() {
  if (!existsSync(BUILT_APP)) return false;
  const built = statSync(BUILT_APP).mtimeMs;
  return APP_PARTS.every((part) => newestBelow(join(root, part)) <= built);
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
if (process.argv.includes('--app') && !isAppBuilt()) {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  run(process.execPath, [vite, 'build', join(root, 'packages', 'app'), '--logLevel', 'warn']);
}
