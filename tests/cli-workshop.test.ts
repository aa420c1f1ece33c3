import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  SMALL_HIDE,
  SMALL_ORDER,
  expectRefused,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';

const folder = testFolder();
const OWN_TABLE = `format: hidebound/workshop@1
flaws: { vein: never here }
cutting: { hand knife: { gap: 7 } }
parts: { stiffener: { looks: { face: B } } }
`;
/** A vein over the right half of the panel, 300 × 400 mm, but for a rim. */
const VEIN = {
  id: 'v1',
  kind: 'vein',
  shape: {
    kind: 'line',
    line: [
      [450, 50],
      [450, 350],
    ],
    widthMm: 290,
  },
};
const VEINED_HIDE = { ...SMALL_HIDE, flaws: [VEIN] };
const BARE_ORDER = SMALL_ORDER.replace(/cutting:.*\n/, 'cutting: hand knife\n');

interface StoredLayout {
  readonly order: {
    readonly cutting: { readonly gapMm: number };
    readonly articles: readonly {
      readonly pieces: readonly { readonly looks: { readonly face: string } }[];
    }[];
  };
  readonly placements: readonly { readonly x: number }[];
  readonly marks: {
    readonly avoidCandidates: boolean;
    readonly flawDefaults: readonly {
      readonly kind: string;
      readonly effect: { readonly isVoid: boolean };
    }[];
  };
}

function storedLayout(path: string): StoredLayout {
  return JSON.parse(readFileSync(path, 'utf8')) as StoredLayout;
}

async function usableMm2(args: readonly string[]): Promise<number> {
  const run = await hideboundHere(['hide', ...args, '--json']);
  expect(run.status, run.stderr).toBe(0);
  return (JSON.parse(run.stdout) as { result: { areas: { usableMm2: number } } }).result.areas.usableMm2;
}

describe('a workshop of the user’s own', () => {
  it('when its file is named, parts, flaws and cutting method are as it says, and the output says so', async () => {
    const job = smallJob(folder, { order: BARE_ORDER, hide: VEINED_HIDE });
    const table = join(job.at, 'ours.yaml');
    writeFileSync(table, OWN_TABLE);
    const run = await hideboundHere([
      'lay',
      job.order,
      '--effort',
      '0',
      '--out',
      job.layout,
      '--workshop',
      table,
    ]);
    expect(run.status, run.stderr + run.stdout).toBe(0);
    expect(run.stdout).toContain(`as ${table} says`);
    const layout = storedLayout(job.layout);
    expect(layout.order.cutting.gapMm).toBe(7);
    expect(layout.order.articles[0]!.pieces[0]!.looks.face).toBe('B');
    expect(layout.marks.flawDefaults.find(({ kind }) => kind === 'vein')!.effect.isVoid).toBe(true);
    // The vein's left side is at 305 mm.
    for (const { x } of layout.placements) expect(x).toBeLessThan(305);
  });

  it('when it lies beside the order, it is read without being named, and the check needs it no more', async () => {
    const job = smallJob(folder, { order: BARE_ORDER, hide: VEINED_HIDE });
    writeFileSync(join(job.at, 'workshop.yaml'), OWN_TABLE);
    expect((await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout])).status).toBe(0);
    expect(storedLayout(job.layout).order.cutting.gapMm).toBe(7);
    const away = join(job.at, 'away');
    mkdirSync(away);
    for (const name of ['test.layout.json', 'panel.hide.json'])
      copyFileSync(join(job.at, name), join(away, name));
    expect((await hideboundHere(['check', join(away, 'test.layout.json')])).status).toBe(0);
    const sheet = await hideboundHere([
      'sheet',
      join(away, 'test.layout.json'),
      '--svg',
      join(away, 'true.svg'),
    ]);
    expect(sheet.status, sheet.stderr).toBe(0);
  });

  it('when there is none, the built-in table counts', async () => {
    const job = smallJob(folder, { order: BARE_ORDER, hide: VEINED_HIDE });
    const run = await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
    expect(run.stdout).not.toMatch(/are taken as/);
    // The built-in gap of the hand knife: see docs/files.md.
    expect(storedLayout(job.layout).order.cutting.gapMm).toBe(3);
  });

  it('when a hide is shown, its usable area and its marks follow it', async () => {
    const job = smallJob(folder, { hide: VEINED_HIDE });
    const table = join(job.at, 'ours.yaml');
    writeFileSync(table, OWN_TABLE);
    expect(await usableMm2([job.hide])).toBeCloseTo(600 * 400, 0);
    // A line of 290 mm width and 300 mm length with round ends: 290 × 300 + π × 145², clipped by the panel on three sides.
    expect(await usableMm2([job.hide, '--workshop', table])).toBeLessThan(600 * 400 - 290 * 300);
    const shown = await hideboundHere(['hide', job.hide, '--workshop', table]);
    expect(shown.stdout).toMatch(/v1 +flaw: vein +never to be used/);
  });

  it('when it can not be read, it is refused by its own name and the old layout is untouched', async () => {
    const job = smallJob(folder);
    const table = join(job.at, 'ours.yaml');
    writeFileSync(table, OWN_TABLE.replace('flaws:', 'flawz:'));
    const before = readFileSync(job.layout, 'utf8');
    const run = await hideboundHere([
      'lay',
      job.order,
      '--effort',
      '0',
      '--out',
      job.layout,
      '--workshop',
      table,
    ]);
    expectRefused(run, `${table}:2`, /"flawz" is not known here. Did you mean "flaws"/);
    expect(readFileSync(job.layout, 'utf8')).toBe(before);
  });

  it('when a layout says itself what marks mean, a workshop that is given for its sheet is said to be needless', async () => {
    const job = smallJob(folder);
    const table = join(job.at, 'ours.yaml');
    writeFileSync(table, OWN_TABLE);
    expect((await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout])).status).toBe(0);
    const svg = join(job.at, 'true.svg');
    const run = await hideboundHere(['sheet', job.layout, '--svg', svg, '--workshop', table]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/ours\.yaml: This file makes no difference here/);
  });
});

describe('possible flaws that nobody has confirmed', () => {
  const candidate = { ...VEIN, kind: 'hole', confidence: 0.4 };
  const hide = { ...SMALL_HIDE, candidates: [candidate] };

  it('when they are to be avoided, no piece lies on them and the layout says so', async () => {
    const job = smallJob(folder, { hide });
    const args = ['lay', job.order, '--effort', '0', '--out', job.layout, '--avoid-unconfirmed-flaws'];
    expect((await hideboundHere(args)).status).toBe(0);
    const layout = storedLayout(job.layout);
    expect(layout.marks.avoidCandidates).toBe(true);
    for (const { x } of layout.placements) expect(x).toBeLessThan(305);
    expect((await hideboundHere(['check', job.layout])).status).toBe(0);
  });

  it('when nothing is said, they are warned of', async () => {
    const job = smallJob(folder, { hide });
    const run = await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
    expect(run.status).toBe(0);
    expect(run.stdout).toMatch(/warning: Hide panel-1 has 1 possible flaw that nobody has confirmed/);
    expect(storedLayout(job.layout).marks.avoidCandidates).toBe(false);
  });
});
