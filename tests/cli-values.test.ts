import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hideboundHere, testFolder } from './cli-support.js';

const folder = testFolder();

interface ShownTopics {
  readonly result: {
    readonly topics: readonly {
      readonly topic: string;
      readonly values: readonly {
        readonly name: string;
        readonly value: string;
        readonly source: string;
        readonly isOwn: boolean;
      }[];
    }[];
  };
  readonly diagnostics: readonly { readonly code: string; readonly sentence: string }[];
}

async function shown(args: readonly string[]): Promise<ShownTopics> {
  const run = await hideboundHere(['workshop', ...args, '--json']);
  expect(run.status, run.stderr).toBe(0);
  return JSON.parse(run.stdout) as ShownTopics;
}

function write(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const OWN = `format: hidebound/workshop@1
# the damp cellar
figures:
  rest after conditioning: 30   # by our own hygrometer
coverages:
  spirit dye: { from: 118, to: 126, source: weighed in January }
hourlyRate: 31 EUR
`;

describe('hidebound workshop', () => {
  it('when no file is given, every value has a source and none is the user’s own', async () => {
    const { topics } = (await shown([])).result;
    const values = topics.flatMap((topic) => topic.values);
    expect(values.length).toBeGreaterThan(100);
    for (const { name, source, isOwn } of values) {
      expect(source, name).toMatch(/\S{3}/);
      expect(isOwn, name).toBe(false);
    }
  });

  it('when a file is given, what it says is told as the user’s own, with its source', async () => {
    const path = write('own.yaml', OWN);
    const { topics } = (await shown([path, '--own'])).result;
    expect(
      topics.map(({ topic, values }) => [topic, values.map((row) => [row.name, row.value, row.source])]),
    ).toEqual([
      ['figures', [['rest after conditioning', '30 h', 'own']]],
      ['coverages', [['spirit dye', '118–126 mL/m²', 'weighed in January']]],
      ['rates', [['an hour of work', '31 EUR', 'own']]],
    ]);
  });

  it('when every value is written out, changed and read, the change counts and an existing file stays', async () => {
    const path = join(folder, 'full.yaml');
    expect((await hideboundHere(['workshop', '--write', path])).status).toBe(0);
    expect((await shown([path, '--own'])).result.topics).toEqual([]);
    const text = readFileSync(path, 'utf8');
    const changed = text.replace(/(^ {2}spirit dye:(?: \{|\s+)\s*from: )\d+/m, '$190');
    expect(changed).not.toBe(text);
    writeFileSync(path, changed);
    const own = (await shown([path, '--own'])).result.topics;
    expect(own.map(({ topic, values }) => [topic, values[0]!.name])).toEqual([['coverages', 'spirit dye']]);
    const again = await hideboundHere(['workshop', '--write', path]);
    expect(again.status).toBe(4);
    expect(again.stderr).toContain('stays as it is');
    expect(readFileSync(path, 'utf8')).toBe(changed);
  });

  it('when a file lacks what is built in, it is completed, keeps each of its lines and stays beside it as it was', async () => {
    const path = write('old.yaml', OWN);
    const before = await shown([path]);
    const run = await hideboundHere(['workshop', path, '--add', '--json']);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(`${path}.before`, 'utf8')).toBe(OWN);
    const lines = readFileSync(path, 'utf8').split('\n');
    let at = -1;
    for (const line of OWN.trimEnd().split('\n')) {
      at = lines.indexOf(line, at + 1);
      expect(at, line).toBeGreaterThanOrEqual(0);
    }
    const value = (all: ShownTopics) =>
      all.result.topics
        .flatMap(({ topic, values }) => values.map((row) => `${topic}/${row.name}: ${row.value}`))
        .sort();
    expect(value(await shown([path]))).toEqual(value(before));
    const again = await hideboundHere(['workshop', path, '--add']);
    expect(again.stdout).toContain('lacks nothing');
  });

  it('when a row was written out by an older version, the new figure is told and the old one counts', async () => {
    const { topics } = (await shown(['--topic', 'figures'])).result;
    const { name, source } = topics[0]!.values.find((row) => row.name === 'rest after conditioning')!;
    const path = write(
      'stale.yaml',
      `format: hidebound/workshop@1\nfigures:\n  ${name}: { from: 1, to: 2, unit: h, source: ${JSON.stringify(source)} }\n`,
    );
    const { result, diagnostics } = await shown([path, '--topic', 'figures']);
    expect(result.topics[0]!.values.find((row) => row.name === name)!.value).toBe('1–2 h');
    expect(diagnostics.map(({ code }) => code)).toEqual(['workshop-row-stale']);
    expect(diagnostics[0]!.sentence).toContain('yours counts');
  });

  it.each([
    ['an unknown figure', 'figures: { rest after condition: 3 }', /rest after conditioning/],
    [
      'a figure in another unit',
      'figures: { rest after conditioning: { from: 1, to: 2, unit: min } }',
      /in h, not in min/,
    ],
    [
      'a figure from more to less',
      'figures: { rest after conditioning: { from: 3, to: 2 } }',
      /smaller one as "from"/,
    ],
    [
      'an offer of a cut that there is not',
      'offers: [{ name: a, cut: sides, price: 3 EUR, per: ft2 }]',
      /"sides"/,
    ],
    ['a share above all', 'grades: { A: { usable: [90, 120] } }', /up to 100/],
    ['a negative price', 'prices: [{ name: a, price: -3 EUR, per: m }]', /-3 EUR/],
  ])('when the file has %s, one sentence says what would be right', async (_, line, words) => {
    const path = write('bad.yaml', `format: hidebound/workshop@1\n${line}\n`);
    const run = await hideboundHere(['workshop', path]);
    expect(run.status).toBe(3);
    expect(run.stderr.trim().split('\n')).toHaveLength(1);
    expect(run.stderr).toMatch(words);
    expect(existsSync(`${path}.before`)).toBe(false);
  });
});
