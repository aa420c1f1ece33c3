import { createRandom, curveArea, flattenCurve, pointInRing, ringBox } from '@hidebound/geometry';
import type { Random } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { Piece } from '../model/piece.js';
import { cutFileOf } from './cut-file.js';
import { PANEL, PLAIN, box, disc, layoutOf, square } from './test-layouts.js';
import type { Laid } from './test-layouts.js';
import type { CutFileOptions } from './types.js';

/** Frames with a washer in their openings or none, plates with holes, and discs, each in a place of its own. */
function thrown(random: Random): Laid[] {
  const frame = square('frame', 80, { cutOuts: [box(-25, -25, 25, 25)] });
  const plate = square('plate', 60, {
    punches: [
      { at: { x: 10, y: 12 }, diameterMm: 5 },
      { at: { x: -8, y: 20 }, diameterMm: 3 },
    ],
    stitchLines: [{ curve: box(-25, -25, 25, 25) }],
  });
  const washer = disc('washer', 12);
  return Array.from({ length: 24 }, (_, i) => i).flatMap((i): Laid[] => {
    const at = {
      x: 70 + 140 * (i % 6) + random.between(0, 20),
      y: 70 + 130 * Math.floor(i / 6) + random.between(0, 10),
      rotationDeg: random.between(0, 360),
      mirrored: random.next() < 0.5,
    };
    const kind = random.integer(4);
    const put = (shape: Piece): Laid => ({ shape, ...at });
    if (kind === 0) return [put(frame)];
    if (kind === 1) return [put(frame), put(washer)];
    return [put(kind === 2 ? plate : washer)];
  });
}

function optionsOf(random: Random): CutFileOptions {
  return {
    ...PLAIN,
    kerfMm: random.next() < 0.3 ? 0 : random.between(0.1, 1.5),
    frame: random.next() < 0.5,
    side: random.next() < 0.5 ? 'grain' : 'flesh',
    ...(random.next() < 0.5
      ? { leadIn: { kind: 'straight', lengthMm: random.between(0.5, 4) } as const }
      : {}),
  };
}

const SEEDS = Array.from({ length: 24 }, (_, i) => i + 1);

describe('layouts by chance', () => {
  test('when pieces are cut, each of their lines is there once, of the size that the kerf asks for', () => {
    for (const seed of SEEDS) {
      const random = createRandom(seed);
      const laid = thrown(random);
      const options = { ...optionsOf(random) };
      delete (options as { leadIn?: unknown }).leadIn;
      const k = options.kerfMm;
      const want = laid
        .flatMap(({ shape }) => [
          ...(shape.name === 'washer' ? [Math.PI * (12 + k / 2) ** 2] : []),
          ...(shape.name === 'frame' ? [(80 + k) ** 2, (50 - k) ** 2] : []),
          ...(shape.name === 'plate'
            ? [(60 + k) ** 2, Math.PI * (2.5 - k / 2) ** 2, Math.PI * (1.5 - k / 2) ** 2, 50 ** 2]
            : []),
        ])
        .sort((a, b) => a - b);
      const { file } = cutFileOf(layoutOf(laid), PANEL, options);
      const paths = file.paths.filter(({ kind }) => kind !== 'frame');
      const got = paths.map(({ strokes }) => Math.abs(curveArea(strokes[0]!))).sort((a, b) => a - b);
      expect(got).toHaveLength(want.length);
      expect(Math.max(...got.map((area, i) => Math.abs(area - want[i]!))), `seed ${seed}`).toBeLessThan(1e-6);
    }
  });

  test('when pieces are cut, nothing lies within an outline or opening that was cut before it', () => {
    for (const seed of SEEDS) {
      const random = createRandom(seed);
      const { file } = cutFileOf(layoutOf(thrown(random)), PANEL, optionsOf(random));
      const rings = file.paths.map(({ kind, strokes, hasLeadIn }) => {
        const ring = flattenCurve(strokes[0]!, 0.01);
        return { kind, ring: hasLeadIn ? ring.slice(1) : ring };
      });
      rings.forEach(({ kind, ring }, i) => {
        if (kind !== 'cut' && kind !== 'opening') return;
        const { minX, minY, maxX, maxY } = ringBox(ring);
        for (const later of rings.slice(i + 1)) {
          const p = later.ring[1]!;
          if (p.x < minX || p.x > maxX || p.y < minY || p.y > maxY) continue;
          expect(pointInRing(p, ring), `seed ${seed}, path ${i + 1}`).toBe('outside');
        }
      });
    }
  });

  test('when pieces are cut twice, the paths are equal to the bit, and numbered without a gap', () => {
    for (const seed of SEEDS.slice(0, 6)) {
      const [one, two] = [1, 2].map(() => {
        const random = createRandom(seed);
        return cutFileOf(layoutOf(thrown(random)), PANEL, optionsOf(random));
      });
      expect(one).toEqual(two);
      expect(one!.file.paths.map(({ number }) => number)).toEqual(one!.file.paths.map((_, i) => i + 1));
    }
  });
});
