// What a plan for preparing must add up to, and what no timetable may do.
import { sum } from '../reckon.mjs';

export function prepareRelations({ jobs, timetable }, figures) {
  const extra = figures.filter(({ path }) => path === 'extra for edges and spill').map(({ value }) => value);
  return [...jobs.flatMap((job) => ofJob(job, extra)), ...ofTimetable(timetable)];
}

function ofJob({ name, blocks, areaMm2, piecesMm2, pieceCount, preparation, liquids }, extra) {
  const sides = preparation.bothSides ? 2 : 1;
  return [
    relation(`${name}: area`, areaMm2, sum(blocks.map((block) => block.areaMm2))),
    relation(`${name}: area of pieces`, piecesMm2, sum(blocks.map((block) => block.piecesMm2))),
    relation(`${name}: pieces`, pieceCount, sum(blocks.map((block) => block.pieces.length))),
    ...liquids.flatMap((liquid) => ofLiquid(`${name}, ${liquid.product}`, liquid, sides * areaMm2, extra)),
  ];
}

/** Area × so much a square metre × coats, and a share for edges and spill; of a mixture, 1 part in 1 + n is dye. */
function ofLiquid(what, { areaMm2, coverage, coats, ml, mix }, onArea, extra) {
  const perM2 = { min: coverage.minMlPerM2, max: coverage.maxMlPerM2 };
  const more = { min: Math.min(...extra), max: Math.max(...extra) };
  return [
    relation(`${what}: area`, areaMm2, onArea),
    ...['min', 'max'].flatMap((end) => [
      relation(`${what}: mL, ${end}`, ml[end], (areaMm2 / 1e6) * perM2[end] * coats[end] * (1 + more[end])),
      ...(mix === undefined
        ? []
        : [
            relation(`${what}: dye, ${end}`, mix.dyeMl[end], ml[end] / (1 + mix.thinnerParts)),
            relation(`${what}: thinner, ${end}`, mix.thinnerMl[end], mix.dyeMl[end] * mix.thinnerParts),
          ]),
    ]),
  ];
}

function ofTimetable({ tasks, endMin, handsMin }) {
  const byStart = tasks.toSorted((a, b) => a.startMin - b.startMin || a.endMin - b.endMin);
  const ready = new Map(tasks.map(({ id, readyMin }) => [id, readyMin]));
  return [
    relation('minutes of hands', handsMin, sum(tasks.map((task) => task.endMin - task.startMin))),
    relation('end of the timetable', endMin, Math.max(...ready.values())),
    ...byStart
      .slice(1)
      .map((task, i) => rule(`${task.id} begins when hands are free`, task.startMin, byStart[i].endMin)),
    ...tasks.flatMap(({ id, startMin, after }) =>
      after.map((other) => rule(`${id} begins after ${other}`, startMin, ready.get(other))),
    ),
  ];
}

function rule(what, told, reckoned) {
  return { what, told, reckoned, isRight: told >= reckoned };
}

function relation(what, told, reckoned) {
  return {
    what,
    told,
    reckoned,
    isRight: Math.abs(told - reckoned) <= 1e-6 * Math.max(1, Math.abs(reckoned)),
  };
}
