import { curveFromPolyline } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { placeApart } from './place-apart.js';

function outline(...corners: readonly (readonly [number, number])[]): Curve {
  return curveFromPolyline(
    corners.map(([x, y]) => ({ x, y })),
    true,
  );
}

function rectangle(x: number, y: number, width: number, height: number): Curve {
  return outline([x, y], [x + width, y], [x + width, y + height], [x, y + height]);
}

function piece(cut: Curve, more: Partial<Piece> = {}): Piece {
  return {
    name: 'invented',
    cut,
    cutOuts: [],
    punches: [],
    notches: [],
    stitchLines: [],
    foldLines: [],
    skiveLines: [],
    cementLines: [],
    face: [],
    ...more,
  };
}

const STAYS = { x: 0, y: 0 };

describe('where saved pieces are drawn', () => {
  test('when they lie side by side, they stay where they are, and the page reaches round them', () => {
    const { offsets, widthMm, heightMm } = placeApart([
      piece(rectangle(20, 30, 100, 50)),
      piece(rectangle(130, 30, 40, 90)),
    ]);
    expect(offsets).toEqual([STAYS, STAYS]);
    expect([widthMm, heightMm]).toEqual([180, 130]);
  });

  test('when one lies in the bay of the other, its box overlaps and it stays all the same', () => {
    const bay = outline([10, 10], [110, 10], [110, 30], [40, 30], [40, 100], [10, 100]);
    expect(placeApart([piece(bay), piece(rectangle(50, 40, 50, 50))]).offsets).toEqual([STAYS, STAYS]);
  });

  test.each([
    [
      'two straps cross, no corner of either within the other',
      rectangle(10, 60, 200, 20),
      rectangle(90, 10, 20, 150),
    ],
    ['one lies on the other', rectangle(10, 10, 100, 100), rectangle(40, 40, 20, 20)],
    ['they share an edge', rectangle(10, 10, 100, 50), rectangle(110, 10, 60, 50)],
  ])('when %s, they are set apart by whole mm', (_, a, b) => {
    const { offsets } = placeApart([piece(a), piece(b)]);
    const [first, second] = offsets as [(typeof offsets)[0], (typeof offsets)[0]];
    expect(offsets.flatMap(({ x, y }) => [x, y]).every(Number.isInteger)).toBe(true);
    expect([first, second]).not.toEqual([STAYS, STAYS]);
    const right = Math.max(...a.segments.map(({ to }) => to.x)) + first.x;
    const left = Math.min(...b.segments.map(({ to }) => to.x)) + second.x;
    expect(left - right).toBeGreaterThanOrEqual(10);
  });

  test('when a line of one reaches onto the other, they are set apart too', () => {
    const mark = curveFromPolyline(
      [
        { x: 20, y: 20 },
        { x: 140, y: 20 },
      ],
      false,
    );
    const { offsets } = placeApart([
      piece(rectangle(10, 10, 100, 50), { stitchLines: [{ curve: mark }] }),
      piece(rectangle(120, 10, 60, 50)),
    ]);
    expect(offsets).not.toEqual([STAYS, STAYS]);
  });

  test('when a drawing starts 30 m from the corner, all of it is moved by one step', () => {
    const { offsets, widthMm } = placeApart([
      piece(rectangle(30_000.25, 10, 100, 50)),
      piece(rectangle(30_200.25, 10, 60, 50)),
    ]);
    expect(offsets[0]).toEqual(offsets[1]);
    expect(widthMm).toBeLessThan(300);
  });

  test('when there is no piece, there is a page of margins', () => {
    expect(placeApart([])).toEqual({ offsets: [], widthMm: 10, heightMm: 10 });
  });
});
