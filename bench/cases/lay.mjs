import { regionArea, startNest } from '@hidebound/geometry';
import { checkAnswer, isProven } from '@hidebound/geometry/check';
import { report } from './common.mjs';
import { problemNamed } from './problem.mjs';

const [limit, runs, name] = [Number(process.argv[2]), Number(process.argv[3]), process.argv[4]];
const first = [];
const usedUp = [];
const placed = [];
let last;
// Fewer runs of the long part: it takes `limit` seconds each.
const longRuns = Math.max(1, Math.min(3, runs));
for (let i = 0; i < runs; i++) {
  const problem = problemNamed(name, 1 + i);
  const run = startNest(problem);
  const started = performance.now();
  const elapsed = () => (performance.now() - started) / 1000;
  let progress;
  while (run.best() === undefined) progress = run.advance();
  first.push(elapsed());
  if (i >= longRuns) continue;
  while (!run.done && elapsed() < limit) progress = run.advance();
  last = run.best();
  if (!isProven(checkAnswer(problem, last))) throw new Error(`${name}: the exact check refuses the layout`);
  usedUp.push(yieldOf(problem, last, progress));
  placed.push(last.placements.length / (last.placements.length + last.unplaced.length));
}

/** Piece area over the area used up. */
function yieldOf(problem, answer, progress) {
  const areaOf = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
  const area = answer.placements.reduce((sum, { item }) => sum + areaOf.get(item), 0);
  return area / progress.usedUpMm2;
}

report(
  [
    ['first valid layout', first, 's'],
    [`yield of used-up, ${limit} s`, usedUp, '%'],
    [`copies laid, ${limit} s`, placed, '%'],
  ],
  JSON.stringify(last.placements.length),
);
