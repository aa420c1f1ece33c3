/**
 * Finished layouts of the search, judged by jsts 2.12.1 (the JTS Topology Suite in JavaScript) alone: nothing of the
 * exact check takes part in the verdict, nor do the project's own booleans and distances.
 */
import { readFileSync } from 'node:fs';
import { CHECK_FORGIVES_MM, laneRegion, regionBox, runNest, sampleProblem } from '@hidebound/geometry';
import type {
  Box,
  CopyRef,
  Item,
  Need,
  NestAnswer,
  NestProblem,
  Placement,
  Region,
  Sheet,
} from '@hidebound/geometry';
import { checkAnswer, isProven } from '@hidebound/geometry/check';
import { readPatternSvg } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  nestProblemFor,
  parseArticle,
  parseHide,
  parseOrder,
  resolveOrder,
  resolvePieces,
} from '@hidebound/leather';
import { beforeAll, describe, expect, test } from 'vitest';
import { turnJob } from '../packages/geometry/src/check/test-jobs.js';
import { loadJudge } from '../packages/geometry/src/check/test-judge.js';
import type { Judge, Shape } from '../packages/geometry/src/check/test-judge.js';
import { joinedZones } from './support/joined-zones.js';

interface Finished {
  readonly name: string;
  readonly problem: NestProblem;
  readonly answer: NestAnswer;
}

/** What the judge's own overlays leave behind where shapes only touch, mm². */
const NO_AREA_MM2 = 1e-6;

let judge: Judge;
let jobs: readonly Finished[];

beforeAll(async () => {
  judge = await loadJudge();
  const problems: [string, NestProblem][] = [
    ['the demo order', demoProblem()],
    ['seed 1', sampleProblem(1, { pieces: 30, share: 0.45, joins: 1 })],
    ['seed 2, three hides', sampleProblem(2, { pieces: 30, hides: 3, share: 0.3, joins: 1 })],
    ['seed 3, sets', sampleProblem(3, { pieces: 12, mode: 'sets', share: 0.3, joins: 1 })],
    ['seed 4, shapes alone', sampleProblem(4, { pieces: 40, rules: 'plain', share: 0.6, joins: 1 })],
    ['seed 5, no distances', touching(sampleProblem(5, { pieces: 24, share: 0.4 }))],
    [
      'seed 6, strokes and readings',
      sampleProblem(6, { pieces: 24, share: 0.3, hide: { cut: 'side', strokes: 5, readings: 6, flaws: 20 } }),
    ],
  ];
  jobs = problems.map(([name, problem]) => ({ name, problem, answer: runNest(problem) }));
});

function touching(problem: NestProblem): NestProblem {
  return { ...problem, distances: { gap: 0, edge: 0, void: 0 } };
}

function demoProblem(): NestProblem {
  const folder = new URL('../fixtures/demo/', import.meta.url);
  const file = 'bicycle-goods.order.yaml';
  const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
  const written = parseOrder(textOf(file), { file });
  const readArticle = (name: string): ReturnType<typeof parseArticle> =>
    parseArticle(textOf(name), { file: name });
  const order = resolveOrder(completeOrder(written, DEFAULT_WORKSHOP, readArticle, { file }));
  const { pieces } = resolvePieces(order, (name) =>
    readPatternSvg(textOf(name), { file: name, reading: { file: name, roles: [] } }),
  );
  const names = [...new Set(order.leathers.flatMap(({ hides }) => hides))];
  const hides = names.map((name) => ({ file: name, hide: parseHide(textOf(name), { file: name }) }));
  return nestProblemFor({ order, pieces, hides, budget: { seed: 1, streams: 1, joins: 1 } }).problem;
}

/** A piece where it lies, as the judge sees it. */
interface Lying {
  readonly item: Item;
  readonly placement: Placement;
  readonly shape: Shape;
  readonly reach: Box;
}

function lyingOn(sheet: Sheet, { problem, answer }: Finished): Lying[] {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  return answer.placements
    .filter((placement) => placement.sheet === sheet.id)
    .map((placement) => {
      const item = items.get(placement.item)!;
      return {
        item,
        placement,
        shape: judge.shapeOf(item.region, placement),
        reach: reachOf(item, placement),
      };
    });
}

/** A box that holds the piece however it is turned: only tells which pairs need no look. */
function reachOf({ region }: Item, { x, y }: Placement): Box {
  const { minX, minY, maxX, maxY } = regionBox(region);
  const radius = Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY));
  return { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
}

/** Every fault that the judge finds, in words. */
function faultsOf(job: Finished): string[] {
  return job.problem.sheets.flatMap((sheet) => {
    const lying = lyingOn(sheet, job);
    return [
      ...gapFaults(lying, job),
      ...laneFaults(lying, sheet, job),
      ...blockFaults(lying, sheet, job),
      ...lying.flatMap((one) => [...sheetFaults(one, sheet, job.problem), ...leatherFaults(one, sheet)]),
    ];
  });
}

function gapFaults(lying: readonly Lying[], { problem: { distances }, answer }: Finished): string[] {
  const faults: string[] = [];
  const seats = answer.lanes.flatMap(({ id, kerfMm, rows }) =>
    rows.flatMap(({ straps }, row) => straps.map((strap) => ({ key: keyOf(strap), id, kerfMm, row }))),
  );
  const seatOf = new Map(seats.map((seat) => [seat.key, seat]));
  lying.forEach((one, i) => {
    for (const other of lying.slice(i + 1)) {
      const between = one.item.group === other.item.group ? 0 : (distances.betweenGroups ?? 0);
      const [seat, next] = [seatOf.get(keyOf(one.placement)), seatOf.get(keyOf(other.placement))];
      const areNeighbours = seat !== undefined && seat.id === next?.id && Math.abs(seat.row - next.row) <= 1;
      const required = areNeighbours ? seat.kerfMm : Math.max(distances.gap, between);
      if (areFarther(one.reach, other.reach, required)) continue;
      if (!keepsOff(one.shape, other.shape, required))
        faults.push(`${nameOf(one)} and ${nameOf(other)}: gap`);
    }
  });
  return faults;
}

function keyOf({ item, set, copy }: CopyRef): string {
  return JSON.stringify([item, set, copy]);
}

/** Nothing but its own straps reaches into the rectangle of a lane. */
function laneFaults(lying: readonly Lying[], sheet: Sheet, { answer }: Finished): string[] {
  return answer.lanes
    .filter((lane) => lane.sheet === sheet.id)
    .flatMap((lane) => {
      const own = new Set(lane.rows.flatMap(({ straps }) => straps.map(keyOf)));
      const inner = judge.grow(judge.shapeOf(laneRegion(lane)), -CHECK_FORGIVES_MM);
      return lying
        .filter(({ placement }) => !own.has(keyOf(placement)))
        .filter(({ shape }) => judge.intersectionArea(shape, inner) > NO_AREA_MM2)
        .map((one) => `${nameOf(one)}: in lane ${lane.id}`);
    });
}

/** Every block holds its pieces, margin included, lies within the hide, and keeps out all that is not its own. */
function blockFaults(lying: readonly Lying[], sheet: Sheet, { answer }: Finished): string[] {
  const hide = judge.shapeOf({ outer: sheet.region.outer, openings: [] });
  return answer.roughCuts
    .filter((cut) => cut.sheet === sheet.id)
    .flatMap((cut) => {
      const own = new Set(cut.members.map(keyOf));
      const block = judge.shapeOf({ outer: cut.outline, openings: [] });
      const inner = judge.grow(block, -CHECK_FORGIVES_MM);
      const faults = lying
        .filter((one) =>
          own.has(keyOf(one.placement))
            ? judge.differenceArea(one.shape, block) > NO_AREA_MM2 ||
              judge.distanceToBoundary(one.shape, block) < (one.item.roughMargin ?? 0) - CHECK_FORGIVES_MM
            : judge.intersectionArea(one.shape, inner) > NO_AREA_MM2,
        )
        .map((one) => `${nameOf(one)}: rough cut ${cut.id}`);
      return judge.differenceArea(inner, hide) > NO_AREA_MM2 ? [...faults, `${cut.id}: outside`] : faults;
    });
}

function areFarther(a: Box, b: Box, by: number): boolean {
  return a.minX - by > b.maxX || b.minX - by > a.maxX || a.minY - by > b.maxY || b.minY - by > a.maxY;
}

/** Where nothing is required they may touch, and overlap by what rounding does. */
function keepsOff(one: Shape, other: Shape, required: number): boolean {
  if (required > CHECK_FORGIVES_MM) return judge.distance(one, other) >= required - CHECK_FORGIVES_MM;
  return judge.intersectionArea(judge.grow(one, -CHECK_FORGIVES_MM), other) <= NO_AREA_MM2;
}

function sheetFaults(one: Lying, sheet: Sheet, { distances }: NestProblem): string[] {
  const faults: string[] = [];
  const hide = judge.shapeOf(sheet.region);
  const inner = judge.grow(one.shape, -CHECK_FORGIVES_MM);
  if (judge.differenceArea(inner, hide) > NO_AREA_MM2) faults.push(`${nameOf(one)}: outside`);
  if (distances.edge > CHECK_FORGIVES_MM) {
    const apart = judge.distanceToBoundary(one.shape, hide);
    if (apart < distances.edge - CHECK_FORGIVES_MM) faults.push(`${nameOf(one)}: edge ${apart}`);
  }
  for (const { id, areas, isVoid, uncertaintyMm } of sheet.qualities) {
    if (!isVoid) continue;
    const kept = areas.every((area) =>
      keepsOff(one.shape, judge.shapeOf(area), distances.void + uncertaintyMm),
    );
    if (!kept) faults.push(`${nameOf(one)}: void ${id}`);
  }
  return faults;
}

/** The piece as a whole on leather for its own need, and each part (its face, say) for the part's. */
function leatherFaults(one: Lying, sheet: Sheet): string[] {
  const parts: (readonly [string, readonly Region[], Need])[] = [
    ['whole', [one.item.region], one.item.need],
    ...one.item.parts.map(({ name, areas, need }) => [name, areas, need] as const),
  ];
  return parts.flatMap(([name, areas, need]) =>
    areas.flatMap((area) => {
      const part = judge.grow(judge.shapeOf(area, one.placement), -CHECK_FORGIVES_MM);
      return needFaults(part, need, sheet).map((fault) => `${nameOf(one)}, ${name}: ${fault}`);
    }),
  );
}

function needFaults(part: Shape, need: Need, sheet: Sheet): string[] {
  const faults: string[] = [];
  for (const { id, areas, grade, weak } of sheet.qualities) {
    if (grade <= need.maxGrade && !(need.strong && weak)) continue;
    const touched = areas.some((area) => judge.intersectionArea(part, judge.shapeOf(area)) > NO_AREA_MM2);
    if (touched) faults.push(`looks ${id}`);
  }
  if (need.zones === undefined) return faults;
  const zones = joinedZones(judge, sheet, need.zones);
  if (zones === undefined || judge.differenceArea(part, zones) > NO_AREA_MM2) faults.push('zone');
  return faults;
}

function nameOf({ placement: { item, set, copy } }: Lying): string {
  return `${item} ${set}/${copy}`;
}

describe('finished layouts', () => {
  test('when the search has laid them, the outside judge finds no fault', () => {
    for (const job of jobs) expect(faultsOf(job), job.name).toEqual([]);
  });

  test('when the demo order is laid, nothing is missing and every leather is in use', () => {
    const { problem, answer } = jobs[0]!;
    expect(answer.unplaced).toEqual([]);
    expect(answer.placements).toHaveLength(110);
    expect(new Set(answer.placements.map(({ sheet }) => sheet)).size).toBe(problem.sheets.length);
  });

  test('when a piece goes on a twentieth of a mm the way it was slid, the judge tells for most pieces', () => {
    const job = jobs[4]!;
    const { placements } = job.answer;
    const told = placements.filter((_, i) => {
      const moved = placements.map((one, k) => {
        const { useFrom } = job.problem.sheets.find(({ id }) => id === one.sheet)!;
        return k === i ? { ...one, x: one.x - 0.05 * useFrom.x, y: one.y - 0.05 * useFrom.y } : one;
      });
      return faultsOf({ ...job, answer: { ...job.answer, placements: moved } }).length > 0;
    });
    expect(placements.length).toBeGreaterThan(30);
    expect(told.length).toBeGreaterThan(0.8 * placements.length);
  });

  test('when every other piece is thrown off its place, the judge tells of every kind of fault', () => {
    const kinds = new Set(
      jobs.slice(1, 4).flatMap((job) => {
        const placements = job.answer.placements.map((one, i) =>
          i % 2 === 0 ? { ...one, x: one.x + 160, y: one.y + 240 } : one,
        );
        const faults = faultsOf({ ...job, answer: { ...job.answer, placements } });
        return faults.map((fault) => /: (\w+)[^:]*$/.exec(fault)![1]!);
      }),
    );
    expect([...kinds].sort()).toEqual(['edge', 'gap', 'looks', 'outside', 'void', 'zone']);
  });

  test('when a whole job is turned and moved, its answer stays proven, to the exact check and to the judge', () => {
    jobs.forEach((job, i) => {
      expect(isProven(checkAnswer(job.problem, job.answer)), job.name).toBe(true);
      const turned = turnJob(job, 37.3 + 71 * i, 250 * i, -125);
      expect(isProven(checkAnswer(turned.problem, turned.answer)), `${job.name}, turned`).toBe(true);
      if (i > 0) expect(faultsOf({ ...job, ...turned }), `${job.name}, turned`).toEqual([]);
    });
  });
});
