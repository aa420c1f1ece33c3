import { curveBox } from '@hidebound/geometry';
import type { FlawCandidate, Hide } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import type { DrawingElement } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { sampleHide } from '../sample/sample-hide.js';
import { drawHide } from './draw-hide.js';

const fonts = loadFontBook();
const SIDE = sampleHide({ id: 'side-1', kind: 'side', seed: 1, flaws: 0 });

const spot = (number: number, x: number): FlawCandidate => ({
  id: `possible-${number}`,
  kind: 'hole',
  side: 'grain',
  shape: { kind: 'point', at: { x, y: 300 }, radiusMm: 4 },
  confidence: 0.8,
});

function possibleLayer(hide: Hide): readonly DrawingElement[] {
  const { layers } = drawHide({ hide, fonts });
  return layers.find(({ name }) => name === 'possible flaws')?.elements ?? [];
}

function textsIn(elements: readonly DrawingElement[]): string[] {
  return elements.flatMap((each) => {
    if (each.kind === 'text') return [each.text];
    return each.kind === 'group' ? textsIn(each.elements) : [];
  });
}

/** The white grounds of the numbers. */
function groundsIn(elements: readonly DrawingElement[]) {
  return elements.flatMap((each) =>
    each.kind === 'group'
      ? each.elements.flatMap((inner) =>
          inner.kind === 'path' && inner.style.fill !== undefined ? [curveBox(inner.curves[0]!)] : [],
        )
      : [],
  );
}

describe('possible flaws on the picture of a hide', () => {
  test('when a hide has none, there is no layer for them', () => {
    expect(possibleLayer({ ...SIDE, candidates: [] })).toEqual([]);
  });

  test('when it has some, each has the number of its id', () => {
    const hide = { ...SIDE, candidates: [spot(1, 300), spot(12, 500)] };
    expect(textsIn(possibleLayer(hide))).toEqual(['1', '12']);
  });

  test('when four lie close together, no number covers another one', () => {
    const hide = { ...SIDE, candidates: [300, 304, 308, 312].map((x, i) => spot(i + 1, x)) };
    const grounds = groundsIn(possibleLayer(hide));
    expect(grounds).toHaveLength(4);
    grounds.forEach((a, i) => {
      for (const b of grounds.slice(i + 1)) {
        const isApart = a.minX >= b.maxX || b.minX >= a.maxX || a.minY >= b.maxY || b.minY >= a.maxY;
        expect(isApart).toBe(true);
      }
    });
  });

  test('when there are sixty of two kinds, what is alike shares rows and each number stands in the table', () => {
    const many = Array.from({ length: 60 }, (_, i): FlawCandidate => {
      const kind = i % 2 === 0 ? 'hole' : 'scar';
      return { ...spot(i + 1, 200 + 15 * i), kind };
    });
    const { layers } = drawHide({ hide: { ...SIDE, candidates: many }, fonts });
    const rows = textsIn(layers.find(({ name }) => name === 'tables')!.elements).filter((words) =>
      words.endsWith(' of 100 sure'),
    );
    expect(rows[0]).toBe('1, 3, 5, 7: hole, 80 of 100 sure');
    const numbers = rows.flatMap((words) => words.split(':')[0]!.split(', ').map(Number));
    expect(numbers.sort((a, b) => a - b)).toEqual(many.map((_, i) => i + 1));
  });
});
