// Whether "enough in 90 of 100" is true: trials of several orders on hides of chance, and then the orders laid on hides
// that no trial has seen, half of them other than the buyer was told. Each result is a line of the --out file; a run goes
// on where the last one ended. Run after "pnpm build": node bench/buy/calibrate.mjs --out FILE [--part 0/2]
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { startNest } from '@hidebound/geometry';
import {
  areaForChance,
  hidesOfTrial,
  needAfter,
  needBeliefs,
  nestProblemFor,
  runTrial,
} from '@hidebound/leather';
import { orderOn } from '../../packages/leather/dist/buying/trials/run-trial.js';
import { calibrationCases } from './cases.mjs';

const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : process.argv[at + 1];
};
const out = option('out');
const trials = Number(option('trials', 20));
const checks = Number(option('checks', 24));
const [part, parts] = option('part', '0/1').split('/').map(Number);
if (out === undefined) throw new Error('Say --out FILE.');

/** The work of a check: so much of a search, or until all is laid. */
const EFFORT = { streams: 2, joins: 2 };
/** Hides of the checks are none of the trials'. */
const CHECK_SEED = Number(option('draw', 9001));
/** The chances that are put to the test, by turns. */
const CHANCES = [0.9, 0.7, 0.95, 0.5, 0.9, 0.8];

const known = new Map(
  (existsSync(out) ? readFileSync(out, 'utf8').trim().split('\n') : [])
    .filter(Boolean)
    .map((line) => JSON.parse(line))
    .map((row) => [row.key, row]),
);
const keep = (row) => {
  appendFileSync(out, `${JSON.stringify(row)}\n`);
  return row;
};

for (const [index, item] of (await calibrationCases()).entries()) {
  if (index % parts !== part) continue;
  const outcomes = [];
  for (let number = 1; number <= trials; number++) {
    const key = `${item.name}/trial/${number}`;
    outcomes.push(
      (known.get(key) ?? keep({ key, kind: 'trial', case: item.name, outcome: runTrial(item.input, number) }))
        .outcome,
    );
  }
  const complete = outcomes.filter(({ needed }) => needed !== undefined);
  console.log(`${item.name}: ${complete.length} of ${trials} trials laid everything`);
  if (complete.length < trials / 2) continue;
  const need = needAfter(
    complete.map(({ needMm2 }) => needMm2),
    0,
    needBeliefs(item.workshop),
  );
  for (let number = 0; number < checks; number++) {
    const key = `${item.name}/check/${number}`;
    if (!known.has(key)) keep({ key, kind: 'check', case: item.name, number, ...check(item, need, number) });
  }
}

/** Lays the order on as many hides, as large, as are said to be enough in so many of 100. */
function check({ input, order, pieces, workshop }, need, number) {
  const turn = Math.floor(number / 2);
  const chance = CHANCES[turn % CHANCES.length];
  const toldMm2 = areaForChance(need, chance);
  const mean = (input.areaMm2.min + input.areaMm2.max) / 2;
  const count = Math.max(1, Math.round(toldMm2 / mean));
  const isShifted = number % 2 === 1;
  // Every chance meets smaller and larger hides than the buyer was told.
  const isSmaller = Math.floor(turn / CHANCES.length) % 2 === 0;
  const scale = isShifted ? (isSmaller ? 0.9 : 1.1) : 1;
  const each = (toldMm2 / count) * scale;
  const share = input.usableShare;
  const shifted = share && { min: 1 - 1.5 * (1 - share.min), max: 1 - 1.5 * (1 - share.max) };
  const hides = hidesOfTrial(
    {
      ...input,
      seed: CHECK_SEED,
      areaMm2: { min: each, max: each },
      ...(isShifted && shifted ? { usableShare: shifted } : {}),
    },
    number,
    count,
  );
  const { problem } = nestProblemFor({
    order: orderOn(order, hides),
    pieces,
    hides,
    workshop,
    budget: { seed: 1, ...EFFORT },
  });
  const run = startNest(problem);
  while (!run.done && !(run.best() && run.best().unplaced.length === 0)) run.advance();
  const { unplaced, placements, joins } = run.best();
  return {
    chance,
    toldMm2,
    count,
    isShifted,
    scale,
    isEnough: unplaced.length === 0,
    missed: unplaced.length,
    of: unplaced.length + placements.length,
    joins,
  };
}
