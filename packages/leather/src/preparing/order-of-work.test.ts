import { describe, expect, test } from 'vitest';
import type { Preparation } from '../model/order.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { orderOfWork } from './order-of-work.js';
import type { WorkInput } from './order-of-work.js';

/**
 * The order for vegetable-tanned leather is a craft teacher's: rough cut oversize, case and tool or mould, dry fully, dye,
 * dry, buff, oil lightly, rest 12 to 24 h, resist, finish, cure, final cut, edge. All else: common practice, no source.
 */

const FED: Preparation = {
  name: 'brown, waxed',
  condition: 'neatsfoot oil',
  dye: 'brown',
  dyeBase: 'spirit',
  coats: 2,
  resist: 'clear lacquer',
  finish: 'beeswax',
  finishCoats: 1,
  bothSides: false,
};

function kindsOf(preparation: Partial<Preparation>, more: Partial<WorkInput> = {}): string[] {
  const whole = { ...FED, ...preparation };
  const steps = orderOfWork({ preparation: whole, workshop: DEFAULT_WORKSHOP, isWhole: false, ...more });
  return steps.map(({ kind }) => kind);
}

const START = ['look over', 'test', 'rough cut'];

describe('the order of work', () => {
  test('when leather is only dyed, it is fed and rests, is dyed in coats, fed lightly, finished, and cut last', () => {
    expect(kindsOf({})).toEqual([
      ...START,
      'condition',
      'dye',
      'dye',
      'rub off',
      'condition again',
      'resist',
      'finish',
      'buff',
      'cut',
      'edges',
    ]);
  });

  test('when it is tooled or moulded, it is cased, worked and dried first, and trimmed at the end', () => {
    for (const worked of ['tooled', 'moulded', 'tooled and moulded'] as const) {
      const kinds = kindsOf({}, { worked });
      expect(kinds.slice(0, 6)).toEqual([...START, 'case', 'work', 'dye']);
      expect(kinds.slice(-2)).toEqual(['trim', 'edges']);
      expect(kinds).not.toContain('cut');
    }
  });

  test.each(['water', 'pigment', 'water based', undefined])(
    'when the dye is of %s, nothing greasy goes on before it, but after',
    (dyeBase) => {
      const { dyeBase: _, ...bare } = FED;
      const steps = orderOfWork({
        preparation: dyeBase === undefined ? bare : { ...bare, dyeBase },
        workshop: DEFAULT_WORKSHOP,
        isWhole: false,
      });
      const kinds = steps.map(({ kind }) => kind);
      expect(kinds.slice(0, kinds.indexOf('dye'))).toEqual(START);
      expect(kinds.indexOf('condition again')).toBeGreaterThan(kinds.lastIndexOf('dye'));
    },
  );

  test('when it is wiped damp, that comes before the dye and nothing is fed', () => {
    const kinds = kindsOf({ condition: 'wiped damp, left until the colour is even again' });
    expect(kinds.indexOf('wipe')).toBe(kinds.indexOf('dye') - 1);
    expect(kinds).not.toContain('condition again');
  });

  test('when it is full of oil from the tannery, it is not fed', () => {
    const kinds = kindsOf({}, { isFullOfOil: true });
    expect(kinds).not.toContain('condition');
    expect(kinds).not.toContain('condition again');
  });

  test('when a whole hide is prepared, there is no rough cut', () => {
    expect(kindsOf({}, { isWhole: true })).not.toContain('rough cut');
    expect(kindsOf({}, { isWhole: true, takesOut: true })[2]).toBe('take out');
  });

  test('when a preparation has no dye, its steps are those that it names', () => {
    const { dye: _, resist: __, ...undyed } = FED;
    const steps = orderOfWork({ preparation: undyed, workshop: DEFAULT_WORKSHOP, isWhole: false });
    expect(steps.map(({ kind }) => kind)).toEqual([...START, 'condition', 'finish', 'buff', 'cut', 'edges']);
  });
});

describe('waiting (hours; the figures that a source was read for)', () => {
  function waitsOf(preparation: Partial<Preparation>, kind: string) {
    const steps = orderOfWork({
      preparation: { ...FED, ...preparation },
      workshop: DEFAULT_WORKSHOP,
      isWhole: false,
    });
    return steps.filter((step) => step.kind === kind).map(({ waitH }) => waitH);
  }

  // A craft teacher: rest 12 to 24 h after oiling.
  test('when leather was fed, it rests 12 to 24 h', () => {
    expect(waitsOf({}, 'condition')).toEqual([{ min: 12, max: 24 }]);
    expect(waitsOf({}, 'condition again')).toEqual([{ min: 12, max: 24 }]);
  });

  // A dye guide: touch dry in 1 to 2 h; with a makers' forum: overnight, 12 to 24 h, before the finish.
  test('when the dye is of oil, coats follow after 1 to 2 h and the finish after 12 to 24 h', () => {
    expect(waitsOf({ dyeBase: 'oil' }, 'dye')).toEqual([
      { min: 1, max: 2 },
      { min: 12, max: 24 },
    ]);
  });

  // A makers' forum: acrylic finish dries 10 to 20 min between coats and cures 24 h.
  test('when the finish is acrylic, coats follow after 10 to 20 min and it cures a day', () => {
    const waits = waitsOf({ finish: 'acrylic', finishCoats: 2 }, 'finish');
    expect(waits).toHaveLength(2);
    expect(waits[0]!.min * 60).toBeCloseTo(10, 9);
    expect(waits[0]!.max * 60).toBeCloseTo(20, 9);
    expect(waitsOf({ finish: 'acrylic' }, 'buff')).toEqual([{ min: 24, max: 24 }]);
  });

  test('when there is waiting, it says where its figure comes from', () => {
    for (const dyeBase of ['spirit', 'oil', 'water', 'pigment']) {
      const steps = orderOfWork({
        preparation: { ...FED, dyeBase },
        workshop: DEFAULT_WORKSHOP,
        isWhole: false,
      });
      for (const step of steps) if (step.waitH.max > 0) expect(step.waitSource).toMatch(/\w/);
    }
  });
});
