import { describe, expect, it } from 'vitest';
import type { NestProblem } from '../types/problem.js';
import { refuseUnsupported } from './refuse.js';
import { startNest } from './run.js';
import { rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

const patch = rectangle(0, 0, 10, 10);
const strap = testItem('a', patch, { lane: { widthMm: 10, firmEnd: 0 } });
const one = testKind({ a: 1 });

describe('what the search refuses', () => {
  const refused: readonly (readonly [string, Partial<NestProblem>])[] = [
    ['as many straps in lanes as fit', { setKinds: [{ ...one, sets: 'many' }] }],
    ['whole sets with straps in lanes', { objective: { mode: 'sets', keepMm: [20, 20] } }],
  ];
  it.each(refused)('when a problem asks for %s, it is refused by a code', (_, more) => {
    const problem = testProblem({ items: [strap], setKinds: [one], ...more });
    expect(refuseUnsupported(problem)).toEqual([{ code: 'lanes-in-open-sets', where: one.id }]);
    expect(() => {
      const run = startNest(problem);
      run.advance();
    }).toThrow(expect.objectContaining({ code: 'unsupported' }));
  });

  const honoured: readonly (readonly [string, Partial<NestProblem>])[] = [
    ['filling', { objective: { mode: 'fill', keepMm: [20, 20] } }],
    ['a strip', { objective: { mode: 'strip', keepMm: [20, 20] } }],
    ['lanes', { items: [strap] }],
    ['rough cuts', { items: [testItem('a', patch, { roughMargin: 5, group: 'body' })] }],
    ['an open length', { sheets: [testSheet('sheet', patch, { openLength: true })] }],
    ['four streams', { budget: { seed: 1, streams: 4, joins: 0 } }],
  ];
  it.each(honoured)('when a problem asks for %s, it is not refused', (_, more) => {
    const problem = testProblem({ items: [testItem('a', patch)], setKinds: [one], ...more });
    expect(refuseUnsupported(problem)).toEqual([]);
  });
});
