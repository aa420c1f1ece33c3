import { describe, expect, it } from 'vitest';
import { nearestHeight } from './card-handle.js';

describe('the card on a phone', () => {
  it('when it is let go, it stays at the nearest of its three heights', () => {
    expect([0, 0.1, 0.2, 0.4, 0.55, 0.9].map(nearestHeight)).toEqual([
      'down',
      'down',
      'low',
      'low',
      'up',
      'up',
    ]);
  });
});
