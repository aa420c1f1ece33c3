// A command run on the demo's files, and every number of its pages judged.
import { join } from 'node:path';
import { answerOf, figuresOf, inputsOf } from './demo-job.mjs';
import { judgePage } from './judge-page.mjs';

/**
 * Runs the command of a page with --json and --pdf: `{ numbers, values, open, relations, off }`, `open` being the numbers
 * that nothing explains, `off` the sums of the result that do not come out.
 */
export function judgeCommand(page, job) {
  const pdf = join(job.at, `${page.name}.pdf`);
  const answer = answerOf([...page.args(job), '--pdf', pdf]);
  const inputs = inputsOf(answer.result);
  const figures = figuresOf(page.figures ?? [], answer.result.workshop);
  const { numbers, values } = judgePage(page, pdf, answer, inputs, figures);
  const relations = page.relations(answer.result, inputs, figures);
  return {
    numbers,
    values,
    relations,
    open: numbers.filter(({ explained }) => explained === undefined),
    off: relations.filter(({ isRight }) => !isRight),
  };
}
