import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readFiles } from '../work/desk/read-files.js';
import { FIRST_PLACE } from './place.js';
import { settlePlace } from './settle-place.js';

const DEMO = join(import.meta.dirname, '../../../../fixtures/demo');
const raw = (path: string) => ({ path, bytes: new Uint8Array(readFileSync(join(DEMO, path))) });
const files = new Map(readFiles(['side.hide.json', 'bend.hide.json', 'bicycle-goods.order.yaml'].map(raw)));

describe('what lies in front of the person', () => {
  it('when a job is opened, it is its order and the first hide that the order takes', () => {
    const place = settlePlace(FIRST_PLACE, { name: 'x', files });
    expect(place).toMatchObject({
      order: 'bicycle-goods.order.yaml',
      hide: 'side.hide.json',
      layout: undefined,
    });
  });

  it('when the chosen hide is taken away, another one comes in its place, and without any, none', () => {
    const chosen = { ...FIRST_PLACE, hide: 'bend.hide.json' };
    expect(settlePlace(chosen, { name: 'x', files }).hide).toBe('bend.hide.json');
    const without = new Map([...files].filter(([path]) => path !== 'bend.hide.json'));
    expect(settlePlace(chosen, { name: 'x', files: without }).hide).toBe('side.hide.json');
    expect(settlePlace(chosen, { name: 'x', files: new Map() }).hide).toBeUndefined();
  });

  it('when nothing changes, the place is the very same, so that nothing is drawn anew', () => {
    const place = settlePlace(FIRST_PLACE, { name: 'x', files });
    expect(settlePlace(place, { name: 'x', files })).toBe(place);
  });
});
