import { describe, expect, it } from 'vitest';
import type { NestProblem } from '../types/problem.js';
import { refuseUnsupported } from './refuse.js';
import { startNest } from './run.js';
import { rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

const patch = rectangle(0, 0, 10, 10);
const cases: readonly (readonly [string, Partial<NestProblem>])[] = [
  ['fill', { objective: { mode: 'fill', keepMm: [20, 20] } }],
  ['strip', { objective: { mode: 'strip', keepMm: [20, 20] } }],
  ['lanes', { items: [testItem('a', patch, { lane: { widthMm: 10, firmEnd: 0 } })] }],
  ['rough-cuts', { items: [testItem('a', patch, { roughMargin: 5 })] }],
  ['open-length', { sheets: [testSheet('sheet', patch, { openLength: true })] }],
  ['streams', { budget: { seed: 1, streams: 4, joins: 0 } }],
];

describe('what the search refuses', () => {
  it.each(cases)('when a problem asks for %s, it is refused by that code', (code, more) => {
    const items = more.items ?? [testItem('a', patch)];
    const problem = testProblem({ ...more, items, setKinds: [testKind({ a: 1 })] });
    expect(refuseUnsupported(problem).map((refusal) => refusal.code)).toEqual([code]);
    expect(() => startNest(problem)).toThrow(expect.objectContaining({ code: 'unsupported' }));
  });
});
