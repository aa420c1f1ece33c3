// The main job's figures: reading, first layout, layout after some seconds, exact check, sheet, memory.
// Each row prints the median and the range of its runs. Run by `pnpm bench`; options: --seconds 30 --runs 5
// --only read (cases whose names hold this word).
import { readFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fork } from 'node:child_process';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..');
const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : Number(process.argv[at + 1]);
};

const CASES = [
  { name: 'read a 5 MB pattern SVG', script: 'read-svg', unit: 's' },
  { name: 'read a 20 MB pattern DXF', script: 'read-dxf', unit: 's' },
  { name: 'read a 60-page tiled PDF', script: 'read-pdf', unit: 's' },
  ...['lines', 'marks'].map((how) => ({
    name: `put 60 pages together by ${how}`,
    script: 'read-pages',
    args: [how],
    unit: 's',
  })),
  { name: 'demo order', script: 'lay', args: ['demo'] },
  ...[50, 100, 200, 400].map((pieces) => ({
    name: `${pieces} pieces`,
    script: 'lay',
    args: [String(pieces)],
  })),
  { name: 'check of 400 pieces', script: 'check', unit: 's' },
  { name: 'cutting sheet of the demo (PDF and SVG)', script: 'sheet', unit: 's' },
];

/** Each case runs in a process of its own, so that peak memory is its own. */
function runCase({ script, args = [] }, seconds, runs) {
  return new Promise((done, fail) => {
    const child = fork(join(here, 'cases', `${script}.mjs`), [String(seconds), String(runs), ...args]);
    let result;
    child.on('message', (message) => (result = message));
    child.on('exit', (code) =>
      code === 0 && result ? done(result) : fail(new Error(`${script} ended with ${code}`)),
    );
  });
}

const seconds = option('seconds', 30);
const runs = option('runs', 5);
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
console.log(
  `Hidebound ${version}, Node ${process.version}, ${cpus().length} x ${cpus()[0].model.trim()}, ${(totalmem() / 2 ** 30).toFixed(0)} GiB`,
);
console.log(`${runs} runs a row; layouts improve for ${seconds} s. Median (least – most).\n`);
const only = process.argv[process.argv.indexOf('--only') + 1];
const cases = process.argv.includes('--only') ? CASES.filter(({ name }) => name.includes(only)) : CASES;
for (const item of cases) {
  const { rows, peakMb, checksum } = await runCase(item, seconds, runs);
  for (const [label, values, unit] of rows)
    console.log(`${item.name.padEnd(42)} ${label.padEnd(26)} ${spread(values, unit)}`);
  console.log(`${''.padEnd(42)} ${'peak memory'.padEnd(26)} ${peakMb.toFixed(0)} MB   checksum ${checksum}`);
}

function spread(values, unit) {
  const sorted = [...values].sort((a, b) => a - b);
  const show = (value) => (unit === '%' ? (100 * value).toFixed(2) : value.toFixed(value < 10 ? 3 : 1));
  return `${show(sorted[Math.floor(sorted.length / 2)])} ${unit} (${show(sorted[0])} – ${show(sorted.at(-1))})`;
}
