import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { regionArea } from '@hidebound/geometry';
import { parseStockJournal, writeHide } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { withEdits } from '../../job/job.js';
import type { FileOf } from '../../job/job.js';
import { readFiles } from '../desk/read-files.js';
import { orderCard } from './cards.js';
import { whatFits } from './fits.js';
import { putBackIntoStock, seeStock, takeFromStock } from './stock.js';

const DEMO = join(import.meta.dirname, '../../../../../fixtures/demo');
const PATHS = [
  ...readdirSync(DEMO).filter((name) => /\.(json|yaml)$/.test(name)),
  ...readdirSync(join(DEMO, 'patterns')).map((name) => `patterns/${name}`),
];
const files = new Map(
  readFiles(PATHS.map((path) => ({ path, bytes: new Uint8Array(readFileSync(join(DEMO, path))) }))),
);
const LAYOUT = 'bicycle-goods.layout.json';
const { layout } = files.get(LAYOUT) as FileOf<'layout'>;

describe('the stock at the bench', () => {
  const taken = withEdits(
    { name: '', files },
    new Map(takeFromStock(files, LAYOUT, { date: '2026-03-21', place: 'drawer 3' })),
  ).files;

  it('when a layout is taken, its hides are cut and its offcuts lie in stock', () => {
    const ids = seeStock(taken).rows.map(({ hide }) => hide.id);
    for (const { id } of layout.hides) expect(ids).not.toContain(id);
    for (const { id } of layout.offcuts) expect(ids).toContain(id);
    expect(seeStock(taken).lastTaken).toBe(LAYOUT);
    // All that came of it lies where it was said to be put, and nothing else does.
    const put = seeStock(taken).rows.flatMap(({ hide }) => (hide.storedAt === 'drawer 3' ? [hide.id] : []));
    expect(put.sort()).toEqual([...seeStock(taken).lastOffcuts].sort());
    const journal = taken.get('stock.journal.json') as FileOf<'text'>;
    expect(parseStockJournal(journal.text, { file: 'stock.journal.json' })).toMatchObject({ finished: 1 });
  });

  it('when it is taken twice, it is refused with the step that took it', () => {
    expect(() => takeFromStock(taken, LAYOUT, { date: '2026-03-22' })).toThrow('bicycle-goods.layout.json');
  });

  it('when it is put back, every hide is byte for byte as it was and the offcuts are gone', () => {
    const back = withEdits({ name: '', files: taken }, new Map(putBackIntoStock(taken, '2026-03-22'))).files;
    const hidesOf = (all: typeof files) =>
      [...all].flatMap(([path, file]) => (file.kind === 'hide' ? [[path, writeHide(file.hide)]] : [])).sort();
    expect(hidesOf(back as typeof files)).toEqual(hidesOf(files));
    expect(seeStock(back).lastTaken).toBeUndefined();
  });
});

describe('the card of the order’s articles', () => {
  it('when the demo is reckoned, every article has a price, and the leather needed is more than its pieces', async () => {
    const { card, pieces } = await orderCard('bicycle-goods.order.yaml', files);
    expect(card.sheet.articles.map(({ article }) => article)).toEqual(
      layout.order.articles.map(({ name }) => name),
    );
    expect(pieces.length).toBe(layout.pieces.length);
    for (const { needMm2, piecesMm2 } of card.leathers) expect(needMm2.low).toBeGreaterThanOrEqual(piecesMm2);
  });

  it('when an article file that no order makes is asked for, one set of it has a price and its pieces', async () => {
    const { card, pieces } = await orderCard('pump-strap.article.yaml', files);
    const { article } = files.get('pump-strap.article.yaml') as FileOf<'article'>;
    expect(card.sheet.articles).toMatchObject([{ article: article.name, sets: 1 }]);
    expect(pieces.map(({ piece }) => piece)).toEqual(article.pieces.map(({ name }) => name));
  });
});

describe('what a piece can be cut from', () => {
  const asked = { path: 'bicycle-goods.order.yaml', article: 'saddlebag', piece: 'keeper' };

  it('when the demo’s hides are tried, as many fit as their area allows at most, the smallest that is enough first', async () => {
    const { pieces } = await orderCard(asked.path, files);
    const { region } = pieces.find(
      ({ article, piece }) => article === asked.article && piece === asked.piece,
    )!;
    const fits = await whatFits({ ...asked, files, count: 4 });
    expect(fits.length).toBeGreaterThan(0);
    // Pieces don't lie over each other, so their areas add up to no more than the leather's (a fact of geometry).
    for (const { fits: n, usableMm2 } of fits) expect(n * regionArea(region)).toBeLessThanOrEqual(usableMm2);
    const enough = fits.filter(({ isEnough, remarks }) => isEnough && remarks.length === 0);
    expect(enough.map(({ usableMm2 }) => usableMm2)).toEqual(
      enough.map(({ usableMm2 }) => usableMm2).sort((a, b) => a - b),
    );
  });

  it('when leather of another colour holds it, that is told with what is asked', async () => {
    const black = new Map(
      [...files].map(([path, file]) => [
        path,
        file.kind === 'hide'
          ? { ...file, hide: { ...file.hide, leather: { ...file.hide.leather, colour: 'black' } } }
          : file,
      ]),
    );
    const [first] = await whatFits({ ...asked, files: black, count: 1 });
    expect(first!.remarks).toContainEqual(expect.objectContaining({ kind: 'colour', is: 'black' }));
  });

  it('when all leather is cut, there is none', async () => {
    const cut = new Map(
      [...files].map(([path, file]) => [
        path,
        file.kind === 'hide' ? { ...file, hide: { ...file.hide, state: 'cut' as const } } : file,
      ]),
    );
    expect(await whatFits({ ...asked, files: cut, count: 1 })).toEqual([]);
  });
});
