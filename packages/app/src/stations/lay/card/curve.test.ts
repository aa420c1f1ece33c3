import { describe, expect, it } from 'vitest';
import { curveShape } from './curve.js';

const points = [
  { elapsedMs: 1000, usedUpMm2: 400 },
  { elapsedMs: 2000, usedUpMm2: 300 },
  { elapsedMs: 4000, usedUpMm2: 300 },
];

describe('the curve of a run', () => {
  it('when less leather is used up, it steps down and stays there until now', () => {
    const { path, last } = curveShape(points, undefined)!;
    const heights = [...path.matchAll(/[MV](?:[\d.]+ )?([\d.]+)/g)].map(([, y]) => Number(y));
    // Heights grow downwards, as everywhere in SVG.
    expect(heights[1]).toBeGreaterThan(heights[0]!);
    expect(heights[2]).toBe(heights[1]);
    expect(last.y).toBeCloseTo(heights[2]!, 1);
  });

  it('when the layout before used up less, its line lies below the curve', () => {
    const { last, beforeY } = curveShape(points, 200)!;
    expect(beforeY).toBeGreaterThan(last.y);
  });

  it('when nothing was found yet, there is no curve', () => {
    expect(curveShape([], 200)).toBeUndefined();
  });
});
