// The long run of the property tests: so many random problems laid, each answer judged by the exact check and by jsts.
// Options: --problems 1000, --from 1 (number of the first), --joins N (of every problem; else their own, 0 or 1). A fault names its problem: `--from N --problems 1` repeats it.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : process.argv[at + 1];
};

const joins = option('joins');
const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
const { status } = spawnSync(process.execPath, [vitest, 'run', '--project', 'e2e', 'tests/nest-properties'], {
  cwd: root,
  stdio: ['ignore', 'inherit', 'inherit'],
  env: {
    ...process.env,
    HIDEBOUND_NEST_PROBLEMS: option('problems', '1000'),
    HIDEBOUND_NEST_FROM: option('from', '1'),
    ...(joins === undefined ? {} : { HIDEBOUND_NEST_JOINS: joins }),
  },
});
process.exit(status ?? 1);
