// Which numbers of the preparing page and its cards follow from the plan.
import { area, count, length, mark, minutes, sum, versions, volume } from '../reckon.mjs';
import { prepareRelations } from './prepare-relations.mjs';

/** Charts of time are ruled by so many hours, up to as many marks. */
const TICK_HOURS = 12;
const MOST_TICKS = 40;

export const prepare = {
  name: 'prepare',
  args: ({ layout }) => ['prepare', layout],
  identifying: ['job', 'step', 'product'],
  unprinted: /\.(hands|outline|origin)\./,
  figures: ['test piece, sides', 'water, at most', 'extra for edges and spill'],
  derive: ({ jobs, timetable }, inputs) => [
    ...versions(inputs),
    count([jobs.length], 'preparations', []),
    area(sum(jobs.map(({ areaMm2 }) => areaMm2)), 'area of all', []),
    ...Array.from({ length: MOST_TICKS }, (_, i) => minutes(60 * TICK_HOURS * i, 'scale of hours', [])),
    mark(0, 'scale of hours'),
    ...jobs.flatMap(ofJob),
    ...groupsOf(timetable.tasks).flatMap(ofGroup),
  ],
  relations: (plan, _, figures) => prepareRelations(plan, figures),
};

function ofJob({ name, preparation, blocks, liquids, steps }) {
  return [
    count([blocks.length], 'blocks', [name]),
    count([preparation.bothSides ? 2 : 1], 'sides', [name]),
    ...steps.flatMap(({ kind, waitH }) =>
      [waitH.min, waitH.max].map((hours) => minutes(60 * hours, 'wait', [name, kind])),
    ),
    ...liquids.flatMap(({ product, coats, ml, mix }) => [
      ...[ml, mix?.dyeMl, mix?.thinnerMl].flatMap((span) =>
        span === undefined
          ? []
          : [span.min, span.max].map((each) => volume(roundedMl(each), 'ml', [product])),
      ),
      ...(mix === undefined
        ? []
        : [
            count([1], 'one part of dye', [product]),
            count([mix.thinnerParts], 'parts of thinner', [product]),
          ]),
      ...Array.from({ length: coats.max }, (_, i) => count([i + 1], 'coats', [product])),
    ]),
  ];
}

/** Liquids are told in steps that grow with their amount: nobody measures half a litre to the millilitre. */
function roundedMl(ml) {
  const step = ml < 10 ? 0.1 : ml < 100 ? 1 : ml < 1000 ? 5 : 10;
  return Math.round(ml / step) * step;
}

/** The tasks of one step and coat on all blocks of a job. */
function groupsOf(tasks) {
  const groups = new Map();
  for (const task of tasks) {
    const key = [task.job, task.step, task.coat].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), task]);
  }
  return [...groups.values()];
}

/** When the first begins, how long hands work on all, when the last is ready. */
function ofGroup(tasks) {
  const [{ job, step, coat }] = tasks;
  const names = [job, step];
  return [
    minutes(Math.min(...tasks.map(({ startMin }) => startMin)), 'first start', names),
    minutes(sum(tasks.map(({ startMin, endMin }) => endMin - startMin)), 'hands', names),
    minutes(Math.max(...tasks.map(({ readyMin }) => readyMin)), 'last ready', names),
    ...(coat === undefined ? [] : [count([coat], 'coat', names)]),
  ];
}
