import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { checkLayout } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import type { FileOf } from '../../job/job.js';
import { readBundle, writeBundle } from './bundle.js';
import { readFiles } from './read-files.js';
import { readOrder } from './read-order.js';
import { writeFile } from './write-file.js';

const DEMO = join(import.meta.dirname, '../../../../../fixtures/demo');
const PATHS = [
  'side.hide.json',
  'shoulder.hide.json',
  'bend.hide.json',
  'bicycle-goods.order.yaml',
  'pump-strap.article.yaml',
  'saddlebag.article.yaml',
  'workshop.yaml',
  'bicycle-goods.layout.json',
  ...readdirSync(join(DEMO, 'patterns')).map((name) => `patterns/${name}`),
];
const raw = PATHS.map((path) => ({ path, bytes: new Uint8Array(readFileSync(join(DEMO, path))) }));
const files = new Map(readFiles(raw));

describe('the desk', () => {
  it('when the demo’s files are read, written and read again, they say the same', () => {
    expect([...files.values()].some(({ kind }) => kind === 'unread')).toBe(false);
    for (const [path, file] of files) {
      const again = readFiles([{ path, bytes: writeFile(file) }])[0]![1];
      expect(again).toEqual(file);
    }
  });

  it('when a job goes through one file, with pictures and a text that is no UTF-8, every byte comes back', () => {
    const odd = new Map(files);
    odd.set('photo.jpg', {
      kind: 'picture',
      bytes: Uint8Array.from({ length: 70_000 }, (_, i) => (i * 31) % 256),
    });
    odd.set('old.dxf', { kind: 'pattern', bytes: Uint8Array.of(0x48, 0xe4, 0x75, 0x74) });
    odd.set('marked.svg', { kind: 'pattern', bytes: Uint8Array.of(0xef, 0xbb, 0xbf, 0x3c) });
    const { name, files: back } = readBundle({
      path: 'x.job.json',
      bytes: writeBundle({ name: 'Week 10', files: odd }),
    });
    expect(name).toBe('Week 10');
    expect(back.map(({ path }) => path)).toEqual([...odd.keys()].sort());
    for (const { path, bytes } of back)
      expect([path, ...bytes]).toEqual([path, ...writeFile(odd.get(path)!)]);
  });

  it('when a file can’t be read, it is kept byte for byte and says why', () => {
    const bytes = new TextEncoder().encode('{"format": "hidebound/hide@1"');
    const file = readFiles([{ path: 'torn.hide.json', bytes }])[0]![1] as FileOf<'unread'>;
    expect(file).toMatchObject({ kind: 'unread', bytes });
    expect(file.sentence).toContain('torn.hide.json');
  });

  it('when the demo is opened, its layout is proven on its hides', () => {
    const { layout } = files.get('bicycle-goods.layout.json') as FileOf<'layout'>;
    const hides = [...files].flatMap(([file, each]) =>
      each.kind === 'hide' ? [{ file, hide: each.hide }] : [],
    );
    const { proven, violations } = checkLayout(layout, hides);
    expect(violations).toEqual([]);
    expect(proven).toBe(true);
    expect(layout.unplaced).toEqual([]);
  });

  it('when the order is read, its pieces are there; when a pattern is missing, a sentence names it', async () => {
    const path = 'bicycle-goods.order.yaml';
    const { order, pieces } = await readOrder({ path, files });
    expect(order.name).toBe('Bicycle goods, week 10');
    expect(pieces).toHaveLength(order.articles.reduce((sum, article) => sum + article.pieces.length, 0));
    const fewer = new Map([...files].filter(([name]) => name !== 'patterns/grip-wrap.svg'));
    await expect(readOrder({ path, files: fewer })).rejects.toThrow('"patterns/grip-wrap.svg"');
  });
});
