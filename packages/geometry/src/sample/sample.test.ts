import { describe, expect, it } from 'vitest';
import { findSelfCrossing } from '../shape/self-contact.js';
import { regionArea, ringArea } from '../shape/ring.js';
import { sampleHide } from './sample-hide.js';
import { samplePieces } from './sample-pieces.js';
import { sampleProblem } from './sample-problem.js';

const CUTS = ['side', 'hide', 'shoulder', 'bend', 'belly', 'panel'] as const;

describe('random hides', () => {
  it.each(CUTS)('when a %s is drawn, its outline is simple and its size believable', (cut) => {
    for (let seed = 1; seed <= 8; seed++) {
      const { region } = sampleHide(seed, { cut, flaws: 10 });
      for (const ring of [region.outer, ...region.openings]) expect(findSelfCrossing(ring)).toBeUndefined();
      expect(ringArea(region.outer)).toBeGreaterThan(0);
      const m2 = regionArea(region) / 1e6;
      expect(m2).toBeGreaterThan(0.2);
      expect(m2).toBeLessThan(4);
    }
  });

  it('when the same seed is used again, the hide is the same', () => {
    expect(sampleHide(7, { flaws: 20 })).toEqual(sampleHide(7, { flaws: 20 }));
    expect(sampleHide(7)).not.toEqual(sampleHide(8));
  });

  it('when many corners are asked for, it has about as many', () => {
    const { region } = sampleHide(3, { cut: 'hide', corners: 2000 });
    expect(region.outer.length).toBeGreaterThan(1800);
    expect(region.outer.length).toBeLessThan(2200);
  });
});

describe('random pieces', () => {
  it('when pieces are drawn, each is simple, oriented and not empty', () => {
    for (const { region } of samplePieces(3, 60)) {
      for (const ring of [region.outer, ...region.openings]) expect(findSelfCrossing(ring)).toBeUndefined();
      expect(ringArea(region.outer)).toBeGreaterThan(0);
      for (const opening of region.openings) expect(ringArea(opening)).toBeLessThan(0);
    }
  });

  it('when a problem is drawn, its pieces cover the share that was asked for', () => {
    const problem = sampleProblem(4, { pieces: 40, rules: 'plain', share: 0.5 });
    const areas = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
    let area = 0;
    for (const { item, count } of problem.setKinds[0]!.members) area += count * areas.get(item)!;
    expect(area / regionArea(problem.sheets[0]!.region)).toBeCloseTo(0.5, 3);
  });
});
