/** One small job for each way of breaking a rule of place, angle or thickness, as a table for the tests. */
import { MM } from './test-limit-case.js';
import type { LimitCase } from './test-limit-case.js';
import { LANE_CASES } from './test-limit-cases-lane.js';
import { LOOKS_CASES } from './test-limit-cases-looks.js';
import {
  copy,
  frame,
  makeItem,
  makeJob,
  makeQuality,
  makeSheet,
  place,
  polygon,
  rectangle,
} from './test-jobs.js';

const square = makeItem('square', rectangle(-50, -50, 50, 50));
const wedge = makeItem('wedge', polygon([0, 0], [80, -30], [80, 30]));
const ring = makeItem('ring', frame(rectangle(-100, -100, 100, 100), rectangle(-60, -60, 60, 60)));
const [a, b] = [copy('square'), copy('square', 1, 2)];
const second = { copy: 2 };

const GAP_CASES: readonly LimitCase[] = [
  {
    ...MM,
    name: 'two squares are nearer than the gap',
    rule: 'gap',
    at: a,
    other: b,
    build: (off) =>
      makeJob({
        items: [square],
        placements: [place('square', 200, 200), place('square', 303 - off, 230, 0, second)],
        problem: { distances: { gap: 3, edge: 0, void: 0 } },
      }),
  },
  {
    ...MM,
    name: 'a corner is nearer than the gap to a slanting side',
    rule: 'gap',
    at: a,
    other: b,
    build: (off) =>
      makeJob({
        items: [square],
        placements: [
          place('square', 200, 200),
          place('square', 252 + 50 * Math.SQRT2 - off, 210, 45, second),
        ],
        problem: { distances: { gap: 2, edge: 0, void: 0 } },
      }),
  },
  {
    ...MM,
    name: 'items of two groups are nearer than groups may be',
    rule: 'gap',
    at: a,
    other: copy('other'),
    build: (off) =>
      makeJob({
        items: [square, makeItem('other', rectangle(-50, -50, 50, 50), { group: 'strap leather' })],
        placements: [place('square', 200, 200), place('other', 320 - off, 230)],
        problem: { distances: { gap: 3, edge: 0, void: 0, betweenGroups: 20 } },
      }),
  },
  {
    ...MM,
    name: 'a side is pushed into a side without a gap',
    rule: 'gap',
    at: a,
    other: b,
    build: (off) =>
      makeJob({
        items: [square],
        placements: [place('square', 200, 200), place('square', 300 - off, 230, 90, second)],
      }),
  },
  {
    ...MM,
    name: 'a vertex is pushed into a side without a gap',
    rule: 'gap',
    at: copy('square'),
    other: copy('wedge'),
    build: (off) =>
      makeJob({
        items: [square, wedge],
        placements: [place('square', 200, 200), place('wedge', 250 - off, 205, 10)],
      }),
  },
  {
    ...MM,
    name: 'two equal pieces share all their sides but for the last',
    rule: 'gap',
    at: copy('square'),
    other: copy('ring'),
    build: (off) =>
      makeJob({
        items: [
          square,
          makeItem('ring', frame(rectangle(-100, -100, 100, 100), rectangle(-50, -50, 50, 50))),
        ],
        placements: [place('square', 300, 300 + off), place('ring', 300, 300, 180)],
      }),
  },
  {
    ...MM,
    name: 'a piece in the cut-out of another is nearer than the gap',
    rule: 'gap',
    at: copy('square'),
    other: copy('ring'),
    build: (off) =>
      makeJob({
        items: [square, ring],
        placements: [place('square', 305 + off, 300), place('ring', 300, 300)],
        problem: { distances: { gap: 5, edge: 0, void: 0 } },
      }),
  },
];

const holed = makeSheet({ region: frame(rectangle(0, 0, 1000, 600), rectangle(400, 200, 500, 300)) });

const EDGE_CASES: readonly LimitCase[] = [
  {
    ...MM,
    name: 'a square is nearer than the edge distance to the outline',
    rule: 'edge',
    at: a,
    other: 'outline',
    build: (off) =>
      makeJob({
        items: [square],
        placements: [place('square', 60 - off, 200)],
        problem: { distances: { gap: 0, edge: 10, void: 0 } },
      }),
  },
  {
    ...MM,
    name: 'a square reaches over the outline',
    rule: 'edge',
    at: a,
    other: 'outline',
    build: (off) => makeJob({ items: [square], placements: [place('square', 950 + off, 550)] }),
  },
  {
    ...MM,
    name: 'a turned corner reaches over the outline',
    rule: 'edge',
    at: a,
    other: 'outline',
    build: (off) =>
      makeJob({ items: [square], placements: [place('square', 300, 50 * Math.SQRT2 - off, 45)] }),
  },
  {
    ...MM,
    name: 'a square is nearer than the edge distance to an opening',
    rule: 'edge',
    at: a,
    other: 'opening 1',
    build: (off) =>
      makeJob({
        items: [square],
        sheets: [holed],
        placements: [place('square', 345 + off, 250)],
        problem: { distances: { gap: 0, edge: 5, void: 0 } },
      }),
  },
  {
    ...MM,
    name: 'a corner of an opening reaches into an item',
    rule: 'edge',
    at: a,
    other: 'opening 1',
    build: (off) => {
      const sheet = makeSheet({
        region: {
          outer: rectangle(0, 0, 1000, 600).outer,
          openings: [polygon([400, 250], [460, 300], [460, 200]).outer],
        },
      });
      return makeJob({
        items: [square],
        sheets: [sheet],
        placements: [place('square', 350 + off, 250)],
      });
    },
  },
];

const VOID_CASES: readonly LimitCase[] = [
  {
    ...MM,
    name: 'a square is nearer to a hole than the void distance and what is uncertain',
    rule: 'void',
    at: a,
    other: 'brand',
    build: (off) =>
      makeJob({
        items: [square],
        sheets: [
          makeSheet({
            qualities: [
              makeQuality('brand', rectangle(400, 100, 450, 300), { isVoid: true, uncertaintyMm: 0.7 }),
            ],
          }),
        ],
        placements: [place('square', 347.3 + off, 200)],
        problem: { distances: { gap: 0, edge: 0, void: 2 } },
      }),
  },
  {
    ...MM,
    name: 'a square reaches into a void that it may touch, partly outside of the sheet',
    rule: 'void',
    at: a,
    other: 'cut',
    build: (off) =>
      makeJob({
        items: [square],
        sheets: [
          makeSheet({
            qualities: [makeQuality('cut', polygon([300, -40], [380, -40], [340, 60]), { isVoid: true })],
          }),
        ],
        placements: [place('square', 340, 110 - off)],
      }),
  },
];

export const LIMIT_CASES: readonly LimitCase[] = [
  ...GAP_CASES,
  ...EDGE_CASES,
  ...VOID_CASES,
  ...LOOKS_CASES,
  ...LANE_CASES,
];
