import type { LayoutCheck } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { verdictOf } from './found.js';

const CHANGED = { code: 'layout-hide-changed', params: { hide: 'side-1' } };
const FIGURES = {
  code: 'layout-yield-differs',
  params: { hide: 'side-1', figure: 'usableMm2', says: 1, is: 2 },
};
const FACE = {
  code: 'layout-piece-face',
  params: { article: 'bag', piece: 'front', set: 1, copy: 1 },
};

type Found = typeof CHANGED | typeof FIGURES | typeof FACE;

function codesTold(...found: readonly Found[]): readonly (string | undefined)[] {
  const diagnostics = found.map((each) => ({ ...each, severity: 'error', place: {}, message: each.code }));
  const check = { proven: false, violations: [], diagnostics } as unknown as LayoutCheck;
  return verdictOf(check).told.map(({ finding }) => finding?.code);
}

describe('what is told of a layout that is not proven', () => {
  it('when its hide has changed, that its figures are others now is not told beside it', () => {
    expect(codesTold(CHANGED, FIGURES, FIGURES)).toEqual([]);
    expect(codesTold(CHANGED, FACE)).toEqual([FACE.code]);
  });

  it('when the leather is the same and the figures are not its own, it is told', () => {
    expect(codesTold(FIGURES)).toEqual([FIGURES.code]);
  });
});
