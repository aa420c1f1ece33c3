// Runs the command from a checkout: installs and compiles what is missing or has changed, then hands over.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const setup = fileURLToPath(new URL('./setup.mjs', import.meta.url));
const { status } = spawnSync(process.execPath, [setup, '--build'], { stdio: ['ignore', 2, 2] });
if (status !== 0) process.exit(status ?? 1);
// npm and pnpm run scripts in the checkout's folder; paths are meant from where the user stands.
if (process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
await import(new URL('../packages/cli/dist/main.js', import.meta.url).href);
