import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { layLanes } from './lay-lanes.js';
import { answerWith, randomObstacles, randomStraps } from './test-straps.js';

const SEEDS = Array.from({ length: 12 }, (_, i) => 100 + i);

describe('when straps of all kinds are asked for from hides of all kinds', () => {
  it.each(SEEDS)('passes the exact check (seed %i)', (seed) => {
    const { problem, kerfMm } = randomStraps(seed);
    const laid = layLanes(problem, { kerfMm });
    expect(checkAnswer(problem, answerWith(laid))).toEqual([]);
  });

  it.each(SEEDS.slice(0, 8))('passes it beside what lies there (seed %i)', (seed) => {
    const { problem, kerfMm } = randomStraps(seed);
    const { withObstacles, lying } = randomObstacles(seed, problem);
    const laid = layLanes(withObstacles, { kerfMm, lying });
    const faults = checkAnswer(withObstacles, answerWith(laid, lying));
    const isOurs = (item: string | undefined): boolean => item !== undefined && item !== 'block';
    const ours = faults.filter(
      ({ rule, at, other }) =>
        rule === 'lane' || isOurs(at?.item) || (typeof other === 'object' && isOurs(other.item)),
    );
    expect(ours).toEqual([]);
  });

  it('lays the same again', () => {
    const { problem, kerfMm } = randomStraps(107);
    expect(layLanes(problem, { kerfMm })).toEqual(layLanes(problem, { kerfMm }));
  });
});
