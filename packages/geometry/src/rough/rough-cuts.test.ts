import { beforeAll, describe, expect, it, vi } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { checkAnswer } from '../check/index.js';
import { CHECK_FORGIVES_MM } from '../tolerance.js';
import { ringPerimeter } from '../shape/ring.js';
import { regionDistance } from '../shape/distance.js';
import { offsetRegions } from '../shape/clipper.js';
import type { CopyRef, NestProblem, Placement, RoughCut } from '../types/problem.js';
import { filled } from './overlap.js';
import { pieceOf } from './grown.js';
import { keptApart, roughShape } from './kept-apart.js';
import { ROUGH_ROOM_MM } from './constants.js';
import { drawRoughCuts } from './drawn-rough-cuts.js';
import { keyOf, roughCutsFor } from './rough-cuts.js';
import { roughLayout } from './test-layouts.js';
import type { RoughLayoutOptions } from './test-layouts.js';

// The machine's speed is no part of these tests.
vi.setConfig({ testTimeout: 60_000 });

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

function randomOptions(seed: number): RoughLayoutOptions {
  return {
    pieces: 8 + 3 * (seed % 4),
    hides: seed % 5 === 0 ? 2 : 1,
    share: 0.15 + 0.1 * (seed % 3),
    rules: seed % 2 === 0 ? 'plain' : 'all',
    marginMm: [10, 4, 25, 0][seed % 4]!,
    groups: 1 + (seed % 3),
    spareMm: [-ROUGH_ROOM_MM, 0, 3, 0][seed % 4]!,
    hide: { flaws: 4, lengthMm: 1400, halfWidthMm: 700 },
  };
}

/** Regions of placed copies, by copy. */
function placedRegions(problem: NestProblem, placements: readonly Placement[]) {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  return new Map(
    placements.map((placement) => {
      const item = items.get(placement.item)!;
      return [
        keyOf(placement),
        { sheet: placement.sheet, item, region: pieceOf(item, placement, false).region },
      ];
    }),
  );
}

/** `forgivenMm`: the width by which outlines at the bare margin may overlap, as the exact check has it. */
function expectJudged(
  problem: NestProblem,
  placements: readonly Placement[],
  roughCuts: readonly RoughCut[],
  forgivenMm: number,
): void {
  const placed = placedRegions(problem, placements);
  const shapes = roughCuts.map(({ outline }) => judge.shapeOf(filled(outline)));
  shapes.forEach((shape, i) => {
    const cut = roughCuts[i]!;
    expect(judge.isValid(shape)).toBe(true);
    const most = 1e-6 + forgivenMm * ringPerimeter(cut.outline);
    const members = new Set(cut.members.map((member: CopyRef) => keyOf(member)));
    for (const key of members) {
      const { region } = placed.get(key)!;
      // Inscribed chords of the grown outline: never beyond the true margin.
      const [grown] = offsetRegions([filled(region.outer)], cut.marginMm - 0.002, { join: 'round' });
      expect(judge.covers(shape, judge.shapeOf(filled(grown!.outer)))).toBe(true);
    }
    for (const [key, { sheet, region }] of placed) {
      if (members.has(key) || sheet !== cut.sheet) continue;
      expect(judge.intersectionArea(shape, judge.shapeOf(region))).toBeLessThan(most);
    }
    shapes.slice(i + 1).forEach((other, k) => {
      if (roughCuts[i + 1 + k]!.sheet !== cut.sheet) return;
      expect(judge.intersectionArea(shape, other)).toBeLessThan(most);
    });
  });
}

describe('rough cuts of random layouts', () => {
  it.each(Array.from({ length: 6 }, (_, i) => i + 1))(
    'when layout %i keeps the distances, its blocks pass the exact check and another judge',
    (seed) => {
      const options = randomOptions(seed);
      const { problem, answer } = roughLayout(seed, options);
      const { placements, roughCuts, lifted, conflicts } = drawRoughCuts(problem, answer.placements);
      const unplaced = [
        ...answer.unplaced,
        ...lifted.map((copy) => ({ ...copy, reason: 'no-room' as const })),
      ];
      expect(conflicts).toEqual([]);
      expectJudged(problem, placements, roughCuts, options.spareMm! < 0 ? CHECK_FORGIVES_MM : 0);
      const broken = checkAnswer(problem, { ...answer, placements, unplaced, roughCuts });
      // A set that lost a copy is the caller's business.
      expect(lifted.length === 0 ? broken : broken.filter(({ rule }) => rule === 'rough-cut')).toEqual([]);
    },
  );
});

describe('pieces that keep room for blocks of their own', () => {
  it('when they lie as far apart as that asks for, nothing is in the way of any block', () => {
    const { problem, answer } = roughLayout(31, {
      ...randomOptions(2),
      gapMm: 20 + 2 * ROUGH_ROOM_MM,
      marginMm: 10,
      spareMm: 0,
    });
    const shaped = {
      ...problem,
      items: problem.items.map((item) => ({ ...item, region: roughShape(item) })),
    };
    const apart = keptApart(problem, { blocks: 'own' });
    const placed = [...placedRegions(shaped, answer.placements).values()];
    placed.forEach((one, i) => {
      for (const other of placed.slice(i + 1)) {
        if (one.sheet !== other.sheet) continue;
        expect(regionDistance(one.region, other.region)).toBeGreaterThan(apart(one.item, other.item) - 0.002);
      }
    });
    const { roughCuts, conflicts } = roughCutsFor(problem, answer.placements);
    expect(conflicts).toEqual([]);
    expect(roughCuts.length).toBeGreaterThan(3);
    expect(checkAnswer(problem, { ...answer, roughCuts })).toEqual([]);
  });
});
