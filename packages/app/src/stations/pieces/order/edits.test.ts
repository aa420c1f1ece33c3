import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createRandom } from '@hidebound/geometry';
import type { Random } from '@hidebound/geometry';
import {
  PARTS,
  isArticleReference,
  parseArticle,
  parseOrder,
  writeArticle,
  writeOrder,
} from '@hidebound/leather';
import type { OrderArticle, OrderFile } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import {
  articleForLater,
  changeArticle,
  emptyOrder,
  withArticle,
  withArticleFile,
  withArticleWritten,
  withSets,
  withoutArticle,
} from './articles.js';
import {
  changeCutting,
  changeLeather,
  hideForward,
  toggleHide,
  withLeather,
  withMethod,
  withoutLeather,
} from './leathers.js';
import { changePiece, newPiece, partOfName, withPieces, withoutPiece } from './pieces.js';
import { changeReading, readingOf, scaledReading } from './readings.js';

const DEMO = join(import.meta.dirname, '../../../../../../fixtures/demo');
const text = (name: string): string => readFileSync(join(DEMO, name), 'utf8');
const demo = parseOrder(text('bicycle-goods.order.yaml'), { file: 'demo' });
const everyField = parseOrder(readFileSync(join(DEMO, '../formats/every-field.order.yaml'), 'utf8'), {
  file: 'every-field',
});
const pumpStrap = parseArticle(text('pump-strap.article.yaml'), { file: 'pump-strap.article.yaml' });

const reread = (order: OrderFile): OrderFile => parseOrder(writeOrder(order), { file: 'written' });
const articleAt = (order: OrderFile, i: number): OrderArticle => {
  const article = order.articles[i]!;
  if (isArticleReference(article)) throw new Error('A reference.');
  return article;
};
const indexIn = (random: Random, list: { readonly length: number }): number =>
  Math.floor(random.next() * list.length);

/** One edit of each kind, with numbers and places by chance. */
const EDITS: readonly ((order: OrderFile, random: Random) => OrderFile | undefined)[] = [
  (order, random) => withSets(order, indexIn(random, order.articles), Math.floor(random.next() * 20_000) - 5),
  (order, random) => withSets(order, indexIn(random, order.articles), 'as many as fit'),
  (order, random) =>
    changeArticle(order, indexIn(random, order.articles), {
      name: `bag ${indexIn(random, 'abc')}`,
      for: undefined,
    }),
  (order, random) => withoutArticle(order, indexIn(random, order.articles)),
  (order, random) =>
    withArticle(order, { name: 'belt: "wide"', goods: 'belt', sets: 3 }, [
      newPiece(
        '- belt #1',
        { kind: 'disc', diameterMm: 12 + indexIn(random, 'abcd') },
        leatherIn(order, random),
      ),
    ]),
  (order) => withArticleFile(order, 'pump-strap.article.yaml', pumpStrap),
  (order, random) => {
    const at = indexIn(random, order.articles);
    const file = order.articles[at]!;
    return isArticleReference(file) ? withArticleWritten(order, at, pumpStrap) : order;
  },
  (order, random) =>
    withPieces(order, indexIn(random, order.articles), [
      newPiece(
        'pocket',
        { kind: 'pattern', file: 'patterns/x.svg', piece: 'pocket' },
        leatherIn(order, random),
      ),
    ]),
  (order, random) => {
    const article = indexIn(random, order.articles);
    return changePiece(order, article, Math.floor(random.next() * 4), {
      name: `piece ${indexIn(random, 'abcde')}`,
      count: Math.floor(random.next() * 6) - 1,
      mirrored: Math.floor(random.next() * 6) - 1,
      part: PARTS[indexIn(random, PARTS)]!,
      arrowDeg: random.next() < 0.5 ? undefined : Math.round(random.next() * 3600) / 10,
      thickness: random.next() < 0.3 ? undefined : { minMm: 1.2, maxMm: 2.4 },
      face: random.next() < 0.5 ? undefined : 'all',
      bearsLoad: random.next() < 0.5,
      looks: undefined,
      direction: { rule: 'fixed', angleDeg: 30, toleranceDeg: 5, halfTurn: false },
    });
  },
  (order, random) => withoutPiece(order, indexIn(random, order.articles), Math.floor(random.next() * 4)),
  (order) => withLeather(order, { name: 'lining', hides: [] }),
  (order, random) =>
    changeLeather(order, indexIn(random, order.leathers), {
      name: `leather ${indexIn(random, 'abc')}`,
      colour: random.next() < 0.5 ? undefined : 'oak, light',
      thickness: { minMm: 1.9, maxMm: 2.2 },
    }),
  (order, random) => withoutLeather(order, indexIn(random, order.leathers)),
  (order, random) =>
    toggleHide(order, indexIn(random, order.leathers), `hide-${indexIn(random, 'abc')}.hide.json`),
  (order, random) =>
    hideForward(order, indexIn(random, order.leathers), `hide-${indexIn(random, 'abc')}.hide.json`),
  (order) => withMethod(order, 'strap cutter'),
  (order, random) => changeCutting(order, { gapMm: random.next() < 0.5 ? undefined : 3, edgeMm: 4 }),
  (order, random) =>
    changeReading(order, 'patterns/x.svg', {
      ...scaledReading(readingOf(order, 'patterns/x.svg'), 0.5 + random.next()),
      unfold: random.next() < 0.5 ? undefined : false,
    }),
];

function leatherIn({ leathers }: OrderFile, random: Random) {
  const { name } = leathers[indexIn(random, leathers)]!;
  return { leather: name, part: 'tab' } as const;
}

describe('edits of an order', () => {
  it.each([
    ['the demo', demo],
    ['an order with every field', everyField],
  ])('when any edits follow each other on %s, its file reads back as the same order', (_, first) => {
    const random = createRandom(41);
    for (let run = 0; run < 3; run++) {
      let order = first;
      for (let step = 0; step < 30; step++) {
        const edit = EDITS[indexIn(random, EDITS)]!;
        const next = edit(order, random);
        if (next === undefined) continue;
        order = next;
        expect(reread(order)).toEqual(order);
      }
      // Nothing of the order that no edit is about was touched.
      const { name, version, date, table, useFrom, mode, keepMm, threads, hardware, hours, notes } = order;
      expect({ name, version, date, table, useFrom, mode, keepMm, threads, hardware, hours, notes }).toEqual({
        name: first.name,
        version: first.version,
        date: first.date,
        table: first.table,
        useFrom: first.useFrom,
        mode: first.mode,
        keepMm: first.keepMm,
        threads: first.threads,
        hardware: first.hardware,
        hours: first.hours,
        notes: first.notes,
      });
    }
  });

  it('when one piece is changed, all others and all that was not named of it are equal', () => {
    const order = changePiece(demo, 1, 2, { count: 4 });
    expect(articleAt(order, 1).pieces[2]).toEqual({ ...articleAt(demo, 1).pieces[2], count: 4 });
    const back = changePiece(order, 1, 2, { count: 2 });
    expect(back).toEqual(demo);
  });

  it('when a piece gets another name, seams and neighbours follow it', () => {
    const { pieces, beside } = articleAt(changePiece(demo, 1, 0, { name: 'front panel' }), 1);
    expect(pieces[2]!.seams[0]).toMatchObject({ to: { piece: 'front panel', line: 'gusset-seam' } });
    expect(beside).toEqual([['front panel', 'back and flap']]);
  });

  it('when a piece goes, what was sewn to it keeps no seam to it', () => {
    const { pieces, beside } = articleAt(withoutPiece(demo, 1, 0)!, 1);
    expect(pieces.flatMap(({ seams }) => seams).map(({ to }) => to.piece)).toEqual(['back and flap']);
    expect(beside).toEqual([]);
  });

  it('when the only piece of the only article goes, no order is left', () => {
    const piece = newPiece('disc', { kind: 'disc', diameterMm: 30 }, { leather: 'body', part: 'tab' });
    const begun = { name: 'x', date: '2026-03-02', method: 'hand knife' };
    const order = withArticle(
      emptyOrder({ ...begun, leathers: [{ name: 'body', hides: [] }] }),
      { name: 'coaster', goods: 'coaster', sets: 6 },
      [piece],
    );
    expect(reread(order)).toEqual(order);
    expect(withoutPiece(order, 0, 0)).toBeUndefined();
  });

  it('when an article is kept for later, its file reads back and names the leathers of its pieces only', () => {
    const later = articleForLater(demo, 1)!;
    expect(parseArticle(writeArticle(later), { file: 'later' })).toEqual(later);
    expect(later.leathers.map(({ name }) => name)).toEqual(['body', 'straps']);
    expect(later.leathers.some((leather) => 'hides' in leather)).toBe(false);
  });

  it('when a length is known, the factor comes on top of what the reading says', () => {
    expect(scaledReading({ file: 'x', roles: [], scale: 2 }, 1.5)).toEqual({ scale: 3 });
    expect(scaledReading({ file: 'x', roles: [], scale: 2 }, 0.5)).toEqual({ scale: undefined });
    const known = { element: 'side', mm: 100 };
    expect(scaledReading({ file: 'x', roles: [], knownLength: known }, 1.25)).toEqual({
      knownLength: { element: 'side', mm: 125 },
    });
  });

  it('when a piece’s name says what it is, its part is that', () => {
    const names = [
      'saddle strap',
      'toolroll-pockets',
      'pocket flap',
      'Futter vorn',
      'gusset',
      'body',
      'keeper',
    ];
    expect(names.map(partOfName)).toEqual(['strap', 'pocket', 'flap', 'lining', 'gusset', 'front', 'tab']);
  });
});
