import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseStockJournal, writeHide } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { withEdits } from '../../job/job.js';
import type { FileOf } from '../../job/job.js';
import { readFiles } from '../desk/read-files.js';
import { orderCard } from './cards.js';
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
  const taken = withEdits({ name: '', files }, new Map(takeFromStock(files, LAYOUT, '2026-03-21'))).files;

  it('when a layout is taken, its hides are cut and its offcuts lie in stock', () => {
    const ids = seeStock(taken).rows.map(({ hide }) => hide.id);
    for (const { id } of layout.hides) expect(ids).not.toContain(id);
    for (const { id } of layout.offcuts) expect(ids).toContain(id);
    expect(seeStock(taken).lastTaken).toBe(LAYOUT);
    const journal = taken.get('stock.journal.json') as FileOf<'text'>;
    expect(parseStockJournal(journal.text, { file: 'stock.journal.json' })).toMatchObject({ finished: 1 });
  });

  it('when it is taken twice, it is refused with the step that took it', () => {
    expect(() => takeFromStock(taken, LAYOUT, '2026-03-22')).toThrow('bicycle-goods.layout.json');
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
});
