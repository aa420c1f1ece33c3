import { closeSync, ftruncateSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  OLD_LAYOUT,
  SMALL_HIDE as HIDE,
  SMALL_ORDER as ORDER,
  closed,
  expectOneSentence,
  expectRefused,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';
import type { Run, SmallJob, SmallJobFiles } from './cli-support.js';

const folder = testFolder();
/** A small job in a folder of its own, with something in it spoiled. */
function jobWith(files: SmallJobFiles): SmallJob {
  return smallJob(folder, files);
}

function lay(job: SmallJob): Promise<Run> {
  return hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
}

/** The order is refused with one sentence that names the file at fault, and the old layout is as it was. */
async function expectLayRefused(job: SmallJob, file: string, words: RegExp): Promise<void> {
  expectRefused(await lay(job), file, words);
  expect(readFileSync(job.layout, 'utf8')).toBe(OLD_LAYOUT);
}

describe('the small job that these tests spoil', () => {
  it('when nothing is wrong with it, it is laid', async () => {
    const run = await lay(jobWith({}));
    expect(run.status, run.stderr).toBe(0);
  });
});

describe('an order that can not be used', () => {
  it.each([
    ['empty', '', /empty/],
    ['of blanks alone', ' \n\n', /empty/],
    ['cut short', ORDER.slice(0, ORDER.indexOf('hides: [') + 9), /YAML/],
    ['without a format line', ORDER.replace(/^format.*\n/, ''), /format/],
    ['of a newer version', ORDER.replace('order@1', 'order@9'), /newer/],
    ['a hide file', JSON.stringify(HIDE), /an order .* is wanted, but this is a hide file/],
  ])('when it is %s, it says so', async (_, order, words) => {
    const job = jobWith({ order });
    await expectLayRefused(job, job.order, words);
  });

  it('when it is binary, it says so', async () => {
    const job = jobWith({ order: Uint8Array.from({ length: 2000 }, (_, i) => (i * 131) & 255) });
    await expectLayRefused(job, job.order, /not a text file/);
  });

  it('when it has 200 MB, it is refused by its size and the limit is named', async () => {
    const job = jobWith({});
    const handle = openSync(job.order, 'w');
    ftruncateSync(handle, 200_000_000);
    closeSync(handle);
    await expectLayRefused(job, job.order, /200 MB, and at most 50 MB are read/);
  });

  it('when a count is negative, it names the line and what would be right', async () => {
    const job = jobWith({ order: ORDER.replace('part: stiffener', 'part: stiffener\n        count: -3') });
    await expectLayRefused(job, `${job.order}:17`, /-3, but it should be a whole number from 1/);
  });

  it('when a key is unknown, it names the key, its line and the key that was meant', async () => {
    const job = jobWith({ order: ORDER.replace('part: stiffener', 'part: stiffener\n        lether: body') });
    await expectLayRefused(job, `${job.order}:17`, /"lether" is not known here/);
  });

  it('when anchors multiply without end, it is refused', async () => {
    const levels = Array.from(
      { length: 9 },
      (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(', ')}]`,
    );
    const job = jobWith({ order: `a0: &a0 [lol]\n${levels.join('\n')}\n${ORDER}` });
    await expectLayRefused(job, job.order, /alias/);
  });

  it('when a number is not finite, it is refused', async () => {
    const job = jobWith({ order: ORDER.replace('length: 90', 'length: .inf') });
    await expectLayRefused(job, `${job.order}:17`, /length/);
  });

  it('when it names a pattern file that is not there, it names that file', async () => {
    const job = jobWith({ order: withPattern('nowhere.svg', 'plate') });
    await expectLayRefused(job, join(dirname(job.order), 'nowhere.svg'), /no such file/);
  });

  it('when it names a piece that the pattern file does not have, it names both and the near one', async () => {
    const job = jobWith({ order: withPattern('plate.svg', 'plaet') });
    writeFileSync(
      join(dirname(job.order), 'plate.svg'),
      '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><path id="plate" d="M10 10H70V100H10Z"/></svg>',
    );
    await expectLayRefused(job, 'plate.svg', /"plaet".*"plate"/);
  });

  it('when it names an article file that is not there, it names that file', async () => {
    const job = jobWith({ order: `${ORDER}  - { file: gone.article.yaml, sets: 1 }\n` });
    await expectLayRefused(job, join(dirname(job.order), 'gone.article.yaml'), /no such file/);
  });

  it('when it names a hide that is not there, it names that file', async () => {
    const job = jobWith({ order: ORDER.replace('panel.hide.json', 'gone.hide.json') });
    await expectLayRefused(job, join(dirname(job.order), 'gone.hide.json'), /no such file/);
  });

  it('when it asks for as many sets with straps in lanes as fit, it says what to ask for instead', async () => {
    const strap = ORDER.replace('part: stiffener', 'part: strap\n        lane: true');
    const job = jobWith({ order: strap.replace('keep:', 'mode: sets\nkeep:') });
    await expectLayRefused(
      job,
      job.order,
      /straps in lanes .* give a number of sets and the mode "place all"/,
    );
  });

  it('when it asks to fill the hide, it is laid', async () => {
    const job = jobWith({ order: ORDER.replace('keep:', 'mode: fill\nkeep:') });
    const run = await lay(job);
    expect(run.status, run.stderr).toBe(0);
    expect(JSON.parse(readFileSync(job.layout, 'utf8'))).toMatchObject({ format: 'hidebound/layout@1' });
  });

  it('when a piece is larger than every hide, the rest is laid, the piece is named, and it ends with 1', async () => {
    const tooLarge = `      - name: table top\n        leather: body\n        part: stiffener\n        rectangle: { width: 700, length: 900 }\n`;
    const job = jobWith({ order: ORDER + tooLarge });
    const run = await lay(job);
    expect(run.status, run.stderr).toBe(1);
    expect(run.stdout).toMatch(
      /error: .*"table top" of tag \(2 of them\) is larger than every hide of its leather; give a larger hide/,
    );
    expect(JSON.parse(readFileSync(job.layout, 'utf8'))).toMatchObject({ format: 'hidebound/layout@1' });
  });
});

function withPattern(file: string, piece: string): string {
  return ORDER.replace('rectangle: { width: 60, length: 90 }', `pattern: ${file}\n        piece: ${piece}`);
}

describe('a hide that can not be used', () => {
  it.each([
    ['crosses itself', closed([0, 0], [600, 0], [0, 400], [600, 400]), /crosses itself at this place/],
    ['has no area', closed([0, 0], [600, 0], [300, 0]), /no area|crosses itself/],
    [
      'does not close',
      { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 9] }], closed: false },
      /closed|does not end/,
    ],
  ])('when its outline %s, it says so', async (_, outline, words) => {
    const job = jobWith({ hide: { ...HIDE, outline } });
    await expectLayRefused(job, job.hide, words);
  });

  it('when a flaw lies outside the outline, it names the flaw', async () => {
    const flaws = [{ id: 'hole-7', kind: 'hole', shape: { kind: 'point', at: [900, 200], radiusMm: 5 } }];
    const job = jobWith({ hide: { ...HIDE, flaws } });
    await expectLayRefused(job, job.hide, /hole-7.*outside the outline; move it/);
  });

  it.each([
    ['empty', '', /empty/],
    ['cut short', JSON.stringify(HIDE).slice(0, 90), /stops in the middle/],
    [
      'with a coordinate that is no number',
      JSON.stringify(HIDE).replace('[600,0]', '[NaN,0]'),
      /JSON|coordinate/,
    ],
    [
      'with an infinite coordinate',
      JSON.stringify(HIDE).replace('[600,0]', '[1e999,0]'),
      /coordinate|number/,
    ],
    ['with an absurd coordinate', JSON.stringify(HIDE).replace('[600,0]', '[6e12,0]'), /coordinate/],
    ['with an unknown key', JSON.stringify({ ...HIDE, colour: 'red' }), /"colour" is not known/],
  ])('when it is %s, it says so', async (_, hideText, words) => {
    const job = jobWith({ hideText });
    await expectLayRefused(job, job.hide, words);
  });
});

describe('a layout that can not be used', () => {
  it('when it is no layout, check and sheet say so', async () => {
    const job = jobWith({});
    for (const args of [
      ['check', job.layout],
      ['sheet', job.layout, '--pdf', join(folder, 'never.pdf')],
    ]) {
      expectRefused(await hideboundHere(args), job.layout, /format/);
    }
  });

  it('when its hide is gone, it names the file that is missing', async () => {
    const job = jobWith({});
    expect((await lay(job)).status).toBe(0);
    const moved = join(folder, 'alone.layout.json');
    writeFileSync(moved, readFileSync(job.layout));
    const run = await hideboundHere(['check', moved]);
    expect(expectOneSentence(run)).toMatch(/panel\.hide\.json.*no such file/);
    expect(run.status).toBe(3);
  });
});
