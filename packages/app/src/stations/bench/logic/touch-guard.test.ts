import { describe, expect, it } from 'vitest';
import { touchGuard } from './touch-guard.js';

describe('the guard against double touches', () => {
  it('when a second touch comes within 350 ms it does not count, and one after that does', () => {
    const guard = touchGuard();
    expect([1000, 1001, 1349, 1350].map((at) => guard.passes(at))).toEqual([true, false, false, true]);
  });

  it('when someone keeps tapping fast, every 350 ms one touch counts: what is held back does not hold back more', () => {
    const guard = touchGuard();
    const passed = Array.from({ length: 21 }, (_, i) => i * 100).filter((at) => guard.passes(at));
    expect(passed).toEqual([0, 400, 800, 1200, 1600, 2000]);
  });
});
