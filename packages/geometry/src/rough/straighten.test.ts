import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { starRing } from '../../test-support/shapes.js';
import { findSelfContacts } from '../shape/self-contact.js';
import { ringInRing } from '../shape/contain.js';
import type { Point, Ring } from '../types/shape.js';
import { createObstacles, NO_PIECE } from './obstacles.js';
import { outlineCost, straighten } from './straighten.js';

const ANYWHERE = { isClear: () => true };
const NONE: ReadonlySet<number> = new Set();

function isTriangleNear(p: Point): Ring {
  return [
    { x: p.x, y: p.y },
    { x: p.x + 2, y: p.y },
    { x: p.x, y: p.y + 2 },
  ];
}

describe('outlines made easy to cut', () => {
  it('when a rectangle has a narrow notch, it is cut across', () => {
    const notched: Ring = [
      { x: 0, y: 0 },
      { x: 90, y: 0 },
      { x: 90, y: 60 },
      { x: 110, y: 60 },
      { x: 110, y: 0 },
      { x: 200, y: 0 },
      { x: 200, y: 100 },
      { x: 0, y: 100 },
    ];
    expect(straighten(notched, ANYWHERE)).toHaveLength(4);
    const stone = createObstacles([{ ring: isTriangleNear({ x: 100, y: 50 }), owner: NO_PIECE }]);
    const round = straighten(notched, { isClear: (patch) => stone.isClear(patch, NONE) });
    expect(round.length).toBeGreaterThan(4);
    expect(stone.isClear(round, NONE)).toBe(true);
  });

  it('when a large hollow would cost more leather than cutting around it, it stays', () => {
    const angle: Ring = [
      { x: 0, y: 0 },
      { x: 600, y: 0 },
      { x: 600, y: 50 },
      { x: 50, y: 50 },
      { x: 50, y: 600 },
      { x: 0, y: 600 },
    ];
    expect(straighten(angle, ANYWHERE)).toHaveLength(6);
  });

  it('when outlines are random, the easy one holds the given one, is simple, costs no more and keeps clear', () => {
    fc.assert(
      fc.property(
        starRing(),
        fc.array(
          fc.record({ x: fc.integer({ min: -150, max: 150 }), y: fc.integer({ min: -150, max: 150 }) }),
          {
            maxLength: 6,
          },
        ),
        (ring, stones) => {
          const all = createObstacles(stones.map((p) => ({ ring: isTriangleNear(p), owner: NO_PIECE })));
          fc.pre(all.isClear(ring, NONE));
          const easy = straighten(ring, { isClear: (patch) => all.isClear(patch, NONE) });
          expect(ringInRing(ring, easy)).toBe(true);
          expect(findSelfContacts(easy)).toEqual([]);
          expect(outlineCost(easy)).toBeLessThanOrEqual(1.1 * outlineCost(ring));
          expect(all.isClear(easy, NONE)).toBe(true);
        },
      ),
      { seed: 5, numRuns: 120 },
    );
  });
});
