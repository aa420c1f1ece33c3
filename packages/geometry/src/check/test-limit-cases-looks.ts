/** The table's rows about what the leather is: looks, strength, zones, angles, thickness, mirrored pairs. */
import type { Item } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { DEG, MM } from './test-limit-case.js';
import type { LimitCase } from './test-limit-case.js';
import { copy, makeItem, makeJob, makeQuality, makeSheet, place, polygon, rectangle } from './test-jobs.js';
import type { Job } from './test-jobs.js';

const region = rectangle(-50, -50, 50, 50);
const at = copy('front');

function front(change: Partial<Item>): Item {
  return makeItem('front', region, change);
}

/** The front whose left side lies `off` too far to the left of x = 200. */
function frontAt200(item: Item, off: number, qualities: Parameters<typeof makeQuality>[]): Job {
  return makeJob({
    items: [item],
    sheets: [makeSheet({ qualities: qualities.map((arguments_) => makeQuality(...arguments_)) })],
    placements: [place('front', 250 - off, 200)],
  });
}

const scar: Region = polygon([150, 100], [200, 190], [150, 300]);
const face: Item['parts'][number] = {
  name: 'face',
  areas: [rectangle(-30, -30, 30, 30)],
  need: { maxGrade: 0, strong: false },
};

const QUALITY_CASES: readonly LimitCase[] = [
  {
    ...MM,
    name: 'a front reaches into leather below its looks',
    rule: 'looks',
    at,
    other: 'scar',
    build: (off) =>
      frontAt200(front({ need: { maxGrade: 1, strong: false } }), off, [['scar', scar, { grade: 2 }]]),
  },
  {
    ...MM,
    name: 'the face of a front reaches into leather that its rest bears',
    rule: 'looks',
    at,
    other: 'scar',
    build: (off) =>
      frontAt200(front({ need: { maxGrade: 1, strong: false }, parts: [face] }), off, [
        ['scar', rectangle(150, 100, 220, 300), { grade: 1 }],
      ]),
  },
  {
    ...MM,
    name: 'a strap that bears load reaches into weak leather',
    rule: 'strength',
    at,
    other: 'flank',
    build: (off) =>
      frontAt200(front({ need: { maxGrade: 9, strong: true } }), off, [
        ['flank', rectangle(0, 0, 200, 600), { weak: true }],
      ]),
  },
  {
    ...MM,
    name: 'a front reaches out of its zone',
    rule: 'zone',
    at,
    other: 'bend',
    build: (off) =>
      frontAt200(front({ need: { maxGrade: 9, strong: false, zones: ['bend'] } }), off, [
        ['b', rectangle(200, 0, 900, 600), { zone: 'bend' }],
        ['s', rectangle(0, 0, 200, 600), { zone: 'shoulder' }],
      ]),
  },
  {
    ...MM,
    name: 'a front lies over the border of two of its zones and reaches out of both',
    rule: 'zone',
    at,
    other: 'bend, shoulder',
    build: (off) =>
      frontAt200(front({ need: { maxGrade: 9, strong: false, zones: ['bend', 'shoulder'] } }), off, [
        ['b', rectangle(200, 0, 260, 600), { zone: 'bend' }],
        ['s', rectangle(260.001, 0, 900, 600), { zone: 'shoulder' }],
      ]),
  },
  {
    ...MM,
    name: 'a slit between two zones grows under a front',
    rule: 'zone',
    at,
    other: 'bend, shoulder',
    build: (off) =>
      frontAt200(front({ need: { maxGrade: 9, strong: false, zones: ['bend', 'shoulder'] } }), 0, [
        ['b', rectangle(100, 0, 260, 600), { zone: 'bend' }],
        ['s', rectangle(260 + off, 0, 900, 600), { zone: 'shoulder' }],
      ]),
  },
];

const along: Item['angleRule'] = {
  frame: 'local',
  arrowDeg: 30,
  targetsDeg: [0],
  toleranceDeg: 5,
  modulo: 180,
};
const backbone = {
  axis: [
    { x: 0, y: 0 },
    { x: 1000, y: 0 },
  ],
  strokes: [],
};

const ANGLE_CASES: readonly LimitCase[] = [
  {
    ...DEG,
    name: 'an arrow is off its angle to the sheet',
    rule: 'angle',
    at,
    other: undefined,
    build: (off) =>
      makeJob({
        items: [front({ angleRule: { ...along, frame: 'sheet', targetsDeg: [90, 180], modulo: 360 } })],
        placements: [place('front', 300, 300, 65 + off)],
      }),
  },
  {
    ...DEG,
    name: 'an arrow is off the local direction, half-turned',
    rule: 'angle',
    at,
    other: undefined,
    build: (off) =>
      makeJob({
        items: [front({ angleRule: along })],
        sheets: [makeSheet({ direction: backbone })],
        placements: [place('front', 300, 300, 145 - off)],
      }),
  },
  {
    ...DEG,
    name: 'an arrow that must point to the tail is off',
    rule: 'angle',
    at,
    other: undefined,
    build: (off) =>
      makeJob({
        items: [front({ angleRule: { ...along, modulo: 360 } })],
        sheets: [makeSheet({ direction: backbone })],
        placements: [place('front', 300, 300, -25 + off)],
      }),
  },
  {
    ...MM,
    name: 'the leather is too thin for a front',
    rule: 'thickness',
    at,
    other: undefined,
    build: (off) =>
      makeJob({
        items: [front({ thickness: { minMm: 2, maxMm: 3, tooThick: 'skive' } })],
        sheets: [
          makeSheet({
            thickness: {
              rangeMm: [1, 9],
              readings: [
                { at: { x: 290, y: 300 }, mm: 1.8 - off },
                { at: { x: 310, y: 300 }, mm: 2.2 - off },
              ],
            },
          }),
        ],
        placements: [place('front', 300, 300, 12)],
      }),
  },
  {
    ...MM,
    name: 'the whole range of a hide is too thick for a front that is not skived',
    rule: 'thickness',
    at,
    other: undefined,
    build: (off) =>
      makeJob({
        items: [front({ thickness: { minMm: 2, maxMm: 3, tooThick: 'refuse' } })],
        sheets: [makeSheet({ thickness: { rangeMm: [2, 3 + off], readings: [] } })],
        placements: [place('front', 300, 300, 12)],
      }),
  },
];

const left = polygon([0, 0], [80, 10], [60, 70], [-10, 40]);
const right: Region = { outer: left.outer.map(({ x, y }) => ({ x: -x, y })).reverse(), openings: [] };

function pairJob(mirrored: Region, x: number, y: number, rotationDeg: number): Job {
  const rule = { ...along, toleranceDeg: 90 };
  return makeJob({
    items: [
      makeItem('left', left, { angleRule: rule }),
      makeItem('right', mirrored, {
        angleRule: { ...rule, arrowDeg: 150 },
        mirrorOf: 'left',
        pair: { toleranceDeg: 4, distanceMm: 150 },
      }),
    ],
    sheets: [
      makeSheet({
        direction: {
          axis: [
            { x: -500, y: 300 },
            { x: 1500, y: 300 },
          ],
          strokes: [],
        },
      }),
    ],
    placements: [place('left', 200, 310, 10), place('right', x, y, rotationDeg)],
  });
}

const PAIR_CASES: readonly LimitCase[] = [
  {
    ...MM,
    name: 'a mirrored piece is not quite the mirror image',
    rule: 'mirrored',
    at: copy('right'),
    other: 'left',
    build: (off) => {
      const outer = right.outer.map((corner, i) => (i === 2 ? { x: corner.x, y: corner.y + off } : corner));
      return pairJob({ outer, openings: [] }, 500, 310, -10);
    },
  },
  {
    ...DEG,
    name: 'the angles of a pair are not opposite',
    rule: 'pair',
    at: copy('right'),
    other: copy('left'),
    build: (off) => pairJob(right, 500, 310, -6 + off),
  },
  {
    ...MM,
    name: 'a pair lies unlike far from the backbone',
    rule: 'pair',
    at: copy('right'),
    other: copy('left'),
    build: (off) => pairJob(right, 500, 460 + off, -10),
  },
];

export const LOOKS_CASES: readonly LimitCase[] = [...QUALITY_CASES, ...ANGLE_CASES, ...PAIR_CASES];
