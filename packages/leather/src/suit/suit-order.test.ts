import { describe, expect, test } from 'vitest';
import type { Hide, LeatherQualities } from '../model/hide.js';
import type { Order, OrderArticle, OrderLeather, OrderPiece } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { resolveOrder } from '../order/resolve-order.js';
import { resolvePieces } from '../pieces/resolve-pieces.js';
import {
  plainArticle,
  plainHide,
  plainOrder,
  plainOrderPiece,
  polygonCurve,
  rectangleCurve,
} from '../testing/plain.js';
import { sentenceFor } from '../words/catalogue.js';
import { suitRemarkWords } from '../words/suit.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { suitOrder } from './suit-order.js';
import type { HideFit } from './suit-model.js';

const mm = (minMm: number, maxMm: number) => ({ minMm, maxMm });

/** 25.4 mm an inch (1959), an ounce 1/64 of it. */
const OUNCE_MM = 25.4 / 64;

function hideOf(leather: Partial<LeatherQualities>, more: Partial<Hide> = {}): Hide {
  return plainHide('hide 1', rectangleCurve(0, 0, 1000, 500), {
    cut: 'bend',
    leather: { readings: [], tannage: 'vegetable', temper: 'firm', ...leather },
    ...more,
  });
}

interface Bench {
  readonly goods?: string;
  readonly piece?: Partial<OrderPiece>;
  readonly article?: Partial<OrderArticle>;
  readonly leather?: Partial<OrderLeather>;
  readonly hides: readonly Hide[];
  readonly workshop?: Partial<Workshop>;
}

function suitOf({ goods = 'anything', piece = {}, article = {}, leather = {}, hides, workshop = {} }: Bench) {
  const files = hides.map((_, i) => `hide-${i + 1}.json`);
  const written: Order = plainOrder(
    [plainArticle('job', [plainOrderPiece('part', { part: 'front', ...piece })], { goods, ...article })],
    { leathers: [{ name: 'body', hides: files, ...leather }] },
  );
  const order = resolveOrder(written, undefined, { hidesLater: true });
  const { pieces } = resolvePieces(order, () => ({ pieces: [] }));
  return suitOrder({
    written,
    order,
    pieces,
    hides: hides.map((hide, i) => ({ file: files[i]!, hide })),
    workshop: { ...DEFAULT_WORKSHOP, ...workshop },
  });
}

function fitOf(bench: Bench): HideFit {
  return suitOf(bench).pieces[0]!.fits[0]!;
}

const reasonsOf = (fit: HideFit) => fit.reasons.map(({ code }) => code);
const remarksOf = (fit: HideFit) => fit.remarks.map(({ code }) => code);
const sentences = (bench: Bench) => suitOf(bench).diagnostics.map((finding) => sentenceFor(finding));
const codes = (bench: Bench) => suitOf(bench).diagnostics.map(({ code }) => code);

describe('thickness', () => {
  const piece = { thickness: mm(2, 2.4) };

  test('when all of a hide is of the wanted thickness, the piece fits', () => {
    const fit = fitOf({ piece, hides: [hideOf({ thickness: mm(2.1, 2.3) })] });
    expect(fit).toMatchObject({ kind: 'fits', reasons: [], remarks: [], rightShare: 1 });
  });

  test('when it is too thick and may be skived, it is told by how much', () => {
    const hides = [hideOf({ thickness: mm(2.8, 3) })];
    const fit = fitOf({ piece: { ...piece, tooThick: 'skive' }, hides });
    expect(fit.kind).toBe('skive');
    expect(fit.work[0]).toMatchObject({ kind: 'all over', fromMm: 3, to: mm(2, 2.4) });
    expect(fit.work[0]?.kind === 'all over' && fit.work[0].byMm).toBeCloseTo(0.6, 9);
  });

  test('when the order says that it must not be skived, too thick is too thick', () => {
    const hides = [hideOf({ thickness: mm(2.8, 3) })];
    expect(reasonsOf(fitOf({ piece: { ...piece, tooThick: 'refuse' }, hides }))).toEqual(['too-thick']);
    // Only the part's rule refuses: it may be skived if the order says so.
    expect(remarksOf(fitOf({ piece, hides }))).toEqual(['order-refuses-skiving']);
  });

  // Common practice, no source: half the thickness at most; a workshop may say otherwise.
  test('when more than half would come off, it is not skived, unless the workshop does so', () => {
    const bench = {
      piece: { ...piece, tooThick: 'skive' as const },
      hides: [hideOf({ thickness: mm(5, 5.2) })],
    };
    expect(reasonsOf(fitOf(bench))).toEqual(['skive-too-deep']);
    const figures = DEFAULT_WORKSHOP.figures.map((figure) =>
      figure.name === 'thinning all over, at most' ? { ...figure, value: { min: 60, max: 60 } } : figure,
    );
    expect(fitOf({ ...bench, workshop: { figures } }).kind).toBe('skive');
  });

  // By addition two layers of 4–5 oz make 8–10 oz; the rule of thumb (common practice, no source) says 9–10 oz.
  test('when leather of 4–5 oz is doubled, it makes the 9–10 oz of a belt', () => {
    const hides = [hideOf({ thickness: mm(4 * OUNCE_MM, 5 * OUNCE_MM) })];
    const asked = { thickness: mm(9 * OUNCE_MM, 10 * OUNCE_MM), part: 'strap' as const };
    const fit = fitOf({ piece: asked, hides });
    expect(fit.kind).toBe('double');
    expect(fit.work).toContainEqual({ kind: 'layers', count: 2 });
    // 2–3 oz doubled make 4–6 oz: too thin.
    const thin = [hideOf({ thickness: mm(2 * OUNCE_MM, 3 * OUNCE_MM) })];
    expect(reasonsOf(fitOf({ piece: asked, hides: thin }))).toEqual(['too-thin']);
  });

  test('when the order gives layers itself, no more are glued on', () => {
    const hides = [hideOf({ thickness: mm(1, 1.2) })];
    expect(fitOf({ piece: { ...piece, layers: 1 }, hides }).kind).toBe('double');
    expect(reasonsOf(fitOf({ piece: { ...piece, layers: 2 }, hides }))).toEqual(['too-thin']);
  });

  test('when nobody knows the thickness, it goes on with a warning', () => {
    const bench = { piece, hides: [hideOf({})] };
    const suit = suitOf(bench);
    expect(suit.pieces[0]!.fits[0]).toMatchObject({ kind: 'measure', reasons: [] });
    expect(suit.isSuited).toBe(true);
    expect(sentences(bench).join(' ')).toContain('Thickness of hide hide 1 is not known; measure it');
  });

  test('when readings differ by place, only places of the right thickness count', () => {
    // Left of the middle nearer to 2.2, right of it nearer to 3.0: by the mean with weight 1/d² the middle is 2.6.
    const readings = [
      { at: { x: 0, y: 250 }, mm: 2.2 },
      { at: { x: 1000, y: 250 }, mm: 3 },
    ];
    const fit = fitOf({
      piece: { thickness: mm(2, 2.6), tooThick: 'refuse' },
      hides: [hideOf({ readings })],
    });
    expect(fit.kind).toBe('fits');
    expect(fit.rightShare).toBeCloseTo(0.5, 1);
    expect(remarksOf(fit)).toEqual(['only-places']);
    const skived = fitOf({
      piece: { thickness: mm(2, 2.6), tooThick: 'skive' },
      hides: [hideOf({ readings })],
    });
    expect(skived).toMatchObject({ kind: 'skive', rightShare: 1 });
  });

  test('when the right places are smaller than the piece, it does not fit', () => {
    const readings = [
      { at: { x: 0, y: 0 }, mm: 2.2 },
      { at: { x: 500, y: 250 }, mm: 5.2 },
      { at: { x: 1000, y: 500 }, mm: 5.2 },
    ];
    const large = { kind: 'rectangle' as const, widthMm: 400, lengthMm: 400, cornerRadiusMm: 0 };
    const fit = fitOf({
      piece: { thickness: mm(2, 2.4), tooThick: 'refuse', from: large },
      hides: [hideOf({ readings })],
    });
    expect(reasonsOf(fit)).toEqual(['too-little-of-it']);
  });

  test('when a stated thickness is off by no more than its tolerance, it fits with a remark', () => {
    const fit = fitOf({ piece, hides: [hideOf({ thickness: mm(2, 2.6) })] });
    expect([fit.kind, remarksOf(fit)]).toEqual(['fits', ['within-tolerance']]);
    const far = fitOf({ piece, hides: [hideOf({ thickness: mm(1.6, 2.8) })] });
    expect([far.kind, remarksOf(far)]).toEqual(['fits', ['measure-places']]);
  });
});

describe('what leather can do', () => {
  const reasonWords = (bench: Bench) => fitOf(bench).reasons.map(suitRemarkWords).join('; ');

  // Guild workshop notes: chrome can rust blued steel. Craft-terms page: tooling needs unfinished vegetable tanned leather.
  test('when a sheath is to be of soft chrome leather, every reason is told', () => {
    const words = reasonWords({
      goods: 'knife sheath',
      piece: { isTooled: true },
      hides: [hideOf({ tannage: 'chrome', temper: 'soft', thickness: mm(2, 2.4) })],
    });
    expect(words).toContain('will not take tooling (chrome)');
    expect(words).toContain('will not burnish (chrome)');
    expect(words).toContain('does not belong beside steel (chrome)');
    expect(words).toContain('too soft to stand up');
  });

  test('when a sheath is of vegetable tanned leather, it fits, but no blade is stored in it', () => {
    const bench = { goods: 'knife sheath', hides: [hideOf({ thickness: mm(2.8, 3.2) })] };
    expect(fitOf(bench).kind).toBe('fits');
    expect(remarksOf(fitOf(bench))).toEqual(['need-with-care']);
    expect(sentences(bench).join(' ')).toContain('vegetable tanned leather is acid too');
  });

  test('when tooled leather has a finish, it does not fit; bare leather does', () => {
    const piece = { isTooled: true };
    expect(reasonsOf(fitOf({ piece, hides: [hideOf({ finish: 'waxed' })] }))).toEqual([
      'finished-for-tooling',
    ]);
    expect(reasonsOf(fitOf({ piece, hides: [hideOf({ finish: 'unfinished, russet' })] }))).toEqual([]);
    expect(remarksOf(fitOf({ piece, hides: [hideOf({})] }))).toEqual(['finish-not-known']);
  });

  test.each([
    ['soft', ['too-soft-to-stand'], []],
    ['medium', [], ['softer-than-usual']],
    ['firm', [], []],
    ['hard', [], ['stiffer-than-usual']],
  ])('when a firm saddlebag is to be of %s leather, it is told', (temper, reasons, remarks) => {
    const fit = fitOf({ goods: 'saddlebag', hides: [hideOf({ temper, thickness: mm(3, 3.4) })] });
    expect([reasonsOf(fit), remarksOf(fit)]).toEqual([reasons, remarks]);
  });

  test('when a soft tote is to be of firm leather, two steps of temper are another leather', () => {
    const hides = [hideOf({ tannage: 'oil', temper: 'hard', thickness: mm(1.4, 1.8) })];
    expect(reasonsOf(fitOf({ goods: 'tote', hides }))).toEqual(['too-hard']);
  });

  test('when the order asks for a tannage or a colour, another one does not fit; a table only says what is usual', () => {
    const hides = [hideOf({ tannage: 'oil', colour: 'Natural' })];
    expect(reasonsOf(fitOf({ leather: { tannage: 'vegetable' }, hides }))).toEqual(['tannage-not-asked']);
    expect(reasonsOf(fitOf({ leather: { colour: 'black' }, hides }))).toEqual(['other-colour']);
    expect(reasonsOf(fitOf({ leather: { colour: 'natural' }, hides }))).toEqual([]);
    const usual = fitOf({ goods: 'desk inlay', hides: [hideOf({ tannage: 'oil', temper: 'soft' })] });
    expect(remarksOf(usual)).toContain('tannage-unusual');
  });

  test('when a strap is to come from a belly, a piece from a smaller hide, or from a hide that was cut, it does not fit', () => {
    const strap = { part: 'strap' as const };
    expect(
      reasonsOf(fitOf({ piece: strap, hides: [hideOf({ thickness: mm(3, 4) }, { cut: 'belly' })] })),
    ).toEqual(['no-such-zone']);
    const outline = polygonCurve([
      [0, 0],
      [90, 0],
      [0, 90],
    ]);
    expect(reasonsOf(fitOf({ hides: [hideOf({}, { outline })] }))).toEqual(['too-small']);
    expect(reasonsOf(fitOf({ hides: [hideOf({}, { state: 'cut' })] }))).toEqual(['cut-already']);
  });

  test('when two hides have one id, they are refused', () => {
    expect(() => suitOf({ hides: [hideOf({}), hideOf({})] })).toThrow(/have the same id "hide 1"/);
  });
});

describe('what is done to a piece', () => {
  // A teaching article on leather goods: skived 12 mm wide to 0.5 mm before it is turned.
  test('when edges are turned, they are skived 12 mm wide to 0.5 mm', () => {
    const fit = fitOf({
      goods: 'shoe upper',
      hides: [hideOf({ tannage: 'chrome', temper: 'medium', thickness: mm(1.2, 1.4) })],
    });
    expect(fit.work).toEqual([{ kind: 'turned edges', widthMm: 12, toMm: 0.5 }]);
  });

  // From memory: about half over the buckle's fold, running out over 30–50 mm.
  test('when a strap folds around a buckle, it is thinned to half there', () => {
    const strap: OrderPiece['from'] = {
      kind: 'strap',
      strap: {
        widthMm: 30,
        lengthMm: 400,
        holeEnd: 'pointed',
        buckleEnd: 'square',
        slot: { widthMm: 5, lengthMm: 25, fromEndMm: 50 },
      },
    };
    const fit = fitOf({
      piece: { part: 'strap', from: strap },
      hides: [hideOf({ thickness: mm(3.6, 3.6) })],
    });
    expect(fit.work).toEqual([{ kind: 'buckle fold', toMm: 1.8, taper: [30, 50] }]);
  });
});

describe('zones and stacks', () => {
  // A sheath maker: from the shoulder, not from the belly.
  test('when a sheath is moulded of a belly, it is told that it is usually not', () => {
    const belly = [hideOf({ thickness: mm(2.4, 3) }, { cut: 'belly' })];
    const fit = fitOf({ goods: 'knife sheath', piece: { part: 'moulded' }, hides: belly });
    expect([fit.kind, remarksOf(fit)]).toEqual(['fits', ['need-with-care', 'zone-unusual']]);
  });

  // Practice of a wallet maker's guide; the figures are from memory.
  test('when a wallet has several pockets, their covered bottoms are skived to 0.3–0.4 mm', () => {
    const hides = [hideOf({ temper: 'medium', thickness: mm(0.6, 0.7) })];
    const pocket = { part: 'pocket' as const };
    const stack = fitOf({ goods: 'wallet', piece: { ...pocket, count: 3 }, hides });
    expect(stack.work).toEqual([{ kind: 'covered bottoms', to: mm(0.3, 0.4) }]);
    expect(fitOf({ goods: 'wallet', piece: pocket, hides }).work).toEqual([]);
    expect(fitOf({ goods: 'saddlebag', piece: { ...pocket, count: 3 }, hides }).work).toEqual([]);
  });
});

describe('what a master would say', () => {
  const thickness = mm(2, 2.4);

  test('when goods are in no table, the nearest row and the way to add one are told, and it goes on', () => {
    const bench = { goods: 'sadlebag', hides: [hideOf({ thickness })] };
    expect(suitOf(bench).isSuited).toBe(true);
    expect(sentences(bench)[0]).toMatch(/no row "sadlebag" .*did you mean "saddlebag".*workshop\.yaml/);
  });

  test('when an article says itself what it wants, its goods need no row', () => {
    const bench = { goods: 'sadlebag', article: { wants: { thickness } }, hides: [hideOf({ thickness })] };
    expect(codes(bench)).toEqual([]);
  });

  test('when an order asks for what such goods never have, it is told', () => {
    const bench = {
      goods: 'bag lining',
      piece: { part: 'lining' as const, thickness: mm(3.2, 3.6) },
      hides: [hideOf({ thickness: mm(3.3, 3.5), temper: 'soft' })],
    };
    expect(sentences(bench)).toContainEqual(
      expect.stringMatching(/"part" of job is 3\.2–3\.6 mm, but bag lining is usually of 0\.6–0\.8 mm/),
    );
  });

  test.each([
    ['bonded leather', undefined, 'suit-bonded'],
    ['vegetable', 'genuine leather', 'suit-genuine'],
    ['moon tanned', undefined, 'suit-tannage-not-in-table'],
  ])('when a hide is sold as %s, %s, it is told', (tannage, finish, code) => {
    const hide = hideOf({ tannage, thickness, ...(finish === undefined ? {} : { finish }) });
    expect(codes({ article: { wants: {} }, hides: [hide] })).toEqual([code]);
  });

  test('when a leather has hides of two lots, it is told; of one lot it is not', () => {
    const hide = (id: string, lot: string): Hide => ({ ...hideOf({ thickness }, { lot }), id });
    const wants = { wants: {} };
    expect(codes({ article: wants, hides: [hide('a', 'L1'), hide('b', 'L2')] })).toEqual([
      'suit-lots-differ',
    ]);
    expect(codes({ article: wants, hides: [hide('a', 'L1'), hide('b', 'L1')] })).toEqual([]);
  });

  test('when finished leather is to be dyed, it is told; a pigment may cover it', () => {
    const hides = [hideOf({ thickness, finish: 'waxed' })];
    const dyed = (dyeBase: string) => ({
      article: { wants: {} },
      hides,
      leather: { preparation: { name: 'p', dye: 'chestnut', dyeBase, bothSides: false } },
    });
    expect(codes(dyed('spirit'))).toEqual(['suit-dye-over-finish']);
    expect(codes(dyed('pigment'))).toEqual([]);
  });

  // A wallet factory's page: below 0.8 mm single edges are hard to finish, below 0.7 mm strength falls.
  test.each([
    [0.6, ['suit-edge-thin', 'suit-thin-for-load']],
    [0.75, ['suit-edge-thin']],
    [0.8, []],
  ])('when a loaded piece with a burnished edge is %s mm thick, it is told', (thick, wanted) => {
    const bench = {
      article: { wants: { needs: ['burnished edges' as const] } },
      piece: { bearsLoad: true, thickness: mm(0.5, 1) },
      hides: [hideOf({ temper: 'soft', thickness: mm(thick, thick) })],
    };
    expect(codes(bench)).toEqual(wanted);
  });

  test('when thin firm leather is dyed, it warps; when thick leather is to turn, it will not', () => {
    const preparation = { name: 'p', dye: 'chestnut', dyeBase: 'spirit', bothSides: false };
    const thin = {
      article: { wants: {} },
      leather: { preparation },
      hides: [hideOf({ thickness: mm(0.9, 0.9) })],
    };
    expect(codes(thin)).toEqual(['suit-thin-warps']);
    const needs = ['turned edges' as const];
    const thick = { article: { wants: { needs } }, hides: [hideOf({ thickness: mm(2.6, 2.6) })] };
    expect(codes(thick)).toEqual(['suit-too-thick-to-turn']);
  });

  test('when an order lets a strap come from the belly, or a side shows no zones, it is told', () => {
    const strap = { part: 'strap' as const, zones: ['bend' as const, 'belly' as const] };
    const bench = { article: { wants: {} }, piece: strap, hides: [hideOf({ thickness: mm(3, 4) })] };
    expect(codes(bench)).toEqual(['suit-strap-from-belly']);
    const side = [hideOf({ thickness: mm(3, 4) }, { cut: 'side' })];
    expect(codes({ article: { wants: {} }, piece: { part: 'strap' }, hides: side })).toEqual([
      'suit-zones-not-drawn',
    ]);
  });

  test('when no hide fits, the answer is no, and why is told', () => {
    const bench = { piece: { thickness: mm(5, 5.5) }, hides: [hideOf({ thickness })] };
    expect(suitOf(bench).isSuited).toBe(false);
    expect(sentences(bench)[0]).toBe(
      'No hide on hand fits "part" of job (leather "body"): hide 1 is too thin (2.0–2.4 mm where 5.0–5.5 mm is wanted).',
    );
  });

  test('when only a hide of no leather fits, it is named', () => {
    const good = { ...hideOf({ thickness: mm(5, 5.4) }), id: 'other' };
    const bench = {
      piece: { thickness: mm(5, 5.5) },
      leather: { hides: ['hide-1.json'] },
      hides: [hideOf({ thickness }), good],
    };
    expect(suitOf(bench).isSuited).toBe(true);
    expect(sentences(bench)[0]).toContain('but other does; list it under that leather');
  });
});
