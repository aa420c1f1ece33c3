import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { expectOneSentence, expectRefused, hideboundHere, smallJob, testFolder } from './cli-support.js';
import type { SmallJob } from './cli-support.js';
import { outsideProgram, testWith } from './tools/outside.js';

const folder = testFolder();
const PYTHON = outsideProgram('python3', ['-V']);
const ORDER = `format: hidebound/order@1
name: "=1+1, \\"tags\\""
date: "2026-01-05"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [100, 100]
leathers:
  body:
    hides: [panel.hide.json]
    colour: "@brown"
articles:
  - name: tag
    goods: tag
    sets: 2
    pieces:
      - name: "-plate, größer"
        leather: body
        part: stiffener
        rectangle: { width: 60, length: 90 }
`;

let job: SmallJob;
beforeAll(async () => {
  job = smallJob(folder, { order: ORDER });
  const run = await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
  expect(run.status, run.stderr).toBe(0);
}, 60_000);

describe('hidebound setout', () => {
  it('when it is asked for, there is a PDF, and the same pages as drawings', async () => {
    const pdf = join(job.at, 'out.pdf');
    const run = await hideboundHere([
      'setout',
      job.layout,
      '--pdf',
      pdf,
      '--page-svg',
      join(job.at, 'out.svg'),
    ]);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(pdf, 'latin1').startsWith('%PDF')).toBe(true);
    const drawings = readdirSync(job.at).filter((name) => name.endsWith('.svg'));
    expect(drawings.sort()).toEqual(['out.1.svg', 'out.2.svg']);
    const measures = readFileSync(join(job.at, 'out.2.svg'), 'utf8');
    expect(measures).toContain('cut 60 × 90');
    expect(readFileSync(join(job.at, 'out.1.svg'), 'utf8')).toContain(
      'S and E are two corners of the outline.',
    );
  });

  it('when no file is asked for, it ends with 2', async () => {
    const run = await hideboundHere(['setout', job.layout]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('give --pdf or --page-svg');
  });

  it('when a file would not be what its name says, it ends with 2 and writes nothing', async () => {
    const run = await hideboundHere(['setout', job.layout, '--pdf', join(job.at, 'wrong.svg')]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('.pdf');
    expect(readdirSync(job.at)).not.toContain('wrong.svg');
  });

  it('when nothing is laid, it is refused, and no empty file is written', async () => {
    const layout = JSON.parse(readFileSync(job.layout, 'utf8')) as Record<string, unknown>;
    const empty = join(job.at, 'empty.layout.json');
    const nothing = { hides: [], placements: [], lanes: [], roughCuts: [], cuttingOrder: [], offcuts: [] };
    const figures = layout['yield'] as { total: unknown };
    writeFileSync(empty, JSON.stringify({ ...layout, ...nothing, yield: { ...figures, hides: [] } }));
    const run = await hideboundHere(['setout', empty, '--pdf', join(job.at, 'empty.pdf')]);
    expectRefused(run, empty, /[Nn]othing is laid/);
    expect(readdirSync(job.at)).not.toContain('empty.pdf');
  });

  it('when the hide was changed after it was laid, a warning says so', async () => {
    const other = smallJob(folder, { order: ORDER });
    await hideboundHere(['lay', other.order, '--effort', '0', '--out', other.layout]);
    const hide = JSON.parse(readFileSync(other.hide, 'utf8')) as Record<string, unknown>;
    writeFileSync(other.hide, JSON.stringify({ ...hide, notes: 'trimmed' }));
    const run = await hideboundHere(['setout', other.layout, '--pdf', join(other.at, 'out.pdf')]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('was changed after this layout was made');
  });
});

describe('hidebound list', () => {
  it('when no file is asked for, the list is on the screen', async () => {
    const run = await hideboundHere(['list', job.layout]);
    expect(run.status, run.stderr).toBe(0);
    const rows = run.stdout.split('\n').filter((line) => line.includes('-plate'));
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatch(/^1 .* 90\.0 mm {2}60\.0 mm {2}panel-1$/);
  });

  it('when it is written for a spreadsheet and for a program, both hold every copy', async () => {
    const [csv, json] = [join(job.at, 'list.csv'), join(job.at, 'list.json')];
    const run = await hideboundHere(['list', job.layout, '--csv', csv, '--json-file', json]);
    expect(run.status, run.stderr).toBe(0);
    const lines = readFileSync(csv, 'utf8').split('\r\n');
    expect(lines).toHaveLength(4);
    // RFC 4180 by hand: the comma makes the quotes, the apostrophe keeps the minus from being taken for a formula.
    expect(lines[1]).toMatch(/^1,"'-plate, größer",tag,1,1,no,2,body,'@brown,/);
    const list = JSON.parse(readFileSync(json, 'utf8')) as { order: object; pieces: object[] };
    expect(list.order).toMatchObject({ name: '=1+1, "tags"' });
    expect(list.pieces).toMatchObject([
      { number: '1', piece: '-plate, größer', count: 2, lengthMm: 90, widthMm: 60, areaMm2: 5400 },
      { number: '2', piece: '-plate, größer' },
    ]);
  });

  // Judge: the csv module of Python's standard library.
  testWith(PYTHON, 'Python reads the same cells out of the CSV file', () => {
    const csv = join(job.at, 'python.csv');
    writeFileSync(csv, readFileSync(join(job.at, 'list.csv')));
    const script =
      'import csv,json,sys; print(json.dumps(list(csv.DictReader(open(sys.argv[1], encoding="utf-8-sig", newline="")))))';
    const rows = JSON.parse(PYTHON.run(['-c', script, csv]).toString('utf8')) as Record<string, string>[];
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({
      piece: "'-plate, größer",
      colour: "'@brown",
      'area (cm2)': '54',
      hide: 'panel-1',
    });
  });

  it('when JSON is asked for on standard output, the result holds the list', async () => {
    const run = await hideboundHere(['list', job.layout, '--json']);
    const told = JSON.parse(run.stdout) as { result: { pieces: object[] } };
    expect(told.result.pieces).toHaveLength(2);
  });

  it('when a list would be written over its layout, it ends with 2', async () => {
    const run = await hideboundHere(['list', job.layout, '--json-file', job.layout]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('is being read');
  });
});
