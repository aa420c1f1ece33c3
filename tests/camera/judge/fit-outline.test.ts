import { applyAffine, composeAffine, ringArea, rotationDeg, scaling, translation } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { BENCH_SCENES, setStage } from '../index.js';
import { areaError, fitOutline } from './fit-outline.js';
import { nearestOnRings } from './nearest-on-rings.js';

const scene = BENCH_SCENES[0]!;
const TRUTH: Ring = setStage(scene).hides[0]!.outline;

/** The truth turned, moved and made larger, as a traced hide may come. */
function changed(scale: number): Ring {
  const motion = composeAffine(translation(1200, -300), composeAffine(rotationDeg(7), scaling(scale)));
  return TRUTH.map((point) => applyAffine(motion, point));
}

describe('laying a found outline onto the true one', () => {
  // Judge: the change itself, which is known.
  test('when it is only turned and moved, nothing is left over', () => {
    const found = changed(1);
    const { motion, scaleError } = fitOutline(found, TRUTH);
    const nearest = nearestOnRings([TRUTH]);
    const offs = found.map((point) => nearest(applyAffine(motion, point)).distance);
    expect(Math.max(...offs)).toBeLessThan(0.02);
    expect(Math.abs(scaleError)).toBeLessThan(2e-5);
  });

  test('when it is 0.2 % too large, both fits say so, and the area twice that', () => {
    const found = changed(1.002);
    const { motion, scaleError } = fitOutline(found, TRUTH);
    expect(scaleError).toBeCloseTo(0.002, 4);
    expect(areaError(found, TRUTH)).toBeCloseTo(0.004004, 6);
    // Without a change of size the ends stay too far out: 0.2 % of about a metre.
    const nearest = nearestOnRings([TRUTH]);
    const worst = Math.max(...found.map((point) => nearest(applyAffine(motion, point)).distance));
    expect(worst).toBeGreaterThan(1);
    expect(worst).toBeLessThan(3);
  });

  test('when a leg is missing, the rest stays where it is', () => {
    const whole = changed(1);
    const [minX] = [Math.min(...whole.map(({ x }) => x))];
    const found = whole.filter(({ x }) => x > minX + 150);
    expect(Math.abs(ringArea(found))).toBeLessThan(Math.abs(ringArea(whole)));
    const { motion } = fitOutline(found, TRUTH);
    const nearest = nearestOnRings([TRUTH]);
    const offs = found.map((point) => nearest(applyAffine(motion, point)).distance).sort((a, b) => a - b);
    expect(offs[offs.length >> 1]!).toBeLessThan(0.6);
  });
});
