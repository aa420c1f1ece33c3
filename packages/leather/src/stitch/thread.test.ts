import { describe, expect, test } from 'vitest';
import { pitchSuitsThread, threadLengthMm } from './thread.js';

describe('thread for a saddle stitch', () => {
  // The facts page's own worked examples (geometry, no outside source): total over L without tails.
  test.each([
    [3, 3.4, 3.76],
    [6, 3.9, 5.08],
    [8, 5, 5.2],
  ])('when the stack is %d mm and the pitch %d mm, it takes %d times the seam', (stackMm, pitchMm, times) => {
    expect(threadLengthMm({ lengthMm: 1000, pitchMm, stackMm, tailsMm: 0 }) / 1000).toBeCloseTo(times, 2);
  });

  test('when tails are added, they are a number of their own', () => {
    // Tails and needles about 300 mm: saddler's blog [S111].
    const seam = { lengthMm: 500, pitchMm: 4, stackMm: 4 };
    expect(threadLengthMm({ ...seam, tailsMm: 300 })).toBe(2300);
    expect(threadLengthMm({ ...seam, tailsMm: 0 })).toBe(2000);
  });

  test('when the rules of thumb are compared, they hold for thin stacks only', () => {
    // 3.5 times: campcraft handbook [S109]; 4 times: kit seller and saddler's blog [S110][S111].
    const times = (stackMm: number, pitchMm: number) =>
      threadLengthMm({ lengthMm: 1, pitchMm, stackMm, tailsMm: 0 });
    expect(times(2.55, 3.4)).toBeCloseTo(3.5, 9);
    expect(times(3.4, 3.4)).toBe(4);
    expect(times(6, 3.4)).toBeGreaterThan(5.5);
  });

  // From memory: pitch over thickness 5 to 6.
  test.each([
    [4, 0.8, 'suits'],
    [3.4, 0.6, 'suits'],
    [2.7, 0.8, 'too near'],
    [5.4, 0.5, 'too far'],
  ] as const)('when the pitch is %d mm and the thread %d mm, it is: %s', (pitchMm, threadMm, verdict) => {
    expect(pitchSuitsThread(pitchMm, threadMm)).toBe(verdict);
  });
});
