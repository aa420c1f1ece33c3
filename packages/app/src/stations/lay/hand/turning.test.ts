import { describe, expect, it } from 'vitest';
import { turnedBy, wholeTurn } from './turning.js';

describe('turning a piece', () => {
  // y grows downwards: from the right to below is a quarter turn clockwise as seen.
  it('when the pointer goes from the right to below, the piece turns a quarter clockwise', () => {
    expect(turnedBy({ x: 5, y: 5 }, { x: 15, y: 5 }, { x: 5, y: 25 })).toBeCloseTo(90, 9);
  });

  it('when it goes over the half turn, it is the shorter way', () => {
    const about = { x: 0, y: 0 };
    expect(turnedBy(about, { x: -10, y: 1 }, { x: -10, y: -1 })).toBeCloseTo(11.421186, 5);
  });

  it('when an angle is written, it is from 0 to less than 360', () => {
    expect([wholeTurn(-90), wholeTurn(360), wholeTurn(725)]).toEqual([270, 0, 5]);
  });
});
