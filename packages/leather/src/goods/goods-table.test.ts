import { describe, expect, test } from 'vitest';
import { TEMPERS } from '../model/workshop-rules.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { goodsRowOf, partRowOf, plainName, tannageRowOf } from './find-goods.js';
import { DEFAULT_GOODS } from './goods-table.js';
import { DEFAULT_TANNAGES } from './tannage-table.js';

/**
 * The values once more, typed apart from the table: goods and thickness in mm. Sources: charts of an Australian supplier
 * and a UK maker, a wallet maker's guide, guild workshop notes on holsters, makers of collars and leads, a sheath maker;
 * dress belt and watch strap are common practice without a source; tote, satchel, gusset, tool roll, tool belt, apron,
 * garment, glove, shoe lining, insole, sole, moccasin and moulded case are from memory.
 */
const TYPED_APART: readonly (readonly [string, number, number])[] = [
  ['dress belt', 2.0, 2.4],
  ['dress belt lining', 1.0, 1.2],
  ['belt', 3.2, 4.0],
  ['work belt', 4.0, 5.2],
  ['bag strap', 2.0, 2.8],
  ['carved handbag', 2.4, 2.8],
  ['tote', 1.2, 2.0],
  ['satchel', 2.4, 3.2],
  ['gusset', 1.0, 1.8],
  ['bag lining', 0.6, 0.8],
  ['wallet', 0.9, 1.6],
  ['wallet pocket', 0.5, 0.8],
  ['card holder', 0.8, 1.2],
  ['watch strap', 1.2, 1.5],
  ['key fob', 2.0, 3.2],
  ['journal cover', 1.6, 3.2],
  ['knife sheath', 2.0, 3.6],
  ['holster', 2.4, 3.6],
  ['rifle scabbard', 3.2, 3.6],
  ['saddlebag', 2.8, 3.6],
  ['tool roll', 1.8, 2.8],
  ['tool belt', 3.6, 4.4],
  ['dog collar', 2.8, 4.5],
  ['dog lead', 3.5, 4.5],
  ['bridle', 3.6, 4.4],
  ['saddle skirting', 4.8, 6.0],
  ['work apron', 1.6, 2.4],
  ['chaps', 1.6, 2.4],
  ['garment', 0.6, 1.0],
  ['glove', 0.5, 1.0],
  ['upholstery', 0.9, 1.4],
  ['shoe upper', 1.2, 2.0],
  ['shoe lining', 0.7, 1.0],
  ['insole', 2.5, 3.5],
  ['sole', 4.0, 6.0],
  ['moccasin', 1.6, 2.0],
  ['moulded case', 2.0, 3.2],
  ['guitar strap', 2.4, 2.8],
  ['desk inlay', 1.0, 1.0],
];

/** An inch is 25.4 mm (International Yard and Pound Agreement, 1959), and 1 oz is 1/64 in of thickness. */
const OUNCE_MM = 25.4 / 64;

describe('the table of goods', () => {
  test('when it is read, it has the thickness of the charts for every kind of goods', () => {
    const rows = DEFAULT_GOODS.map(({ goods, thickness }) => [goods, thickness?.minMm, thickness?.maxMm]);
    expect([...rows].sort()).toEqual([...TYPED_APART].map((row) => [...row]).sort());
  });

  test('when any row is read, its source is told, its tannages are known, and its tempers are of the scale', () => {
    for (const row of DEFAULT_GOODS) {
      expect(row.source, row.goods).not.toBe('');
      expect(row.tannages.length, row.goods).toBeGreaterThan(0);
      for (const tannage of row.tannages) {
        expect(
          DEFAULT_TANNAGES.map((each) => each.tannage),
          row.goods,
        ).toContain(tannage);
      }
      for (const temper of row.tempers) expect(TEMPERS).toContain(temper);
    }
  });

  test('when a name is looked up, it belongs to one row only', () => {
    const names = DEFAULT_GOODS.flatMap((row) => [row.goods, ...row.alsoCalled]).map(plainName);
    expect(new Set(names).size).toBe(names.length);
    const tannages = DEFAULT_TANNAGES.flatMap((row) => [row.tannage, ...row.alsoCalled]).map(plainName);
    expect(new Set(tannages).size).toBe(tannages.length);
  });

  // Rules of thumb in ounces: common practice, no source. Held by the middle of each row, within 0.2 mm (the tolerance
  // that a training lecture on cutting gives for split leather).
  test.each([
    [
      '2–4 oz for wallets, small goods and linings',
      2,
      4,
      ['wallet', 'card holder', 'bag lining', 'watch strap'],
    ],
    ['4–6 oz for bags and covers', 4, 6, ['tote', 'journal cover', 'work apron', 'bag strap']],
    ['9–12 oz for belts and heavy straps', 9, 12, ['belt', 'work belt', 'tool belt', 'dog lead', 'bridle']],
  ])('when the rule of thumb says %s, the table agrees', (_, fromOz, toOz, goods) => {
    for (const name of goods) {
      const { minMm, maxMm } = goodsRowOf(name, DEFAULT_WORKSHOP)!.thickness!;
      const middle = (minMm + maxMm) / 2;
      expect(middle, name).toBeGreaterThanOrEqual(fromOz * OUNCE_MM - 0.2);
      expect(middle, name).toBeLessThanOrEqual(toOz * OUNCE_MM + 0.2);
    }
  });

  // Guild workshop notes: chrome linings can rust blued steel. Craft-terms page: tooling needs vegetable tanned leather.
  test('when leather lies against steel or is tooled, chrome is no choice and vegetable is', () => {
    const chrome = tannageRowOf('chrome', DEFAULT_WORKSHOP)!.meets;
    const vegetable = tannageRowOf('vegetable', DEFAULT_WORKSHOP)!.meets;
    expect([chrome['lying against steel'], chrome.tooling]).toEqual(['no', 'no']);
    expect([vegetable['lying against steel'], vegetable.tooling]).toEqual(['with care', undefined]);
  });
});

describe('looking up rows', () => {
  test.each([
    ['Saddle-bag', 'saddlebag'],
    ['saddlebags', 'saddlebag'],
    ['pannier', 'saddlebag'],
    ['briefcase', 'satchel'],
    ['reins', 'bridle'],
  ])('when goods are called "%s", their row is "%s"', (goods, row) => {
    expect(goodsRowOf(goods, DEFAULT_WORKSHOP)?.goods).toBe(row);
  });

  test('when goods are not in the table, there is no row', () => {
    expect(goodsRowOf('bottle sleeve', DEFAULT_WORKSHOP)).toBeUndefined();
  });

  test('when a part has a row for these goods, it comes before the row of the part alone', () => {
    expect(partRowOf('billfold', 'pocket', DEFAULT_WORKSHOP)?.goods).toBe('wallet pocket');
    expect(partRowOf('shoe', 'lining', DEFAULT_WORKSHOP)?.goods).toBe('shoe lining');
    expect(partRowOf('saddlebag', 'lining', DEFAULT_WORKSHOP)?.goods).toBe('bag lining');
    expect(partRowOf('anything', 'gusset', DEFAULT_WORKSHOP)?.goods).toBe('gusset');
    expect(partRowOf('saddlebag', 'front', DEFAULT_WORKSHOP)).toBeUndefined();
  });

  test.each([
    ['Veg tan', 'vegetable'],
    ['vegetable tanned leather', 'vegetable'],
    ['vegetable, double backs', 'vegetable'],
    ['chrome-tanned', 'chrome'],
    ['chrome retan', 'combination'],
    ['chrome-free calf', 'aldehyde'],
    ['pull-up', 'oil'],
    ['bonded leather', 'bonded'],
  ])('when a tannage is called "%s", it is %s', (words, tannage) => {
    expect(tannageRowOf(words, DEFAULT_WORKSHOP)?.tannage).toBe(tannage);
  });

  test('when a tannage is in no table, it is not guessed', () => {
    expect(tannageRowOf('moon', DEFAULT_WORKSHOP)).toBeUndefined();
    expect(tannageRowOf('vegetarian', DEFAULT_WORKSHOP)).toBeUndefined();
  });
});
