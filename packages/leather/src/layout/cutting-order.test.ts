import { describe, expect, test } from 'vitest';
import type { PlacedRegion } from '../model/layout.js';
import { rectangleCorners } from '../testing/plain.js';
import { cuttingOrder } from './cutting-order.js';

const placed = (piece: string, minX: number, minY: number, maxX: number, maxY: number): PlacedRegion => ({
  copy: { article: 'bag', piece, set: 1, copy: 1, mirrored: false },
  region: { outer: rectangleCorners(minX, minY, maxX, maxY), openings: [] },
});

const hide = (pieces: readonly PlacedRegion[]) => ({
  id: 'h',
  outline: rectangleCorners(0, 0, 1000, 500),
  useFrom: { x: 1, y: 0 },
  placed: pieces,
});

const names = (steps: ReturnType<typeof cuttingOrder>, kind: string): string[][] =>
  steps.filter((step) => step.kind === kind).map(({ pieces }) => pieces.map(({ piece }) => piece));

describe('the order of cutting', () => {
  const row = [
    placed('a', 10, 200, 110, 300),
    placed('b', 400, 200, 500, 300),
    placed('c', 800, 190, 900, 290),
  ];

  test('when the hide fits the table, pieces go from the edge inwards and there are no blocks', () => {
    const steps = cuttingOrder({
      hides: [hide(row)],
      lanes: [],
      roughCuts: [],
      table: { widthMm: 600, lengthMm: 1200 },
    });
    expect(names(steps, 'piece')).toEqual([['a'], ['c'], ['b']]);
    expect(names(steps, 'block')).toEqual([]);
  });

  test('when the hide is longer than the table, straight cuts part it into blocks that fit', () => {
    const steps = cuttingOrder({
      hides: [hide(row)],
      lanes: [],
      roughCuts: [],
      table: { widthMm: 520, lengthMm: 520 },
    });
    expect(names(steps, 'block')).toEqual([['a', 'b'], ['c']]);
    expect(names(steps, 'piece')).toEqual([['a'], ['b'], ['c']]);
  });

  test('when no straight cut passes, the block stays larger than the table', () => {
    const long = [placed('long', 10, 10, 900, 60), placed('b', 400, 70, 500, 170)];
    const steps = cuttingOrder({
      hides: [hide(long)],
      lanes: [],
      roughCuts: [],
      table: { widthMm: 300, lengthMm: 300 },
    });
    expect(names(steps, 'block')).toEqual([['long'], ['b']]);
  });

  test('when there are lanes and rough cuts, their straight edge comes first and their pieces are not in blocks', () => {
    const [a, b, c] = row as [PlacedRegion, PlacedRegion, PlacedRegion];
    const lane = {
      id: 'straps',
      hide: 'h',
      from: { x: 0, y: 200 },
      to: { x: 200, y: 200 },
      openAt: 'from' as const,
      kerfMm: 0,
      rows: [{ widthMm: 100, straps: [a.copy] }],
    };
    const block = {
      id: 'dyed',
      hide: 'h',
      leather: 'body',
      outline: rectangleCorners(390, 190, 510, 310),
      marginMm: 10,
      members: [b.copy],
    };
    const steps = cuttingOrder({ hides: [hide([a, b, c])], lanes: [lane], roughCuts: [block] });
    expect(steps.map(({ kind, of }) => [kind, of])).toEqual([
      ['straight edge', 'straps'],
      ['lane', 'straps'],
      ['rough cut', 'dyed'],
      ['piece', undefined],
      ['piece', undefined],
    ]);
    expect(names(steps, 'piece')).toEqual([['c'], ['b']]);
  });
});
