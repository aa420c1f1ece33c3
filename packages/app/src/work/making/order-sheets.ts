import { refuseUnsupported } from '@hidebound/geometry';
import {
  buyingAnswers,
  buyingJob,
  costOfLayout,
  costOfOrder,
  figureOf,
  firstTrialProblem,
  leatherBudgets,
  leatherError,
  missedFindings,
  paperNamed,
  parseCivilTime,
  planFindings,
  preparePlan,
  readPageNumbers,
  refuseSpentHides,
  suitOrder,
  writePageNumbers,
} from '@hidebound/leather';
import type { BuyingJob, CostSheet, NamedHide, ResolvedOrder, Workshop } from '@hidebound/leather';
import {
  buyingReport,
  costReport,
  drawReferenceSheet,
  prepareReport,
  quoteReport,
  suitReport,
  workshopCard,
} from '@hidebound/render';
import type { FontBook, PrepareReportInput } from '@hidebound/render';
import { pathBeside } from '../../job/job.js';
import { workshopOf } from '../desk/read-order.js';
import type { MakeChoices, MakeJob, MakeWish } from '../make-tasks.js';
import { drawnReports } from './drawn.js';
import type { Drawn } from './drawn.js';
import { layoutJob } from './layout-job.js';
import { orderJob } from './order-job.js';
import { toldInOrder, toldWithPlace } from './sentences.js';
import type { Told } from '../../words/told.js';

/** Which hide of the job fits which piece. */
export async function suitSheet({ job, choices: { page } }: MakeWish, fonts: FontBook): Promise<Drawn> {
  const { written, order, pieces, workshop } = await orderJob(job);
  const hides = hidesOnHand(job, order);
  const suit = suitOrder({ written, order, pieces, hides, workshop });
  const report = suitReport(suit, { subtitle: subtitleOf(order), warnings: suit.diagnostics });
  return drawnReports([report], toldInOrder(suit.diagnostics), { page, fonts });
}

/** The order's own first, in its order, then the others that are not cut. */
function hidesOnHand({ files, order: path = '' }: MakeJob, { leathers }: ResolvedOrder): NamedHide[] {
  const own = leathers.flatMap(({ hides }) => hides);
  const named = new Map(own.map((file) => [pathBeside(path, file), file] as const));
  const paths = [...new Set([...named.keys(), ...files.keys()])];
  return paths.flatMap((each) => {
    const file = files.get(each);
    const isOnHand = file?.kind === 'hide' && (named.has(each) || file.hide.state !== 'cut');
    return isOnHand ? [{ file: named.get(each) ?? each, hide: file.hide }] : [];
  });
}

/** How much leather to buy: the quick estimate, and what trial layouts made of it. */
export async function buyingSheet(
  { job, choices: { page }, rounds, wasStopped = false }: MakeWish,
  fonts: FontBook,
): Promise<Drawn> {
  const { order, pieces, workshop, diagnostics } = await orderJob(job);
  const buying = buyingJob({ order, pieces, workshop, seed: 1 });
  refuseUnlayable(buying);
  const answers = buyingAnswers(buying, rounds ?? buying.tries.map(() => []), workshop);
  const report = buyingReport({
    order,
    answers,
    statedAreaOffPercent: figureOf(workshop, 'error of a stated area').value,
    wasStopped,
    fonts,
  });
  const findings = [
    ...diagnostics.filter(({ severity }) => severity !== 'note'),
    ...buying.diagnostics,
    ...answers.flatMap((answer, i) => missedFindings(answer, buying.purchases[i]!, pieces, workshop)),
  ];
  return {
    ...drawnReports([report], toldInOrder(findings), { page, fonts }),
    trials: buying.tries.map(({ input }) => input),
  };
}

function refuseUnlayable({ tries }: BuyingJob): void {
  for (const { input } of tries) {
    const [first] = refuseUnsupported(firstTrialProblem(input));
    if (first !== undefined) throw leatherError(first.code, {});
  }
}

/** The plan of preparing, and a card for the bench for each preparation. */
export function preparingSheets({ job, choices }: MakeWish, fonts: FontBook): Drawn {
  const { layout, named, path } = layoutJob(job);
  const workshop = workshopOf(job.files);
  refuseSpentHides(layout, named, path);
  const times = timesOf(choices);
  const plan = preparePlan(layout, named, workshop, times);
  const findings = planFindings(plan, path);
  const input: PrepareReportInput = {
    plan,
    layout,
    workshop,
    ...times,
    hasSwatches: false,
    warnings: findings
      .filter(({ severity }) => severity !== 'note')
      .map((each) => toldWithPlace(each).sentence),
    fonts,
  };
  const reports = [prepareReport(input), ...plan.jobs.map((each) => workshopCard(each, input))];
  return drawnReports(reports, toldInOrder(findings), { page: choices.page, fonts });
}

function timesOf({
  start: written,
  hours,
}: Pick<MakeChoices, 'start' | 'hours'>): Pick<PrepareReportInput, 'start' | 'hours' | 'startMin'> {
  const start = parseCivilTime(written.replace('T', ' '));
  return {
    ...(start === undefined ? {} : { start }),
    ...(hours === undefined ? {} : { hours }),
    startMin: start?.minutes ?? hours?.fromMin ?? 0,
  };
}

interface Costs {
  readonly sheet: CostSheet;
  readonly order: ResolvedOrder;
  readonly isEstimate: boolean;
  readonly workshop: Workshop;
  readonly findings: readonly Told[];
}

/** Of the layout where pieces are laid; before that an estimate of the order. */
async function costsOf({ job }: MakeWish): Promise<Costs> {
  const workshop = workshopOf(job.files);
  const laid = job.layout === undefined ? undefined : layoutJob(job);
  if (laid !== undefined && laid.layout.placements.length > 0) {
    const { layout, hides, changed } = laid;
    const sheet = costOfLayout({ layout, hides, workshop });
    const findings = toldInOrder([...changed, ...sheet.diagnostics]);
    return { sheet, order: layout.order, isEstimate: false, workshop, findings };
  }
  const { order, pieces, diagnostics } = await orderJob(job);
  const sheet = costOfOrder({
    order,
    pieces,
    workshop,
    budgets: leatherBudgets({ order, pieces, workshop }),
  });
  const errors = diagnostics.filter(({ severity }) => severity !== 'note');
  return {
    sheet,
    order,
    isEstimate: true,
    workshop,
    findings: toldInOrder([...errors, ...sheet.diagnostics]),
  };
}

/** What it costs, for the workshop's own eyes. */
export async function costPages(wish: MakeWish, fonts: FontBook): Promise<Drawn> {
  const { sheet, order, isEstimate, findings } = await costsOf(wish);
  const report = costReport({ sheet, subtitle: subtitleOf(order), isEstimate });
  return drawnReports([report], findings, { page: wish.choices.page, fonts });
}

/** A page for each customer, or for one; none while something has no price. */
export async function quotePages(wish: MakeWish, fonts: FontBook): Promise<Drawn> {
  const { sheet, order, isEstimate, workshop, findings } = await costsOf(wish);
  const { customer: wanted, page } = wish.choices;
  const customers = sheet.customers.flatMap((each) => (each.for === undefined ? [] : [each.for]));
  if (sheet.withoutPrice.length > 0) return { title: '', pages: [], findings, customers };
  const asked = sheet.customers.filter((each) => wanted === undefined || each.for === wanted);
  const reports = (asked.length === 0 ? sheet.customers : asked).map((customer) =>
    quoteReport({
      sheet,
      customer,
      order,
      isEstimate,
      ...(workshop.name === undefined ? {} : { workshop: workshop.name }),
    }),
  );
  return { ...drawnReports(reports, findings, { page, fonts }), customers };
}

/** The sheets that lie beside a hide in its photo. */
export function referenceSheets({ choices }: MakeWish, fonts: FontBook): Drawn {
  const sheets = readPageNumbers(choices.sheets);
  const paper = paperNamed(choices.referencePaper);
  return {
    title: `Reference sheets ${writePageNumbers(sheets)}`,
    pages: sheets.map((sheet) => drawReferenceSheet({ sheet, paper, fonts })),
    findings: [],
  };
}

function subtitleOf({ name, version, date }: ResolvedOrder): string {
  return `${name}, version ${version}, ${date}`;
}
