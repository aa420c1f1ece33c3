import { curveFromPolyline } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { Order, OrderPiece } from '../model/order.js';
import type { Piece } from '../model/piece.js';
import { resolveOrder } from '../order/resolve-order.js';
import { resolvePieces } from '../pieces/resolve-pieces.js';
import { plainArticle, plainOrder, plainOrderPiece, plainPiece, rectangleCurve } from '../testing/plain.js';
import { holePlaces, planStitches } from './stitch-plan.js';
import type { StitchPlan } from './stitch-plan.js';

const line = (...points: readonly (readonly [number, number])[]): Curve =>
  curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    false,
  );

/** A 300 x 120 panel and others, each with its stitch lines by name. */
function panel(name: string, lines: Readonly<Record<string, Curve>>, heightMm = 120): Piece {
  const stitchLines = Object.entries(lines).map(([lineName, curve]) => ({ name: lineName, curve }));
  return plainPiece(name, rectangleCurve(0, 0, 300, heightMm), { stitchLines });
}

const FRONT = panel('front', { top: line([50, 10], [250, 10]), foot: line([10, 110], [290, 110]) });
const GUSSET = panel('gusset', { edge: line([10, 10], [211, 10]), tip: line([10, 60], [90, 60]) });
const STRAP = panel('strap', { across: line([150, 2], [150, 23]), along: line([20, 5], [120, 5]) }, 25);

function fromPattern(name: string, more: Partial<OrderPiece> = {}): OrderPiece {
  return plainOrderPiece(name, {
    from: { kind: 'pattern', file: 'p.svg', piece: name },
    thickness: { minMm: 1.5, maxMm: 2 },
    ...more,
  });
}

function plan(pieces: readonly OrderPiece[], more: Partial<Order> = {}, sets = 1): StitchPlan {
  const article = plainArticle('bag', pieces, {
    sets,
    stitch: { pitchMm: 4, with: 'awl' },
    threads: [{ name: 'linen', thicknessMm: 0.8 }],
  });
  const order = resolveOrder(plainOrder([article], more));
  const read = () => ({
    pieces: [FRONT, GUSSET, STRAP].map((piece) => ({ piece, source: { file: 'p.svg' } })),
  });
  return planStitches({ order, pieces: resolvePieces(order, read).pieces });
}

const codes = ({ diagnostics }: StitchPlan): string[] => diagnostics.map(({ code }) => code);
const seamNamed = ({ seams }: StitchPlan, part: string) => seams.find(({ name }) => name.includes(part))!;

describe('the stitches of an order', () => {
  test('when lines are sewn together, they have as many holes and are sewn once, through both', () => {
    const seams = [{ line: 'edge', to: { piece: 'front', line: 'top' } }];
    const found = plan([fromPattern('front'), fromPattern('gusset', { layers: 2, seams })]);
    const seam = seamNamed(found, 'gusset/edge');
    expect(seam.name).toBe('front/top + gusset/edge');
    expect(seam.lines.map(({ marks }) => marks.holes.length)).toEqual([51, 51]);
    expect(seam).toMatchObject({ holes: 51, stackMm: 6, perSet: 1, thread: 'linen', tailsMm: 300 });
    expect(seam.differenceMm).toBeCloseTo(1, 3);
    // 2 L (1 + T / p) + tails
    expect(seam.threadMm).toBeCloseTo(2 * 200 * (1 + 6 / 4) + 300, 3);
    expect(codes(found)).toEqual([]);
  });

  test('when the lines differ by more than the stated share, it is told by how much', () => {
    const seams = [{ line: 'edge', to: { piece: 'front', line: 'foot' } }];
    const found = plan([fromPattern('front'), fromPattern('gusset', { seams })]);
    expect(seamNamed(found, 'front/foot').lines.map(({ marks }) => marks.holes.length)).toEqual([71, 71]);
    expect(found.diagnostics).toContainEqual(
      expect.objectContaining({
        code: 'stitch-gathered',
        severity: 'warning',
        params: {
          article: 'bag',
          long: 'front/foot',
          short: 'gusset/edge',
          differenceMm: '79',
          percent: '39.3',
          allowedPercent: '2',
        },
      }),
    );
    const eased = [fromPattern('front', { stitch: { gatherShare: 0.5 } }), fromPattern('gusset', { seams })];
    expect(codes(plan(eased))).toEqual([]);
  });

  test('when a line is sewn to a part of another, it takes that pitch, and the other is sewn where it is free', () => {
    const seams = [{ line: 'tip', to: { piece: 'front', line: 'foot' }, covers: 'part' as const }];
    const found = plan([fromPattern('front'), fromPattern('gusset', { count: 2, mirrored: 1, seams })]);
    const host = found.seams.find(({ name }) => name === 'front/foot')!;
    const part = seamNamed(found, 'gusset/tip on front/foot');
    expect(part).toMatchObject({ holes: 21, perSet: 2, stackMm: 4 });
    expect(part.pitchMm).toBeCloseTo(host.pitchMm, 9);
    expect(host.threadMm).toBeCloseTo(2 * (280 - 2 * 80) * (1 + 2 / 4) + 300, 3);
    expect(codes(found)).toEqual([]);
  });

  test('when three layers meet in one line, they have one number of holes and one thread', () => {
    const toTop = [{ line: 'edge', to: { piece: 'front', line: 'top' } }];
    const pieces = [
      fromPattern('front'),
      fromPattern('gusset', { seams: toTop }),
      fromPattern('lining', { from: { kind: 'pattern', file: 'p.svg', piece: 'gusset' }, seams: toTop }),
    ];
    const seam = seamNamed(plan(pieces), 'lining/edge');
    expect(seam.lines).toHaveLength(3);
    expect(new Set(seam.lines.map(({ marks }) => marks.holes.length)).size).toBe(1);
    expect(seam).toMatchObject({ stackMm: 6, perSet: 1 });
  });

  test('when two copies go to two lines of one piece, each seam goes through two layers and a set has two', () => {
    const seams = [
      { line: 'top', to: { piece: 'gusset', line: 'edge' } },
      { line: 'foot', to: { piece: 'gusset', line: 'edge' } },
    ];
    const found = plan([fromPattern('front', { seams }), fromPattern('gusset', { count: 2, mirrored: 1 })]);
    expect(seamNamed(found, 'gusset/edge')).toMatchObject({ perSet: 2, stackMm: 4 });
  });

  test('when a piece is sewn to itself as a tube is, the seam goes through it twice, once in a set', () => {
    const seams = [{ line: 'top', to: { piece: 'front', line: 'foot' } }];
    expect(seamNamed(plan([fromPattern('front', { seams })]), 'front/foot')).toMatchObject({
      perSet: 1,
      stackMm: 4,
    });
  });

  test('when sets are made, the thread of all seams is summed, and too little of it is told', () => {
    const threads = [{ name: 'linen', lengthMm: 5000 }];
    const found = plan([fromPattern('front')], { threads }, 3);
    const perSet = found.seams.reduce((sum, seam) => sum + seam.perSet * seam.threadMm!, 0);
    expect(found.threads).toEqual([{ thread: 'linen', seams: 6, lengthMm: 3 * perSet, statedMm: 5000 }]);
    expect(codes(found)).toEqual(['stitch-thread-short']);
  });

  test('when a thickness is not known, thread is not guessed', () => {
    const { thickness: _, ...bare } = fromPattern('front');
    const [seam] = plan([bare]).seams;
    expect(seam).not.toHaveProperty('threadMm');
    expect(seamNamed(plan([{ ...bare, stitch: { stackMm: 5 } }]), 'front/top').threadMm).toBeGreaterThan(0);
  });

  test('when a line crosses a strap straight, the saddlers’ warning is given; along it, none', () => {
    // "Never stitch straight across a strap": UK saddler's rules [S112].
    const strap = fromPattern('strap', { part: 'strap' });
    const found = plan([strap]);
    expect(found.diagnostics.filter(({ code }) => code === 'stitch-across-strap')).toEqual([
      expect.objectContaining({ params: { article: 'bag', piece: 'strap', line: 'across' } }),
    ]);
    expect(codes(plan([fromPattern('strap', { part: 'tab' })]))).not.toContain('stitch-across-strap');
  });

  test('when holes lie nearer to the edge than one layer is thick, they are counted', () => {
    // From memory: not below one layer's thickness.
    const strap = fromPattern('strap', {
      thickness: { minMm: 3, maxMm: 3 },
      stitch: { leaveOut: ['along'] },
    });
    const found = plan([strap]);
    expect(found.diagnostics[0]).toMatchObject({
      code: 'stitch-near-edge',
      params: { line: 'across', count: 2, distanceMm: '2', thicknessMm: '3' },
    });
    const kept = { ...strap, stitch: { leaveOut: ['along'], endGapMm: 1 } };
    expect(codes(plan([kept]))).not.toContain('stitch-near-edge');
  });

  test('when a line is too short for its pitch, it is refused by name', () => {
    const coarse = fromPattern('strap', { stitch: { pitchMm: 25 } });
    expect(() => plan([coarse])).toThrow(
      /"across" on "strap" of bag is 21 mm long, shorter than one pitch of 25 mm/,
    );
  });

  test('when pieces of one seam ask for different pitches, it is told which counts', () => {
    const seams = [{ line: 'edge', to: { piece: 'front', line: 'top' } }];
    const gusset = fromPattern('gusset', { seams, stitch: { pitchMm: 3 } });
    const found = plan([fromPattern('front'), gusset]);
    expect(codes(found)).toContain('stitch-rules-differ');
    expect(seamNamed(found, 'gusset/edge').pitchMm).toBeCloseTo(4, 6);
  });

  test('when nobody gives a pitch, there are no holes and nothing is said', () => {
    const order = resolveOrder(plainOrder([plainArticle('bag', [fromPattern('front')])]));
    const read = () => ({ pieces: [{ piece: FRONT, source: { file: 'p.svg' } }] });
    const { pieces } = resolvePieces(order, read);
    expect(planStitches({ order, pieces })).toEqual({ lines: [], seams: [], threads: [], diagnostics: [] });
  });

  test('when one article has a pitch and another none, the lines without holes are named', () => {
    const read = () => ({ pieces: [{ piece: FRONT, source: { file: 'p.svg' } }] });
    const articles = [
      plainArticle('bag', [fromPattern('front')], { stitch: { pitchMm: 4 } }),
      plainArticle('purse', [fromPattern('front')]),
    ];
    const order = resolveOrder(plainOrder(articles));
    const found = planStitches({ order, pieces: resolvePieces(order, read).pieces });
    expect(found.lines.every(({ article }) => article === 'bag')).toBe(true);
    expect(found.diagnostics).toEqual([
      {
        code: 'stitch-without-pitch',
        severity: 'note',
        params: { count: 2, lines: 'front/top, front/foot' },
      },
    ]);
  });

  test('when holes are drawn, they lie on the line in the frame of the piece that is laid', () => {
    const found = plan([fromPattern('front', { stitch: { leaveOut: ['foot'] } })]);
    const [{ at, ...whose }] = holePlaces(found) as [ReturnType<typeof holePlaces>[number]];
    expect(whose).toEqual({ article: 'bag', piece: 'front' });
    expect(at).toHaveLength(51);
    // The panel's own frame has its origin in the middle of 300 x 120.
    expect(at[0]).toEqual({ x: -100, y: -50 });
    expect(at[50]!.x).toBeCloseTo(100, 9);
  });

  test('when a line to be left out is not there, it is told, with the name that is like it', () => {
    const found = plan([fromPattern('front', { stitch: { leaveOut: ['tops'] } })]);
    expect(found.diagnostics).toEqual([
      {
        code: 'stitch-left-out-nowhere',
        severity: 'warning',
        params: { article: 'bag', line: 'tops', near: 'top' },
      },
    ]);
  });
});

describe('who says how it is sewn', () => {
  const ruleOf = (piece: OrderPiece, workshop: Parameters<typeof resolveOrder>[1]) =>
    resolveOrder(plainOrder([plainArticle('bag', [piece], { stitch: { iron: 3.4 } })]), workshop).articles[0]!
      .pieces[0]!.stitch;
  const parts: readonly [] = [];

  test('when piece, article and workshop speak, the nearest wins, and figures that are left open are filled in', () => {
    const stitch = { pitchMm: 5, tailsMm: 400 };
    expect(ruleOf(fromPattern('front'), { parts, stitch })).toEqual({
      pitchMm: 3.4,
      with: 'iron',
      gives: 'both ends',
      adjustShare: 0.1,
      cornerDeg: 30,
      endGapMm: 0,
      gatherShare: 0.02,
      tailsMm: 400,
      leaveOut: [],
    });
    expect(ruleOf(fromPattern('front', { stitch: { pitchMm: 4 } }), { parts, stitch })?.pitchMm).toBe(4);
  });

  test('when the workshop has measured its iron, its figure counts', () => {
    const irons = [{ name: '3.4 mm', pitchMm: 3.38, source: 'own' }];
    expect(ruleOf(fromPattern('front'), { parts, irons })?.pitchMm).toBe(3.38);
  });

  test('when an iron is not in the table, those that are there are named', () => {
    expect(() => ruleOf(fromPattern('front', { stitch: { iron: 3.5 } }), undefined)).toThrow(
      /There is no iron 3\.5 mm in the workshop's table \(5\.4 mm, .*\)/,
    );
    expect(() => ruleOf(fromPattern('front', { stitch: { iron: 'fine' } }), undefined)).toThrow(
      expect.objectContaining({ code: 'no-such-iron' }),
    );
  });

  test('when a thread is named that nobody lists, it is refused', () => {
    const order = plainOrder(
      [plainArticle('bag', [fromPattern('front', { stitch: { thread: 'linnen' } })])],
      {
        threads: [{ name: 'linen' }],
      },
    );
    expect(() => resolveOrder(order)).toThrow(/did you mean "linen"/);
  });
});
