import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { makeStrap, panelSheet } from '../lane/test-straps.js';
import type { Item, NestAnswer, NestProblem, QualityRegion, SetKind } from '../types/problem.js';
import { runNest } from './run.js';
import { rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

/** Lays and proves. */
function lay(problem: NestProblem, joins = 0): NestAnswer {
  const answer = runNest({ ...problem, budget: { seed: 1, streams: 1, joins } });
  expect(checkAnswer(problem, answer)).toEqual([]);
  return answer;
}

function asked({ setKinds }: NestProblem): number {
  return setKinds.reduce(
    (sum, { sets, members }) => sum + Number(sets) * members.reduce((own, { count }) => own + count, 0),
    0,
  );
}

function flaw(id: string, box: readonly [number, number, number, number]): QualityRegion {
  return { id, areas: [rectangle(...box)], grade: 2, weak: false, isVoid: false, uncertaintyMm: 0 };
}

const DISTANCES = { gap: 3, edge: 5, void: 3 };

function patch(id: string, width: number, height: number, changes: Partial<Item> = {}): Item {
  return testItem(id, rectangle(-width / 2, -height / 2, width / 2, height / 2), {
    need: { maxGrade: 2, strong: false },
    sheets: ['hide'],
    ...changes,
  });
}

describe('when straps lie in lanes', () => {
  const straps = makeStrap('strap', 300, 30);
  const patches = patch('patch', 60, 60);
  // The brand parts each row in two; patches bear it, so that nothing but the lane keeps them out of that stretch.
  const problem = testProblem({
    items: [straps, patches],
    setKinds: [testKind({ strap: 6, patch: 14 })],
    sheets: [panelSheet(800, 260, { qualities: [flaw('brand', [330, 0, 460, 260])] })],
    distances: DISTANCES,
  });

  it.each([0, 1])('nothing else reaches into them, nor into their empty stretches (%d joins)', (joins) => {
    const answer = lay(problem, joins);
    expect(answer.unplaced.filter(({ item }) => item === 'strap')).toEqual([]);
    expect(answer.lanes.flatMap(({ rows }) => rows).length).toBeGreaterThan(2);
    expect(answer.placements.length + answer.unplaced.length).toBe(asked(problem));
  });

  it('what they leave no room for says so, and not that it is too large or the leather too poor', () => {
    const broad = { ...problem, items: [straps, { ...patches, region: rectangle(-350, -60, 350, 60) }] };
    const { unplaced } = lay({ ...broad, setKinds: [testKind({ strap: 10, patch: 1 })] });
    expect(unplaced).toEqual([{ item: 'patch', set: 1, copy: 1, reason: 'no-room' }]);
  });

  it('straps without a lane say why', () => {
    const more: Item[] = [
      makeStrap('too long', 900, 30),
      makeStrap('too many', 300, 30),
      makeStrap('too good', 700, 30),
      makeStrap('too thick', 100, 30, { thickness: { minMm: 5, maxMm: 6, tooThick: 'refuse' } }),
    ];
    const [sheet] = problem.sheets;
    const { unplaced } = lay({
      ...problem,
      items: more,
      setKinds: [testKind({ 'too long': 1, 'too many': 20, 'too good': 1, 'too thick': 1 })],
      sheets: [{ ...sheet!, thickness: { rangeMm: [2, 3], readings: [] } }],
    });
    expect(Object.fromEntries(unplaced.map(({ item, reason }) => [item, reason]))).toEqual({
      'too long': 'larger-than-every-sheet',
      'too many': 'no-room',
      'too good': 'no-leather-good-enough',
      'too thick': 'thickness',
    });
  });

  it('a kerf parts them, and lanes that share lines all the same are refused', () => {
    const sawn = { ...problem, distances: { ...DISTANCES, kerf: 0.3 } };
    const answer = lay(sawn);
    expect(answer.lanes.map(({ kerfMm }) => kerfMm)).toEqual(answer.lanes.map(() => 0.3));
    const [lane] = lay(problem).lanes;
    expect(checkAnswer(sawn, lay(problem))).toMatchObject([
      { rule: 'lane', other: lane!.id, measured: 0, required: 0.3 },
    ]);
  });
});

describe('when what belongs together is cut in lanes', () => {
  const sheets = ['a', 'b', 'c'].map((id) =>
    panelSheet(700, 120, { id, lot: id === 'c' ? 'lot 2' : 'lot 1' }),
  );
  const names = sheets.map(({ id }) => id);
  const items = [
    makeStrap('long', 600, 30, { sheets: names, group: 'straps' }),
    makeStrap('short', 250, 30, { sheets: names, group: 'straps' }),
    patch('loop', 40, 25, { sheets: names, group: 'straps' }),
  ];
  const problemOf = (keep: SetKind['keep'], sets: number): NestProblem =>
    testProblem({
      items,
      setKinds: [testKind({ long: 2, short: 1, loop: 1 }, { keep, sets })],
      sheets,
      distances: DISTANCES,
    });

  it.each(['sheet', 'lot', 'faceLot'] as const)('each set keeps to one %s', (keep) => {
    const problem = problemOf(keep, 3);
    const answer = lay(problem);
    expect(answer.placements.filter(({ item }) => item !== 'loop')).toHaveLength(9);
    expect(answer.placements.length + answer.unplaced.length).toBe(asked(problem));
  });

  it('and a set finds no room, its straps say so', () => {
    const problem = problemOf('sheet', 5);
    const { placements, unplaced } = lay(problem);
    expect(placements.length + unplaced.length).toBe(asked(problem));
    expect(unplaced.every(({ reason }) => reason === 'no-room')).toBe(true);
  });

  it('and one of a set lies already, its straps go there', () => {
    const problem = problemOf('sheet', 1);
    const fixed = [
      { item: 'loop', set: 1, copy: 1, sheet: 'b', x: 100, y: 100, rotationDeg: 0, accepted: [] },
    ];
    const { placements } = lay({ ...problem, fixed });
    expect(placements.length).toBeGreaterThan(2);
    expect(new Set(placements.map(({ sheet }) => sheet))).toEqual(new Set(['b']));
  });
});

describe('when pieces have rough cuts', () => {
  const sheet = testSheet('hide', rectangle(0, 0, 420, 300));

  it('pieces of their own group without one keep out, or share the block', () => {
    const problem = testProblem({
      items: [
        patch('dyed', 60, 50, { group: 'body', roughMargin: 10 }),
        patch('plain', 40, 40, { group: 'body' }),
        patch('other', 50, 30, { group: 'lining' }),
      ],
      setKinds: [testKind({ dyed: 8, plain: 8, other: 6 })],
      sheets: [sheet],
      distances: DISTANCES,
    });
    const answer = lay(problem, 1);
    expect(answer.placements.length + answer.unplaced.length).toBe(asked(problem));
    expect(answer.roughCuts.flatMap(({ members }) => members).length).toBeGreaterThanOrEqual(8);
  });

  it('what lies in their openings at first ends elsewhere or is told', () => {
    const frame: Item = {
      ...patch('frame', 200, 160, { group: 'body', roughMargin: 8 }),
      region: {
        ...rectangle(-100, -80, 100, 80),
        openings: [[...rectangle(-80, -60, 80, 60).outer].reverse()],
      },
    };
    const problem = testProblem({
      items: [frame, patch('patch', 50, 40, { group: 'lining' })],
      setKinds: [testKind({ frame: 1, patch: 24 })],
      sheets: [sheet],
      distances: DISTANCES,
    });
    const answer = lay(problem, 1);
    expect(answer.roughCuts).toHaveLength(1);
    expect(answer.placements.length + answer.unplaced.length).toBe(asked(problem));
  });

  it('straps in lanes can be among them, and where all is fixed the search ends', () => {
    const problem = testProblem({
      items: [
        makeStrap('strap', 300, 30, { group: 'straps', roughMargin: 6 }),
        patch('dyed', 60, 50, { group: 'body', roughMargin: 10 }),
        patch('other', 50, 30, { group: 'lining' }),
      ],
      setKinds: [testKind({ strap: 4, dyed: 6, other: 6 })],
      sheets: [panelSheet(420, 300)],
      distances: DISTANCES,
    });
    const answer = lay(problem, 1);
    expect(answer.placements.filter(({ item }) => item === 'strap')).toHaveLength(4);
    const alone = { ...problem, setKinds: [testKind({ strap: 4 })] };
    expect(lay(alone, 1).placements).toHaveLength(4);
    expect(new Set(answer.roughCuts.map(({ group }) => group))).toEqual(new Set(['straps', 'body']));
  });
});
