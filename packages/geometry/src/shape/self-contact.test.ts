import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { points, solid } from '../../test-support/shapes.js';
import { segmentsCross, segmentsTouch, turnOf } from './orientation.js';
import { reverseRing, ringBox } from './ring.js';
import { findSelfContacts, findSelfCrossing } from './self-contact.js';
import { createSpatialIndex } from './spatial-index.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

const smallRing = fc.array(
  fc.record({ x: fc.integer({ min: 0, max: 5 }), y: fc.integer({ min: 0, max: 5 }) }),
  { minLength: 4, maxLength: 9 },
);

describe('rings that meet themselves', () => {
  it('when a ring is a bow tie, the crossing and its two edges are found', () => {
    expect(findSelfCrossing(points([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual({
      place: { x: 5, y: 5 },
      edges: [0, 2],
    });
  });

  it('when the crossing is at a corner that is visited twice, it is a crossing', () => {
    const ring = points([0, 0], [5, 5], [10, 10], [10, 0], [5, 5], [0, 10]);
    expect(findSelfContacts(ring).map(({ kind, place }) => [kind, place])).toEqual([
      ['crosses', { x: 5, y: 5 }],
    ]);
  });

  it('when a corner only touches another corner or an edge, it is a touch and no crossing', () => {
    const waist = points([0, 0], [5, 5], [10, 0], [10, 10], [5, 5], [0, 10]);
    expect(findSelfContacts(waist).map(({ kind }) => kind)).toEqual(['touches']);
    const dent = points([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]);
    expect(findSelfContacts(dent).map(({ kind, edges }) => [kind, edges])).toEqual([['touches', [0, 3]]]);
    expect(findSelfCrossing(waist)).toBeUndefined();
    expect(findSelfCrossing(dent)).toBeUndefined();
  });

  it('when a ring folds back or runs along itself, it overlaps', () => {
    expect(
      findSelfContacts(points([0, 0], [10, 0], [10, 10], [10, -5], [0, -5])).map(({ kind }) => kind),
    ).toEqual(['overlaps']);
    expect(
      findSelfCrossing(points([0, 0], [10, 0], [10, 5], [8, 5], [8, 0], [4, 0], [4, 5], [0, 5]))?.edges,
    ).toEqual([0, 4]);
  });

  it('when a corner is repeated, that is told apart from crossings', () => {
    const ring = points([0, 0], [10, 0], [10, 0], [10, 10], [0, 10], [0, 0]);
    expect(findSelfContacts(ring).map(({ kind, place }) => [kind, place])).toEqual([
      ['repeats', { x: 10, y: 0 }],
      ['repeats', { x: 0, y: 0 }],
    ]);
  });

  // Judge: jsts 2.12.1, which takes any touch but none of ours for invalid: every ring without contact is valid to it.
  it('when a small ring on whole numbers has no contact, an independent library finds it valid, and not if it has', () => {
    let valid = 0;
    fc.assert(
      fc.property(smallRing, (ring) => {
        const contacts = findSelfContacts(ring).filter(({ kind }) => kind !== 'repeats');
        fc.pre(ring.some((p, i) => turnOf(ring[0]!, ring[1]!, p) !== 0 && i > 1));
        const isValid = judge.isValid(judge.shapeOf(solid(ring)));
        if (isValid) valid++;
        expect(contacts.length === 0).toBe(isValid);
      }),
      { seed: 1, numRuns: 700 },
    );
    expect(valid).toBeGreaterThan(50);
  });

  it('when a ring runs the other way round, the same kinds of contact are found', () => {
    fc.assert(
      fc.property(smallRing, (ring) => {
        const kinds = (r: typeof ring) =>
          findSelfContacts(r).map(({ kind, place }) => `${kind} ${place.x.toFixed(6)} ${place.y.toFixed(6)}`);
        const crossings = (r: typeof ring) =>
          kinds(r)
            .filter((kind) => kind.startsWith('crosses'))
            .sort();
        expect(crossings([...reverseRing(ring)])).toEqual(crossings(ring));
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('when a smooth outline of 10,000 corners has one crossing, it is found, and none if it has none', () => {
    const ring = Array.from({ length: 10_000 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 10_000;
      const r = 1000 + 60 * Math.sin(9 * angle) + 8 * Math.sin(331 * angle);
      return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
    });
    expect(findSelfCrossing(ring)).toBeUndefined();
    [ring[4000], ring[4001]] = [ring[4001]!, ring[4000]!];
    expect(findSelfCrossing(ring)?.edges).toEqual([3999, 4001]);
  });
});

describe('segments', () => {
  it('when segments cross, touch or miss, each is told apart', () => {
    const [a, b, c, d, e] = points([0, 0], [10, 10], [0, 10], [10, 0], [5, 5]);
    expect([segmentsCross(a!, b!, c!, d!), segmentsTouch(a!, b!, c!, d!)]).toEqual([true, true]);
    expect([segmentsCross(a!, b!, c!, e!), segmentsTouch(a!, b!, c!, e!)]).toEqual([false, true]);
    expect([segmentsCross(a!, c!, d!, b!), segmentsTouch(a!, c!, d!, b!)]).toEqual([false, false]);
    expect([segmentsCross(a!, b!, a!, e!), segmentsTouch(a!, b!, a!, e!)]).toEqual([false, true]);
  });
});

describe('the spatial index', () => {
  it('when a box is asked for, exactly the boxes that touch it are visited', () => {
    const box = fc
      .tuple(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 9 }),
        fc.integer({ min: 0, max: 9 }),
      )
      .map(([x, y, w, h]) => ringBox(points([x, y], [x + w, y + h])));
    fc.assert(
      fc.property(fc.array(box, { maxLength: 300 }), box, (boxes, asked) => {
        const found: number[] = [];
        createSpatialIndex(boxes).query(asked, (i) => void found.push(i));
        const expected = boxes.flatMap((b, i) =>
          b.minX <= asked.maxX && b.maxX >= asked.minX && b.minY <= asked.maxY && b.maxY >= asked.minY
            ? [i]
            : [],
        );
        expect(found.sort((s, t) => s - t)).toEqual(expected);
      }),
      { seed: 3 },
    );
  });

  it('when a visit says stop, no further box is visited', () => {
    let visits = 0;
    const boxes = Array.from({ length: 50 }, () => ringBox(points([0, 0], [1, 1])));
    createSpatialIndex(boxes).query(boxes[0]!, () => ++visits === 3);
    expect(visits).toBe(3);
  });
});
