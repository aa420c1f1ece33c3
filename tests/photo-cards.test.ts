import { arcCentre, curveArea, curveSteps, flattenCurve, pointToRing, regionArea } from '@hidebound/geometry';
import type { Curve, Point, Ring } from '@hidebound/geometry';
import { IntakeError, newFindings, readPatternSvg } from '@hidebound/intake';
import { loadVision, readCards, scanPicture } from '@hidebound/intake/photo';
import type { CardOptions } from '@hidebound/intake/photo';
import type { PatternPiece, Piece } from '@hidebound/leather';
import { writePatternSvg } from '@hidebound/render';
import { describe, expect, test } from 'vitest';
import { drawScan } from './support/card-scan.js';
import type { ScanSetting } from './support/card-scan.js';

// True shapes in mm, drawn by the reference renderer resvg at 200 dpi, then blurred, textured and made noisy: what is
// read is held against the shapes themselves. All cards are invented.

const PAGE = { widthMm: 148, heightMm: 105, dpi: 200 } as const;
const SHADOW =
  '<defs><filter id="soft" x="-20%" y="-20%" width="140%" height="140%"><feGaussianBlur stdDeviation="0.7"/></filter></defs>';

interface Look {
  readonly card: string;
  readonly ground: string;
  readonly ink: string;
}

const LOOKS: Readonly<Record<string, Look>> = {
  'white on dark': { card: '#efece4', ground: '#26282b', ink: '#222222' },
  'kraft on white': { card: '#be966e', ground: '#f4f4f2', ink: '#333333' },
  'dark on white': { card: '#4a4a4c', ground: '#f4f4f2', ink: '#dddddd' },
  'kraft on dark': { card: '#be966e', ground: '#26282b', ink: '#222222' },
};

const RECTANGLE = 'M20 10H64A8 8 0 0 1 72 18V42A8 8 0 0 1 64 50H20A8 8 0 0 1 12 42V18A8 8 0 0 1 20 10Z';
const KITE = 'M85 15L135 18L128 60L90 55Z';
const STRAP = 'M20 70H70A10 10 0 0 1 70 90H20A10 10 0 0 1 20 70Z';

function drawn(marks: string, { card, ground }: Look): string {
  const shapes = [RECTANGLE, KITE, STRAP].map((path) => `<path d="${path}"/>`).join('');
  return (
    `${SHADOW}<g transform="translate(1.2 1.4)" filter="url(#soft)" opacity="0.6">${shapes}</g>` +
    `<g fill="${card}">${shapes}</g><g fill="${ground}"><circle cx="20" cy="18" r="2"/><circle cx="64" cy="42" r="1.25"/>` +
    `<rect x="30" y="22" width="24" height="14"/></g>${marks}`
  );
}

async function read(setting: ScanSetting, options: CardOptions = {}) {
  const { vision } = await loadVision();
  const findings = newFindings('cards.png');
  const picture = scanPicture(drawScan(setting), setting.dpi);
  const found = readCards(picture, options, vision, findings);
  return {
    found,
    pieces: found.map(({ piece }) => piece),
    codes: findings.diagnostics.map(({ code }) => code),
  };
}

/** The true outline, by the pattern reader that other tests hold against the renderer. */
function truth(path: string): Curve {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="148mm" height="105mm" viewBox="0 0 148 105"><path fill="none" stroke="#000" d="${path}"/></svg>`;
  return readPatternSvg(new TextEncoder().encode(svg), { file: 'truth.svg' }).pieces[0]!.piece.cut;
}

const ringOf = (curve: Curve): Ring => flattenCurve(curve, 0.005).slice(0, -1);

/** The farthest that either outline lies from the other, mm. */
function apart(a: Curve, b: Curve): number {
  const [p, q] = [ringOf(a), ringOf(b)];
  return Math.max(...p.map((at) => pointToRing(at, q)), ...q.map((at) => pointToRing(at, p)));
}

const kinds = (curve: Curve) => curveSteps(curve).map(({ segment }) => segment.kind);
const count = (curve: Curve, kind: string) => kinds(curve).filter((one) => one === kind).length;

function radii(curve: Curve): number[] {
  return curveSteps(curve).flatMap(({ from, segment }) => {
    const circle = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
    return circle === 'straight' ? [] : [circle.radius];
  });
}

function named(pieces: readonly Piece[], i: number): Piece {
  const piece = pieces[i - 1]!;
  expect(piece.name).toBe(`piece ${i}`);
  return piece;
}

const away = (a: Point, x: number, y: number) => Math.hypot(a.x - x, a.y - y);

describe.each(Object.entries(LOOKS))('cards with a shadow, %s', (_, look) => {
  test('when they are read, outlines, holes, radii and areas are those that were drawn', async () => {
    const { pieces } = await read({
      ...PAGE,
      ground: look.ground,
      drawn: drawn('', look),
      seed: 5,
      lightDrop: 0.1,
    });
    expect(pieces).toHaveLength(3);
    const [rectangle, kite, strap] = [named(pieces, 1), named(pieces, 2), named(pieces, 3)];
    const paths = [RECTANGLE, KITE, STRAP];
    [rectangle, kite, strap].forEach(({ cut }, i) => {
      const true_ = truth(paths[i]!);
      expect(apart(cut, true_)).toBeLessThan(0.3);
      expect(Math.abs(curveArea(cut) / curveArea(true_) - 1)).toBeLessThan(0.005);
    });
    expect([count(rectangle.cut, 'line'), count(rectangle.cut, 'arc')]).toEqual([4, 4]);
    expect(kinds(kite.cut)).toEqual(['line', 'line', 'line', 'line']);
    expect([count(strap.cut, 'line'), count(strap.cut, 'arc')]).toEqual([2, 2]);
    for (const radius of radii(rectangle.cut)) expect(Math.abs(radius - 8)).toBeLessThan(0.2);
    for (const radius of radii(strap.cut)) expect(Math.abs(radius - 10)).toBeLessThan(0.2);
    const [large, small] = [...rectangle.punches].sort((a, b) => b.diameterMm - a.diameterMm);
    expect(rectangle.punches).toHaveLength(2);
    expect(Math.abs(large!.diameterMm - 4)).toBeLessThan(0.15);
    expect(Math.abs(small!.diameterMm - 2.5)).toBeLessThan(0.15);
    expect(away(large!.at, 20, 18)).toBeLessThan(0.1);
    expect(away(small!.at, 64, 42)).toBeLessThan(0.1);
    expect(rectangle.cutOuts).toHaveLength(1);
    expect(kinds(rectangle.cutOuts[0]!)).toEqual(['line', 'line', 'line', 'line']);
    expect(curveArea(rectangle.cutOuts[0]!)).toBeLessThan(-24 * 14 * 0.98);
    expect(curveArea(rectangle.cutOuts[0]!)).toBeGreaterThan(-24 * 14 * 1.02);
    expect(kite.punches.length + kite.cutOuts.length + strap.punches.length + strap.cutOuts.length).toBe(0);
  });

  test('when lines are drawn on them, they are folds, stitch lines, notches and the direction', async () => {
    const line = (d: string, more = '') =>
      `<path d="${d}" fill="none" stroke="${look.ink}" stroke-width="0.45" ${more}/>`;
    const marks =
      line('M15 46L69 46') +
      line('M22 80H68', 'stroke-dasharray="3 2"') +
      line('M95 25L125 27', 'stroke-dasharray="0.01 2.5" stroke-linecap="round" style="stroke-width:0.9"') +
      line('M40 70V74') +
      line('M105 52V34M102 38L105 34L108 38');
    const { pieces, codes } = await read({
      ...PAGE,
      ground: look.ground,
      drawn: drawn(marks, look),
      seed: 6,
    });
    const [rectangle, kite, strap] = [named(pieces, 1), named(pieces, 2), named(pieces, 3)];
    expect(rectangle.foldLines).toHaveLength(1);
    expect(rectangle.stitchLines).toHaveLength(0);
    for (const { x, y } of flattenCurve(rectangle.foldLines[0]!.curve, 0.1)) {
      expect(Math.abs(y - 46)).toBeLessThan(0.3);
      expect(x).toBeGreaterThan(14);
      expect(x).toBeLessThan(70);
    }
    expect(strap.stitchLines).toHaveLength(1);
    const [stitch] = strap.stitchLines;
    expect(away(stitch!.curve.start, 22, 80) < 0.5 || away(stitch!.curve.start, 68, 80) < 1.5).toBe(true);
    expect(strap.notches).toHaveLength(1);
    expect(away(strap.notches[0]!.at, 40, 70)).toBeLessThan(0.3);
    expect(Math.abs(strap.notches[0]!.depthMm - 4)).toBeLessThan(0.5);
    expect(kite.stitchLines).toHaveLength(1);
    expect(kite.direction).toBeDefined();
    expect(away(kite.direction!.from, 105, 52)).toBeLessThan(0.6);
    expect(away(kite.direction!.to, 105, 34)).toBeLessThan(0.8);
    expect(kite.foldLines).toHaveLength(0);
    expect(codes).toContain('card-lines-guessed');
    expect(codes).toContain('card-direction-guessed');
    expect(codes).toContain('card-notches-guessed');
  });
});

describe('what is said of cards', () => {
  const look = LOOKS['white on dark']!;
  const plain: ScanSetting = { ...PAGE, ground: look.ground, drawn: drawn('', look), seed: 8 };

  test('when names are given, they count in reading order; the user may say what lines mean', async () => {
    const marks = `<path d="M15 46L69 46" stroke="${look.ink}" stroke-width="0.45"/>`;
    const setting = { ...plain, drawn: drawn(marks, look) };
    const { pieces, codes } = await read(setting, { names: ['front', 'flap'], solid: 'stitch' });
    expect(pieces.map(({ name }) => name)).toEqual(['front', 'flap', 'piece 3']);
    expect(pieces[0]!.stitchLines).toHaveLength(1);
    expect(pieces[0]!.foldLines).toHaveLength(0);
    expect(codes).not.toContain('card-lines-guessed');
  });

  test('when a card leaves the picture or lies under a sheet, it is told and left out', async () => {
    const cut = {
      ...plain,
      drawn: `${plain.drawn}<rect x="120" y="80" width="60" height="15" fill="${look.card}"/>`,
    };
    const { pieces, codes } = await read(cut);
    expect(pieces).toHaveLength(3);
    expect(codes).toContain('card-cut-off');
    const paper: Ring = [
      { x: 80, y: 5 },
      { x: 110, y: 5 },
      { x: 110, y: 60 },
      { x: 80, y: 60 },
    ];
    const under = await read(plain, { papers: [paper] });
    expect(under.pieces).toHaveLength(2);
    expect(under.codes).toContain('card-cut-off');
  });

  test('when nothing lies there, that is said', async () => {
    const reason = await read({ ...plain, drawn: '' }).catch((error: unknown) => error);
    expect(reason).toBeInstanceOf(IntakeError);
    expect((reason as IntakeError).code).toBe('no-cards-found');
  });

  test('when the pieces are saved as a pattern, they are read back the same', async () => {
    const { found } = await read(plain);
    const svg = writePatternSvg(found, { title: 'cards' });
    const back = readPatternSvg(new TextEncoder().encode(svg), { file: 'cards.svg' }).pieces;
    const shapes = (all: readonly PatternPiece[]) =>
      all.map(({ piece }) => [piece.name, piece.cut, piece.punches]);
    expect(shapes(back)).toEqual(shapes(found));
  });

  test('when the same scan is read twice, the pieces are the same to the bit', async () => {
    const [a, b] = [await read(plain), await read(plain)];
    expect(JSON.stringify(a.pieces)).toBe(JSON.stringify(b.pieces));
    expect(regionArea({ outer: ringOf(a.pieces[0]!.cut), openings: [] })).toBeGreaterThan(0);
  });
});
