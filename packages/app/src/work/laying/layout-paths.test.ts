import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keptPathOf, layoutPathOf, nameOfKept } from './layout-paths.js';
import { APP_VERSION } from './version.js';

describe('files of layouts', () => {
  it('when a layout is kept under a name, its file lies beside the order’s own and is found after it', () => {
    const own = layoutPathOf('week/goods.order.yaml');
    expect(own).toBe('week/goods.layout.json');
    const kept = keptPathOf('week/goods.order.yaml', ' First try / Größe ');
    expect(kept).toBe('week/goods_First-try-Größe.layout.json');
    expect(nameOfKept('week/goods.order.yaml', kept)).toBe('First try Größe');
    expect([kept, own].sort()).toEqual([own, kept]);
    expect(nameOfKept('week/goods.order.yaml', own)).toBeUndefined();
  });

  it('when a layout names its maker, it is the version that the package has', () => {
    const file = join(import.meta.dirname, '../../../package.json');
    expect((JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version).toBe(APP_VERSION);
  });
});
