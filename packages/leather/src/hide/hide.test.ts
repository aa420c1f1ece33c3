import { circleCurve, pointToSegment, regionsArea } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { Flaw, Hide } from '../model/hide.js';
import { plainHide, rectangleCurve } from '../testing/plain.js';
import { directionField, thicknessField } from './fields.js';
import { bufferedLine } from './flaw-region.js';
import { hideAreas, hideRegion } from './hide-region.js';
import { hideQualities, photoErrorAt, zoneOfCut } from './qualities.js';
import { useFromVector } from './use-from.js';

const OUTLINE = rectangleCurve(0, 0, 1000, 500);
const hide = (more: Partial<Hide> = {}): Hide => plainHide('h', OUTLINE, more);
const flaw = (more: Partial<Flaw> = {}): Flaw => ({
  id: 'f',
  kind: 'scar',
  side: 'grain',
  shape: { kind: 'point', at: { x: 100, y: 100 }, radiusMm: 10 },
  ...more,
});

describe('the leather of a hide', () => {
  test('when outline and openings are round, the region lies inside and keeps clear of the openings', () => {
    const round = plainHide('h', circleCurve({ x: 0, y: 0 }, 300), {
      openings: [circleCurve({ x: 50, y: 0 }, 20)],
    });
    const { outer, openings } = hideRegion(round);
    expect(Math.max(...outer.map(({ x, y }) => Math.hypot(x, y)))).toBeLessThanOrEqual(300.001);
    const nearest = openings[0]!.map((p, i) =>
      pointToSegment({ x: 50, y: 0 }, p, openings[0]![(i + 1) % openings[0]!.length]!),
    );
    expect(Math.min(...nearest)).toBeGreaterThanOrEqual(19.999);
  });

  test('when areas are known by hand, gross, net and usable are those', () => {
    const marked = hide({
      openings: [rectangleCurve(10, 10, 60, 60)],
      flaws: [
        flaw({
          id: 'hole',
          kind: 'hole',
          shape: { kind: 'area', outline: rectangleCurve(950, 400, 1050, 450) },
        }),
        flaw({ id: 'scar' }),
      ],
    });
    // The hole reaches over the edge: only the half on the hide counts.
    expect(hideAreas(marked)).toEqual({ grossMm2: 500_000, netMm2: 497_500, usableMm2: 495_000 });
  });
});

describe('the marks of a hide', () => {
  test('when a flaw is a point, its region contains the disc', () => {
    const [quality] = hideQualities(hide({ flaws: [flaw()] }));
    expect(quality).toMatchObject({ id: 'flaw:f', grade: 1, weak: false, isVoid: false, uncertaintyMm: 0 });
    expect(regionsArea(quality!.areas)).toBeGreaterThan(Math.PI * 100);
    expect(regionsArea(quality!.areas)).toBeLessThan(Math.PI * 100 * 1.01);
  });

  test('when a flaw is a line, its region contains the band with round ends', () => {
    const line: Point[] = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 50 },
    ];
    // By hand: two bands of 10 mm, the corner's overlap counted once, a half disc at each end and a quarter at the bend.
    const byHand = 1000 + 500 - 25 + Math.PI * 25 + (Math.PI * 25) / 4;
    const area = regionsArea(bufferedLine(line, 5));
    expect(area).toBeGreaterThan(byHand - 0.1);
    expect(area).toBeLessThan(byHand * 1.01);
  });

  const shallow = flaw({ kind: 'cut', side: 'flesh', depth: 0.2 });

  test('when a flesh-side mark is less than a third deep, it does not show on the grain but stays weak', () => {
    expect(hideQualities(hide({ flaws: [shallow] }))[0]).toMatchObject({ grade: 0, weak: true });
  });

  test('when pieces are seen from the flesh side, it shows', () => {
    expect(hideQualities(hide({ flaws: [shallow] }), { fleshIsSeen: true })[0]).toMatchObject({ grade: 2 });
  });

  test('when its depth is not known, it shows', () => {
    expect(hideQualities(hide({ flaws: [flaw({ kind: 'cut', side: 'flesh' })] }))[0]).toMatchObject({
      grade: 2,
    });
  });

  test('when candidates are not to be avoided, they do not count; when they are, they do', () => {
    const withCandidate = hide({ candidates: [{ ...flaw(), confidence: 0.4 }] });
    expect(hideQualities(withCandidate)).toEqual([]);
    expect(hideQualities(withCandidate, { avoidCandidates: true }).map(({ id }) => id)).toEqual([
      'candidate:f',
    ]);
  });

  test('when the photo is less sure near a void flaw, that is what it is kept clear of', () => {
    const photo = {
      file: 'p.jpg',
      pxPerMm: 2,
      origin: { x: 0, y: 0 },
      scaledBy: 'four sheets',
      errorMm: 1,
      errorsAt: [
        { at: { x: 0, y: 0 }, mm: 4 },
        { at: { x: 900, y: 0 }, mm: 0.5 },
      ],
      hideStrokes: [],
      floorStrokes: [],
    };
    const photographed = hide({ photo, flaws: [flaw({ kind: 'hole' })] });
    expect(hideQualities(photographed)[0]!.uncertaintyMm).toBe(4);
    expect(photoErrorAt(photographed, { x: 890, y: 0 })).toBe(1);
  });

  test('when a stretch of the edge is unsure, a void band lies around it, and is no flaw', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 1000, y: 0 },
    ];
    const unsure = hide({ unsureEdges: [{ line, offByMm: 8 }] });
    const [band] = hideQualities(unsure, { edgeBeyondVoidMm: 2 });
    expect(band).toMatchObject({ id: 'unsure-edge:1', isVoid: true, uncertaintyMm: 2 });
    expect(hideAreas(unsure).usableMm2).toBe(500_000);
  });

  test('when a cut without drawn zones is one zone, all of it is', () => {
    const belly = plainHide('b', OUTLINE, { cut: 'belly' });
    expect(zoneOfCut(belly)).toBe('belly');
    expect(hideQualities(belly)[0]).toMatchObject({ id: 'cut', zone: 'belly', weak: true });
    expect(zoneOfCut(hide())).toBeUndefined();
  });

  test('when a cut has one zone drawn, what is not drawn stays of the zone of its cut', () => {
    const neck = { id: 'neck', kind: 'neck' as const, outline: rectangleCurve(0, 0, 400, 500) };
    const shoulder = plainHide('s', OUTLINE, { cut: 'shoulder', zones: [neck] });
    const rest = hideQualities(shoulder).find(({ id }) => id === 'cut')!;
    expect(rest.zone).toBe('shoulder');
    const drawn = hideQualities(shoulder).find(({ id }) => id === 'zone:neck')!;
    expect(regionsArea(rest.areas) + regionsArea(drawn.areas)).toBeCloseTo(500_000, 3);
    const all = { ...neck, outline: OUTLINE };
    expect(hideQualities({ ...shoulder, zones: [all] }).map(({ id }) => id)).toEqual(['zone:neck']);
  });
});

describe('the fields of a hide', () => {
  test('when nothing is drawn, there is no direction; strokes alone are one', () => {
    const stroke = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ];
    expect(directionField(hide())).toBeUndefined();
    expect(directionField(hide({ tightness: [stroke] }))).toEqual({ strokes: [stroke] });
    expect(directionField(hide({ backbone: stroke }))).toEqual({ axis: stroke, strokes: [] });
  });

  test('when only readings are known, the range is theirs', () => {
    const readings = [2, 3, 2.4].map((mm) => ({ at: { x: 0, y: 0 }, mm }));
    expect(thicknessField(hide({ leather: { readings } }))?.rangeMm).toEqual([2, 3]);
    expect(thicknessField(hide())).toBeUndefined();
  });
});

describe('the way into a hide', () => {
  const backbone = [
    { x: 0, y: 0 },
    { x: 1000, y: 0 },
  ];
  const ways = [
    ['head', { x: 1, y: 0 }],
    ['tail', { x: -1, y: 0 }],
    ['backbone', { x: 0, y: 1 }],
    ['belly', { x: 0, y: -1 }],
    [90, { x: 0, y: 1 }],
  ] as const;
  for (const [useFrom, vector] of ways) {
    test(`when the head is at the left and it is used from ${useFrom}, it goes ${vector.x}, ${vector.y}`, () => {
      expect(useFromVector(hide({ backbone }), useFrom)).toEqual({ vector, diagnostics: [] });
    });
  }

  test('when it has no backbone, the long axis stands for it, and that is said', () => {
    const { vector, diagnostics } = useFromVector(hide(), 'tail');
    expect(vector).toEqual({ x: -1, y: 0 });
    expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([
      ['use-from-guessed', 'warning'],
    ]);
  });
});
