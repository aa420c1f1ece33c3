import {
  DEFAULT_WORKSHOP,
  buyingAnswers,
  buyingJob,
  figureOf,
  firstTrialProblem,
  missedFindings,
  namesOf,
} from '@hidebound/leather';
import type { PurchaseAnswer, TrialRounds } from '@hidebound/leather';
import { buyingReport } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { tryHides } from '../buying/try-hides.js';
import type { TrialGoal } from '../buying/try-hides.js';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { numberOption, textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import type { ExitStatus } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadOrderPlan } from '../io/load-order.js';
import { loadWorkshop } from '../io/load-workshop.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { refuseNotPossibleYet } from '../not-possible-yet.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';

/** Tells how much leather to buy for an order. */
export async function buyCommand(
  [orderPath]: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  refuseReportNames(options);
  const inUse = loadWorkshop(textOption(options, 'workshop'), orderPath!);
  const workshop = inUse?.workshop ?? DEFAULT_WORKSHOP;
  const plan = await loadOrderPlan(orderPath!, workshop);
  const { order, pieces } = plan;
  const job = buyingJob({ order, pieces, workshop, seed: numberOption(options, 'draw')! });
  // What the engine can't do is told before any trial.
  for (const { input } of job.tries) refuseNotPossibleYet(firstTrialProblem(input));
  const cores = numberOption(options, 'cores');
  const answersFrom = (rounds: TrialRounds): PurchaseAnswer[] => buyingAnswers(job, rounds, workshop);
  // Before the trials: offers that can't be compared are refused at once.
  answersFrom(job.tries.map(() => []));
  const { rounds, wasStopped } = await tryHides(
    job.tries.map(({ input }) => input),
    { ...goalFrom(options), ...(cores === undefined ? {} : { cores }) },
    (soFar) => answersFrom(soFar).map(firstWords),
    context,
  );
  const answers = answersFrom(rounds);
  const isPaged = textOption(options, 'pdf') !== undefined || textOption(options, 'pageSvg') !== undefined;
  const input = {
    order: plan.order,
    answers,
    statedAreaOffPercent: figureOf(workshop, 'error of a stated area').value,
    wasStopped,
  };
  const files = await reportFiles(
    buyingReport({ ...input, ...(isPaged ? { fonts: loadFontBook() } : {}) }),
    options,
  );
  const names = files.map(({ path }) => path);
  refuseOverwriting(names, [orderPath!, ...(inUse === undefined ? [] : [inUse.file])]);
  writeFilesSafely(files);
  const findings = [
    ...plan.diagnostics.filter(({ severity }) => severity !== 'note'),
    ...job.diagnostics,
    ...answers.flatMap((answer, i) => missedFindings(answer, job.purchases[i]!, plan.pieces, workshop)),
  ];
  return {
    exitStatus: statusOf(answers, wasStopped),
    lines: [
      ...findingLines(findings),
      ...(findings.length === 0 ? [] : ['']),
      ...reportLines(buyingReport(input)),
      ...(names.length === 0 ? [] : ['']),
      ...names.map((name) => `The page is in ${name}`),
    ],
    data: {
      file: orderPath,
      ...(inUse === undefined ? {} : { workshop: inUse.file }),
      stopped: wasStopped,
      trials: rounds.map((own) => own.length),
      purchases: answers,
      written: names,
    },
    diagnostics: findings,
  };
}

function goalFrom(options: OptionValues): TrialGoal {
  const trials = numberOption(options, 'trials');
  return trials === undefined ? { seconds: numberOption(options, 'seconds')! } : { trials };
}

function firstWords({ leathers, kinds }: PurchaseAnswer): string {
  const first = kinds[0];
  const hides = first?.levels.find(({ inHundred }) => inHundred === 90)?.hides;
  return first?.holdsAll !== true || hides === undefined
    ? `${namesOf({ leathers })}: no hides that can be bought hold all pieces`
    : `${namesOf({ leathers })}: ${hides} of “${first.name}”`;
}

function statusOf(answers: readonly PurchaseAnswer[], wasStopped: boolean): ExitStatus {
  if (wasStopped) return EXIT_STATUS.stopped;
  return answers.every(({ kinds }) => kinds[0]?.holdsAll === true)
    ? EXIT_STATUS.done
    : EXIT_STATUS.answerIsNo;
}
