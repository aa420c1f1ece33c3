import { describe, expect, it } from 'vitest';
import type { Item, Lane, RoughCut, Sheet } from '../types/problem.js';
import { checkAnswer } from './index.js';
import {
  copy,
  makeItem,
  makeJob,
  makeQuality,
  makeSheet,
  place,
  rectangle,
  rectangleRing,
} from './test-jobs.js';
import type { Job } from './test-jobs.js';

function told({ problem, answer }: Job): readonly unknown[] {
  return checkAnswer(problem, answer).map(({ rule, at, other }) => ({ rule, at, other }));
}

function strap(firmEnd: -1 | 0 | 1): Item {
  return makeItem('strap', rectangle(-100, -10, 100, 10), { lane: { widthMm: 20, firmEnd } });
}

const backbone = {
  axis: [
    { x: 0, y: 300 },
    { x: 1000, y: 300 },
  ],
  strokes: [],
};

const LANE: Lane = {
  id: 'lane',
  sheet: 'hide',
  from: { x: 0, y: 100 },
  to: { x: 500, y: 100 },
  openAt: 'from',
  kerfMm: 0,
  rows: [
    { widthMm: 20, straps: [copy('strap')] },
    { widthMm: 20, straps: [copy('strap', 1, 2)] },
  ],
};

interface LaneJob {
  readonly lanes?: readonly Lane[];
  readonly firmEnd?: -1 | 0 | 1;
  readonly secondY?: number;
  readonly turnDeg?: number;
  readonly sheet?: Partial<Sheet>;
}

function laneJob({ lanes = [LANE], firmEnd = 0, secondY = 130, turnDeg = 0, sheet = {} }: LaneJob): Job {
  return makeJob({
    items: [strap(firmEnd)],
    sheets: [makeSheet({ direction: backbone, ...sheet })],
    placements: [place('strap', 150, 110, turnDeg), place('strap', 250, secondY, turnDeg, { copy: 2 })],
    problem: { distances: { gap: 3, edge: 0, void: 1 } },
    answer: { lanes },
  });
}

describe('when straps lie in lanes', () => {
  it('shares the line of neighbours, and only theirs', () => {
    expect(told(laneJob({}))).toEqual([]);
    const alone = { ...LANE, rows: [LANE.rows[0]!] };
    const other = {
      ...LANE,
      id: 'other',
      from: { x: 0, y: 120 },
      to: { x: 500, y: 120 },
      rows: [LANE.rows[1]!],
    };
    expect(told(laneJob({ lanes: [alone, other] }))).toEqual([
      { rule: 'gap', at: copy('strap'), other: copy('strap', 1, 2) },
    ]);
  });

  it('keeps the kerf between them where each keeps its own line', () => {
    const lanes = [{ ...LANE, kerfMm: 2 }];
    expect(told(laneJob({ lanes, secondY: 132 }))).toEqual([]);
    expect(told(laneJob({ lanes, secondY: 130 }))).toEqual([
      { rule: 'gap', at: copy('strap'), other: copy('strap', 1, 2) },
      { rule: 'lane', at: copy('strap', 1, 2), other: 'lane' },
    ]);
  });

  it('lets two straps of one row share a straight cut across, but not lie over each other', () => {
    const inRow = (to: number): Job => {
      const lanes = [{ ...LANE, rows: [{ widthMm: 20, straps: [copy('strap', 1, 2), copy('strap')] }] }];
      const job = laneJob({ lanes, secondY: 110 });
      const placements = job.answer.placements.map((one) => (one.copy === 2 ? { ...one, x: to } : one));
      return { ...job, answer: { ...job.answer, placements } };
    };
    expect(told(inRow(350))).toEqual([]);
    expect(told(inRow(349.999))).toEqual([]);
    expect(told(inRow(349.99))).toEqual([
      { rule: 'gap', at: copy('strap'), other: copy('strap', 1, 2) },
      { rule: 'lane', at: copy('strap', 1, 2), other: copy('strap') },
    ]);
  });

  it('lets flaws and openings lie in a lane, but not under a strap', () => {
    const at = (x: number): Partial<Sheet> => ({
      qualities: [makeQuality('hole', rectangle(x, 110, x + 20, 130), { isVoid: true })],
    });
    expect(told(laneJob({ sheet: at(400) }))).toEqual([]);
    expect(told(laneJob({ sheet: at(300) }))).toEqual([
      { rule: 'void', at: copy('strap', 1, 2), other: 'hole' },
    ]);
  });

  it('fails a strap that is in no lane or in two', () => {
    const none = { rule: 'lane', at: copy('strap', 1, 2), other: undefined };
    expect(told(laneJob({ lanes: [{ ...LANE, rows: [LANE.rows[0]!] }] }))).toContainEqual(none);
    const twice = { ...LANE, rows: [...LANE.rows, LANE.rows[1]!] };
    expect(told(laneJob({ lanes: [twice] }))).toContainEqual(none);
  });

  it('fails a lane on an unknown sheet, one without length, and one that names a strap that does not lie in it', () => {
    const whole = { rule: 'lane', at: undefined, other: 'lane' };
    expect(told(laneJob({ lanes: [{ ...LANE, sheet: 'nowhere' }] }))).toContainEqual(whole);
    expect(told(laneJob({ lanes: [{ ...LANE, to: LANE.from }] }))).toContainEqual(whole);
    const row = { widthMm: 20, straps: [copy('strap', 1, 3)] };
    expect(told(laneJob({ lanes: [{ ...LANE, rows: [...LANE.rows, row] }] }))).toEqual([
      { rule: 'lane', at: copy('strap', 1, 3), other: 'lane' },
    ]);
  });

  it('wants both ends open where it says so', () => {
    expect(told(laneJob({ lanes: [{ ...LANE, openAt: 'both' }] }))).toEqual([
      { rule: 'lane', at: undefined, other: 'lane' },
    ]);
    expect(told(laneJob({ lanes: [{ ...LANE, openAt: 'both', to: { x: 1000, y: 100 } }] }))).toEqual([]);
  });

  it('wants the hole end towards the tail where there is a backbone', () => {
    expect(told(laneJob({ firmEnd: 1 }))).toEqual([]);
    expect(told(laneJob({ firmEnd: -1, turnDeg: 180 }))).toEqual([]);
    const wrong = [
      { rule: 'lane', at: copy('strap'), other: 'lane' },
      { rule: 'lane', at: copy('strap', 1, 2), other: 'lane' },
    ];
    expect(told(laneJob({ firmEnd: -1 }))).toEqual(wrong);
    expect(told(laneJob({ firmEnd: 1, turnDeg: 180 }))).toEqual(wrong);
    const strokes = { direction: { strokes: [backbone.axis] } };
    expect(told(laneJob({ firmEnd: -1, sheet: strokes }))).toEqual([]);
  });

  it('runs a lane to the right of its heading', () => {
    const left = { ...LANE, from: { x: 500, y: 100 }, to: { x: 0, y: 100 }, openAt: 'to' as const };
    expect(told(laneJob({ lanes: [left] })).length).toBeGreaterThan(0);
    const mirrored = { ...left, from: { x: 500, y: 140 }, to: { x: 0, y: 140 } };
    expect(told(laneJob({ lanes: [{ ...mirrored, rows: [...LANE.rows].reverse() }] }))).toEqual([]);
  });
});

const panel = makeItem('panel', rectangle(-40, -40, 40, 40), { group: 'dyed', roughMargin: 10 });
const CUT: RoughCut = {
  id: 'block',
  sheet: 'hide',
  group: 'dyed',
  outline: rectangleRing(50, 50, 250, 150),
  marginMm: 5,
  members: [copy('panel'), copy('panel', 1, 2)],
};

function blockJob(roughCuts: readonly RoughCut[], secondX = 200): Job {
  return makeJob({
    items: [panel],
    sheets: [makeSheet(), makeSheet({ id: 'side' })],
    placements: [place('panel', 100, 100), place('panel', secondX, 100, 0, { copy: 2 })],
    problem: { distances: { gap: 3, edge: 0, void: 1 } },
    answer: { roughCuts },
  });
}

describe('when panels lie in rough cuts', () => {
  const second = { rule: 'rough-cut', at: copy('panel', 1, 2), other: 'block' };

  it('passes those that keep the wider of both margins, and still the gap', () => {
    expect(told(blockJob([CUT]))).toEqual([]);
    expect(told(blockJob([CUT], 182))).toEqual([
      { rule: 'gap', at: copy('panel'), other: copy('panel', 1, 2) },
    ]);
    expect(told(blockJob([CUT], 205))).toEqual([second]);
  });

  it('fails a panel that is in none, or in two', () => {
    const lost = { ...second, other: undefined };
    expect(told(blockJob([{ ...CUT, members: [copy('panel')] }], 400))).toEqual([lost]);
    const again = {
      ...CUT,
      id: 'again',
      outline: rectangleRing(150, 50, 250, 150),
      members: [copy('panel', 1, 2)],
    };
    expect(told(blockJob([CUT, again]))).toContainEqual(lost);
  });

  it('fails a panel of another group, on another sheet, or not laid', () => {
    const first = { ...second, at: copy('panel') };
    expect(told(blockJob([{ ...CUT, group: 'plain' }]))).toEqual([first, second]);
    expect(told(blockJob([{ ...CUT, sheet: 'side' }]))).toEqual([first, second]);
    expect(told(blockJob([{ ...CUT, members: [...CUT.members, copy('panel', 1, 3)] }]))).toEqual([
      { ...second, at: copy('panel', 1, 3) },
    ]);
    expect(told(blockJob([{ ...CUT, sheet: 'nowhere' }]))).toEqual([
      { rule: 'rough-cut', at: undefined, other: 'block' },
    ]);
  });
});
