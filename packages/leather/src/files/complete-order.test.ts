import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { parseArticle } from './article-file.js';
import { completeOrder } from './complete-order.js';
import { parseOrder } from './order-file.js';
import { parseWorkshop, writeWorkshop } from './workshop-file.js';

const FOLDER = new URL('../../../../fixtures/formats/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, FOLDER), 'utf8');
const article = parseArticle(read('every-field.article.yaml'), { file: 'tool-roll.article.yaml' });
const readArticle = (file: string) => {
  if (file !== 'tool-roll.article.yaml') throw new Error(`asked for ${file}`);
  return article;
};

const ONE_LINE = `
format: hidebound/order@1
name: Again
date: 2026-04-01
cutting: hand knife
leathers:
  body: { hides: [side-12.hide.json], colour: black }
articles:
  - { file: tool-roll.article.yaml, sets: 4 }
`;

const parse = (text: string) => parseOrder(text, { file: 'again.order.yaml' });

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof LeatherError) return error.code;
    throw error;
  }
  return 'none';
}

describe('completing an order', () => {
  test('when an article comes from a file, a repeat order is one line', () => {
    const order = completeOrder(parse(ONE_LINE), DEFAULT_WORKSHOP, readArticle);
    expect(order.articles).toHaveLength(1);
    const [placed] = order.articles;
    expect(placed).toMatchObject({ name: 'Tool roll', sets: 4, value: 1, keepTogether: 'faces on one lot' });
    expect(placed?.pieces.map(({ name }) => name)).toEqual(article.pieces.map(({ name }) => name));
    expect(placed).not.toHaveProperty('file');
    expect(placed).not.toHaveProperty('lastYield');
  });

  test('when order and article speak of one leather, the order wins and the article fills in', () => {
    const order = completeOrder(parse(ONE_LINE), DEFAULT_WORKSHOP, readArticle);
    expect(order.leathers[0]).toEqual({
      name: 'body',
      tannage: 'vegetable',
      temper: 'medium',
      finish: 'waxed',
      colour: 'black',
      thickness: { minMm: 1.8, maxMm: 2.8 },
      hides: ['side-12.hide.json'],
    });
  });

  test('when the cutting method is only named, its distances come from the workshop', () => {
    const order = completeOrder(parse(ONE_LINE), DEFAULT_WORKSHOP, readArticle);
    expect(order.cutting).toEqual({ method: 'hand knife', gapMm: 3, edgeMm: 10, voidMm: 5, kerfMm: 0 });
    expect(order.keepMm).toEqual([80, 80]);
  });

  test('when some distances are written, only the others come from the workshop', () => {
    const text = ONE_LINE.replace('cutting: hand knife', 'cutting: { method: laser, edge: 25, kerf: 0.15 }');
    const order = completeOrder(parse(text), DEFAULT_WORKSHOP, readArticle);
    expect(order.cutting).toEqual({ method: 'laser', gapMm: 3, edgeMm: 25, voidMm: 5, kerfMm: 0.15 });
  });

  test('when a method is unknown, it is asked for, unless all distances are written', () => {
    const text = ONE_LINE.replace('hand knife', 'hand knfe');
    expect(codeOf(() => completeOrder(parse(text), DEFAULT_WORKSHOP, readArticle))).toBe('no-such-method');
    expect(() => completeOrder(parse(text), DEFAULT_WORKSHOP, readArticle)).toThrow(
      /Did you mean "hand knife"/,
    );
    const whole = ONE_LINE.replace('hand knife', '{ method: shears, gap: 4, edge: 8, void: 6, kerf: 0 }');
    expect(completeOrder(parse(whole), DEFAULT_WORKSHOP, readArticle).cutting.method).toBe('shears');
  });

  test('when an article needs a leather that the order lacks, both are named', () => {
    const text = ONE_LINE.replace('  body:', '  lining:');
    expect(() => completeOrder(parse(text), DEFAULT_WORKSHOP, readArticle)).toThrow(
      /"Tool roll" needs a leather named "body"/,
    );
  });

  test('when one article comes from two lines, it is refused', () => {
    const text = `${ONE_LINE}  - { file: tool-roll.article.yaml, sets: 1 }\n`;
    expect(codeOf(() => completeOrder(parse(text), DEFAULT_WORKSHOP, readArticle))).toBe('article-duplicate');
  });
});

describe('the workshop', () => {
  test('when a file says nothing, every value is the built-in one', () => {
    expect(parseWorkshop('format: hidebound/workshop@1', { file: 'w' })).toEqual(DEFAULT_WORKSHOP);
  });

  test('when the built-in workshop is written and read, it is the same', () => {
    expect(parseWorkshop(writeWorkshop(DEFAULT_WORKSHOP), { file: 'w' })).toEqual(DEFAULT_WORKSHOP);
  });

  test('when one figure of a line is written, the others stay and the line is marked as own', () => {
    const workshop = parseWorkshop(read('every-field.workshop.yaml'), { file: 'w' });
    const knife = workshop.cuttingMethods.find(({ method }) => method === 'hand knife');
    expect(knife).toEqual({
      method: 'hand knife',
      gapMm: 2.5,
      edgeMm: 10,
      voidMm: 5,
      kerfMm: 0,
      source: 'own',
    });
    const flap = workshop.parts.find(({ part }) => part === 'flap');
    expect(flap?.looks).toEqual({ face: 'A', rest: 'B' });
    expect(workshop.parts.find(({ part }) => part === 'front')).not.toHaveProperty('zones');
  });

  test('when a flaw is given a plain choice, it is one of the three', () => {
    const { flawDefaults } = parseWorkshop(read('every-field.workshop.yaml'), { file: 'w' });
    const of = (kind: string) => flawDefaults.find((line) => line.kind === kind)?.effect;
    expect(of('hole')).toEqual({ looks: 'C', strength: 'weak', isVoid: true });
    expect(of('brand')).toEqual({ looks: 'C', strength: 'sound', isVoid: false });
    expect(of('vein')).toEqual({ looks: 'A', strength: 'sound', isVoid: false });
  });

  test('when the built-in figures are shown, each says where it comes from', () => {
    const lines = [
      ...DEFAULT_WORKSHOP.parts,
      ...DEFAULT_WORKSHOP.flawDefaults,
      ...DEFAULT_WORKSHOP.zoneDefaults,
      ...DEFAULT_WORKSHOP.cuttingMethods,
      ...DEFAULT_WORKSHOP.coverages,
    ];
    for (const { source } of lines) expect(source).not.toBe('');
  });
});
