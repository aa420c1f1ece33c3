import {
  applyAffine,
  composeAffine,
  pointInRing,
  rotationDeg,
  sampleHide,
  translation,
} from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import type { SampleCut } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { guessBackbone } from './guess-backbone.js';

/** The sample hides are drawn with the head at x = 0 and the backbone along y = 0; here they are turned. */
function turned(seed: number, cut: SampleCut, deg: number): { ring: Ring; back: Ring } {
  const { outer } = sampleHide(seed, {
    cut,
    lengthMm: 1900,
    halfWidthMm: 760,
    flaws: 0,
    corners: 400,
  }).region;
  const to = composeAffine(translation(900, 700), rotationDeg(deg));
  return {
    ring: outer.map((p) => applyAffine(to, p)),
    back: [
      { x: 0, y: 0 },
      { x: 1900, y: 0 },
    ].map((p) => applyAffine(to, p)),
  };
}

function angleBetween([a, b]: readonly Point[], [c, d]: readonly Point[]): number {
  const turn = Math.atan2(b!.y - a!.y, b!.x - a!.x) - Math.atan2(d!.y - c!.y, d!.x - c!.x);
  return (Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * 180) / Math.PI;
}

test.each([
  [1, 0],
  [2, 37],
  [3, 90],
  [4, 161],
  [5, 250],
])('when whole hide %i lies turned by %i°, its backbone is found from head to tail', (seed, deg) => {
  const { ring, back } = turned(seed, 'hide', deg);
  const guess = guessBackbone(ring);
  expect(guess.cut).toBe('whole hide');
  expect(angleBetween(guess.backbone!, back)).toBeLessThan(4);
  for (const end of guess.backbone!) expect(pointInRing(end, ring)).toBe('inside');
  expect(guess.confidence).toBeGreaterThan(0.3);
  expect(guess.confidence).toBeLessThan(0.9);
});

test.each([
  [1, 0],
  [2, 75],
  [3, 200],
])('when side %i lies turned by %i°, its backbone runs along the straight edge', (seed, deg) => {
  const { ring, back } = turned(seed, 'side', deg);
  const guess = guessBackbone(ring);
  expect(guess.cut).toBe('side');
  expect(angleBetween(guess.backbone!, back)).toBeLessThan(3);
  const [a, b] = back as [Point, Point];
  for (const end of guess.backbone!) {
    expect(pointInRing(end, ring)).toBe('inside');
    const away = ((b.x - a.x) * (end.y - a.y) - (b.y - a.y) * (end.x - a.x)) / 1900;
    expect(Math.abs(away)).toBeLessThan(25);
  }
});

test('when the cut is a belly, no backbone is guessed', () => {
  const { ring } = turned(1, 'belly', 20);
  expect(guessBackbone(ring, [], 'belly').backbone).toBeUndefined();
});

test('when a shape says nothing, the confidence is low', () => {
  const disc = Array.from({ length: 90 }, (_, i) => ({
    x: 500 * Math.cos((i * Math.PI) / 45),
    y: 500 * Math.sin((i * Math.PI) / 45),
  }));
  expect(guessBackbone(disc).confidence).toBeLessThan(0.3);
});
