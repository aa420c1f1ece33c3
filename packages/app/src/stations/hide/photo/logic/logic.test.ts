import { parseHide, parsePhotoHints, writeHide, writePhotoHints } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { freeHideStem, namedFrom, stemOf } from './file-names.js';
import { panelHide } from './panel-hide.js';
import { cornerIn } from './snap-corner.js';
import { clockwise, hintsOf } from './stated-reference.js';

describe('a corner below a finger', () => {
  const patch = (inside: (x: number, y: number) => boolean) => {
    const values = Array.from({ length: 29 * 29 }, (_, i) => (inside(i % 29, Math.floor(i / 29)) ? 220 : 40));
    return { width: 29, height: 29, values };
  };

  it('when a bright square ends at a place, that place is found, between the last pixel in it and the first beyond', () => {
    const corner = cornerIn(patch((x, y) => x >= 12 && y >= 17))!;
    expect(corner.x).toBeCloseTo(11.5, 0);
    expect(corner.y).toBeCloseTo(16.5, 0);
  });

  it('when there is only a straight edge, or nothing, no corner is made up', () => {
    expect(cornerIn(patch((x) => x >= 12))).toBeUndefined();
    expect(cornerIn(patch(() => true))).toBeUndefined();
  });
});

describe('what a person says of a photo', () => {
  const at = (x: number, y: number) => ({ x, y });

  it('when corners were dragged past each other, they go clockwise from the top left, as the format asks', () => {
    const corners = clockwise([at(900, 700), at(100, 120), at(80, 690), at(910, 100)]);
    expect(corners).toEqual([at(100, 120), at(910, 100), at(900, 700), at(80, 690)]);
    const reference = { kind: 'rectangle', corners, widthMm: 600, heightMm: 400 } as const;
    const hints = hintsOf(['side.jpg'], new Map(), { file: 'side.jpg', reference });
    expect(parsePhotoHints(writePhotoHints(hints), { file: 'side.hints.yaml' })).toEqual(hints);
  });
});

describe('files of a hide', () => {
  it('when a name is taken, the next number is; when it holds what disks refuse, that goes', () => {
    const job = { name: 'x', files: new Map([['side.straight.jpg', { kind: 'text', text: '' } as const]]) };
    expect(freeHideStem(job, 'side')).toBe('side-2');
    expect(stemOf('C:\\photos\\IMG: 12?.final.JPG')).toBe('IMG- 12-final');
    expect(stemOf('...jpg')).toBe('hide');
    expect(namedFrom('orders/bag.order.yaml', 'side.hide.json')).toBe('../side.hide.json');
  });

  it('when a panel is told by numbers, its file is read again as it was', () => {
    const hide = panelHide({ id: 'panel', widthMm: 600, heightMm: 300, thicknessMm: 2, least: 'across' });
    expect(parseHide(writeHide(hide), { file: 'panel.hide.json' })).toEqual(hide);
  });
});
