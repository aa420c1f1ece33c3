import { describe, expect, it } from 'vitest';
import { leaveFields, standsIn, typeInto } from './typing.js';
import type { Reading, TypedTexts } from './typing.js';

const asNumber = ([text = '']: readonly string[]): Reading<number> =>
  /^\d+$/.test(text) ? { value: Number(text) } : { slip: `${text} is no number` };

const asSpan = (texts: readonly string[]): Reading<readonly number[]> => {
  const [from = NaN, to = NaN] = texts.map(Number);
  return from <= to ? { value: [from, to] } : { slip: 'turned round' };
};

describe('what is typed into a field', () => {
  it('when the panel is drawn anew in the middle of typing, the half-typed text stands there', () => {
    const typed: TypedTexts = new Map();
    expect(standsIn(typed, 'a', '5')).toEqual({ text: '5', isRefused: false });
    typeInto(typed, 'a', '5', '51');
    expect(standsIn(typed, 'a', '5').text).toBe('51');
    // What it shows may change below, by another tab, while she types.
    expect(standsIn(typed, 'a', '7').text).toBe('51');
  });

  it('when it can be read, it is taken once and forgotten', () => {
    const typed: TypedTexts = new Map();
    typeInto(typed, 'a', '5', ' 51 ');
    expect(leaveFields(typed, ['a'], ['5'], asNumber)).toEqual({ value: 51 });
    expect(leaveFields(typed, ['a'], ['51'], asNumber)).toBeUndefined();
    expect(typed.size).toBe(0);
  });

  it('when it can’t be read, it stays as it was typed and is a slip until it is mended', () => {
    const typed: TypedTexts = new Map();
    typeInto(typed, 'a', '5', '5x');
    expect(standsIn(typed, 'a', '5').isRefused).toBe(false);
    expect(leaveFields(typed, ['a'], ['5'], asNumber)).toBeUndefined();
    expect(standsIn(typed, 'a', '5')).toMatchObject({ text: '5x', isRefused: true });
    typeInto(typed, 'a', '5', '5');
    // Still told while she mends it: it is judged when she leaves.
    expect(standsIn(typed, 'a', '5')).toMatchObject({ text: '5', isRefused: true });
    expect(leaveFields(typed, ['a'], ['5'], asNumber)).toBeUndefined();
    expect(standsIn(typed, 'a', '5')).toEqual({ text: '5', isRefused: false });
  });

  it('when nothing new was typed, nothing is taken', () => {
    const typed: TypedTexts = new Map();
    typeInto(typed, 'a', '5', '5');
    expect(leaveFields(typed, ['a'], ['5'], asNumber)).toBeUndefined();
    expect(typed.size).toBe(0);
  });

  it('when a slip was left and the field shows something else by now, the slip is past', () => {
    const typed: TypedTexts = new Map();
    typeInto(typed, 'a', '5', '5x');
    leaveFields(typed, ['a'], ['5'], asNumber);
    expect(standsIn(typed, 'a', '8')).toEqual({ text: '8', isRefused: false });
    expect(typed.size).toBe(0);
  });

  it('when two fields are one value, a slip of the first is mended by the second', () => {
    const typed: TypedTexts = new Map();
    typeInto(typed, 'from', '2', '3');
    expect(leaveFields(typed, ['from', 'to'], ['2', '2.4'], asSpan)).toBeUndefined();
    expect(standsIn(typed, 'from', '2')).toMatchObject({ text: '3', isRefused: true });
    expect(standsIn(typed, 'to', '2.4').isRefused).toBe(false);
    typeInto(typed, 'to', '2.4', '3.5');
    expect(leaveFields(typed, ['from', 'to'], ['2', '2.4'], asSpan)).toEqual({ value: [3, 3.5] });
    expect(typed.size).toBe(0);
  });
});
