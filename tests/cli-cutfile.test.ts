import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { expectOneSentence, expectRefused, hidebound, hideboundHere, testFolder } from './cli-support.js';
import { layCutJob } from './support/cut-job.js';
import type { CutJob } from './support/cut-job.js';

const folder = testFolder();
let job: CutJob;
beforeAll(async () => {
  job = await layCutJob(folder, 'job', '{ method: laser, gap: 5, edge: 3, void: 2, kerf: 0.2 }');
});

const cutfile = (...args: string[]) => hideboundHere(['cutfile', job.layoutPath, ...args]);

interface CutfileJson {
  readonly ok: boolean;
  readonly result: {
    readonly written: readonly string[];
    readonly hides: readonly {
      readonly hide: string;
      readonly kerfMm: number;
      readonly counts: Readonly<Record<string, number>>;
      readonly paths: readonly { readonly number: number; readonly kind: string; readonly of: string }[];
    }[];
  };
}

describe('hidebound cutfile', () => {
  test('when SVG and DXF are asked for, both are written, with the kerf of the order’s cutting method', async () => {
    const [svg, dxf] = [join(folder, 'a.svg'), join(folder, 'a.dxf')];
    const run = await cutfile('--svg', svg, '--dxf', dxf, '--json');
    expect(run.status, run.stderr).toBe(0);
    const { ok, result } = JSON.parse(run.stdout) as CutfileJson;
    expect(ok).toBe(true);
    expect(result.written).toEqual([svg, dxf]);
    const [hide] = result.hides;
    expect(hide).toMatchObject({ hide: 'panel-9', kerfMm: 0.2 });
    expect(hide!.paths.map(({ number }) => number)).toEqual(hide!.paths.map((_, i) => i + 1));
    expect(hide!.counts).toMatchObject({
      punch: expect.any(Number) as number,
      cut: expect.any(Number) as number,
    });
    expect(readFileSync(svg, 'utf8')).toContain('<g id="opening"');
    expect(readFileSync(dxf, 'utf8')).toContain('AC1009');
  });

  test('when the compiled command runs twice, its files are equal byte for byte', () => {
    const written = ['one', 'two'].map((name) => {
      const files = [join(folder, `${name}.svg`), join(folder, `${name}.dxf`)];
      const options = [
        '--lead-in',
        '3',
        '--bridges',
        '2',
        '--text',
        'outlines',
        '--frame',
        '--dxf-version',
        'R2000',
      ];
      const run = hidebound(['cutfile', job.layoutPath, '--svg', files[0]!, '--dxf', files[1]!, ...options]);
      expect(run.status, run.stderr).toBe(0);
      return files.map((file) => readFileSync(file, 'utf8'));
    });
    expect(written[0]).toEqual(written[1]);
    expect(written[0]![0]).toContain('<g id="text"');
    expect(written[0]![0]).toContain('<g id="frame"');
  });

  test('when marks are left out, no line is marked', async () => {
    const svg = join(folder, 'bare.svg');
    expect((await cutfile('--svg', svg, '--no-marks')).status).toBe(0);
    expect(readFileSync(svg, 'utf8')).not.toMatch(/id="(stitch|fold|notch)"/);
  });

  test('when no file is named, that is said', async () => {
    const run = await cutfile();
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/give --svg or --dxf/);
  });

  test('when a file is named as what it is not, that is said', async () => {
    const run = await cutfile('--dxf', join(folder, 'x.svg'));
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/\.dxf/);
  });

  test('when a hide is not in the layout, the known ones are named', async () => {
    const run = await cutfile('--hide', 'nowhere', '--svg', join(folder, 'x.svg'));
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/"nowhere".*panel-9/);
  });

  test.each([
    [['--kerf', '4'], /4 mm wide can't make the hole of 4 mm in "\w+" of bag/],
    [['--bridges', '100', '--bridge-width', '9'], /100 bridges of 9 mm/],
  ])('when %j is asked for, one sentence says why not, and nothing is written', async (args, words) => {
    const dxf = join(folder, 'refused.dxf');
    const run = await cutfile('--dxf', dxf, ...args);
    expectRefused(run, job.layoutPath, words);
    expect(existsSync(dxf)).toBe(false);
  });

  test('when the layout would be written over, it is kept', async () => {
    const before = readFileSync(job.layoutPath, 'utf8');
    const run = await cutfile('--svg', job.layoutPath);
    expect(run.status).toBe(2);
    expect(readFileSync(job.layoutPath, 'utf8')).toBe(before);
  });

  test('when all is cut already, that is said', async () => {
    const path = join(folder, 'done.layout.json');
    writeFileSync(path, readFileSync(job.layoutPath, 'utf8').replaceAll('"planned"', '"cut"'));
    const run = await hideboundHere(['cutfile', path, '--svg', join(folder, 'x.svg')]);
    expectRefused(run, path, /Nothing is to be cut from hide panel-9/);
  });
});
