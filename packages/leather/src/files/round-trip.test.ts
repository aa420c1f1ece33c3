import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { roundCoordinate } from '@hidebound/geometry';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FLAW_KINDS, HIDE_CUTS, ZONE_KINDS } from '../model/hide.js';
import type { Flaw, Hide, Zone } from '../model/hide.js';
import type { Layout, PiecePlacement } from '../model/layout.js';
import { definedOnly } from './defined-only.js';
import { parseHide, provenHide, writeHide } from './hide-file.js';
import { parseLayout, writeLayout } from './layout-file.js';
import { RULE_NAMES } from './schema/layout-schema.js';

/** Places on the hide that the generator draws: 1000 x 700 mm with rounded and curved sides. */
const WIDTH = 1000;
const HEIGHT = 700;

const grid = (from: number, to: number) =>
  fc.integer({ min: from * 1000, max: to * 1000 }).map((steps) => roundCoordinate(steps / 1000));
const inside = fc.record({ x: grid(50, WIDTH - 50), y: grid(50, HEIGHT - 50) });
const anywhere = fc.record({ x: grid(-2000, 2000), y: grid(-2000, 2000) });
const line = fc.array(inside, { minLength: 2, maxLength: 6 }).filter(hasLength);
const someText = fc
  .string({ minLength: 1, maxLength: 40, unit: 'grapheme' })
  .filter((text) => text.trim() !== '' && !/[\u0000-\u001f\u007f]/.test(text));
const share = fc.integer({ min: 0, max: 1_000_000 }).map((n) => n / 1_000_000);

function hasLength(points: readonly Point[]): boolean {
  return points.some((p) => p.x !== points[0]!.x || p.y !== points[0]!.y);
}

function straight(...corners: readonly Point[]): Curve {
  const segments = [...corners.slice(1), corners[0]!].map((to): CurveSegment => ({ kind: 'line', to }));
  return { start: corners[0]!, segments, closed: true };
}

const outline: fc.Arbitrary<Curve> = fc
  .record({ bulge: grid(1, 200), dip: grid(1, 40) })
  .map(({ bulge, dip }) => ({
    start: { x: 0, y: 0 },
    segments: [
      { kind: 'line', to: { x: WIDTH, y: 0 } },
      { kind: 'arc', via: { x: roundCoordinate(WIDTH + bulge), y: HEIGHT / 2 }, to: { x: WIDTH, y: HEIGHT } },
      {
        kind: 'cubic',
        handle1: { x: 700, y: roundCoordinate(HEIGHT - dip) },
        handle2: { x: 300, y: roundCoordinate(HEIGHT + dip) },
        to: { x: 0, y: HEIGHT },
      },
      { kind: 'line', to: { x: 0, y: 0 } },
    ],
    closed: true,
  }));

const patch = fc
  .record({ at: inside, width: grid(1, 40), height: grid(1, 40) })
  .map(({ at, width, height }) =>
    straight(
      at,
      { x: roundCoordinate(at.x + width), y: at.y },
      { x: at.x, y: roundCoordinate(at.y + height) },
    ),
  );

const effect = fc.record(
  {
    looks: fc.constantFrom('A', 'B', 'C'),
    strength: fc.constantFrom('sound', 'weak'),
    isVoid: fc.boolean(),
  },
  { requiredKeys: [] },
);

const shape: fc.Arbitrary<Flaw['shape']> = fc.oneof(
  fc.record({ kind: fc.constant('point' as const), at: inside, radiusMm: grid(1, 50) }),
  fc.record({ kind: fc.constant('line' as const), line, widthMm: grid(1, 20) }),
  fc.record({ kind: fc.constant('area' as const), outline: patch }),
);

const flaw: fc.Arbitrary<Omit<Flaw, 'id'>> = fc.record(
  {
    kind: fc.constantFrom(...FLAW_KINDS),
    side: fc.constantFrom('grain', 'flesh'),
    depth: share,
    shape,
    effect,
  },
  { requiredKeys: ['kind', 'side', 'shape'] },
);

const zone: fc.Arbitrary<Omit<Zone, 'id'>> = fc.record(
  { kind: fc.constantFrom(...ZONE_KINDS), outline: patch, effect },
  { requiredKeys: ['kind', 'outline'] },
);

const hide: fc.Arbitrary<Hide> = fc
  .record({
    id: someText,
    cut: fc.constantFrom(...HIDE_CUTS),
    outline,
    backbone: fc.option(line, { nil: undefined }),
    tightness: fc.array(line, { maxLength: 3 }),
    zones: fc.array(zone, { maxLength: 3 }),
    flaws: fc.array(flaw, { maxLength: 5 }),
    readings: fc.array(fc.record({ at: inside, mm: grid(1, 9) }), { maxLength: 4 }),
    lot: fc.option(someText, { nil: undefined }),
    notes: fc.option(fc.string({ maxLength: 80, unit: 'grapheme' }), { nil: undefined }),
    measuredMm2: fc.integer({ min: 0, max: 9_000_000_000 }).map((n) => n / 1000),
  })
  .map(({ readings, measuredMm2, zones, flaws, ...rest }) =>
    definedOnly({
      ...rest,
      zones: zones.map((one, i) => ({ id: `z${i}`, ...one })),
      flaws: flaws.map((one, i) => ({ id: `f${i}`, ...one })),
      openings: [],
      candidates: [],
      unsureEdges: [],
      leather: { readings },
      area: { measuredMm2 },
      state: 'on hand' as const,
    }),
  );

describe('round trips', () => {
  test('when any hide is written and read, it is the same, and so are its bytes', () => {
    fc.assert(
      fc.property(hide, (one) => {
        const text = writeHide(one);
        const read = parseHide(text, { file: 'h' });
        expect(read).toEqual(one);
        expect(writeHide(read)).toBe(text);
        // What is proven without its text is what its text gives back.
        expect(provenHide(one, { file: 'proven' })).toEqual(read);
      }),
      { seed: 64, numRuns: 150 },
    );
  });

  test('when a hide holds figures off the grid, they are rounded once and then stay', () => {
    fc.assert(
      fc.property(hide, fc.double({ min: -0.5, max: 0.5, noNaN: true }), (one, off) => {
        const tightness = [
          [
            { x: 100 + off, y: 200 - off / 3 },
            { x: 300.00049, y: -0.0004 },
          ],
        ];
        const text = writeHide({ ...one, tightness });
        const read = parseHide(text, { file: 'h' });
        expect(writeHide(read)).toBe(text);
        const first = read.tightness[0]![0]!;
        expect(Math.abs(first.x - 100 - off)).toBeLessThanOrEqual(0.0005000001);
        expect(text).toContain('[300, 0]');
      }),
      { seed: 65, numRuns: 50 },
    );
  });

  const fixture = new URL('../../../../fixtures/formats/every-field.layout.json', import.meta.url);
  const layout = parseLayout(readFileSync(fixture, 'utf8'), { file: 'l' });

  const placement: fc.Arbitrary<Omit<PiecePlacement, 'copy'>> = fc
    .record({
      piece: fc.constantFrom(...layout.pieces.map(({ piece }) => piece)),
      set: fc.integer({ min: 1, max: 1000 }),
      mirrored: fc.boolean(),
      at: anywhere,
      rotationDeg: fc.integer({ min: -360e6, max: 360e6 }).map((n) => (n === 0 ? 0 : n / 1e6)),
      locked: fc.boolean(),
      accepted: fc.subarray([...RULE_NAMES]),
      state: fc.constantFrom('planned' as const, 'cut' as const, 'spoiled' as const),
    })
    .map(({ at, ...rest }) => ({ ...rest, ...at, article: 'Saddlebag', hide: layout.hides[0]!.id }));

  test('when any layout is written and read, it is the same, and so are its bytes', () => {
    fc.assert(
      fc.property(fc.array(placement, { maxLength: 12 }), (placements) => {
        const one: Layout = { ...layout, placements: placements.map((p, i) => ({ ...p, copy: i + 1 })) };
        const text = writeLayout(one);
        const read = parseLayout(text, { file: 'l' });
        expect(read).toEqual(one);
        expect(writeLayout(read)).toBe(text);
      }),
      { seed: 66, numRuns: 40 },
    );
  });
});
