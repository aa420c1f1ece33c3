import { createRandom } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { layOutBoard } from './lay-out.js';
import type { Cell } from './lay-out.js';

describe('the board of pieces', () => {
  it('when any pieces are laid out, none lies over another one or beyond the board, in their order', () => {
    const random = createRandom(8);
    for (let run = 0; run < 40; run++) {
      const groups = Array.from({ length: 1 + Math.floor(random.next() * 5) }, () =>
        Array.from({ length: 1 + Math.floor(random.next() * 9) }, (): Cell => ({
          widthMm: 5 + 500 * random.next(),
          heightMm: 5 + 300 * random.next(),
          labelMm: 120 * random.next(),
        })),
      );
      const { groups: placed, box } = layOutBoard(groups, { aspect: 0.4 + 2 * random.next(), textMm: 12 });
      const boxes = groups.flatMap((cells, g) =>
        cells.map(({ widthMm, heightMm, labelMm }, i) => {
          const { x, y } = placed[g]!.cells[i]!;
          const half = Math.max(widthMm, labelMm) / 2;
          return { minX: x - half, maxX: x + half, minY: y - heightMm / 2, maxY: y + heightMm / 2 };
        }),
      );
      for (const [i, one] of boxes.entries()) {
        expect(one.minX).toBeGreaterThanOrEqual(box.minX - 1e-6);
        expect(one.maxX).toBeLessThanOrEqual(box.maxX + 1e-6);
        expect(one.maxY).toBeLessThanOrEqual(box.maxY + 1e-6);
        for (const other of boxes.slice(i + 1)) {
          const isApart = other.minX >= one.maxX || other.minY >= one.maxY;
          expect(isApart).toBe(true);
        }
      }
    }
  });
});
