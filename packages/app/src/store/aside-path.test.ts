import { describe, expect, it } from 'vitest';
import { kindOfPath } from '../job/kind-of-path.js';
import { asidePath } from './aside-path.js';

describe('the path of a version that is put aside', () => {
  it('when nothing has the name, "-mine" stands before the ending that tells the kind', () => {
    const free = (): boolean => false;
    expect(asidePath('side.hide.json', free)).toBe('side-mine.hide.json');
    expect(asidePath('a/b.c/bags.order.yaml', free)).toBe('a/b.c/bags-mine.order.yaml');
    expect(asidePath('workshop.yaml', free)).toBe('workshop-mine.yaml');
    expect(asidePath('left.v2.svg', free)).toBe('left.v2-mine.svg');
  });

  it('when the name is taken, numbers follow', () => {
    const taken = new Set(['side-mine.hide.json', 'side-mine-2.hide.json']);
    expect(asidePath('side.hide.json', (path) => taken.has(path))).toBe('side-mine-3.hide.json');
  });

  it('when a file goes aside, it stays of its kind', () => {
    for (const path of ['a.hide.json', 'a.layout.json', 'a.order.yml', 'a.article.yaml', 'a.dxf', 'a.JPG'])
      expect(kindOfPath(asidePath(path, () => false))).toBe(kindOfPath(path));
  });
});
