import { curveFromPolyline } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import type { FlawCandidate, Hide } from '../model/hide.js';
import { decideHide } from './confirm-hide.js';

const candidate = (id: string, kind: FlawCandidate['kind'], x: number): FlawCandidate => ({
  id,
  ...(kind === undefined ? {} : { kind }),
  side: 'grain',
  shape: { kind: 'point', at: { x, y: 50 }, radiusMm: 3 },
  confidence: 0.6,
});

const HIDE: Hide = {
  id: 'side-7',
  cut: 'side',
  outline: curveFromPolyline(
    [
      { x: 0, y: 0 },
      { x: 900, y: 0 },
      { x: 900, y: 400 },
      { x: 0, y: 400 },
    ],
    true,
  ),
  openings: [],
  tightness: [],
  zones: [],
  flaws: [
    { id: 'scar-1', kind: 'scar', side: 'grain', shape: { kind: 'point', at: { x: 9, y: 9 }, radiusMm: 2 } },
  ],
  candidates: [
    candidate('possible-1', 'scar', 100),
    candidate('possible-2', 'hole', 200),
    candidate('possible-3', 'loose grain', 300),
  ],
  unsureEdges: [],
  leather: { readings: [] },
  area: {},
  state: 'on hand',
  guessed: ['backbone', 'cut'],
};

const NOTHING = { take: [], drop: [], confirm: [] } as const;

function codeOf(action: () => unknown): string | undefined {
  try {
    action();
  } catch (error) {
    return error instanceof LeatherError ? error.code : String(error);
  }
  return undefined;
}

describe('what a person decides of a traced hide', () => {
  test('when a possible flaw is taken, it becomes a flaw named by its kind, without its confidence', () => {
    const { hide, taken } = decideHide(HIDE, { ...NOTHING, take: ['possible-1', 'possible-3'] });
    expect(taken).toEqual([
      { candidate: 'possible-1', flaw: 'scar-2' },
      { candidate: 'possible-3', flaw: 'loose-grain-1' },
    ]);
    expect(hide.flaws.map(({ id }) => id)).toEqual(['scar-1', 'scar-2', 'loose-grain-1']);
    expect(hide.flaws[1]).toEqual({
      id: 'scar-2',
      kind: 'scar',
      side: 'grain',
      shape: { kind: 'point', at: { x: 100, y: 50 }, radiusMm: 3 },
    });
    expect(hide.candidates.map(({ id }) => id)).toEqual(['possible-2']);
  });

  test('when all are dropped but one is taken, the one stays', () => {
    const { hide, dropped } = decideHide(HIDE, { ...NOTHING, take: ['possible-2'], drop: 'all' });
    expect(dropped).toEqual(['possible-1', 'possible-3']);
    expect(hide.flaws.map(({ id }) => id)).toEqual(['scar-1', 'hole-1']);
    expect(hide.candidates).toEqual([]);
  });

  test('when guesses are confirmed, they are no longer told as guesses', () => {
    const once = decideHide(HIDE, { ...NOTHING, confirm: ['cut'] }).hide;
    expect(once.guessed).toEqual(['backbone']);
    expect('guessed' in decideHide(once, { ...NOTHING, confirm: ['backbone'] }).hide).toBe(false);
  });

  test('when a possible flaw is not there, or is both taken and dropped, it is refused', () => {
    expect(codeOf(() => decideHide(HIDE, { ...NOTHING, take: ['posible-1'] }))).toBe('no-such-candidate');
    const both = { ...NOTHING, take: ['possible-1'], drop: ['possible-1'] };
    expect(codeOf(() => decideHide(HIDE, both))).toBe('candidate-both-ways');
    expect(codeOf(() => decideHide(HIDE, { ...NOTHING, take: 'all', drop: 'all' }))).toBe(
      'candidate-both-ways',
    );
  });

  test('when nobody guessed what is confirmed, it is refused', () => {
    const known = decideHide(HIDE, { ...NOTHING, confirm: ['cut'] }).hide;
    expect(codeOf(() => decideHide(known, { ...NOTHING, confirm: ['cut'] }))).toBe('guess-not-open');
  });
});
