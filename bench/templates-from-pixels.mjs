// The long run of the judge of tiled templates: a whole hide of the demo, page by page at 600 dpi (about 60 pages of A4).
// Options: --layout FILE (else the demo order is laid with --effort 3), --hide ID (side-0231-a), --other-hide ID, from which a strange page is taken (bend-0198-c).
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : process.argv[at + 1];
};
const run = (args, env = {}) => {
  const { status } = spawnSync(process.execPath, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  return status ?? 1;
};

const given = option('layout');
const folder = mkdtempSync(join(tmpdir(), 'hidebound-pixels-'));
const layout = given === undefined ? join(folder, 'demo.layout.json') : resolve(given);
const order = join(root, 'fixtures', 'demo', 'bicycle-goods.order.yaml');
const main = join(root, 'packages', 'cli', 'dist', 'main.js');
let status = given === undefined ? run([main, 'lay', order, '--effort', '3', '--out', layout]) : 0;
if (status === 0) {
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
  const test = ['run', '--project', 'e2e', 'tests/templates-from-pixels'];
  status = run([vitest, ...test, '--testTimeout', '900000'], {
    HIDEBOUND_PIXELS_LAYOUT: layout,
    HIDEBOUND_PIXELS_HIDE: option('hide', 'side-0231-a'),
    HIDEBOUND_PIXELS_OTHER_HIDE: option('other-hide', 'bend-0198-c'),
  });
}
rmSync(folder, { recursive: true, force: true });
process.exit(status);
