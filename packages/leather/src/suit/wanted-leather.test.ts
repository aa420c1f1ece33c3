import { describe, expect, test } from 'vitest';
import type { OrderArticle, OrderLeather, OrderPiece, Part } from '../model/order.js';
import { ruleOfPart } from '../parts/part-table.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { temperOf, wantedLeather } from './wanted-leather.js';

interface Asked {
  readonly goods: string;
  readonly part: Part;
  readonly thickness?: OrderPiece['thickness'];
  readonly wants?: OrderArticle['wants'];
  readonly leather?: Partial<OrderLeather>;
  readonly layers?: number;
  readonly isTooled?: boolean;
}

function wantedOf({ goods, part, thickness, wants, leather, layers = 1, isTooled = false }: Asked) {
  const rule = ruleOfPart(part);
  return wantedLeather({
    article: { goods, ...(wants === undefined ? {} : { wants }) },
    piece: thickness === undefined ? {} : { thickness },
    resolved: { part, tooThick: rule.tooThick, layers, bearsLoad: rule.bearsLoad, isTooled },
    leather: leather === undefined ? undefined : { name: 'main', hides: [], ...leather },
    workshop: DEFAULT_WORKSHOP,
  });
}

const mm = (minMm: number, maxMm: number) => ({ minMm, maxMm });

describe('what a piece wants of its leather', () => {
  // One after the other is taken away: what is left of the rule of precedence speaks.
  test('when several say a thickness, the piece comes first, then the article, its leather, the goods, the part', () => {
    const all: Asked = {
      goods: 'saddlebag',
      part: 'front',
      thickness: mm(2.2, 2.6),
      wants: { thickness: mm(2.4, 2.8) },
      leather: { thickness: mm(2, 3) },
    };
    expect(wantedOf(all).thickness).toEqual({ from: 'piece', value: mm(2.2, 2.6) });
    const { thickness: _own, ...second } = all;
    expect(wantedOf(second).thickness).toEqual({ from: 'wants', value: mm(2.4, 2.8) });
    const { wants: _wants, ...third } = second;
    expect(wantedOf(third).thickness).toEqual({ from: 'leather', value: mm(2, 3) });
    const { leather: _leather, ...fourth } = third;
    expect(wantedOf(fourth).thickness).toEqual({ from: 'goods row', value: mm(2.8, 3.6) });
    expect(wantedOf({ goods: 'no such goods', part: 'strap' }).thickness).toEqual({
      from: 'part rule',
      value: mm(2, 5.2),
    });
    expect(wantedOf({ goods: 'no such goods', part: 'front' }).thickness).toBeUndefined();
  });

  test('when a part is skived, its own row counts before the leather that it is cut from', () => {
    const gusset = wantedOf({ goods: 'saddlebag', part: 'gusset', leather: { thickness: mm(2, 3) } });
    expect(gusset.thickness).toEqual({ from: 'part row', value: mm(1, 1.8) });
    const pocket = wantedOf({ goods: 'wallet', part: 'pocket', leather: { thickness: mm(1, 1.2) } });
    expect(pocket.thickness).toEqual({ from: 'part row', value: mm(0.5, 0.8) });
  });

  test('when a bag has straps, its own row says nothing of them; a belt is its strap', () => {
    expect(wantedOf({ goods: 'satchel', part: 'strap' }).thickness?.from).toBe('part rule');
    expect(wantedOf({ goods: 'belt', part: 'strap' }).thickness).toEqual({
      from: 'goods row',
      value: mm(3.2, 4),
    });
  });

  test('when a row speaks of a thickness, it is that of all layers together; the piece speaks of one', () => {
    expect(wantedOf({ goods: 'work belt', part: 'strap', layers: 2 }).thickness?.value).toEqual(mm(2, 2.6));
    const own = wantedOf({ goods: 'work belt', part: 'strap', layers: 2, thickness: mm(2, 2.4) });
    expect(own.thickness?.value).toEqual(mm(2, 2.4));
  });

  test('when goods lie against steel, their lining does, too, but need not stand up', () => {
    expect(wantedOf({ goods: 'knife sheath', part: 'lining' }).needs).toEqual(['lying against steel']);
    expect(wantedOf({ goods: 'knife sheath', part: 'front' }).needs).toContain('standing up');
  });

  test('when a piece is tooled or moulded, or bears a load as a strap, its leather must', () => {
    expect(wantedOf({ goods: 'tote', part: 'front', isTooled: true }).needs).toEqual(['tooling']);
    expect(wantedOf({ goods: 'tote', part: 'moulded' }).needs).toEqual(['moulding']);
    expect(wantedOf({ goods: 'tote', part: 'strap' }).needs).toEqual(['keeping its length']);
  });

  test('when an article says what it needs, its goods say nothing more', () => {
    const { needs } = wantedOf({ goods: 'saddlebag', part: 'front', wants: { needs: ['turned edges'] } });
    expect(needs).toEqual(['turned edges']);
  });
});

describe('temper in free words', () => {
  test.each([
    ['firm', 'firm'],
    ['Soft, drapes', 'soft'],
    ['mellow', 'medium'],
    ['hard rolled', 'hard'],
    ['soft to medium', undefined],
    ['lovely', undefined],
  ])('when it is told as "%s", it is %s', (words, temper) => {
    expect(temperOf(words)).toBe(temper);
  });
});
