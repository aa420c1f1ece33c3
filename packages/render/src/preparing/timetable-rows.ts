import { readLot } from '@hidebound/leather';
import type { PreparationJob, TimedTask, Timetable, WorkStep } from '@hidebound/leather';

/** What hands do in one go: one step of one job, on one block after the other. */
export interface TimetableRow {
  readonly job: PreparationJob;
  readonly jobIndex: number;
  readonly step: WorkStep;
  readonly stepIndex: number;
  /** None for what is done once for the job. */
  readonly blocks: readonly string[];
  readonly startMin: number;
  readonly endMin: number;
  readonly readyMin: number;
}

/** Tasks of a timetable in the order of time; neighbours that are the same step of the same job are one row. */
export function timetableRows({ tasks }: Timetable, jobs: readonly PreparationJob[]): TimetableRow[] {
  const inOrder = [...tasks].sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin);
  const rows: TimetableRow[] = [];
  let lot: string | undefined;
  for (const task of inOrder) {
    // Nothing to do and nothing to wait for: it only waits for others.
    if (task.handsMin === 0 && task.waitMin === 0) continue;
    const last = rows[rows.length - 1];
    // A night between two blocks parts a row: its hands would seem to work through it.
    if (last !== undefined && task.lot === lot && task.startMin === last.endMin) {
      rows[rows.length - 1] = {
        ...last,
        blocks: withBlock(last.blocks, task.block),
        endMin: task.endMin,
        readyMin: Math.max(last.readyMin, task.readyMin),
      };
    } else rows.push(rowOf(task, jobs));
    lot = task.lot;
  }
  return rows;
}

function withBlock(blocks: readonly string[], block: string | undefined): readonly string[] {
  return block === undefined || blocks.includes(block) ? blocks : [...blocks, block];
}

function rowOf(
  { lot, block, startMin, endMin, readyMin }: TimedTask,
  jobs: readonly PreparationJob[],
): TimetableRow {
  const { job: jobIndex, step: stepIndex } = readLot(lot);
  const job = jobs[jobIndex]!;
  const step = job.steps[stepIndex]!;
  return { job, jobIndex, step, stepIndex, blocks: withBlock([], block), startMin, endMin, readyMin };
}
