import { ringArea, ringBox } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { findingsInFrame, hideFrame, pointInFrame, ringInFrame } from './hide-frame.js';

/** A right-angled triangle whose right angle lies at the left, turning clockwise as seen. */
const TRIANGLE: Ring = [
  { x: 200, y: 100 },
  { x: 600, y: 100 },
  { x: 200, y: 400 },
];

describe('the frame of a hide', () => {
  test('when the grain side lay upwards, the hide keeps its sense and starts at the origin', () => {
    const frame = hideFrame(ringBox(TRIANGLE), 'grain');
    expect(ringInFrame(frame, TRIANGLE, 'outer')).toEqual([
      { x: 0, y: 0 },
      { x: 400, y: 0 },
      { x: 0, y: 300 },
    ]);
  });

  test('when the flesh side lay upwards, the right angle changes to the right, and the box starts at the origin', () => {
    const frame = hideFrame(ringBox(TRIANGLE), 'flesh');
    const ring = ringInFrame(frame, TRIANGLE, 'outer');
    expect(pointInFrame(frame, { x: 200, y: 100 })).toEqual({ x: 400, y: 0 });
    expect(ringBox(ring)).toEqual({ minX: 0, minY: 0, maxX: 400, maxY: 300 });
    expect(ringArea(ring)).toBe(60_000);
  });

  test('when a ring is an opening, it turns the other way in both frames', () => {
    for (const side of ['grain', 'flesh'] as const) {
      const frame = hideFrame(ringBox(TRIANGLE), side);
      expect(ringArea(ringInFrame(frame, TRIANGLE, 'opening'))).toBe(-60_000);
    }
  });

  test('when a finding has a place, it is told in the frame of the hide, and others stay as they are', () => {
    const frame = hideFrame(ringBox(TRIANGLE), 'flesh');
    const at = { file: 'side.jpg', point: { x: 200, y: 130 } };
    const findings = [
      { code: 'a', severity: 'note', params: {}, place: at },
      { code: 'b', severity: 'note', params: {} },
    ] as const;
    expect(findingsInFrame(frame, findings)).toEqual([
      { ...findings[0], place: { file: 'side.jpg', point: { x: 400, y: 30 } } },
      findings[1],
    ]);
  });
});
