import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import { plainHide, rectangleCurve } from '../testing/plain.js';
import { parseFoundFlaw, withFoundFlaw } from './found-flaw.js';

const HIDE = plainHide('side', rectangleCurve(0, 0, 900, 400), {
  openings: [rectangleCurve(400, 100, 500, 200)],
  flaws: [
    { id: 'hole-1', kind: 'hole', side: 'grain', shape: { kind: 'point', at: { x: 9, y: 9 }, radiusMm: 2 } },
  ],
});
const FROM_HIDE = { frame: 'hide', useFrom: 'tail' } as const;

function codeOf(action: () => unknown): string | undefined {
  try {
    action();
  } catch (error) {
    return error instanceof LeatherError ? error.code : String(error);
  }
  return undefined;
}

describe('a flaw in a worker’s words', () => {
  test.each(['310,420,12', '310, 420 12', 'hole 310,420 12', 'Hole: 310 420 12'])(
    'when it is "%s", it is a hole with its place and radius',
    (text) => {
      expect(parseFoundFlaw(text)).toMatchObject({
        kind: 'hole',
        shape: { kind: 'point', at: { x: 310, y: 420 }, radiusMm: 12 },
      });
    },
  );

  test('when it has several places, it is a line with its width', () => {
    expect(parseFoundFlaw('loose grain 10,20 -30.5,40 8')).toMatchObject({
      kind: 'loose grain',
      shape: {
        kind: 'line',
        line: [
          { x: 10, y: 20 },
          { x: -30.5, y: 40 },
        ],
        widthMm: 8,
      },
    });
  });

  test('when it can’t be read, or is of no size, it is refused', () => {
    for (const text of ['', 'hole', '310,420', '310,420,12,4', 'mole 1,2 3', '1e3,2,3', 'NaN,1,2']) {
      expect(codeOf(() => parseFoundFlaw(text))).toBe('flaw-bad-words');
    }
    for (const text of ['1,2,0', '1,2,-4', '1,2,5001']) {
      expect(codeOf(() => parseFoundFlaw(text))).toBe('flaw-without-size');
    }
  });

  test('when it is put on the hide, it gets the next name of its kind', () => {
    const { hide, flaw } = withFoundFlaw(HIDE, parseFoundFlaw('310,320,12'), FROM_HIDE);
    expect(flaw.id).toBe('hole-2');
    expect(hide.flaws.map(({ id }) => id)).toEqual(['hole-1', 'hole-2']);
  });

  test('when it lies beside the hide or within an opening, it is refused', () => {
    for (const text of ['950,200,20', '450,150,20']) {
      expect(codeOf(() => withFoundFlaw(HIDE, parseFoundFlaw(text), FROM_HIDE))).toBe('flaw-off-hide');
    }
    expect(codeOf(() => withFoundFlaw(HIDE, parseFoundFlaw('910,200,20'), FROM_HIDE))).toBeUndefined();
  });
});
