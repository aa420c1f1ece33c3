import { describe, expect, it } from 'vitest';
import type { FoundViolation } from './index.js';
import { checkAnswer } from './index.js';
import { frame, makeItem, makeJob, makeQuality, makeSheet, place, rectangle } from './test-jobs.js';
import type { QualityRegion } from '../types/problem.js';

function check(qualities: readonly QualityRegion[], angleDeg: number): readonly FoundViolation[] {
  const item = makeItem('front', rectangle(-50, -50, 50, 50), {
    need: { maxGrade: 1, strong: false },
    parts: [
      {
        name: 'face',
        areas: [rectangle(-40, -40, -5, 40), rectangle(5, -40, 40, 40)],
        need: { maxGrade: 1, strong: false, zones: ['bend', 'back'] },
      },
    ],
  });
  const { problem, answer } = makeJob({
    items: [item],
    sheets: [makeSheet({ qualities })],
    placements: [place('front', 300, 300, angleDeg)],
  });
  return checkAnswer(problem, answer);
}

const bend = makeQuality('bend', rectangle(0, 0, 310, 600), { zone: 'bend' });
const back = makeQuality('back', rectangle(290, 0, 900, 600), { zone: 'back' });

describe.each([0, 90, 21.7])('when the face of a piece needs certain zones, turned by %d°', (angleDeg) => {
  const outside = expect.objectContaining({ rule: 'zone', other: 'bend, back', part: 'face' }) as unknown;

  it('lies across two zones that overlap', () => {
    expect(check([bend, back], angleDeg)).toEqual([]);
  });

  it('fails, by the name of the part, where a zone is missing or none is there', () => {
    expect(check([bend], angleDeg)).toEqual([outside]);
    expect(check([], angleDeg)).toEqual([outside]);
  });

  it('fails over a hole in the union that it covers whole', () => {
    const hole = rectangle(278, 278, 282, 282);
    const holed = makeQuality('bend', frame(rectangle(0, 0, 310, 600), hole), { zone: 'bend' });
    expect(check([holed, back], angleDeg)).toEqual([outside]);
    const patch = makeQuality('patch', rectangle(270, 270, 290, 290), { zone: 'bend' });
    expect(check([holed, back, patch], angleDeg)).toEqual([]);
  });

  it('does not care what is under the rest of the piece', () => {
    const rest = frame(rectangle(0, 0, 900, 600), rectangle(299, 299, 301, 301));
    expect(check([makeQuality('bend', rest, { zone: 'bend' })], angleDeg)).toEqual([]);
  });
});
