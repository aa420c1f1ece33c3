import { describe, expect, it } from 'vitest';
import type { Item, Placement } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { checkAnswer } from './index.js';
import { makeItem, makeJob, makeQuality, makeSheet, place, polygon } from './test-jobs.js';
import type { Job } from './test-jobs.js';
import { makeDice } from './test-mutations.js';
import type { Dice } from './test-mutations.js';

function blob(dice: Dice, corners: number, radius: number, x = 0, y = 0): Region {
  const phase = 6 * dice();
  return polygon(
    ...Array.from({ length: corners }, (_, i): readonly [number, number] => {
      const angle = (2 * Math.PI * i) / corners;
      const reach = radius * (1 + 0.08 * Math.sin(3 * angle + phase) + 0.02 * Math.sin(11 * angle));
      return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
    }),
  );
}

/** 400 pieces of 60 corners, in rows as close as they come, on a hide of 2,000 corners with 50 flaws and two zones. */
function bigJob(gap: number): Job {
  const dice = makeDice(7);
  const kinds = Array.from({ length: 10 }, (_, i): Item =>
    makeItem(`piece ${i}`, blob(dice, 60, 40), {
      need: { maxGrade: 1, strong: true, zones: ['bend', 'shoulder'] },
      parts: [{ name: 'face', areas: [blob(dice, 40, 30)], need: { maxGrade: 0, strong: true } }],
      angleRule: { frame: 'local', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 90, modulo: 180 },
      thickness: { minMm: 1, maxMm: 5, tooThick: 'refuse' },
    }),
  );
  const placements = Array.from({ length: 400 }, (_, i): Placement => {
    const [column, row] = [i % 20, Math.floor(i / 20)];
    const x = column * 84 - 798 + (row % 2) * 4;
    return place(`piece ${i % 10}`, x, row * 84 - 798, 37 * i, { copy: 1 + Math.floor(i / 10) });
  });
  const qualities = Array.from({ length: 50 }, (_, i) => {
    const area = blob(dice, 30, 6, 1600 * dice() - 800, 1600 * dice() - 800);
    return makeQuality(`flaw ${i}`, area, { grade: i % 3, isVoid: i % 5 === 0, weak: i % 7 === 0 });
  });
  const zones = ['bend', 'shoulder'].map((zone, i) =>
    makeQuality(zone, blob(dice, 300, 1000, 600 * i - 300, 0), { zone }),
  );
  const wave = (y: number): { x: number; y: number }[] =>
    Array.from({ length: 20 }, (_, i) => ({ x: 100 * i - 1000, y: y + 20 * Math.sin(i) }));
  const sheet = makeSheet({
    region: blob(dice, 2000, 1400),
    qualities: [...zones, ...qualities],
    direction: { axis: wave(0), strokes: [wave(-500), wave(500)] },
    thickness: { rangeMm: [2, 4], readings: wave(100).map((at) => ({ at, mm: 3 })) },
  });
  const problem = { distances: { gap, edge: 5, void: 2 } };
  return makeJob({ items: kinds, placements, sheets: [sheet], problem });
}

describe('when 400 pieces of 60 corners lie on a hide of 2,000 with 50 flaws', () => {
  it.each([0, 2])('at a gap of %d mm, the same rules are found broken again and again', (gap) => {
    const { problem, answer } = bigJob(gap);
    const found = checkAnswer(problem, answer);
    expect(new Set(found.map(({ rule }) => rule))).toContain(gap === 0 ? 'void' : 'gap');
    expect(checkAnswer(problem, answer)).toEqual(found);
  });
});
