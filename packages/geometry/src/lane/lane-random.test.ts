import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { layLanes } from './lay-lanes.js';
import { answerWith, randomStraps } from './test-straps.js';

const SEEDS = Array.from({ length: 40 }, (_, i) => 100 + i);

describe('when straps of all kinds are asked for from hides of all kinds', () => {
  it.each(SEEDS)('passes the exact check (seed %i)', (seed) => {
    const { problem, kerfMm } = randomStraps(seed);
    const laid = layLanes(problem, { kerfMm });
    expect(checkAnswer(problem, answerWith(laid))).toEqual([]);
  });

  it('lays the same again', () => {
    const { problem, kerfMm } = randomStraps(107);
    expect(layLanes(problem, { kerfMm })).toEqual(layLanes(problem, { kerfMm }));
  });
});
