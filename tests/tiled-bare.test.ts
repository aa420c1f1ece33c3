import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readPattern } from '@hidebound/intake';
import type { PagesReading } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { ROOT, expectRefused, hideboundHere } from './cli-support.js';
import { expectBox } from './tools/expect-box.js';

/**
 * Six pages by cairo, without marks, that lie 30 mm over each other across and down (`make.py` beside the file says so and
 * is the judge). Only lines square to the edge cross between the rows.
 */
const FILE = join(ROOT, 'fixtures', 'patterns', 'programs', 'bar-roll-bare.pdf');

/** Paths as cairo writes them have two decimals of a point at least; curves are fitted to within 0.006 mm. */
const WITHIN_MM = 0.02;

const BODY = { x: 30 + 10, y: 25 + 10, width: 420, height: 280 };

const readBare = (pages?: PagesReading) =>
  readPattern(readFileSync(FILE), {
    file: 'bare.pdf',
    ...(pages === undefined ? {} : { reading: { file: 'bare.pdf', roles: [], pages } }),
  });

describe('pages whose overlap down nothing tells', () => {
  test.each([
    ['nothing', undefined],
    ['the columns', { columns: 3 }],
  ] as const)('when %s is said, the overlap across is taken and warned of', async (_, pages) => {
    const { pieces, diagnostics } = await readBare(pages);
    expectBox(pieces.find(({ piece }) => piece.name === 'roll body')!.piece.cut, BODY, WITHIN_MM);
    expect(diagnostics.find(({ code }) => code === 'overlap-not-told')).toMatchObject({
      severity: 'warning',
      params: { way: 'down', taken: 30, columns: 3, across: 30, down: 30 },
    });
  });

  test('when what the warning says is stated, the same comes out without it', async () => {
    const { pieces, diagnostics } = await readBare({ columns: 3, overlapMm: [30, 30] });
    expectBox(pieces.find(({ piece }) => piece.name === 'roll body')!.piece.cut, BODY, WITHIN_MM);
    expect(diagnostics.map(({ code }) => code)).not.toContain('overlap-not-told');
  });

  test('when the last page is not taken, that is only warned of, in a stated grid too', async () => {
    for (const pages of [
      { take: [1, 2, 3, 4, 5] },
      { take: [1, 2, 3, 4, 5], columns: 3, overlapMm: [30, 30] as const },
    ]) {
      const { diagnostics } = await readBare(pages);
      const loose = diagnostics.find(({ code }) => code === 'page-ends-loose');
      expect(loose?.severity).toBe('warning');
    }
  });
});

describe('a stated grid that contradicts the pages', () => {
  test.each([
    ['too few columns', ['--columns', '2'], 14],
    ['another overlap', ['--columns', '3', '--overlap', '10'], 24],
  ] as const)('when %s is stated, the file is refused with what to try', async (_, options, missed) => {
    const run = await hideboundHere(['pieces', FILE, ...options]);
    expectRefused(
      run,
      FILE,
      new RegExp(`${missed} lines end at the edge of a page.*pages 1-6.*leave the grid out`),
    );
  });
});
