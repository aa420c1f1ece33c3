import type { Diagnostic } from '../model/diagnostic.js';
import type { Layout } from '../model/layout.js';
import type { OrderLeather, Preparation } from '../model/order.js';
import type { Span } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import type { NamedHide } from '../order/sheets.js';
import { blocksOf } from './blocks.js';
import type { PreparedBlock } from './blocks.js';
import { findingsOfJob } from './findings.js';
import { hazardsOf } from './hazards.js';
import type { Hazard } from './hazards.js';
import { liquidNeeds } from './liquids.js';
import type { LiquidNeed } from './liquids.js';
import { marginNeed } from './margins.js';
import type { MarginNeed } from './margins.js';
import { orderOfWork } from './order-of-work.js';
import type { Worked, WorkStep } from './order-of-work.js';
import { findSwatches } from './swatches.js';
import type { FoundSwatches } from './swatches.js';
import { isFullOfOil } from './tannage-care.js';
import { tasksOfJobs } from './tasks.js';
import { timetableOf } from './timetable.js';
import type { Timetable, TimetableOptions } from './timetable.js';

/** Leather of one preparation that goes through the same steps at once. */
export interface PreparationJob {
  /** Names it within the plan: "body", or "body, tooled". */
  readonly name: string;
  readonly leather: OrderLeather;
  readonly preparation: Preparation;
  readonly worked?: Worked;
  readonly blocks: readonly PreparedBlock[];
  /** Of one side. */
  readonly areaMm2: number;
  readonly piecesMm2: number;
  readonly pieceCount: number;
  readonly liquids: readonly LiquidNeed[];
  readonly steps: readonly WorkStep[];
  readonly margin: MarginNeed;
  readonly hazards: readonly Hazard[];
}

/** What of a layout is prepared, with what, in which order and by when. */
export interface PreparePlan {
  readonly jobs: readonly PreparationJob[];
  /** Leathers that are cut as they were bought, by name. */
  readonly untouched: readonly string[];
  /** If everything dries as fast as it can, and if it takes as long as it may. */
  readonly timetables: { readonly shortest: Timetable; readonly longest: Timetable };
  readonly swatches: FoundSwatches;
  readonly findings: readonly Diagnostic[];
}

/**
 * The plan for a layout’s rough cuts. A leather with a preparation whose pieces have no rough cut is prepared as the whole
 * hide, less what lies on it of other leathers. Leather without a preparation is left as it is; blocks that lie cut on
 * the table already are left out, with a note. Areas are those of the layout’s own outlines and of the hides given.
 * Throws `RangeError` where a step is longer than the working hours.
 */
export function preparePlan(
  layout: Layout,
  hides: readonly NamedHide[],
  workshop: Workshop,
  options: TimetableOptions = {},
): PreparePlan {
  const { blocks, done } = blocksOf(layout, hides);
  const jobs = layout.order.leathers.flatMap((leather) => jobsOfLeather(leather, blocks, layout, workshop));
  const used = new Set(layout.placements.map(({ article, piece }) => leatherOf(layout, article, piece)));
  const timetable = (end: keyof Span): Timetable => timetableOf(tasksOfJobs(jobs, end), options);
  const wishes = jobs.flatMap((job) =>
    job.blocks.map(({ hide, roughCut }) => (roughCut === undefined ? { hide } : { hide, roughCut })),
  );
  return {
    jobs,
    untouched: layout.order.leathers
      .filter(({ name, preparation }) => preparation === undefined && used.has(name))
      .map(({ name }) => name),
    timetables: { shortest: timetable('min'), longest: timetable('max') },
    swatches: findSwatches(layout, hides, wishes, workshop),
    findings: [
      ...done.map((id): Diagnostic => ({
        code: 'prepare-block-cut',
        severity: 'note',
        params: { id },
        place: { at: id },
      })),
      ...jobs.flatMap((job) => findingsOfJob(job, workshop)),
    ],
  };
}

function leatherOf({ order }: Layout, article: string, piece: string): string | undefined {
  const found = order.articles.find(({ name }) => name === article);
  return found?.pieces.find(({ name }) => name === piece)?.leather;
}

/** Tooled or moulded blocks of a leather go through other steps than the rest, so that they are a job of their own. */
function jobsOfLeather(
  leather: OrderLeather,
  all: readonly PreparedBlock[],
  layout: Layout,
  workshop: Workshop,
): PreparationJob[] {
  const { preparation } = leather;
  if (preparation === undefined) return [];
  const own = all.filter((block) => block.leather === leather.name);
  const kinds = [...new Set(own.map(({ worked }) => worked))];
  return kinds.map((worked): PreparationJob => {
    const blocks = own.filter((block) => block.worked === worked);
    const sum = (of: (block: PreparedBlock) => number): number =>
      blocks.reduce((total, block) => total + of(block), 0);
    const areaMm2 = sum((block) => block.areaMm2);
    const isOily = isFullOfOil(leather, workshop);
    const state = { isWorked: worked !== undefined, isFullOfOil: isOily };
    const liquids = liquidNeeds(preparation, areaMm2, workshop, state);
    const steps = orderOfWork({
      preparation,
      workshop,
      ...(worked === undefined ? {} : { worked }),
      isWhole: blocks.every(({ roughCut }) => roughCut === undefined),
      takesOut: blocks.some(({ takesOut }) => takesOut),
      isFullOfOil: isOily,
    });
    return {
      name: worked === undefined ? leather.name : `${leather.name}, ${worked}`,
      leather,
      preparation,
      ...(worked === undefined ? {} : { worked }),
      blocks,
      areaMm2,
      piecesMm2: sum((block) => block.piecesMm2),
      pieceCount: sum((block) => block.pieces.length),
      liquids,
      steps,
      margin: marginNeed(blocks, worked !== undefined, workshop),
      hazards: hazardsOf({ preparation, leather, steps, order: layout.order, workshop }),
    };
  });
}
