// The main job on the demo's order, from pattern files and hides to a proven layout and a cutting sheet in demo-out.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Long enough for a good layout, short enough to wait for. */
const SECONDS = 20;
/** Exit status of a layout that lacks pieces: a slow machine may not get further, and the sheet says what is missing. */
const PIECES_MISSING = 1;

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const main = join(root, 'packages', 'cli', 'dist', 'main.js');
const demo = join('fixtures', 'demo');
const out = 'demo-out';

/** Runs one command from the checkout's root and shows it; ends here if it fails. */
function hidebound(args, { quiet = false, mayMiss = false } = {}) {
  console.log(`\n$ hidebound ${args.join(' ')}`);
  const stdout = quiet ? 'pipe' : 'inherit';
  const run = spawnSync(process.execPath, [main, ...args], {
    cwd: root,
    stdio: ['ignore', stdout, 'inherit'],
    encoding: 'utf8',
  });
  if (run.status !== 0 && !(mayMiss && run.status === PIECES_MISSING)) {
    if (quiet) console.log(run.stdout);
    console.error(`\nThis step ended with ${run.status}, so the demo stops here.`);
    process.exit(run.status ?? 1);
  }
  return run.stdout;
}

mkdirSync(join(root, out), { recursive: true });
const patterns = readdirSync(join(root, demo, 'patterns')).map((name) => join(demo, 'patterns', name));
const layout = join(out, 'bicycle-goods.layout.json');
const pdf = join(out, 'bicycle-goods.sheet.pdf');
const svg = join(out, 'bicycle-goods.svg');
const page = join(out, 'bicycle-goods.page.svg');

console.log('Invented data: a small co-operative workshop that makes bicycle goods.');
hidebound(['pieces', ...patterns, '--picture', join(out, 'pieces.svg')]);
const traced = join(out, 'shoulder-traced.hide.json');
hidebound([
  'hide',
  join(demo, 'shoulder-traced.svg'),
  '--out',
  traced,
  '--picture',
  join(out, 'shoulder-traced.svg'),
]);
hidebound(['lay', join(demo, 'bicycle-goods.order.yaml'), '--seconds', String(SECONDS), '--out', layout], {
  mayMiss: true,
});
const checked = JSON.parse(hidebound(['check', layout, '--json'], { quiet: true }));
console.log(`proven: ${checked.result.pieces} pieces on ${checked.result.hides} hides keep every rule`);
const sheet = hidebound(
  ['sheet', layout, '--pdf', pdf, '--page-svg', page, '--svg', svg, '--page', 'A3', '--json'],
  { quiet: true },
);
const { written } = JSON.parse(sheet).result;

const { grossYield, usableYield } = checked.result.yield;
const percent = (share) => `${(share * 100).toFixed(1)} %`;
console.log(`\nGross yield ${percent(grossYield)}, usable yield ${percent(usableYield)}.`);
console.log('The layout, its cutting sheet and each hide at true scale:');
for (const file of [layout, ...written]) console.log(`  ${relative(root, join(root, file))}`);
