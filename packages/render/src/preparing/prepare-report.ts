import { figureOf, formatArea } from '@hidebound/leather';
import type {
  CivilTime,
  Layout,
  LiquidNeed,
  PreparationJob,
  PreparePlan,
  Workshop,
} from '@hidebound/leather';
import type { Report, ReportBlock, ReportFact, ReportItem, ReportTable } from '../report/report.js';
import type { FontBook } from '../text/font-book.js';
import {
  coatWords,
  durationWords,
  hazardWords,
  mlWords,
  momentWords,
  stepName,
  stepWords,
  waitWords,
} from './preparing-words.js';
import type { TimeWords } from './preparing-words.js';
import { timetableChart } from './timetable-chart.js';
import { timetableRows } from './timetable-rows.js';

export interface PrepareReportInput {
  readonly plan: PreparePlan;
  readonly layout: Pick<Layout, 'order' | 'swatches'>;
  /** The plan’s test pieces are on the cutting sheet of the layout that it is for. */
  readonly hasSwatches: boolean;
  readonly workshop: Workshop;
  /** Minutes of the first day at which work begins. */
  readonly startMin: number;
  /** The first day, where real days are told. */
  readonly start?: CivilTime;
  readonly hours?: { readonly fromMin: number; readonly toMin: number };
  /** What else to say, as whole sentences. */
  readonly warnings: readonly string[];
  /** For the chart; without them there is none. */
  readonly fonts?: FontBook;
}

/** The plan as a whole: what is prepared, what it takes, and the timetable of all leathers together. */
export function prepareReport(input: PrepareReportInput): Report {
  const { plan, layout } = input;
  return {
    title: 'Preparing the leather',
    subtitle: subtitleOf(layout),
    blocks: [
      { kind: 'text', tone: 'answer', text: answerWords(input) },
      ...untouchedBlocks(plan),
      ...(plan.jobs.length === 0 ? [] : plannedBlocks(input)),
    ],
  };
}

/** “Nothing to do”, where every leather is cut as it was bought. */
export function hasNothingToPrepare({ jobs }: PreparePlan): boolean {
  return jobs.length === 0;
}

function subtitleOf({ order }: Pick<Layout, 'order'>): string {
  return `${order.name}, version ${order.version}, ${order.date}`;
}

function answerWords(input: PrepareReportInput): string {
  const { plan, startMin } = input;
  const { jobs, timetables } = plan;
  if (jobs.length === 0)
    return 'Nothing to do: no leather of this layout is to be prepared before it is cut.';
  const area = jobs.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const { shortest, longest } = timetables;
  const what = jobs.length === 1 ? 'One preparation' : `${jobs.length} preparations`;
  const span = (from: number, to: number): string =>
    durationWords(from) === durationWords(to)
      ? durationWords(to)
      : `${durationWords(from)} to ${durationWords(to)}`;
  return `${what}, ${formatArea(area, { unit: 'dm2' })} of leather: ready to sew after ${span(
    shortest.endMin - startMin,
    longest.endMin - startMin,
  )}, of which your hands work ${span(shortest.handsMin, longest.handsMin)}.`;
}

function untouchedBlocks({ untouched, jobs }: PreparePlan): ReportBlock[] {
  if (untouched.length === 0) return [];
  const names = untouched.join(', ');
  const start = jobs.length === 0 ? 'Cut as bought' : 'Nothing to do for';
  return [{ kind: 'text', tone: 'plain', text: `${start}: ${names}.` }];
}

function plannedBlocks(input: PrepareReportInput): ReportBlock[] {
  const { plan, warnings } = input;
  return [
    ...warnings.map((text): ReportBlock => ({ kind: 'text', tone: 'caution', text })),
    { kind: 'section', title: 'What is prepared' },
    whatTable(plan),
    ...wholeNotes(plan),
    { kind: 'section', title: 'Liquids for all of it' },
    liquidTable(plan.jobs.flatMap(({ liquids }) => liquids)),
    { kind: 'text', tone: 'soft', text: coverageNote(plan) },
    { kind: 'section', title: 'Timetable' },
    ...timetableBlocks(input),
  ];
}

function whatTable({ jobs }: PreparePlan): ReportTable {
  return {
    kind: 'table',
    columns: [
      { head: 'leather', align: 'left' },
      { head: 'preparation', align: 'left' },
      { head: 'prepared as', align: 'left' },
      { head: 'area', align: 'right' },
      { head: 'pieces in it', align: 'right' },
      { head: 'sides', align: 'right' },
    ],
    rows: jobs.map((job) => [
      job.name,
      job.preparation.name,
      blockWords(job),
      formatArea(job.areaMm2, { unit: 'dm2' }),
      formatArea(job.piecesMm2, { unit: 'dm2' }),
      job.preparation.bothSides ? '2' : '1',
    ]),
  };
}

function blockWords({ blocks }: PreparationJob): string {
  const rough = blocks.filter(({ roughCut }) => roughCut !== undefined).length;
  const whole = blocks.length - rough;
  return [
    ...(rough === 0 ? [] : [rough === 1 ? '1 rough cut' : `${rough} rough cuts`]),
    ...(whole === 0 ? [] : [whole === 1 ? '1 hide, whole' : `${whole} hides, whole`]),
  ].join(', ');
}

/** A hide that is prepared whole takes liquid for what is no piece, too: say how much that is. */
function wholeNotes({ jobs }: PreparePlan): ReportBlock[] {
  return jobs.flatMap((job): ReportBlock[] => {
    const whole = job.blocks.filter(({ roughCut }) => roughCut === undefined);
    if (whole.length === 0) return [];
    const less = whole.filter((block) => (block.usedUpMm2 ?? Infinity) < block.areaMm2 * 0.98);
    const spared = less.reduce((sum, block) => sum + block.areaMm2 - block.usedUpMm2!, 0);
    const tip =
      spared === 0
        ? 'Give its pieces a margin in the order, and only rough cuts around them are prepared.'
        : `Cut the rest off first, along the freeing cut, and ${formatArea(spared, { unit: 'dm2' })} less are prepared.`;
    return [
      {
        kind: 'text',
        tone: 'soft',
        text: `${job.name} has no margins, so all of ${whole.map(({ hide }) => hide).join(' and ')} is prepared. ${tip}`,
      },
    ];
  });
}

function liquidTable(needs: readonly LiquidNeed[]): ReportTable {
  return {
    kind: 'table',
    columns: [
      { head: 'product', align: 'left' },
      { head: 'for', align: 'left' },
      { head: 'coats', align: 'right' },
      { head: 'a coat, mL/m²', align: 'right' },
      { head: 'to put on', align: 'right' },
      { head: 'of that', align: 'left' },
    ],
    rows: needs.map((need) => [
      need.product,
      need.use === 'condition' ? 'feeding' : need.use === 'condition again' ? 'feeding lightly' : need.use,
      need.use === 'condition again' ? '' : coatWords(need.coats),
      need.coverage === undefined ? 'not known' : coverageWords(need.coverage),
      need.ml === undefined ? 'not known' : mlWords(need.ml),
      mixWords(need),
    ]),
  };
}

function coverageWords({ minMlPerM2, maxMlPerM2 }: NonNullable<LiquidNeed['coverage']>): string {
  const [least, most] = [minMlPerM2, maxMlPerM2].map((value) => String(Math.round(value)));
  return least === most ? String(least) : `${least} to ${most}`;
}

/** "1 part dye + 4 parts thinner: 100 mL + 400 mL". */
function mixWords({ mix }: LiquidNeed): string {
  if (mix === undefined) return 'as it is';
  const { thinnerParts, dyeMl, thinnerMl } = mix;
  const parts = `1 part dye + ${thinnerParts} ${thinnerParts === 1 ? 'part' : 'parts'} thinner`;
  if (dyeMl === undefined || thinnerMl === undefined) return parts;
  return `${parts}: ${mlWords(dyeMl)} + ${mlWords(thinnerMl)}`;
}

function coverageNote({ jobs }: PreparePlan): string {
  const sources = new Map<string, string[]>();
  for (const { product, coverage } of jobs.flatMap(({ liquids }) => liquids)) {
    if (coverage === undefined) continue;
    const known = sources.get(coverage.source) ?? [];
    if (!known.includes(product)) known.push(product);
    sources.set(coverage.source, known);
  }
  const parts = [...sources].map(([source, products]) => `${products.join(', ')}: ${source}`);
  return `How far a coat goes: ${parts.length === 0 ? 'not known for any of these' : parts.join('; ')}. Edges and what is left in cup and cloth are counted in.`;
}

const TIMETABLE_NOTE =
  'For the longest times that each step may take, so that nothing is hurried. One pair of hands; what waits, waits by itself. Every day counts as a working day.';

function timetableBlocks(input: PrepareReportInput): ReportBlock[] {
  const { plan, fonts, startMin, hours } = input;
  const { longest } = plan.timetables;
  const times = timeWordsOf(input);
  const chart: ReportBlock[] =
    fonts === undefined
      ? []
      : [
          {
            kind: 'picture',
            drawing: timetableChart(longest, plan.jobs, {
              fonts,
              startMin,
              times,
              ...(hours === undefined ? {} : { hours }),
            }),
            caption: '',
          },
        ];
  return [
    ...chart,
    { kind: 'text', tone: 'soft', text: TIMETABLE_NOTE },
    {
      kind: 'table',
      columns: [
        { head: 'begin', align: 'left' },
        { head: 'what', align: 'left' },
        { head: 'leather', align: 'left' },
        { head: 'blocks', align: 'right' },
        { head: 'hands', align: 'right' },
        { head: 'goes on at', align: 'left' },
      ],
      rows: timetableRows(longest, plan.jobs).map((row) => [
        momentWords(row.startMin - (times.hasHours || times.start !== undefined ? 0 : startMin), times),
        stepName(row.step, row.job),
        row.job.name,
        row.blocks.length === 0 ? '' : String(row.blocks.length),
        durationWords(row.endMin - row.startMin),
        row.readyMin === row.endMin
          ? 'at once'
          : momentWords(row.readyMin - (times.hasHours || times.start !== undefined ? 0 : startMin), times),
      ]),
    },
  ];
}

function timeWordsOf({ start, hours }: PrepareReportInput): TimeWords {
  return { ...(start === undefined ? {} : { start }), hasHours: hours !== undefined };
}

/** The card to hang up at the bench: one preparation on one page, with boxes to tick. */
export function workshopCard(job: PreparationJob, input: PrepareReportInput): Report {
  const { layout, workshop } = input;
  return {
    title: `${job.name}: ${job.preparation.name}`,
    subtitle: subtitleOf(layout),
    onOnePage: true,
    blocks: [
      { kind: 'facts', rows: cardFacts(job, input) },
      ...(job.liquids.length === 0 ? [] : [liquidTable(job.liquids)]),
      ...thinnerNote(job),
      { kind: 'section', title: 'Order of work' },
      { kind: 'checklist', items: stepItems(job, input) },
      { kind: 'section', title: 'Mind' },
      ...job.hazards.map((hazard): ReportBlock => ({
        kind: 'text',
        tone: 'caution',
        text: hazardWords(hazard, workshop),
      })),
    ],
  };
}

function cardFacts(job: PreparationJob, input: PrepareReportInput): ReportFact[] {
  const { margin, leather } = job;
  const { min, max } = margin.shrinkageMm;
  return [
    {
      name: 'Leather',
      value: [leather.tannage, leather.temper, leather.colour].filter(Boolean).join(', ') || 'not said',
    },
    {
      name: 'Prepared as',
      value: `${blockWords(job)}: ${formatArea(job.areaMm2, { unit: 'dm2' })}${job.preparation.bothSides ? ', both sides' : ''}`,
    },
    {
      name: 'For',
      value: `${job.pieceCount} ${job.pieceCount === 1 ? 'piece' : 'pieces'}, ${formatArea(job.piecesMm2, { unit: 'dm2' })}`,
    },
    ...(margin.hasMm === undefined
      ? []
      : [{ name: 'Margin', value: `${margin.hasMm} mm; ${Math.ceil(margin.needMm)} mm or more is right` }]),
    {
      name: 'May get shorter',
      value: `${min.toFixed(0)} to ${max.toFixed(0)} mm on the longest piece; cut to the line only when all is done`,
    },
    { name: 'Test pieces', value: testPieceWords(job, input) },
  ];
}

function testPieceWords({ blocks }: PreparationJob, input: PrepareReportInput): string {
  const { plan, layout, workshop, hasSwatches } = input;
  const all = [...layout.swatches, ...(hasSwatches ? plan.swatches.swatches : [])];
  const drawn = all.filter(({ hide, roughCut }) =>
    blocks.some((block) => block.roughCut === roughCut && block.hide === hide),
  );
  if (drawn.length > 0) return `${drawn.map(({ id }) => id).join(', ')} on the cutting sheet`;
  const { min, max } = figureOf(workshop, 'test piece, sides').value;
  return `one of ${min} × ${max} mm for each, from waste or an offcut of the same hide`;
}

function thinnerNote({ liquids }: PreparationJob): ReportBlock[] {
  const thinned = liquids.filter(({ mix }) => mix !== undefined);
  return thinned.map(({ product, mix }) => ({
    kind: 'text',
    tone: 'plain',
    text: `Thin ${product} only with ${mix?.thinner ?? 'the thinner that the dye’s label names'}: another one can spoil it.`,
  }));
}

function stepItems(job: PreparationJob, input: PrepareReportInput): ReportItem[] {
  const rows = timetableRows(input.plan.timetables.longest, input.plan.jobs);
  const times = timeWordsOf(input);
  const hasDays = times.hasHours || times.start !== undefined;
  return job.steps.map((step, s) => {
    const first = rows.find((row) => row.job === job && row.stepIndex === s);
    const wait = waitWords(step.waitH);
    return {
      text: stepWords(step, job),
      aside: [
        ...(first === undefined ? [] : [momentWords(first.startMin - (hasDays ? 0 : input.startMin), times)]),
        ...(wait === '' ? [] : [`then wait ${wait}`]),
      ].join(' · '),
    };
  });
}
