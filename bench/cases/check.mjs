import { startNest } from '@hidebound/geometry';
import { checkAnswer } from '@hidebound/geometry/check';
import { report, seconds } from './common.mjs';
import { problemNamed } from './problem.mjs';

const runs = Number(process.argv[3]);
const problem = problemNamed('400', 1);
const run = startNest(problem);
while (run.best() === undefined) run.advance();
const answer = run.best();
const times = [];
let violations;
for (let i = 0; i < runs; i++) {
  const check = seconds(() => checkAnswer(problem, answer));
  times.push(check.seconds);
  violations = check.result;
}
report([[`${answer.placements.length} laid`, times, 's']], JSON.stringify(violations));
