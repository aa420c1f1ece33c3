import type { FitKind, HideFit, Suit, SuitHide, SuitPiece, SuitWork } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import type { ReportBlock } from '../report/report.js';
import { suitReport } from './suit-report.js';
import { hideLines, workWords } from './suit-words.js';

function hide(id: string, leathers: readonly string[] = []): SuitHide {
  return { id, file: `${id}.hide.json`, cut: 'side', leathers, readings: 0 };
}

function fit(id: string, kind: FitKind, more: Partial<HideFit> = {}): HideFit {
  const reasons = kind === 'no' ? [{ code: 'too-small' as const, params: {} }] : [];
  return { hide: id, kind, work: [], reasons, remarks: [], ...more };
}

function piece(name: string, fits: readonly HideFit[], more: Partial<SuitPiece> = {}): SuitPiece {
  return {
    article: 'bag',
    goods: 'bag',
    piece: name,
    part: 'front',
    leather: 'body',
    copies: 2,
    layers: 1,
    wanted: { needs: [] },
    fits,
    ...more,
  };
}

function suit(hides: readonly SuitHide[], pieces: readonly SuitPiece[]): Suit {
  const isSuited = pieces.every(({ fits }) => fits.some(({ kind }) => kind !== 'no'));
  return { hides, pieces, isSuited, diagnostics: [] };
}

const skived: readonly SuitWork[] = [
  { kind: 'all over', fromMm: 2.9, byMm: 0.5, to: { minMm: 1.2, maxMm: 2.4 } },
];
const blocksOf = (told: Suit) => suitReport(told, { subtitle: 's', warnings: [] }).blocks;
const tables = (blocks: readonly ReportBlock[]) => blocks.filter((block) => block.kind === 'table');

describe('lines on a hide', () => {
  test('when all pieces fit, they are counted, and what is skived to one thickness is told together', () => {
    const told = suit(
      [hide('side', ['body'])],
      [
        piece('front', [fit('side', 'fits')]),
        piece('gusset', [fit('side', 'skive', { work: skived })], { copies: 4 }),
        piece('welt', [fit('side', 'skive', { work: skived })]),
      ],
    );
    expect(hideLines(told, told.hides[0]!)).toEqual([
      'side fits all 8 pieces of body; gusset and welt skived to 1.2–2.4 mm all over.',
    ]);
  });

  test('when some do not fit, they are named with the reason; two of one name with their article', () => {
    const told = suit(
      [hide('scrap', ['body'])],
      [
        piece('front', [fit('scrap', 'no')]),
        piece('front', [fit('scrap', 'fits')], { article: 'case' }),
        piece('tab', [fit('scrap', 'double')], { copies: 1 }),
      ],
    );
    expect(hideLines(told, told.hides[0]!)).toEqual([
      'scrap fits 3 of 5 pieces of body; tab in two layers; not front of bag (too small).',
    ]);
  });
});

describe('the report', () => {
  test('when a piece finds no hide, the answer names it', () => {
    const told = suit([hide('side')], [piece('front', [fit('side', 'no')])]);
    expect(blocksOf(told)[0]).toMatchObject({
      tone: 'answer',
      text: '1 of 1 kinds of pieces finds no hide on hand: front.',
    });
  });

  test('when there are many hides, tables stand within the page, the leather’s own first, and the rest is counted', () => {
    const hides = [...Array.from({ length: 12 }, (_, i) => hide(`scrap-${i}`)), hide('side', ['body'])];
    const told = suit(hides, [
      piece(
        'front',
        hides.map(({ id }) => fit(id, 'fits')),
      ),
    ]);
    const heads = tables(blocksOf(told)).map(({ columns }) => columns.map(({ head }) => head));
    const fits = heads.filter((head) => head.includes('pieces') && !head.includes('what')).slice(0, 3);
    expect(fits.map((head) => head.slice(3).length)).toEqual([4, 4, 1]);
    expect(fits[0]![3]).toBe('side');
    expect(JSON.stringify(blocksOf(told))).toContain('4 more hides fit some of them');
  });

  test('when one step is done on two hides, it is told once with the figures of both', () => {
    const fold = (toMm: number): SuitWork => ({ kind: 'buckle fold', toMm, taper: [30, 50] });
    expect(workWords([fold(1.3), fold(1.8)])).toBe(
      'thin the fold at the buckle to about 1.3–1.8 mm, running out over 30–50 mm',
    );
    expect(workWords([fold(1.3), fold(1.3)])).toContain('about 1.3 mm');
  });

  test('when anything is skived, the caution about blades and dust stands below it', () => {
    const told = suit([hide('side')], [piece('gusset', [fit('side', 'skive', { work: skived })])]);
    const blocks = blocksOf(told);
    const at = blocks.findIndex((block) => block.kind === 'checklist');
    expect(blocks[at + 1]).toMatchObject({ kind: 'text', tone: 'caution' });
    const none = blocksOf(suit([hide('side')], [piece('front', [fit('side', 'fits')])]));
    expect(none.some((block) => block.kind === 'text' && block.tone === 'caution')).toBe(false);
  });
});
