// The photo benchmark: forty simulated photos of hides are traced and judged against what is true of them.
// Run by `pnpm bench:photo`; how to run and read it: README.md beside this file.
import { fork } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { coverTable, mainTable, marksTable } from './tables.mjs';

const here = import.meta.dirname;
const root = join(here, '../..');

const USAGE = `pnpm bench:photo [--scenes N] [--only WORD] [--photos FOLDER] [--out FOLDER]
  --scenes N       every kind gets its share of N scenes; all forty without it
  --only WORD      scenes whose name or kind has this word in it
  --photos FOLDER  where simulated photos are kept for the next run
  --out FOLDER     pictures of each trace over its truth (PNG) and all figures (figures.json)`;

function readOptions(args) {
  const options = {};
  for (let i = 0; i < args.length; i += 2) {
    const name = args[i].replace(/^--/, '');
    if (!['scenes', 'only', 'photos', 'out'].includes(name) || args[i + 1] === undefined) return undefined;
    options[name] = args[i + 1];
  }
  if (options.scenes !== undefined && !(Number(options.scenes) >= 1)) return undefined;
  return options;
}

async function main() {
  const options = readOptions(process.argv.slice(2));
  if (options === undefined) {
    console.error(USAGE);
    process.exitCode = 2;
    return;
  }
  const own = mkdtempSync(join(tmpdir(), 'hidebound-photo-bench-'));
  try {
    await bench(options, own);
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
}

async function bench(options, own) {
  const simulator = await bundleSimulator(own);
  const { BENCH_SCENES } = await import(simulator);
  const scenes = chosen(BENCH_SCENES, options);
  const photos = resolve(options.photos ?? own);
  mkdirSync(photos, { recursive: true });
  if (options.out !== undefined) mkdirSync(options.out, { recursive: true });
  const results = [];
  for (const [i, scene] of scenes.entries()) {
    const result = await runScene(scene.name, {
      simulator,
      photos,
      out: options.out && resolve(options.out),
    });
    results.push({ ...result, name: scene.name, kind: scene.kind });
    console.error(`${i + 1}/${scenes.length} ${progressLine(scene.name, result)}`);
    if (options.photos === undefined) rmSync(join(photos, `${scene.name}.jpg`), { force: true });
  }
  if (options.out !== undefined)
    writeFileSync(join(options.out, 'figures.json'), `${JSON.stringify(results, null, 1)}\n`);
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const machine = `Hidebound ${version}, Node ${process.version}, ${cpus().length} x ${cpus()[0].model.trim()}`;
  console.log(
    [machine, '', ...mainTable(results), '', ...marksTable(results), '', ...coverTable(results)].join('\n'),
  );
}

/** The simulator and the judge are TypeScript among the tests; they run as one script. */
async function bundleSimulator(folder) {
  const outfile = join(folder, 'simulator.mjs');
  await build({
    entryPoints: [join(root, 'tests/camera/index.ts')],
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    outfile,
    logLevel: 'error',
    // Some packages below are of the older kind and ask for Node's own modules.
    banner: {
      js: "import { createRequire as bundleRequire } from 'node:module'; const require = bundleRequire(import.meta.url);",
    },
  });
  return outfile;
}

function chosen(scenes, { scenes: count, only }) {
  const named = scenes.filter(({ name, kind }) => only === undefined || `${name} ${kind}`.includes(only));
  if (count === undefined || Number(count) >= named.length) return named;
  // Evenly over the list, so that every kind gets its share.
  const step = named.length / Number(count);
  return Array.from({ length: Number(count) }, (_, i) => named[Math.floor(i * step)]);
}

/** Each step in a process of its own: the memory measured is that of tracing alone. */
async function runScene(name, { simulator, photos, out }) {
  const photo = join(photos, `${name}.jpg`);
  if (!existsSync(photo)) {
    const made = await runChild('make-scene.mjs', { simulator, name, photo, root });
    if (made.error !== undefined) return made;
  }
  return runChild('trace-scene.mjs', { simulator, name, photo, root, out });
}

function runChild(script, job) {
  return new Promise((done) => {
    let answer = { error: 'ended without an answer' };
    const child = fork(fileURLToPath(new URL(script, import.meta.url)), [JSON.stringify(job)]);
    child.on('message', (message) => {
      answer = message;
    });
    child.on('exit', () => done(answer));
  });
}

function progressLine(name, result) {
  if (result.error !== undefined) return `${name}: ${result.error}`;
  const { judgement: j, seconds, peakMb } = result;
  const percent = (share) => `${(100 * share).toFixed(2)} %`;
  return `${name}: median ${j.medianMm.toFixed(2)} mm, worst ${j.worstMm.toFixed(1)} mm, area ${percent(j.areaError)} (said ${percent(j.covered.saidArea)}), scale ${percent(j.scaleError)} (said ${percent(j.covered.saidScale)}), ${seconds.toFixed(1)} s, ${peakMb.toFixed(0)} MB`;
}

await main();
