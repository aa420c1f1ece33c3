// The demo's files in a folder of their own, with the layout that the commands after `lay` need.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { measureOfUnit } from './units.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const main = join(root, 'packages', 'cli', 'dist', 'main.js');
const { parse } = createRequire(join(root, 'packages', 'leather', 'package.json'))('yaml');

/** Little work: the figures are to be right, the layout need not be good. */
const EFFORT = '1';

/**
 * A copy of the demo: `{ at, order, layout, stock, articles }`. `layout` is laid where none is given; `stock` is a
 * folder of what the layout leaves of its three hides.
 */
export function demoJob(given) {
  const at = mkdtempSync(join(tmpdir(), 'hidebound-numbers-'));
  cpSync(join(root, 'fixtures', 'demo'), at, { recursive: true });
  const stock = join(at, 'stock');
  mkdirSync(stock);
  for (const name of ['side', 'shoulder', 'bend']) {
    cpSync(join(at, `${name}.hide.json`), join(stock, `${name}.hide.json`));
  }
  const order = join(at, 'bicycle-goods.order.yaml');
  const layout = given === undefined ? join(at, 'bicycle-goods.layout.json') : resolve(given);
  if (given === undefined) answerOf(['lay', order, '--effort', EFFORT, '--out', layout]);
  answerOf(['offcuts', stock, '--take', layout]);
  return { at, order, layout, stock };
}

/** Runs a command with --json and gives its whole answer; 1 is an answer, too. */
export function answerOf(args) {
  const run = spawnSync(process.execPath, [main, ...args, '--json'], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (run.status !== 0 && run.status !== 1) {
    throw new Error(`"hidebound ${args.join(' ')}" ended with ${run.status}: ${run.stderr}${run.stdout}`);
  }
  return JSON.parse(run.stdout);
}

/** The files that a result names (order, workshop, layout), as data. */
export function inputsOf(result) {
  const named = [result.order, result.layout, result.file, result.workshop, result.article].flat();
  return [...new Set(named)]
    .filter((file) => typeof file === 'string' && /\.(json|ya?ml)$/.test(file))
    .map((file) => parse(readFileSync(file, 'utf8')));
}

/** The values of some of the workshop's figures, as the command `workshop` tells them: "2–3 %". */
export function figuresOf(names, workshop) {
  if (names.length === 0) return [];
  const { topics } = answerOf(['workshop', workshop]).result;
  const told = topics.flatMap(({ values }) => values).filter(({ name }) => names.includes(name));
  return told.flatMap(({ name, value }) => {
    const [, from, to = from, unit] = /^([\d.]+)(?:–([\d.]+))?\s*(\S+)$/.exec(value);
    const { kind, times } = measureOfUnit(unit);
    return [from, to].map((number) => ({
      kind,
      value: number * times,
      path: name,
      names: [],
      isReckoned: true,
    }));
  });
}
