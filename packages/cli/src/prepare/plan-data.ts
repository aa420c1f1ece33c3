import { civilTimeAfter, formatCivilTime, readLot } from '@hidebound/leather';
import type { PreparationJob, PreparePlan, Timetable } from '@hidebound/leather';
import type { AskedTimes } from './time-options.js';

/** A plan as a program reads it: areas in mm², quantities in mL, times in minutes from the first midnight. */
export function planData(plan: PreparePlan, times: AskedTimes): Readonly<Record<string, unknown>> {
  return {
    jobs: plan.jobs.map(jobData),
    untouched: plan.untouched,
    startMin: times.startMin,
    timetable: timetableData(plan.timetables.longest, plan.jobs, times),
    shortest: { endMin: plan.timetables.shortest.endMin, handsMin: plan.timetables.shortest.handsMin },
    swatches: plan.swatches.swatches,
    noRoomForSwatch: plan.swatches.without,
  };
}

function jobData(job: PreparationJob): Readonly<Record<string, unknown>> {
  const { name, leather, preparation, worked, blocks, areaMm2, piecesMm2, pieceCount } = job;
  return {
    name,
    leather: leather.name,
    preparation,
    ...(worked === undefined ? {} : { worked }),
    blocks,
    areaMm2,
    piecesMm2,
    pieceCount,
    margin: job.margin,
    liquids: job.liquids,
    steps: job.steps,
    hazards: job.hazards,
  };
}

function timetableData(
  { tasks, endMin, handsMin }: Timetable,
  jobs: readonly PreparationJob[],
  times: AskedTimes,
) {
  return {
    endMin,
    handsMin,
    tasks: tasks.map(({ id, lot, startMin, endMin: end, readyMin, after }) => {
      const { job, step } = readLot(lot);
      const { kind, coat } = jobs[job]!.steps[step]!;
      return {
        id,
        job: jobs[job]!.name,
        step: kind,
        ...(coat === undefined ? {} : { coat }),
        startMin,
        endMin: end,
        readyMin,
        after,
        ...(times.start === undefined
          ? {}
          : { begins: formatCivilTime(civilTimeAfter(times.start, startMin)) }),
      };
    }),
  };
}
