// One moved piece among many, judged at once: how long that takes beside the exact check of the whole layout, which is
// run in the same minute on the same layout. Needs a build. Options: --pieces 300 --corners 2000 --moves 2000 --seed 1.
import { createHash } from 'node:crypto';
import { createRandom, runNest, sampleProblem } from '@hidebound/geometry';
import { checkAnswer } from '@hidebound/geometry/check';
import { openBench } from '../packages/geometry/dist/live/bench.js';
import { judgeMove } from '../packages/geometry/dist/live/judge-move.js';

const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : Number(process.argv[at + 1]);
};
const [pieces, corners, moves] = [option('pieces', 300), option('corners', 2000), option('moves', 2000)];
const CHECKS = 5;
/** Share of the moved pieces that are dragged about their place; the others come from anywhere. */
const NEAR = 0.7;

const seed = option('seed', 1);
const hide = { cut: 'hide', corners, flaws: 40, strokes: 6, readings: 8, lengthMm: 2400, halfWidthMm: 1100 };
const problem = sampleProblem(seed, { pieces, share: 0.4, hide });
const answer = runNest(problem);
console.log(
  `${answer.placements.length} pieces on a hide of ${problem.sheets[0].region.outer.length} corners, ` +
    `${problem.sheets[0].qualities.length} regions; ${moves} moves; Node ${process.version}`,
);

const random = createRandom(seed);
const drags = Array.from({ length: moves }, () => {
  const from = answer.placements[random.integer(answer.placements.length)];
  const near = random.next() < NEAR;
  const step = near ? 30 : 1000;
  const x = from.x + random.between(-step, step);
  const y = from.y + random.between(-step, step);
  return { from, to: { sheet: from.sheet, x, y, rotationDeg: from.rotationDeg + random.between(-10, 10) } };
});

const checkMs = median(Array.from({ length: CHECKS }, () => timed(() => checkAnswer(problem, answer)).ms));
const opened = timed(() => openBench(problem, answer.placements));
const bench = opened.result;
const judged = drags.map(({ from, to }) => timed(() => judgeMove(bench, from, to)));
const times = judged.map(({ ms }) => ms);
const valid = judged.filter(({ result }) => result.length === 0).length;
const checksum = createHash('sha256').update(JSON.stringify(judged.map(({ result }) => result)));

console.log(`whole check    ${show(checkMs)} (median of ${CHECKS})`);
console.log(`open the bench ${show(opened.ms)}`);
for (const [label, ms] of [
  ['median', median(times)],
  ['95 of 100', quantile(times, 0.95)],
  ['slowest', quantile(times, 1)],
])
  console.log(`judge a move   ${show(ms)} ${label}, 1/${(checkMs / ms).toFixed(0)} of the whole check`);
console.log(`${valid} moves valid, checksum ${checksum.digest('hex').slice(0, 12)}`);

function timed(work) {
  const started = performance.now();
  const result = work();
  return { result, ms: performance.now() - started };
}

function show(ms) {
  return `${ms.toFixed(3).padStart(9)} ms`;
}

function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

function median(values) {
  return quantile(values, 0.5);
}
