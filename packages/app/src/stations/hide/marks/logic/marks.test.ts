import { curveArea, curveFromPolyline, regionsArea } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { effectOf, parseHide, provenHide, writeHide } from '@hidebound/leather';
import type { FlawCandidate, Hide } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { plainEffect } from '../../../../drawing/hide-layer.js';
import { confirmed, nearestLine, withBackbone, withBackboneTurned, withReading } from './along.js';
import { movedShape, resizedShape, withFlaw } from './flaws.js';
import { withoutMarksBeside } from './judge-hide.js';
import { markDistance, nearestMark } from './nearest-mark.js';
import { nextToLookAt } from './next-candidate.js';
import { around, brushed, withZonePainted, withZonesErased } from './paint-zones.js';
import { sizeFromHandle, sizeHandle } from './size-handle.js';
import { strokeAround, strokeLine } from './stroke.js';

function box(x: number, y: number, width: number, height: number) {
  return curveFromPolyline(
    [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
    true,
  );
}

/** A panel of 1000 by 600 mm; invented. */
const PANEL: Hide = {
  id: 'panel',
  cut: 'panel',
  outline: box(0, 0, 1000, 600),
  openings: [],
  tightness: [],
  zones: [],
  flaws: [],
  candidates: [],
  unsureEdges: [],
  leather: { readings: [] },
  area: {},
  state: 'on hand',
};

const zoneArea = ({ zones }: Hide, kind: string): number =>
  zones
    .filter((zone) => zone.kind === kind)
    .reduce((sum, { outline }) => sum + Math.abs(curveArea(outline)), 0);

describe('flaws', () => {
  it('when 25 flaws are marked, each has a name of its own and the file opens again', () => {
    let hide = PANEL;
    for (let i = 0; i < 25; i++)
      ({ hide } = withFlaw(hide, { kind: 'point', at: { x: 30 * i + 20, y: 50 }, radiusMm: 8 }, 'never'));
    expect(new Set(hide.flaws.map(({ id }) => id)).size).toBe(25);
    expect(parseHide(writeHide(hide), { file: 'panel.hide.json' }).flaws).toHaveLength(25);
  });

  it('when one of the three choices is made, it reads back as the same choice', () => {
    for (const effect of ['never', 'hidden', 'anywhere'] as const) {
      const { hide } = withFlaw(PANEL, { kind: 'point', at: { x: 9, y: 9 }, radiusMm: 3 }, effect);
      expect(plainEffect(effectOf(provenHide(hide, { file: 'panel.hide.json' }).flaws[0]!))).toBe(effect);
    }
  });

  it('when a place is near several flaws, the nearest is meant, and of those over each other the smallest', () => {
    const spot = { id: 'spot', shape: { kind: 'point', at: { x: 50, y: 50 }, radiusMm: 5 } } as const;
    const patch = { id: 'patch', shape: { kind: 'area', outline: box(20, 20, 60, 60) } } as const;
    const line = {
      id: 'line',
      shape: {
        kind: 'line',
        line: [
          { x: 100, y: 0 },
          { x: 100, y: 90 },
        ],
        widthMm: 4,
      },
    } as const;
    const marks = [patch, spot, line];
    expect(nearestMark(marks, { x: 51, y: 51 }, 5)?.id).toBe('spot');
    expect(nearestMark(marks, { x: 25, y: 25 }, 5)?.id).toBe('patch');
    expect(nearestMark(marks, { x: 96, y: 40 }, 5)?.id).toBe('line');
    expect(nearestMark(marks, { x: 90, y: 40 }, 5)).toBeUndefined();
    expect(markDistance({ x: 58, y: 50 }, spot.shape)).toBeCloseTo(3, 9);
    expect(markDistance({ x: 90, y: 40 }, line.shape)).toBeCloseTo(8, 9);
  });

  it('when a flaw is moved or drawn by its handle, it keeps its shape', () => {
    const spot = { kind: 'point', at: { x: 10, y: 20 }, radiusMm: 5 } as const;
    expect(movedShape(spot, { x: 1, y: -2 })).toEqual({ ...spot, at: { x: 11, y: 18 } });
    const line = {
      kind: 'line',
      line: [
        { x: 0, y: 0 },
        { x: 40, y: 0 },
      ],
      widthMm: 6,
    } as const;
    for (const shape of [spot, line]) {
      const handle = sizeHandle(shape)!;
      expect(resizedShape(shape, sizeFromHandle(shape, handle))).toEqual(shape);
    }
    expect(resizedShape(spot, 0)).toMatchObject({ radiusMm: 0.5 });
  });
});

describe('strokes of the hand', () => {
  it('when a stroke is drawn closer up, more of it is kept', () => {
    const drawn: Point[] = Array.from({ length: 200 }, (_, i) => ({ x: i, y: 10 * Math.sin(i / 9) }));
    const [far, near] = [strokeLine(drawn, 0.2)!, strokeLine(drawn, 4)!];
    expect(far.length).toBeLessThan(near.length);
    expect(near.length).toBeLessThan(drawn.length);
  });

  it('when the hand hardly moved, there is no stroke', () => {
    expect(
      strokeLine(
        [
          { x: 0, y: 0 },
          { x: 2, y: 0 },
        ],
        1,
      ),
    ).toBeUndefined();
    expect(
      strokeAround(
        [
          { x: 0, y: 0 },
          { x: 30, y: 0 },
        ],
        1,
      ),
    ).toBeUndefined();
    expect(strokeAround([], 1)).toBeUndefined();
    expect(
      Math.abs(
        curveArea(
          strokeAround(
            [
              { x: 0, y: 0 },
              { x: 30, y: 0 },
              { x: 0, y: 40 },
            ],
            1,
          )!,
        ),
      ),
    ).toBe(600);
  });
});

describe('zones', () => {
  it('when two strokes of a brush meet, they are one zone of their united area', () => {
    const first = withZonePainted(PANEL, 'belly', around(box(0, 0, 200, 100)));
    const both = withZonePainted(first, 'belly', around(box(100, 0, 200, 100)));
    expect(both.zones).toHaveLength(1);
    expect(zoneArea(both, 'belly')).toBeCloseTo(30_000, 3);
    const apart = withZonePainted(both, 'belly', around(box(600, 300, 100, 100)));
    expect(apart.zones.map(({ id }) => id)).toEqual(['belly', 'belly-2']);
    expect(provenHide(apart, { file: 'panel.hide.json' }).zones).toHaveLength(2);
  });

  it('when a zone is painted over another, a place is of one zone only', () => {
    const first = withZonePainted(PANEL, 'bend', around(box(0, 0, 400, 400)));
    const over = withZonePainted(first, 'shoulder', around(box(200, 0, 400, 400)));
    expect([zoneArea(over, 'bend'), zoneArea(over, 'shoulder')].map(Math.round)).toEqual([80_000, 160_000]);
  });

  it('when the brush goes over the edge of the hide, the zone stops there', () => {
    const painted = withZonePainted(PANEL, 'flank', around(box(900, 500, 400, 400)));
    expect(zoneArea(painted, 'flank')).toBeCloseTo(10_000, 3);
    expect(withZonePainted(PANEL, 'flank', around(box(2000, 0, 50, 50)))).toBe(PANEL);
  });

  it('when the middle of a zone is wiped off, its parts are what is left, to the last mm²', () => {
    const whole = withZonePainted(PANEL, 'bend', around(box(0, 0, 400, 400)));
    const wiped = withZonesErased(whole, around(box(150, 150, 100, 100)));
    expect(zoneArea(wiped, 'bend')).toBeCloseTo(150_000, 2);
    expect(provenHide(wiped, { file: 'panel.hide.json' }).zones.length).toBeGreaterThan(1);
    expect(withZonesErased(whole, around(box(800, 400, 50, 50)))).toBe(whole);
  });

  it('when a brush is drawn along a line, it covers at least the true area and little more', () => {
    // Mathematical fact: a band of length 300 and width 100 with round ends holds 300 · 100 + π · 50² mm².
    const area = regionsArea(
      brushed(
        [
          { x: 100, y: 100 },
          { x: 400, y: 100 },
        ],
        100,
      ),
    );
    const exact = 30_000 + Math.PI * 2500;
    expect(area).toBeGreaterThanOrEqual(exact);
    expect(area).toBeLessThan(exact * 1.01);
  });
});

describe('what a new edge leaves outside', () => {
  it('when the outline is drawn in, marks beside it are gone and the file opens again', () => {
    let { hide } = withFlaw(PANEL, { kind: 'point', at: { x: 900, y: 50 }, radiusMm: 8 }, 'never');
    ({ hide } = withFlaw(hide, { kind: 'point', at: { x: 100, y: 50 }, radiusMm: 8 }, 'never'));
    hide = withReading(
      withZonePainted(hide, 'flank', around(box(800, 0, 100, 100))),
      { x: 850, y: 300 },
      2.4,
    );
    const smaller: Hide = { ...hide, outline: box(0, 0, 500, 600) };
    expect(() => provenHide(smaller, { file: 'panel.hide.json' })).toThrow();
    const { hide: tidied, gone } = withoutMarksBeside(smaller);
    expect(gone).toBe(3);
    expect(provenHide(tidied, { file: 'panel.hide.json' }).flaws.map(({ id }) => id)).toEqual(['flaw-2']);
    expect(withoutMarksBeside(PANEL)).toEqual({ hide: PANEL, gone: 0 });
  });

  it('when an outline crosses itself, the hide is refused', () => {
    const bow = curveFromPolyline(
      [
        { x: 0, y: 0 },
        { x: 100, y: 100 },
        { x: 100, y: 0 },
        { x: 0, y: 100 },
      ],
      true,
    );
    expect(() => provenHide({ ...PANEL, outline: bow }, { file: 'panel.hide.json' })).toThrow(/cross/);
  });
});

describe('backbone and what the photo guessed', () => {
  it('when a backbone is drawn, turned or found right, it is no guess any more', () => {
    const line = [
      { x: 0, y: 300 },
      { x: 900, y: 300 },
    ];
    const guessed: Hide = { ...PANEL, backbone: line, guessed: ['backbone', 'cut'] };
    expect(confirmed(guessed, 'backbone').guessed).toEqual(['cut']);
    expect(withBackboneTurned(guessed)).toMatchObject({ backbone: [...line].reverse(), guessed: ['cut'] });
    expect(withBackbone(PANEL, line).backbone).toEqual(line);
    expect(nearestLine([line], { x: 50, y: 308 }, 10)).toBe(0);
    expect(nearestLine([line], { x: 50, y: 311 }, 10)).toBeUndefined();
  });

  it('when possible flaws are looked through, each comes once, those put off not again', () => {
    const all = ['a', 'b', 'c'].map((id): FlawCandidate => ({
      id,
      side: 'grain',
      shape: { kind: 'point', at: { x: 0, y: 0 }, radiusMm: 1 },
      confidence: 0.5,
    }));
    expect(nextToLookAt(all, 'a', [])?.id).toBe('b');
    expect(nextToLookAt(all, 'c', [])?.id).toBe('a');
    expect(nextToLookAt(all, 'b', ['c'])?.id).toBe('a');
    expect(nextToLookAt(all, 'b', ['a', 'c'])).toBeUndefined();
  });
});
