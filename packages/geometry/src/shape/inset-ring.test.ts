import { describe, expect, it } from 'vitest';
import { rectangle } from '../../test-support/shapes.js';
import type { Ring } from '../types/shape.js';
import { flatRings } from './flat-rings.js';
import { insetRing } from './inset-ring.js';

function inset(outer: Ring, openings: Ring[], by: number): number[][] {
  return flatRings([{ outer, openings }]).map((ring) => [...insetRing(ring, by)].map((at) => +at.toFixed(9)));
}

describe('rings with each corner moved into the material', () => {
  it('when a square has a square opening, the outline shrinks and the opening grows on all sides', () => {
    const [outer, opening] = inset(rectangle(0, 0, 40, 40), [rectangle(10, 10, 20, 20)], 1);
    expect(outer).toEqual([1, 1, 39, 1, 39, 39, 1, 39]);
    expect([...opening!].sort((a, b) => a - b)).toEqual([9, 9, 9, 9, 31, 31, 31, 31]);
  });

  it('when a tip is sharp, its corner moves by one and a half insets and no more', () => {
    // A mitre would be 1 / sin(half of the tip's angle) long: about 20 insets.
    const tip = [
      { x: 0, y: 0 },
      { x: 399, y: -20 },
      { x: 399, y: 20 },
    ];
    const [ring] = inset(tip, [], 0.1);
    expect(ring!.slice(0, 2)).toEqual([0.15, 0]);
  });

  it('when it moves by nothing, the ring is the same', () => {
    const [ring] = flatRings([{ outer: rectangle(0, 0, 3, 4), openings: [] }]);
    expect(insetRing(ring!, 0)).toBe(ring);
  });
});
