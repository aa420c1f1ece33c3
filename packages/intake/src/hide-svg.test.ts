import { readFileSync } from 'node:fs';
import { parseHide, writeHide } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { IntakeError } from './error.js';
import { readHideSvg } from './hide-svg.js';

const FILE = new URL('../../../fixtures/traced/side-with-marks.svg', import.meta.url);
const page = (body: string, data = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="600mm" viewBox="0 0 900 600" fill="none" stroke="#000" ${data}>${body}</svg>`;
const OUTLINE = '<path id="outline" d="M0 0H800V500H0z"/>';
const read = (body: string, data = '') => readHideSvg(page(body, data), { file: 'a.svg' });

describe('a traced side', () => {
  const { hide, diagnostics } = readHideSvg(readFileSync(FILE), { file: 'side-with-marks.svg' });

  test('when it is read, nothing is left to warn of', () => {
    expect(diagnostics.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  test('when the root bears data, the hide has it', () => {
    expect(hide).toMatchObject({
      id: 'side-07',
      cut: 'side',
      lot: 'spring 3',
      storedAt: 'rack 2',
      leather: { tannage: 'veg-tan', colour: 'natural', thickness: { minMm: 3.2, maxMm: 3.6 } },
      price: { amount: '9.80', currency: 'EUR', per: 'ft2', of: 'invoiced' },
    });
    // 1 ft is 304.8 mm by international agreement (1959).
    expect(hide.area.invoicedMm2).toBeCloseTo(20.5 * 304.8 * 304.8, 0);
  });

  test('when layers and labels name the marks, each is what it says', () => {
    expect(hide.openings).toHaveLength(1);
    expect(hide.backbone).toEqual([
      { x: 60, y: 80 },
      { x: 2180, y: 60 },
    ]);
    expect(hide.tightness).toHaveLength(2);
    expect(hide.zones.map(({ kind, effect }) => [kind, effect])).toEqual([
      ['belly', undefined],
      ['neck', { looks: 'C' }],
    ]);
    expect(hide.flaws.map(({ kind, shape, effect }) => [kind, shape.kind, effect])).toEqual([
      ['scar', 'line', undefined],
      ['brand', 'area', { isVoid: true }],
      ['bite', 'point', undefined],
      ['bite', 'point', { looks: 'A' }],
      ['stain', 'area', { looks: 'C' }],
      ['cut', 'line', undefined],
      ['loose grain', 'area', { strength: 'weak' }],
    ]);
    expect(hide.flaws[4]!.side).toBe('flesh');
    expect(hide.flaws[5]!.depth).toBe(0.5);
    expect(hide.flaws[0]!.shape).toMatchObject({ widthMm: 4 });
    expect(hide.unsureEdges).toMatchObject([{ offByMm: 15 }]);
    expect(hide.leather.readings).toEqual([{ at: { x: 1000, y: 150 }, mm: 3.4 }]);
  });

  test('when it is written as a hide file, that file is read again', () => {
    const text = writeHide(hide);
    expect(writeHide(parseHide(text, { file: 'side-07.hide.json' }))).toBe(text);
  });
});

describe('what a traced hide leaves open', () => {
  test('when nothing is named outline, the largest closed line is taken, and said', () => {
    const { hide, diagnostics } = read(
      '<path d="M0 0H800V500H0z"/><circle id="scar-1" cx="50" cy="50" r="5"/>',
    );
    expect(hide.flaws).toHaveLength(1);
    expect(diagnostics.map(({ code }) => code)).toContain('outline-guessed');
  });

  test('when a flaw says nothing of itself, nothing is cut from there', () => {
    const { hide, diagnostics } = read(`${OUTLINE}<g id="flaws"><circle cx="50" cy="50" r="5"/></g>`);
    expect(hide.flaws[0]!.effect).toEqual({ looks: 'C', strength: 'weak', isVoid: true });
    expect(diagnostics.map(({ code }) => code)).toContain('flaw-without-kind');
  });

  test('when the outline is a rectangle without a backbone, it is taken for a panel', () => {
    expect(read(OUTLINE).hide.cut).toBe('panel');
  });

  test('when a line has no name at all, it is left out with a warning', () => {
    const { diagnostics } = read(`${OUTLINE}<path d="M100 100h50"/>`);
    expect(diagnostics.map(({ code }) => code)).toContain('unnamed-marks');
  });

  test('when data can not be read, it is left out with a warning', () => {
    const { hide, diagnostics } = read(OUTLINE, 'data-thickness="thick"');
    expect(hide.leather.thickness).toBeUndefined();
    expect(diagnostics.map(({ code }) => code)).toContain('bad-hide-data');
  });
});

describe('a hide that is none', () => {
  test.each([
    ['has no closed line', '<path d="M0 0H800"/>', 'no-outline'],
    ['has an outline that crosses itself', '<path id="outline" d="M0 0L800 500V0L0 400z"/>', 'bad-hide'],
    ['has an outline without area', '<path id="outline" d="M0 0H800H0z"/>', 'bad-hide'],
    ['has a flaw outside of it', `${OUTLINE}<circle id="scar" cx="850" cy="50" r="5"/>`, 'bad-hide'],
  ])('when it %s, it is refused', (_title, body, code) => {
    try {
      read(body);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(IntakeError);
      expect((error as IntakeError).code).toBe(code);
    }
  });
});
