import { describe, expect, test } from 'vitest';
import type { Preparation, ResolvedOrder } from '../model/order.js';
import { plainArticle, plainOrder, plainOrderPiece } from '../testing/plain.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { hazardsOf } from './hazards.js';
import { orderOfWork } from './order-of-work.js';

const OILED: Preparation = {
  name: 'x',
  dye: 'brown',
  dyeBase: 'spirit',
  finish: 'neatsfoot oil',
  bothSides: false,
};

function hazards(preparation: Partial<Preparation>, goods = 'saddlebag', worked?: 'tooled') {
  const whole = { ...OILED, ...preparation };
  const article = plainArticle('a', [plainOrderPiece('front')], { goods });
  const order = plainOrder([article]) as unknown as ResolvedOrder;
  const steps = orderOfWork({
    preparation: whole,
    workshop: DEFAULT_WORKSHOP,
    isWhole: false,
    ...(worked === undefined ? {} : { worked }),
  });
  const [leather] = order.leathers;
  return hazardsOf({ preparation: whole, leather: leather!, steps, order, workshop: DEFAULT_WORKSHOP });
}

/** What a preparation can do to hands, lungs and house; common practice, no source, but where one is named. */
describe('hazards', () => {
  // GHS flammable liquids: alcohol's flash point is below 23 °C (category 2).
  test('when the dye is of spirit, or nobody knows of what, it burns and gives vapour', () => {
    expect(hazards({})).toEqual(expect.arrayContaining(['flammable', 'vapour', 'skin']));
    const { dyeBase: _, ...unknown } = OILED;
    const steps = orderOfWork({ preparation: unknown, workshop: DEFAULT_WORKSHOP, isWhole: false });
    const order = plainOrder([]) as unknown as ResolvedOrder;
    const found = hazardsOf({
      preparation: unknown,
      leather: order.leathers[0]!,
      steps,
      order,
      workshop: DEFAULT_WORKSHOP,
    });
    expect(found).toContain('flammable');
  });

  test('when dye and finish are of water, nothing burns', () => {
    const found = hazards({ dyeBase: 'water', finish: 'acrylic' });
    expect(found).not.toContain('flammable');
    expect(found).not.toContain('oily rags');
    expect(found).toEqual(expect.arrayContaining(['vapour', 'skin', 'warm water']));
  });

  // A university workshop's rule: oily rags can take fire by themselves within hours.
  test('when there is oil or wax in it, rags are minded', () => {
    expect(hazards({})).toContain('oily rags');
    expect(hazards({ dyeBase: 'water', finish: 'beeswax' })).toContain('oily rags');
    expect(hazards({ dyeBase: 'water', finish: 'acrylic', condition: 'tallow' })).toContain('oily rags');
  });

  test('when leather is wetted, the water stays cool; else it is not spoken of', () => {
    expect(hazards({ condition: 'wiped damp' })).toContain('warm water');
    expect(hazards({}, 'saddlebag', 'tooled')).toContain('warm water');
    expect(hazards({})).not.toContain('warm water');
  });

  test('when anything is cut and its edges sanded, blades and dust are minded', () => {
    expect(hazards({})).toEqual(expect.arrayContaining(['blades', 'dust', 'drying']));
  });

  test('when the goods lie against steel, it is said that none is stored in them', () => {
    const steel = DEFAULT_WORKSHOP.goods.find(({ needs }) => needs.includes('lying against steel'))!;
    expect(hazards({}, steel.goods)).toContain('steel in leather');
    expect(hazards({}, 'saddlebag')).not.toContain('steel in leather');
  });
});
