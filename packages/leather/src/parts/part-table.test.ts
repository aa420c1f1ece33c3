import { describe, expect, test } from 'vitest';
import { FLAW_KINDS, ZONE_KINDS } from '../model/hide.js';
import type { Flaw } from '../model/hide.js';
import { PARTS } from '../model/order.js';
import { rectangleCurve } from '../testing/plain.js';
import { DEFAULT_FLAW_EFFECTS, DEFAULT_ZONE_EFFECTS, effectOf } from './effects.js';
import { DEFAULT_PARTS, ruleOfPart } from './part-table.js';

describe('the table of parts', () => {
  test('when every part is looked up, it has one row and says where it comes from', () => {
    expect(DEFAULT_PARTS.map(({ part }) => part).sort()).toEqual([...PARTS].sort());
    expect(DEFAULT_PARTS.every(({ source }) => source.length > 0)).toBe(true);
  });

  test('when a strap is asked for, it bears load, lies along and stays out of the belly', () => {
    // Common practice, no source: belts and straps from bend or back, 0 degrees within 10.
    const { bearsLoad, direction, zones } = ruleOfPart('strap');
    expect(bearsLoad).toBe(true);
    expect([direction.rule, direction.toleranceDeg]).toEqual(['along', 10]);
    expect(zones).not.toContain('belly');
  });

  test('when the workshop has a row of its own, it wins', () => {
    const own = { ...ruleOfPart('lining'), bearsLoad: true, source: 'own' };
    expect(ruleOfPart('lining', { parts: [own] })).toBe(own);
    expect(ruleOfPart('front', { parts: [own] })).toBe(ruleOfPart('front'));
  });
});

const flaw = (more: Partial<Flaw>): Flaw => ({
  id: 'f',
  side: 'grain',
  shape: { kind: 'point', at: { x: 0, y: 0 }, radiusMm: 1 },
  ...more,
});

describe('what a mark does to the leather', () => {
  test('when every kind is looked up, it has one row and says where it comes from', () => {
    expect(DEFAULT_FLAW_EFFECTS.map(({ kind }) => kind).sort()).toEqual([...FLAW_KINDS].sort());
    expect(DEFAULT_ZONE_EFFECTS.map(({ kind }) => kind).sort()).toEqual([...ZONE_KINDS].sort());
    expect([...DEFAULT_FLAW_EFFECTS, ...DEFAULT_ZONE_EFFECTS].every(({ source }) => source.length > 0)).toBe(
      true,
    );
  });

  test('when the mark says a field itself, that field wins and the others come from its kind', () => {
    expect(effectOf(flaw({ kind: 'brand', effect: { looks: 'B' } }))).toEqual({
      looks: 'B',
      strength: 'sound',
      isVoid: false,
    });
  });

  test('when the workshop knows its kind, the workshop wins over the built-in row', () => {
    const effect = { looks: 'A', strength: 'sound', isVoid: false } as const;
    const workshop = { flawDefaults: [{ kind: 'vein' as const, effect, source: 'own' }], zoneDefaults: [] };
    expect(effectOf(flaw({ kind: 'vein' }), workshop)).toEqual(effect);
    expect(effectOf(flaw({ kind: 'scar' }), workshop).looks).toBe('B');
  });

  test('when a cut goes a third through or deeper, it is never to be used', () => {
    // Common practice, no source: a flay cut is hidden only if it is less than a third deep.
    expect(effectOf(flaw({ kind: 'cut', depth: 0.3 })).isVoid).toBe(false);
    expect(effectOf(flaw({ kind: 'cut', depth: 1 / 3 })).isVoid).toBe(true);
    expect(effectOf(flaw({ kind: 'cut', depth: 0.5, effect: { isVoid: false } })).isVoid).toBe(false);
  });

  test('when nothing is known of it, it is never to be used', () => {
    expect(effectOf(flaw({})).isVoid).toBe(true);
  });

  test('when a zone is a belly, it is pretty and weak', () => {
    const zone = { id: 'z', kind: 'belly', outline: rectangleCurve(0, 0, 1, 1) } as const;
    expect(effectOf(zone)).toEqual({ looks: 'A', strength: 'weak', isVoid: false });
  });
});
