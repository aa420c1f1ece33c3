/** The table's rows about lanes and rough cuts. */
import type { Item, Lane, RoughCut } from '../types/problem.js';
import { DEG, MM } from './test-limit-case.js';
import type { LimitCase } from './test-limit-case.js';
import { copy, makeItem, makeJob, makeSheet, place, rectangle, rectangleRing } from './test-jobs.js';
import type { Job } from './test-jobs.js';

function strap(id: string, length: number, width: number): Item {
  return makeItem(id, rectangle(-length / 2, -width / 2, length / 2, width / 2), {
    lane: { widthMm: width, firmEnd: 0 },
  });
}

const LANE: Lane = {
  id: 'lane 1',
  sheet: 'hide',
  from: { x: -5, y: 100 },
  to: { x: 900, y: 100 },
  openAt: 'from',
  kerfMm: 0,
  rows: [
    { widthMm: 30, straps: [copy('belt'), copy('belt', 1, 2)] },
    { widthMm: 20, straps: [copy('loop')] },
  ],
};

interface LaneChange {
  readonly lane?: Partial<Lane>;
  readonly loop?: Partial<{ x: number; y: number; rotationDeg: number }>;
  readonly otherY?: number;
}

/** Two belts end to end in the first row, a loop in the second, and a piece that is none of the lane's below. */
function laneJob(change: LaneChange): Job {
  return makeJob({
    items: [strap('belt', 400, 30), strap('loop', 300, 20), makeItem('patch', rectangle(-20, -20, 20, 20))],
    sheets: [
      makeSheet({
        direction: {
          axis: [
            { x: 0, y: 0 },
            { x: 1000, y: 0 },
          ],
          strokes: [],
        },
      }),
    ],
    placements: [
      place('belt', 210, 115),
      place('belt', 610, 115, 180, { copy: 2 }),
      { ...place('loop', 300, 140), ...change.loop },
      place('patch', 500, change.otherY ?? 172),
    ],
    problem: { distances: { gap: 2, edge: 1, void: 0 } },
    answer: { lanes: [{ ...LANE, ...change.lane }] },
  });
}

const LANE_ROWS: readonly LimitCase[] = [
  {
    ...MM,
    name: 'a strap lies off its lines, away from its neighbours',
    rule: 'lane',
    at: copy('loop'),
    other: 'lane 1',
    build: (off) => laneJob({ loop: { y: 140 + off } }),
  },
  {
    ...DEG,
    name: 'a short strap is not parallel to its lane',
    rule: 'lane',
    at: copy('loop'),
    other: 'lane 1',
    // Turned about the middle of a strap of 4 mm, so that its ends leave their lines by less than 1 µm.
    build: (off) => {
      const job = laneJob({ loop: { rotationDeg: off } });
      const items = job.problem.items.map((item) => (item.id === 'loop' ? strap('loop', 4, 20) : item));
      return { ...job, problem: { ...job.problem, items } };
    },
  },
  {
    ...MM,
    name: 'a strap is told to be wider than its row',
    rule: 'lane',
    at: copy('loop'),
    other: 'lane 1',
    build: (off) => {
      const job = laneJob({});
      const items = job.problem.items.map((item) =>
        item.id === 'loop' ? { ...item, lane: { widthMm: 20 + off, firmEnd: 0 as const } } : item,
      );
      return { ...job, problem: { ...job.problem, items } };
    },
  },
  {
    ...MM,
    name: 'a strap reaches over the end of the first cut',
    rule: 'lane',
    at: copy('belt', 1, 2),
    other: 'lane 1',
    build: (off) => laneJob({ lane: { to: { x: 810 - off, y: 100 } } }),
  },
  {
    ...MM,
    name: 'a lane is not open at the edge where it should be',
    rule: 'lane',
    at: undefined,
    other: 'lane 1',
    build: (off) => laneJob({ lane: { from: { x: off, y: 100 } } }),
  },
  {
    ...MM,
    name: 'a piece that is none of its straps reaches into a lane',
    rule: 'lane',
    at: copy('patch'),
    other: 'lane 1',
    build: (off) => laneJob({ otherY: 170 - off }),
  },
];

const CUT: RoughCut = {
  id: 'block 1',
  sheet: 'hide',
  group: 'dyed',
  outline: rectangleRing(100, 100, 300, 300),
  marginMm: 8,
  members: [copy('panel')],
};

function blockJob(x: number, patchX: number, cuts: readonly RoughCut[]): Job {
  return makeJob({
    items: [
      makeItem('panel', rectangle(-50, -50, 50, 50), { group: 'dyed', roughMargin: 10 }),
      makeItem('patch', rectangle(-20, -20, 20, 20)),
    ],
    placements: [place('panel', x, 200), place('patch', patchX, 200)],
    answer: { roughCuts: cuts },
  });
}

const ROUGH_CUT_ROWS: readonly LimitCase[] = [
  {
    ...MM,
    name: 'a panel does not keep its margin within its rough cut',
    rule: 'rough-cut',
    at: copy('panel'),
    other: 'block 1',
    build: (off) => blockJob(160 - off, 400, [CUT]),
  },
  {
    ...MM,
    name: "a piece of another's reaches into a rough cut",
    rule: 'rough-cut',
    at: copy('patch'),
    other: 'block 1',
    build: (off) => blockJob(200, 320 - off, [CUT]),
  },
  {
    ...MM,
    name: 'two rough cuts overlap',
    rule: 'rough-cut',
    at: undefined,
    other: 'block 1',
    build: (off) =>
      blockJob(200, 700, [
        CUT,
        { ...CUT, id: 'block 2', outline: rectangleRing(300 - off, 0, 500, 350), members: [] },
      ]),
  },
  {
    ...MM,
    name: 'a rough cut reaches over the edge of the hide',
    rule: 'rough-cut',
    at: undefined,
    other: 'block 1',
    build: (off) => blockJob(200, 700, [{ ...CUT, outline: rectangleRing(-off, 100, 300, 300) }]),
  },
];

export const LANE_CASES: readonly LimitCase[] = [...LANE_ROWS, ...ROUGH_CUT_ROWS];
