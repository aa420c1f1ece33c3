import type { Span } from '../model/workshop-rules.js';
import type { PreparedBlock } from './blocks.js';
import type { WorkStep } from './order-of-work.js';
import type { Task } from './timetable.js';

const MM2_PER_M2 = 1e6;
const HOUR_MIN = 60;

export interface JobToTime {
  readonly name: string;
  readonly preparation: { readonly bothSides: boolean };
  readonly blocks: readonly PreparedBlock[];
  readonly steps: readonly WorkStep[];
}

/** A lot of tasks is one step of one job, over its blocks. */
export function lotOf(job: number, step: number): string {
  return `${job} ${step}`;
}

/** Which step of which job a lot is. */
export function readLot(lot: string): { readonly job: number; readonly step: number } {
  const [job = 0, step = 0] = lot.split(' ').map(Number);
  return { job, step };
}

/**
 * The tasks of all jobs, with the least or the most of every span. Each block goes through the steps on its own. Rough
 * cuts need not wait for the test piece to dry; all that wets the leather does.
 */
export function tasksOfJobs(jobs: readonly JobToTime[], end: keyof Span): Task[] {
  return jobs.flatMap((job, j) => tasksOfJob(job, j, jobs, end));
}

function tasksOfJob(job: JobToTime, j: number, jobs: readonly JobToTime[], end: keyof Span): Task[] {
  const tasks: Task[] = [];
  const once: string[] = [];
  /** What the next step of each block has to wait for; the first waits for the looking over only. */
  const last = new Map<PreparedBlock, readonly string[]>();
  let test: string | undefined;
  job.steps.forEach((step, s) => {
    const lot = lotOf(j, s);
    const waitMin = Math.round(step.waitH[end] * HOUR_MIN);
    if (step.once) {
      tasks.push({ id: lot, lot, handsMin: minutes(step.hands.each[end]), waitMin, after: once.slice(-1) });
      if (step.kind === 'test') test = lot;
      once.push(lot);
      return;
    }
    const isDryCut = step.kind === 'rough cut' || step.kind === 'take out';
    for (const block of job.blocks) {
      if (step.kind === 'take out' && !block.takesOut) continue;
      const after = [
        ...(last.get(block) ?? once.slice(0, 1)),
        ...(isDryCut || test === undefined ? [] : [test]),
        ...(step.kind === 'take out' ? roughCutsOn(block.hide, jobs, j) : []),
      ];
      const id = taskId(lot, block);
      const parts = handsOnBlock(step, block, job, end).map((handsMin, i): Task => ({
        id: i === 0 ? id : `${id} ${i + 1}`,
        lot,
        block: `${block.id} ${block.hide}`,
        handsMin,
        waitMin,
        after,
      }));
      tasks.push(...parts);
      last.set(
        block,
        parts.map((part) => part.id),
      );
    }
  });
  return tasks;
}

function taskId(lot: string, block: PreparedBlock): string {
  return `${lot} ${block.id} ${block.hide}`;
}

/** Tasks of other jobs that cut their rough cuts out of this hide. */
function roughCutsOn(hide: string, jobs: readonly JobToTime[], own: number): string[] {
  return jobs.flatMap((job, j) => {
    const step = job.steps.findIndex(({ kind }) => kind === 'rough cut');
    if (j === own || step === -1) return [];
    return job.blocks
      .filter((block) => block.hide === hide && block.roughCut !== undefined)
      .map((block) => taskId(lotOf(j, step), block));
  });
}

/** A step that is done piece by piece may be laid down after so long, and taken up the next morning. */
const PART_MIN = 60;

/**
 * Hands on one block: for itself, by its area on each side that is treated, and by its pieces; these in parts of an hour
 * or of one piece. Where only rough cuts lie on a hide of other leathers, cutting these is their own task.
 */
function handsOnBlock(step: WorkStep, block: PreparedBlock, job: JobToTime, end: keyof Span): number[] {
  if (step.kind === 'take out' && block.hasLooseOthers !== true) return [0];
  const { hands } = step;
  const sides = job.preparation.bothSides ? 2 : 1;
  const areaM2 = (block.areaMm2 * sides) / MM2_PER_M2;
  const base = hands.each[end] + hands.perM2[end] * areaM2;
  const perPiece = hands.perPiece[end];
  if (perPiece === 0) return [minutes(base)];
  const inPart = Math.max(1, Math.floor(PART_MIN / perPiece));
  const count = Math.max(1, Math.ceil(block.pieces.length / inPart));
  return Array.from({ length: count }, (_, i) => {
    const pieces = Math.min(inPart, block.pieces.length - i * inPart);
    return minutes((i === 0 ? base : 0) + perPiece * pieces);
  });
}

/** Whole minutes, never none. */
function minutes(value: number): number {
  return Math.max(1, Math.round(value));
}
