import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { staleRows, WORKSHOP_TOPICS, workshopRows } from '../workshop/workshop-topics.js';
import { parseWorkshop } from './workshop-file.js';
import { completeWorkshop, writeWorkshopInFull } from './workshop-in-full.js';

const file = 'workshop.yaml';
const every = readFileSync(
  new URL('../../../../fixtures/formats/every-field.workshop.yaml', import.meta.url),
  'utf8',
);

/** A file as somebody wrote it by hand, with remarks, odd spaces and two kinds of quotes. */
const HAND_WRITTEN = `# Our own figures
format: hidebound/workshop@1

name:   'Back room'   # not the front one

goods:
    # measured on last year's bags
    saddlebag:   { thickness: "3.0-3.4 mm" }

    bottle sleeve:
        tannage: vegetable   # smells best

hourlyRate: "31.50 EUR"
figures:
  rest after conditioning: 18   # our cellar is damp`;

/** Whether the lines of one text stand in the other in the same order. */
function holdsLinesOf(text: string, lines: readonly string[]): boolean {
  const all = text.split('\n');
  let at = 0;
  for (const line of lines) {
    at = all.indexOf(line, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

describe('when the workshop is written in full', () => {
  const text = writeWorkshopInFull(DEFAULT_WORKSHOP);

  test('it reads back as what is built in', () => {
    expect(parseWorkshop(text, { file })).toEqual(DEFAULT_WORKSHOP);
  });

  test('every figure has its meaning above it and its source beside it', () => {
    for (const { name, words, source } of DEFAULT_WORKSHOP.figures) {
      const lines = text.split('\n').map((line) => line.trim());
      const key = lines.findIndex((line) =>
        line.replaceAll(/["']/g, '').startsWith(`${name.replaceAll(/["']/g, '')}:`),
      );
      expect(lines[key - 1], name).toBe(`# ${words}`);
      const row = lines
        .slice(key, key + 6)
        .join(' ')
        .replaceAll(/\s+/g, ' ');
      expect(row, name).toContain(source.slice(0, 12));
    }
  });
});

describe('when a file lacks what a newer version knows', () => {
  const { text, added, closed } = completeWorkshop(HAND_WRITTEN, { file });

  test('every line that was there is there, and in the same order', () => {
    expect(holdsLinesOf(text, HAND_WRITTEN.split('\n'))).toBe(true);
  });

  test('it says the same as before, and holds every row', () => {
    const before = parseWorkshop(HAND_WRITTEN, { file });
    const after = parseWorkshop(text, { file });
    const byName = (rules: readonly { readonly goods: string }[]) =>
      [...rules].sort((a, b) => (a.goods < b.goods ? -1 : 1));
    expect(byName(after.goods)).toEqual(byName(before.goods));
    expect({ ...after, goods: [], keepMm: [] }).toEqual({ ...before, goods: [], keepMm: [] });
    expect(after.figures.find(({ name }) => name === 'rest after conditioning')!.value).toEqual({
      min: 18,
      max: 18,
    });
  });

  test('it tells what was added, and adds nothing a second time', () => {
    const goods = added.find(({ key }) => key === 'goods')?.names ?? [];
    expect(goods).not.toContain('saddlebag');
    expect(goods.length).toBe(DEFAULT_WORKSHOP.goods.length - 1);
    expect(added.find(({ key }) => key === 'cuts')!.names).toEqual(
      DEFAULT_WORKSHOP.cuts.map(({ name }) => name),
    );
    expect(closed).toEqual([]);
    expect(completeWorkshop(text, { file })).toEqual({ text, added: [], closed: [] });
  });

  test('a table on one line is left alone and told', () => {
    const tight = 'format: hidebound/workshop@1\nfigures: { rest after conditioning: 18 }\n';
    const done = completeWorkshop(tight, { file });
    expect(done.closed.map(({ key }) => key)).toEqual(['figures']);
    expect(holdsLinesOf(done.text, tight.trimEnd().split('\n'))).toBe(true);
    parseWorkshop(done.text, { file });
  });

  test('the fixture with every key keeps its lines too', () => {
    const done = completeWorkshop(every, { file });
    expect(holdsLinesOf(done.text, every.trimEnd().split('\n'))).toBe(true);
    parseWorkshop(done.text, { file });
  });
});

describe('when rows are told apart', () => {
  test('what is built in is nobody’s own, and each row has a source', () => {
    for (const topic of WORKSHOP_TOPICS) {
      for (const { name, source, isOwn } of workshopRows(DEFAULT_WORKSHOP, topic)) {
        expect(isOwn, `${topic} ${name}`).toBe(false);
        expect(source.trim().length, `${topic} ${name}`).toBeGreaterThan(2);
        expect(source, `${topic} ${name}`).not.toBe('own');
      }
    }
  });

  test('a row that was written out by an older version, whose figure is another one now, is told; an own one is not', () => {
    const usual = DEFAULT_WORKSHOP.figures.find(({ name }) => name === 'rest after conditioning')!;
    const older = `format: hidebound/workshop@1
figures:
  rest after conditioning: { from: 1, to: 2, unit: h, source: ${JSON.stringify(usual.source)} }
  error of a stated area: 5
`;
    const workshop = parseWorkshop(older, { file });
    expect(workshop.figures.find(({ name }) => name === 'rest after conditioning')!.value).toEqual({
      min: 1,
      max: 2,
    });
    expect(staleRows(workshop).map(({ topic, name }) => [topic, name])).toEqual([
      ['figures', 'rest after conditioning'],
    ]);
  });
});
