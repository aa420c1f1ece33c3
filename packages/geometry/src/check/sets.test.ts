import { describe, expect, it } from 'vitest';
import type { NestAnswer, NestProblem, SetKind } from '../types/problem.js';
import { checkAnswer, isProven } from './index.js';
import { copy, makeItem, makeJob, makeSheet, place, rectangle } from './test-jobs.js';
import type { Job } from './test-jobs.js';

const front = makeItem('front', rectangle(-40, -40, 40, 40), { sheets: ['hide', 'side'] });
const lining = makeItem('lining', rectangle(-30, -30, 30, 30), { sheets: ['hide', 'side'], isFace: false });
const sheets = [makeSheet(), makeSheet({ id: 'side', lot: 'lot 2' })];

const KIND: SetKind = {
  id: 'tool roll',
  sets: 2,
  members: [
    { item: 'front', count: 2 },
    { item: 'lining', count: 1 },
  ],
  value: 1,
  priority: 0,
  keep: 'nothing',
  beside: [],
};

const laid = [
  place('front', 100, 100),
  place('front', 200, 100, 30, { copy: 2 }),
  place('lining', 300, 100),
  place('front', 100, 300, 0, { set: 2 }),
  place('front', 200, 300, 0, { set: 2, copy: 2 }),
  place('lining', 300, 300, 0, { set: 2 }),
];

function job(problem: Partial<NestProblem> = {}, answer: Partial<NestAnswer> = {}): Job {
  return makeJob({
    items: [front, lining],
    sheets,
    placements: laid,
    problem: { setKinds: [KIND], ...problem },
    answer,
  });
}

function told({ problem, answer }: Job): readonly unknown[] {
  return checkAnswer(problem, answer).map(({ rule, at, other }) => ({ rule, at, other }));
}

const SETS: Partial<NestProblem> = { objective: { mode: 'sets', keepMm: [300, 300] } };

describe('when copies are counted', () => {
  it('passes what is laid in full', () => {
    expect(told(job())).toEqual([]);
    expect(told(job(SETS))).toEqual([]);
  });

  it('fails a copy that lies twice', () => {
    const again = place('front', 600, 300);
    expect(told(job({}, { placements: [...laid, again] }))).toEqual([
      { rule: 'count', at: copy('front'), other: undefined },
    ]);
  });

  it('fails a copy and a set beyond what is asked for', () => {
    const extra = [place('front', 600, 100, 0, { copy: 3 }), place('lining', 600, 300, 0, { set: 3 })];
    expect(told(job({}, { placements: [...laid, ...extra] }))).toEqual([
      { rule: 'count', at: copy('front', 1, 3), other: undefined },
      { rule: 'count', at: copy('lining', 3, 1), other: undefined },
    ]);
  });

  it('takes any number of sets where as many as fit are asked for', () => {
    const third = [
      place('front', 600, 100, 0, { set: 3 }),
      place('front', 700, 100, 0, { set: 3, copy: 2 }),
      place('lining', 600, 300, 0, { set: 3 }),
    ];
    const many = { setKinds: [{ ...KIND, sets: 'many' as const }] };
    expect(told(job({ ...SETS, ...many }, { placements: [...laid, ...third] }))).toEqual([]);
  });

  it('fails a copy that is neither laid nor told as not laid', () => {
    expect(told(job({}, { placements: laid.slice(1) }))).toEqual([
      { rule: 'count', at: copy('front'), other: 'tool roll' },
    ]);
    const unplaced = [{ ...copy('front'), reason: 'no-room' as const }];
    expect(told(job({}, { placements: laid.slice(1), unplaced }))).toEqual([]);
  });

  it('leaves copies out without a word only in a fill', () => {
    const fill = { objective: { mode: 'fill' as const, keepMm: [300, 300] as const } };
    expect(told(job(fill, { placements: laid.slice(1) }))).toEqual([]);
  });

  it('fails a copy that is both laid and told as not laid', () => {
    const unplaced = [{ ...copy('lining', 2), reason: 'no-room' as const }];
    expect(told(job({}, { unplaced }))).toEqual([{ rule: 'count', at: copy('lining', 2), other: undefined }]);
  });
});

describe('when sets are laid', () => {
  const unplaced = [{ ...copy('lining', 2), reason: 'set-incomplete' as const }];

  it('fails a set of which a copy is missing, and names it', () => {
    expect(told(job(SETS, { placements: laid.slice(0, 5), unplaced }))).toEqual([
      { rule: 'set', at: copy('front', 2), other: copy('lining', 2) },
    ]);
  });

  it('takes the word of a fixed copy for a set that is not whole', () => {
    const fixed = [{ ...laid[4]!, accepted: ['set' as const] }];
    const { problem, answer } = job({ ...SETS, fixed }, { placements: laid.slice(0, 5), unplaced });
    expect(isProven(checkAnswer(problem, answer))).toBe(true);
  });

  it('lets a part of a set lie where everything is to be laid', () => {
    expect(told(job({}, { placements: laid.slice(0, 5), unplaced }))).toEqual([]);
  });
});

describe('when a set is to be kept together', () => {
  const onSide = laid.map((one, i) => (i === 1 ? { ...one, sheet: 'side' } : one));
  const liningOnSide = laid.map((one, i) => (i === 2 ? { ...one, sheet: 'side' } : one));
  const keep = (what: SetKind['keep'], placements: NestAnswer['placements']): readonly unknown[] =>
    told(job({ setKinds: [{ ...KIND, keep: what }] }, { placements }));

  it('passes anything where nothing is asked', () => {
    expect(keep('nothing', onSide)).toEqual([]);
  });

  it('fails the copy on another sheet', () => {
    expect(keep('sheet', onSide)).toEqual([{ rule: 'sheet', at: copy('front', 1, 2), other: copy('front') }]);
  });

  it('fails the copy of another lot', () => {
    expect(keep('lot', liningOnSide)).toEqual([{ rule: 'lot', at: copy('lining'), other: copy('front') }]);
  });

  it('asks one lot of faces alone', () => {
    expect(keep('faceLot', liningOnSide)).toEqual([]);
    expect(keep('faceLot', onSide)).toEqual([{ rule: 'lot', at: copy('front', 1, 2), other: copy('front') }]);
  });

  it('takes two sheets of one lot', () => {
    const alike = { sheets: [sheets[0]!, { ...sheets[1]!, lot: 'lot 1' }] };
    const one = job({ setKinds: [{ ...KIND, keep: 'lot' }], ...alike }, { placements: onSide });
    expect(told(one)).toEqual([]);
  });

  it('fails an item on a sheet that it does not allow', () => {
    const items = [{ ...front, sheets: ['side'] }, lining];
    const placements = laid.filter(({ item, set }) => item === 'lining' || set === 2);
    const unplaced = [copy('front'), copy('front', 1, 2)].map((one) => ({
      ...one,
      reason: 'no-room' as const,
    }));
    expect(told(job({ items }, { placements, unplaced }))).toEqual([
      { rule: 'sheet', at: copy('front', 2), other: undefined },
      { rule: 'sheet', at: copy('front', 2, 2), other: undefined },
    ]);
  });
});

describe('when placements are locked', () => {
  const fixed = [{ ...laid[1]!, accepted: [] }];

  it.each([
    ['number for number', {}],
    ['to a micrometre', { x: 200.001 }],
    ['to a thousandth of a degree', { rotationDeg: 30.001 }],
    ['turned by a full turn', { rotationDeg: 390 }],
  ])('passes when they stand %s', (_, change) => {
    const placements = laid.map((one, i) => (i === 1 ? { ...one, ...change } : one));
    expect(told(job({ fixed }, { placements }))).toEqual([]);
  });

  it.each([
    ['moved by 10 µm', { x: 200.01 }],
    ['turned by a hundredth of a degree', { rotationDeg: 30.01 }],
    ['laid on another sheet', { sheet: 'side' }],
  ])('fails one that is %s', (_, change) => {
    const placements = laid.map((one, i) => (i === 1 ? { ...one, ...change } : one));
    expect(told(job({ fixed }, { placements }))).toEqual([
      { rule: 'locked', at: copy('front', 1, 2), other: undefined },
    ]);
  });

  it('fails one that is missing', () => {
    const placements = laid.filter((_, i) => i !== 1);
    const unplaced = [{ ...copy('front', 1, 2), reason: 'no-room' as const }];
    expect(told(job({ fixed }, { placements, unplaced }))).toEqual([
      { rule: 'locked', at: copy('front', 1, 2), other: undefined },
    ]);
  });

  it('lists what was accepted by hand without failing on it', () => {
    const near = laid.map((one, i) => (i === 1 ? { ...one, x: 150 } : one));
    const check = (accepted: NestProblem['fixed'][number]['accepted']): ReturnType<typeof checkAnswer> => {
      const { problem, answer } = job({ fixed: [{ ...near[1]!, accepted }] }, { placements: near });
      return checkAnswer(problem, answer);
    };
    expect(check(['gap']).map(({ rule, accepted }) => [rule, accepted])).toEqual([['gap', true]]);
    expect(isProven(check(['gap']))).toBe(true);
    expect(check(['edge']).map(({ rule, accepted }) => [rule, accepted])).toEqual([['gap', false]]);
    expect(isProven(check(['edge']))).toBe(false);
  });
});
