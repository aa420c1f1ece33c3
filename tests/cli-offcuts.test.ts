import { existsSync, mkdirSync, readFileSync, readdirSync, unlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { regionsArea, subtractRegions } from '@hidebound/geometry';
import { hideRegion } from '@hidebound/leather';
import { loadStock } from '../packages/cli/src/stock/load-stock.js';
import {
  ROOT,
  SMALL_HIDE,
  SMALL_ORDER,
  closed,
  expectOneSentence,
  hideboundHere,
  testFolder,
} from './cli-support.js';
import type { Run } from './cli-support.js';
import { copyOf, hideFilesOf, netArea, readLayout, stockJob } from './stock-support.js';
import type { StockJob } from './stock-support.js';

const folder = testFolder();
let job: StockJob;

beforeAll(async () => {
  job = await stockJob(folder);
});

function offcuts(...args: readonly string[]): Promise<Run> {
  return hideboundHere(['offcuts', ...args]);
}

interface Listed {
  readonly hide: string;
  readonly cut: string;
  readonly state: string;
  readonly storedAt?: string;
  readonly price?: { readonly amount: string };
  readonly worthKeeping: boolean;
  readonly sizes: {
    readonly usableMm2: number;
    readonly rectangle: { readonly alongMm: number; readonly acrossMm: number };
  };
}

async function listed(...args: readonly string[]): Promise<readonly Listed[]> {
  const run = await offcuts(...args, '--json');
  expect(run.status, run.stderr).toBe(0);
  return (JSON.parse(run.stdout) as { result: { hides: Listed[] } }).result.hides;
}

async function namesOf(...args: readonly string[]): Promise<readonly string[]> {
  return (await listed(...args)).map(({ hide }) => hide);
}

/** Nothing of the stock was changed: hide files byte by byte, no journal, no lock. */
function expectUntouched(stock: string): void {
  expect(hideFilesOf(stock)).toEqual(hideFilesOf(job.stock));
  expect(readdirSync(stock).filter((name) => /journal|lock|part/.test(name))).toEqual([]);
}

describe('a stock listed', () => {
  test('when it is listed, each hide has its size, its largest rectangle and its price', async () => {
    const hides = await listed(job.stock);
    expect(hides.map(({ hide }) => hide)).toEqual(['panel-1', 'panel-2']);
    // A panel of 600 × 400 mm without a flaw is its own largest rectangle; 500 × 300 less a hole of 20 × 20 usable.
    expect(hides[0]!.sizes.rectangle.alongMm).toBeCloseTo(600, 1);
    expect(hides[0]!.sizes.rectangle.acrossMm).toBeCloseTo(400, 1);
    expect(hides[1]!.sizes.usableMm2).toBeCloseTo(500 * 300 - 400, 0);
    // Left of the hole 400 × 300, above it 500 × 200: the larger one counts.
    const { alongMm, acrossMm } = hides[1]!.sizes.rectangle;
    expect(alongMm * acrossMm).toBeCloseTo(400 * 300, -1);
  });

  test('when filters are given, only what passes is shown', async () => {
    expect(await namesOf(job.stock, '--colour', 'Brown')).toEqual(['panel-2']);
    expect(await namesOf(job.stock, '--lot', 'b7')).toEqual(['panel-2']);
    expect(await namesOf(job.stock, '--least', '350 x 550 mm')).toEqual(['panel-1']);
    expect(await namesOf(job.stock, '--least', '60 cm x 5 mm')).toEqual(['panel-1']);
    expect(await namesOf(job.stock, '--only', 'offcuts')).toEqual([]);
    // The first one's thickness is not known, so it may be what is looked for.
    expect(await namesOf(job.stock, '--thickness', '3-4 mm')).toEqual(['panel-1']);
    expect(await namesOf(job.stock, '--thickness', '5-6 oz')).toEqual(['panel-1', 'panel-2']);
    expect(await namesOf(job.stock, '--sort', 'place')).toEqual(['panel-2', 'panel-1']);
  });

  test('when a file of it is broken or says an id twice, it is named and the rest is listed', async () => {
    const stock = copyOf(job, 'broken');
    writeFileSync(join(stock, 'bad.hide.json'), '{ "format": "hidebound/hide@1",');
    writeFileSync(join(stock, 'x-copy.hide.json'), readFileSync(join(stock, 'one.hide.json')));
    const run = await offcuts(stock);
    expect(run.status).toBe(0);
    expect(run.stdout).toMatch(/bad\.hide\.json is left out, because it can't be read/);
    expect(run.stdout).toMatch(/x-copy\.hide\.json both say that they are hide panel-1/);
    expect(run.stdout).toMatch(/2 hides, /);
  });

  test('when pages and labels are asked for, they are written', async () => {
    for (const [name, args] of [
      ['sheet', []],
      ['labels', ['--labels']],
    ] as const) {
      const pdf = join(folder, `${name}.pdf`);
      const run = await offcuts(job.stock, ...args, '--pdf', pdf);
      expect(run.status, run.stderr).toBe(0);
      expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
    }
  });
});

describe('leather taken from a stock', () => {
  test('when a layout is taken, its hides are cut and its offcuts lie in the stock, disjoint from its pieces', async () => {
    const stock = copyOf(job, 'taken');
    const run = await offcuts(stock, '--take', job.layout, '--place', 'shelf 3');
    expect(run.status, run.stderr).toBe(0);
    const all = await listed(stock, '--with-cut');
    expect(all.map(({ hide, state }) => [hide, state])).toEqual([
      ['panel-1', 'cut'],
      ['panel-1a', 'on hand'],
      ['panel-2', 'cut'],
      ['panel-2a', 'on hand'],
    ]);
    expect(all.filter(({ cut }) => cut === 'offcut').map(({ storedAt }) => storedAt)).toEqual([
      'shelf 3',
      'shelf 3',
    ]);
    const layout = readLayout(job.layout);
    const { hides } = loadStock(stock);
    for (const { parent, ...offcut } of hides.map(({ hide }) => hide).filter(({ cut }) => cut === 'offcut')) {
      const whole = hides.find(({ hide }) => hide.id === parent)!.hide;
      const used = layout.yield.hides.find(({ hide }) => hide === parent)!;
      // What is left and what is used up make up the hide (areas are computed by booleans of their own).
      expect(netArea(offcut) + used.usedUpMm2).toBeCloseTo(netArea(whole), -1);
      expect(regionsArea(subtractRegions([hideRegion(offcut)], [hideRegion(whole)]))).toBeLessThan(1);
    }
  });

  test('when no place is told, an offcut lies where its hide lay; a price per hide is shared by area', async () => {
    const stock = copyOf(job, 'place');
    await offcuts(stock, '--take', job.second);
    const [, offcut] = await listed(stock);
    expect(offcut).toMatchObject({ hide: 'panel-2a', storedAt: 'rack 2' });
    const share = offcut!.sizes.usableMm2 / (500 * 300 - 400);
    expect(Number(offcut!.price!.amount)).toBeCloseTo(30 * share, 2);
  });

  test('when it is undone, the hide files are the same bytes as before', async () => {
    const stock = copyOf(job, 'undone');
    await offcuts(stock, '--take', job.layout);
    const run = await offcuts(stock, '--undo', '1');
    expect(run.status, run.stderr).toBe(0);
    expect(hideFilesOf(stock)).toEqual(hideFilesOf(job.stock));
    const history = await offcuts(stock, '--history');
    expect(history.stdout).toMatch(/step 1 undone/);
    expect(expectOneSentence(await offcuts(stock, '--undo', 'last'))).toMatch(/Nothing was taken/);
  });

  test('when files of the offcuts’ names and ids are there already, nothing is written over', async () => {
    const stock = copyOf(job, 'names');
    const other = readFileSync(join(stock, 'two.hide.json'), 'utf8').replace('"panel-2"', '"panel-1a"');
    writeFileSync(join(stock, 'panel-1a-2.hide.json'), other);
    const run = await offcuts(stock, '--take', job.first);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(join(stock, 'panel-1a-2.hide.json'), 'utf8')).toBe(other);
    expect(await namesOf(stock)).toEqual(['panel-1a', 'panel-1a-2', 'panel-2']);
  });

  test('when the hide is cut already, changed, or not there, it is refused in one sentence and nothing changes', async () => {
    const twice = copyOf(job, 'twice');
    await offcuts(twice, '--take', job.first);
    const files = hideFilesOf(twice);
    const again = await offcuts(twice, '--take', job.layout);
    expect(again.status).toBe(3);
    expect(expectOneSentence(again)).toMatch(
      /panel-1 was cut already on .* by \.\.\/first\.layout\.json \(step 1\)/,
    );
    expect(hideFilesOf(twice)).toEqual(files);

    const changed = copyOf(job, 'changed');
    const file = join(changed, 'one.hide.json');
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.replace('"panel"', '"side"'));
    const run = await offcuts(changed, '--take', job.layout);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(
      /panel-1 \(one\.hide\.json\) was changed after the layout was made/,
    );
    writeFileSync(file, text);
    expectUntouched(changed);

    const gone = copyOf(job, 'gone');
    unlinkSync(join(gone, 'two.hide.json'));
    const missing = await offcuts(gone, '--take', job.layout);
    expect(missing.status).toBe(3);
    expect(expectOneSentence(missing)).toMatch(/hide panel-2, which is not in this stock/);
    expect(existsSync(join(gone, 'stock.journal.json'))).toBe(false);
  });

  test('when an offcut was cut since, the step before can only be undone after that one', async () => {
    const stock = copyOf(job, 'chain');
    await offcuts(stock, '--take', job.first);
    const order = join(stock, '..', 'from-offcut.order.yaml');
    const text = readFileSync(join(stock, '..', 'first.order.yaml'), 'utf8');
    writeFileSync(order, text.replace('stock/one.hide.json', 'chain/panel-1a.hide.json'));
    expect((await hideboundHere(['lay', order, '--effort', '0', '--cores', '1'])).status).toBe(0);
    await offcuts(stock, '--take', join(stock, '..', 'from-offcut.layout.json'));
    const early = await offcuts(stock, '--undo', '1');
    expect(early.status).toBe(3);
    expect(expectOneSentence(early)).toMatch(
      /panel-1a that came of it was cut by step 2; undo that one first/,
    );
    expect((await offcuts(stock, '--undo', 'last')).status).toBe(0);
    expect((await offcuts(stock, '--undo', 'last')).status).toBe(0);
    expect(hideFilesOf(stock)).toEqual(hideFilesOf(job.stock));
  });

  test('when an offcuts’ shape in the layout was changed by hand, it is refused', async () => {
    const stock = copyOf(job, 'forged');
    const forged = join(stock, '..', 'forged.layout.json');
    const layout = JSON.parse(readFileSync(job.first, 'utf8')) as {
      offcuts: { outline: { start: number[]; segments: { to: number[] }[] } }[];
    };
    const { outline } = layout.offcuts[0]!;
    const move = (point: number[]): void => {
      point[0] = point[0]! < 300 ? point[0]! + 50 : point[0]!;
    };
    [outline.start, ...outline.segments.map(({ to }) => to)].forEach(move);
    writeFileSync(forged, JSON.stringify(layout));
    const run = await offcuts(stock, '--take', forged);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(
      /offcuts that the layout gives for hide panel-1 are not what its pieces leave/,
    );
    expectUntouched(stock);
  });

  test('when the stock was changed behind the journal, it is told', async () => {
    const stock = copyOf(job, 'behind');
    const whole = readFileSync(join(stock, 'one.hide.json'));
    await offcuts(stock, '--take', job.first);
    writeFileSync(join(stock, 'one.hide.json'), whole);
    unlinkSync(join(stock, 'panel-1a.hide.json'));
    const run = await offcuts(stock);
    expect(run.stdout).toMatch(/journal says that hide panel-1 was cut .* it counts as cut/);
    expect(run.stdout).toMatch(/Offcut panel-1a of step 1 has no file any more/);
    expect(await namesOf(stock)).toEqual(['panel-2']);
  });
});

describe('what is left, looked at closely', () => {
  test('when what is left is too narrow for the rectangle but holds a strip, it is kept', async () => {
    const at = join(job.stock, '..', 'narrow');
    mkdirSync(at);
    const narrow = { ...SMALL_HIDE, outline: closed([0, 0], [600, 0], [600, 70], [0, 70]) };
    writeFileSync(join(at, 'narrow.hide.json'), JSON.stringify(narrow));
    const order = join(at, 'narrow.order.yaml');
    writeFileSync(
      order,
      SMALL_ORDER.replace('panel.hide.json', 'narrow.hide.json').replace('sets: 2', 'sets: 1'),
    );
    expect((await hideboundHere(['lay', order, '--effort', '0', '--cores', '1'])).status).toBe(0);
    const layout = join(at, 'narrow.layout.json');
    // The layout keeps what holds 100 × 100 mm; 20 × 200 mm is the usual smallest strip (common practice, no source).
    expect(readLayout(layout).offcuts).toEqual([]);
    expect((await offcuts(at, '--take', layout)).status).toBe(0);
    const [left] = await listed(at);
    expect(left).toMatchObject({ hide: 'panel-1a', cut: 'offcut', worthKeeping: true });
    expect(left!.sizes.usableMm2).toBeLessThan(600 * 70 - 60 * 90);
    expect(left!.sizes.usableMm2).toBeGreaterThan(400 * 70);
  });

  test('when an offcut is drawn anew, it is told; when its place is changed, it is not', async () => {
    const stock = copyOf(job, 'redrawn');
    await offcuts(stock, '--take', job.first);
    const file = join(stock, 'panel-1a.hide.json');
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.replace('"state"', '"storedAt": "drawer", "state"'));
    expect((await offcuts(stock)).stdout).not.toMatch(/drawn anew/);
    writeFileSync(file, text.replaceAll('[0, 400]', '[10, 400]'));
    expect((await offcuts(stock)).stdout).toMatch(/shape of offcut panel-1a is no longer what step 1 left/);
  });

  test('when a file was changed while its step was interrupted, it is told and kept as it is', async () => {
    const stock = copyOf(job, 'between');
    await offcuts(stock, '--take', job.first);
    const journal = join(stock, 'stock.journal.json');
    writeFileSync(journal, readFileSync(journal, 'utf8').replace('"finished": 1', '"finished": 0'));
    const file = join(stock, 'one.hide.json');
    const changed = readFileSync(file, 'utf8').replace('"state"', '"notes": "mine", "state"');
    writeFileSync(file, changed);
    const run = await offcuts(stock);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/Step 1 was interrupted, and one\.hide\.json was changed since/);
    expect(readFileSync(file, 'utf8')).toBe(changed);
  });

  test('when what a step kept is gone, undoing it is refused', async () => {
    const stock = copyOf(job, 'kept');
    await offcuts(stock, '--take', job.first);
    const files = hideFilesOf(stock);
    for (const name of readdirSync(join(stock, 'stock.kept'))) unlinkSync(join(stock, 'stock.kept', name));
    const run = await offcuts(stock, '--undo', 'last');
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/no longer in "stock\.kept" as it was written/);
    expect(hideFilesOf(stock)).toEqual(files);
  });
});

describe('the lock of a stock', () => {
  test('when a process that is gone holds it, it is cleared away and told', async () => {
    const stock = copyOf(job, 'stale');
    mkdirSync(join(stock, 'stock.lock'));
    // No system gives out a process number of this size.
    writeFileSync(
      join(stock, 'stock.lock', `2147483646.x.${hostname().replace(/[^A-Za-z0-9.-]/g, '-')}`),
      '',
    );
    const run = await offcuts(stock, '--take', job.layout);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stderr).toMatch(/process 2147483646\) still held this stock; its lock is cleared away/);
  });

  test('when a process of another machine holds it, it is refused after a while and nothing changes', async () => {
    const stock = copyOf(job, 'held');
    mkdirSync(join(stock, 'stock.lock'));
    writeFileSync(join(stock, 'stock.lock', '12.x.another-machine'), '');
    const run = await offcuts(stock, '--take', job.layout);
    expect(run.status).toBe(4);
    expect(expectOneSentence(run)).toMatch(/process 12 on another-machine\) is changing this stock/);
    expect(hideFilesOf(stock)).toEqual(hideFilesOf(job.stock));
    expect(readdirSync(stock).filter((name) => name.startsWith('stock.'))).toEqual(['stock.lock']);
  });
});

describe('what a piece can be cut from', () => {
  test('when a piece is looked for, the smallest hide that holds the count comes first', async () => {
    const order = join(job.stock, '..', 'both.order.yaml');
    const run = await offcuts(job.stock, '--for', order, '--piece', 'plate of one', '--count', '2', '--json');
    expect(run.status, run.stderr).toBe(0);
    const { hides } = (
      JSON.parse(run.stdout) as { result: { hides: { hide: string; fits: number; enough: boolean }[] } }
    ).result;
    expect(hides.map(({ hide, enough }) => [hide, enough])).toEqual([
      ['panel-2', true],
      ['panel-1', true],
    ]);
    // 500 × 300 mm less 3 mm of edge hold more than two plates of 60 × 90 mm, and no more than their areas allow.
    expect(hides[0]!.fits).toBeGreaterThanOrEqual(2);
    expect(hides[0]!.fits).toBeLessThanOrEqual((500 * 300) / (60 * 90));
  });

  test('when no hide holds as many, the answer is no', async () => {
    const order = join(job.stock, '..', 'both.order.yaml');
    const run = await offcuts(job.stock, '--for', order, '--piece', 'plate of one', '--count', '60');
    expect(run.status).toBe(1);
    expect(run.stdout).toMatch(/60 of plate of one can't be cut from any one hide of this stock/);
  });

  test('when an article is given, or a piece that is not there, it is read or told', async () => {
    const article = join(ROOT, 'fixtures', 'demo', 'pump-strap.article.yaml');
    const run = await offcuts(job.stock, '--for', article, '--piece', 'buckle');
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/There is no piece "buckle" here; its pieces are /);
  });
});

describe('wrong use', () => {
  test.each([
    [['--take', 'a.layout.json', '--undo', 'last'], /can't be done at once/],
    [['--undo', 'first'], /--undo can't be "first"; it must be the number of a step, or "last"/],
    [['--for', 'a.order.yaml'], /--for needs a piece/],
    [['--place', 'shelf'], /give it with --take/],
    [['--labels'], /give --pdf or --page-svg/],
    [['--least', 'large'], /write two sides/],
    [['--strip', '-3'], /write a width/],
  ])('when %j is given, it is told what would be right', async (args, words) => {
    const run = await offcuts(job.stock, ...args);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(words);
  });

  test('when the stock is no folder, it is told', async () => {
    expect((await offcuts(join(job.stock, 'one.hide.json'))).stderr).toMatch(
      /is a file; a stock is a folder/,
    );
    expect((await offcuts(join(job.stock, 'nowhere'))).status).toBe(3);
  });
});
