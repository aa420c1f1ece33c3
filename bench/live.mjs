// One moved piece among many, judged at once: how long that takes beside the exact check of the whole layout, which is
// run in the same minute on the same layout; all in processor time. Needs a build. Options: --pieces 300 --corners 2000 --moves 2000 --seed 1.
import { createHash } from 'node:crypto';
import { createRandom, runNest, sampleProblem } from '@hidebound/geometry';
import { checkAnswer } from '@hidebound/geometry/check';
import { judgeMove, openBench, snapTo } from '@hidebound/geometry/live';

const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : Number(process.argv[at + 1]);
};
const [pieces, corners, moves] = [option('pieces', 300), option('corners', 2000), option('moves', 2000)];
const CHECKS = 5;
/** Pieces that are let go, and from how far (mm) they snap. */
const SNAPS = 200;
const REACH_MM = 8;
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
const snaps = drags.slice(0, SNAPS).map(({ from, to }) => {
  const near = { ...to, x: from.x + (to.x - from.x) / 10, y: from.y + (to.y - from.y) / 10 };
  return timed(() => snapTo(bench, from, { ...near, rotationDeg: from.rotationDeg }, REACH_MM));
});
const valid = judged.filter(({ result }) => result.length === 0).length;
const checksum = createHash('sha256').update(JSON.stringify(judged.map(({ result }) => result)));

console.log(`whole check    ${show(checkMs)} (median of ${CHECKS})`);
console.log(`open the bench ${show(opened.ms)}`);
tell(
  'judge a move',
  judged.map(({ ms }) => ms),
);
tell(
  'snap a piece',
  snaps.map(({ ms }) => ms),
);
console.log(`${snaps.filter(({ result }) => result !== undefined).length} of ${SNAPS} snapped`);
console.log(`${valid} moves valid, checksum ${checksum.digest('hex').slice(0, 12)}`);

function tell(what, times) {
  for (const [label, ms] of [
    ['median', median(times)],
    ['95 of 100', quantile(times, 0.95)],
    ['slowest', quantile(times, 1)],
  ])
    console.log(`${what.padEnd(14)} ${show(ms)} ${label}, ${(ms / checkMs).toFixed(4)} of the whole check`);
}

/** Processor time, so that other work on the machine counts little. */
function timed(work) {
  const started = process.cpuUsage();
  const result = work();
  return { result, ms: process.cpuUsage(started).user / 1000 };
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
