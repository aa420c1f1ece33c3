import {
  DEFAULT_WORKSHOP,
  buyablesFor,
  cutThatHolds,
  figureOf,
  nestProblemFor,
  hidesOfTrial,
  lossPiecesOf,
  namesOf,
  orderOn,
  purchaseAnswer,
  purchasesOf,
  quickNeed,
  usableShareOf,
} from '@hidebound/leather';
import type {
  Buyable,
  Diagnostic,
  LayablePiece,
  MissedPiece,
  Purchase,
  PurchaseAnswer,
  QuickNeed,
  TrialInput,
  TrialRounds,
  Workshop,
} from '@hidebound/leather';
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
  const job = jobOf(plan.order, plan.pieces, workshop, numberOption(options, 'draw')!);
  const cores = numberOption(options, 'cores');
  const answersFrom = (rounds: TrialRounds): PurchaseAnswer[] => answersOf(job, rounds, workshop);
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

/** One kind of hide that is tried for one purchase. */
interface Try {
  readonly purchase: number;
  readonly buyable: Buyable;
  readonly input: TrialInput;
  readonly quick: QuickNeed;
}

interface BuyingJob {
  readonly purchases: readonly Purchase[];
  readonly tries: readonly Try[];
  readonly diagnostics: readonly Diagnostic[];
}

function jobOf(
  order: Purchase['order'],
  pieces: readonly LayablePiece[],
  workshop: Workshop,
  seed: number,
): BuyingJob {
  const { purchases, diagnostics } = purchasesOf(order, pieces);
  const found = purchases.map((purchase) => buyablesFor(purchase, workshop));
  const lossPieces = purchases.map((purchase) => lossPiecesOf(purchase, pieces));
  const tries = purchases.flatMap((purchase, index) =>
    found[index]!.buyables.map((buyable): Try => {
      const usableShare = usableShareOf(buyable, workshop);
      const { areaMm2, rule } = buyable;
      const quick = quickNeed(purchase, lossPieces[index]!, { rule, areaMm2, usableShare }, workshop);
      const input: TrialInput = {
        order: purchase.order,
        pieces: pieces.filter(({ article, piece }) => isOf(purchase, article, piece)),
        workshop: { flawDefaults: workshop.flawDefaults, zoneDefaults: workshop.zoneDefaults },
        rule,
        areaMm2,
        usableShare,
        seed,
        piecesMm2: purchase.piecesMm2,
      };
      return { purchase: index, buyable, input, quick };
    }),
  );
  for (const { input } of tries) refuseUnlayable(input);
  return { purchases, tries, diagnostics: [...diagnostics, ...found.flatMap((own) => own.diagnostics)] };
}

function isOf({ order }: Purchase, article: string, piece: string): boolean {
  return order.articles.some(
    ({ name, pieces }) => name === article && pieces.some((own) => own.name === piece),
  );
}

/** What the engine can't do is told before any trial. */
function refuseUnlayable(input: TrialInput): void {
  const hides = hidesOfTrial(input, 1, 1);
  const order = orderOn(input.order, hides);
  refuseNotPossibleYet(nestProblemFor({ ...input, order, hides, budget: { seed: 1, streams: 1 } }).problem);
}

function answersOf(
  { purchases, tries }: BuyingJob,
  rounds: TrialRounds,
  workshop: Workshop,
): PurchaseAnswer[] {
  return purchases.map((purchase, index) => {
    const kinds = tries.flatMap((one, i) =>
      one.purchase === index ? [{ buyable: one.buyable, quick: one.quick, outcomes: rounds[i] ?? [] }] : [],
    );
    return purchaseAnswer(purchase, kinds, workshop);
  });
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

/** Pieces that no kind of hide holds, then those that the first choice misses now and then. */
function missedFindings(
  answer: PurchaseAnswer,
  purchase: Purchase,
  pieces: readonly LayablePiece[],
  workshop: Workshop,
): Diagnostic[] {
  const first = answer.kinds[0];
  if (first === undefined) return [];
  if (first.holdsAll) {
    return distinct(first.missed).map(({ article, piece, trials }) => ({
      code: 'piece-misses-offer',
      severity: 'warning',
      params: { article, piece, offer: first.name, trials, of: first.trials },
    }));
  }
  return distinct(first.missed).map(({ article, piece, reason }) => ({
    code: 'piece-fits-no-offer',
    severity: 'error',
    params: {
      article,
      piece,
      leather: namesOf(answer),
      why: WHY[reason] ?? 'no room was left for it',
      cut: cutThatHolds(purchase, pieces, { article, piece }, workshop) ?? '',
    },
  }));
}

const WHY: Partial<Record<MissedPiece['reason'], string>> = {
  'larger-than-every-sheet': 'it is larger than every one of them',
  'no-leather-good-enough': 'no place on them is good enough in looks, strength and zone',
  'direction-unknown': 'their direction is not known',
  thickness: 'none is of its thickness',
};

/** A piece may have been missed for several reasons; the most frequent one is told. */
function distinct<Missed extends MissedPiece & { readonly trials: number }>(
  missed: readonly Missed[],
): Missed[] {
  const byPiece = new Map<string, Missed>();
  for (const own of [...missed].sort((a, b) => b.trials - a.trials)) {
    const key = JSON.stringify([own.article, own.piece]);
    if (!byPiece.has(key)) byPiece.set(key, own);
  }
  return [...byPiece.values()];
}
