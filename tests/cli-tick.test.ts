import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkLayout, hideRegion, parseHide, parseLayout, placedRegion } from '@hidebound/leather';
import type { Layout, NamedHide } from '@hidebound/leather';
import { pointInRegion } from '@hidebound/geometry';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadJudge } from '../packages/geometry/test-support/judge.js';
import { DEMO, expectOneSentence, hidebound, hideboundHere, smallJob, testFolder } from './cli-support.js';
import type { Run, SmallJob } from './cli-support.js';

const FOLDER = testFolder();

function readLayout(file: string): Layout {
  return parseLayout(readFileSync(file, 'utf8'), { file });
}

function readHides(layout: Layout, folder: string): NamedHide[] {
  return layout.hides.map(({ file }) => ({
    file,
    hide: parseHide(readFileSync(join(folder, file), 'utf8'), { file }),
  }));
}

function dataOf(run: Run): Record<string, unknown> {
  return (JSON.parse(run.stdout) as { readonly result: Record<string, unknown> }).result;
}

const stateOf = (layout: Layout, piece: string, set: number): string[] =>
  layout.placements.filter((one) => one.piece === piece && one.set === set).map(({ state }) => state);

describe('when the demo order is cut in stages', () => {
  const at = join(FOLDER, 'demo');
  const file = join(at, 'bicycle-goods.layout.json');
  const tick = (...more: string[]): Promise<Run> => hideboundHere(['tick', file, ...more]);
  /** Laying takes threads of its own, which only the compiled command has. */
  const tickAndLay = (...more: string[]): Run => hidebound(['tick', file, ...more, '--lay', '--effort', '0']);
  const proven = async (): Promise<void> => {
    const layout = readLayout(file);
    expect(checkLayout(layout, readHides(layout, at))).toMatchObject({ proven: true });
    expect((await hideboundHere(['check', file])).status).toBe(0);
  };

  beforeAll(() => {
    mkdirSync(at);
    cpSync(DEMO, at, { recursive: true });
    const laid = hidebound(['lay', join(at, 'bicycle-goods.order.yaml'), '--effort', '0', '--out', file]);
    expect([0, 1], laid.stderr).toContain(laid.status);
  });

  test('a spoiled front keeps its place, waits for being laid again, and the layout stays proven', async () => {
    const before = readFileSync(file, 'utf8');
    const run = await tick('--cut', '1-12', '--spoiled', 'front 1/1');
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    expect(run.stdout).toMatch(/ticked as cut. 1 piece is ticked as spoiled/);
    expect(readFileSync(`${file}.before`, 'utf8')).toBe(before);
    const layout = readLayout(file);
    expect(stateOf(layout, 'front', 1)).toEqual(['spoiled']);
    expect(layout.unplaced.filter(({ piece }) => piece === 'front')).toMatchObject([
      { set: 1, reason: 'not-tried' },
    ]);
    expect((await hideboundHere(['list', file])).stdout).toMatch(/front .*spoiled/);
    await proven();
  });

  test('a flaw that is found takes up what lies over it alone, and goes into the hide file', async () => {
    const layout = readLayout(file);
    const victim = layout.placements.find(
      ({ state, piece, hide }) => state === 'planned' && piece === 'body' && hide.startsWith('side'),
    )!;
    const run = await tick('--flaw', `hole ${victim.x},${victim.y} 8`, '--hide', victim.hide, '--json');
    expect(run.status, run.stderr).toBe(0);
    const { flawed, flaws } = dataOf(run) as {
      readonly flawed: readonly { readonly copy: { readonly piece: string }; readonly isCut: boolean }[];
      readonly flaws: readonly { readonly flaw: { readonly id: string } }[];
    };
    expect(flawed).toMatchObject([{ copy: { piece: 'body', set: victim.set }, isCut: false }]);
    const after = readLayout(file);
    expect(after.placements).toEqual(
      layout.placements.filter((one) => one !== victim && !isSame(one, victim)),
    );
    const [side] = readHides(after, at).filter(({ hide }) => hide.id === victim.hide);
    expect(side!.hide.flaws.map(({ id }) => id)).toContain(flaws[0]!.flaw.id);
    expect(existsSync(join(at, `${side!.file}.before`))).toBe(true);
    await proven();
  });

  test('laid again, both have places clear of all that is gone, and nothing else has moved', async () => {
    const before = readLayout(file);
    const run = tickAndLay();
    expect([0, 1], run.stderr).toContain(run.status);
    expect(run.stdout).toMatch(/laid again, and the layout is proven/);
    const after = readLayout(file);
    for (const placement of before.placements) {
      expect(after.placements.some((one) => isSame(one, placement) && one.state === placement.state)).toBe(
        true,
      );
    }
    expect(run.status).toBe(after.unplaced.length === 0 ? 0 : 1);
    await proven();
  });

  test('numbers of pieces that stayed are still theirs, and no number means another piece', () => {
    const before = JSON.parse(readFileSync(`${file}.before`, 'utf8')) as Layout;
    const after = readLayout(file);
    const namesOf = (layout: Layout): Map<number, string> =>
      new Map(
        layout.cuttingOrder
          .filter(({ kind }) => kind === 'piece')
          .map(({ number, pieces: [copy] }) => [number, JSON.stringify(copy)]),
      );
    const was = namesOf(before);
    const kept = [...namesOf(after)].filter(([number]) => was.has(number));
    expect(kept.length).toBeGreaterThan(10);
    for (const [number, copy] of kept) expect(was.get(number)).toBe(copy);
  });

  test('a second spoil of the same copy is kept beside the first', async () => {
    const layout = readLayout(file);
    const isLaid = stateOf(layout, 'front', 1).includes('planned');
    if (!isLaid) {
      // The first layout of all may have no room left; taking the tick back gives the copy its place again.
      expect((await tick('--planned', 'front 1/1')).status).toBe(0);
    }
    const run = tickAndLay('--spoiled', 'front 1/1');
    expect([0, 1], run.stderr).toContain(run.status);
    const spoiled = stateOf(readLayout(file), 'front', 1).filter((state) => state === 'spoiled');
    expect(spoiled).toHaveLength(isLaid ? 2 : 1);
    await proven();
  });

  test('a spoiled strap of a lane and a spoiled piece of a rough cut are laid again, too', async () => {
    const started = readLayout(file).roughCuts.find(({ members }) =>
      members.some(({ set, mirrored }) => set === 2 && !mirrored),
    )!;
    const run = tickAndLay('--cut', 'tie 1/1', '--spoiled', 'tie 2/2, grip 2/1');
    expect([0, 1], run.stderr).toContain(run.status);
    await proven();
    // The block lies on the table: it is the same block as before.
    const same = readLayout(file).roughCuts.find(({ id }) => id === started.id);
    expect(same?.outline).toEqual(started.outline);
  });

  test('what is left is written as hides, and with what was cut it makes up the hides', async () => {
    const judge = await loadJudge();
    const folder = join(at, 'rest');
    const run = await tick('--rest', folder, '--pdf', join(at, 'left.pdf'), '--json');
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(join(at, 'left.pdf'), 'latin1').startsWith('%PDF')).toBe(true);
    const parts = readdirSync(folder).map((name) =>
      parseHide(readFileSync(join(folder, name), 'utf8'), { file: name }),
    );
    const layout = readLayout(file);
    const { stage } = dataOf(run) as {
      readonly stage: { readonly hides: readonly { readonly hide: string; readonly lostMm2: number }[] };
    };
    for (const { hide } of readHides(layout, at)) {
      const own = parts.filter(({ parent }) => parent === hide.id);
      const gone = layout.placements
        .filter((one) => one.hide === hide.id && one.state !== 'planned')
        .map((one) => placedRegion(one, layout.pieces).region);
      if (gone.length === 0) continue;
      expect(own.length).toBeGreaterThan(0);
      const areaOf = (regions: readonly Parameters<typeof judge.shapeOf>[0][]): number =>
        regions.reduce((sum, region) => sum + judge.shapeOf(region).getArea(), 0);
      const { lostMm2 } = stage.hides.find((one) => one.hide === hide.id)!;
      const net = judge.shapeOf(hideRegion(hide)).getArea();
      // Judge: jsts 2.12.1. Hides are of about 2 m², and hold curves within 0.05 mm all round.
      expect(Math.abs(areaOf(own.map(hideRegion)) + areaOf(gone) + lostMm2 - net)).toBeLessThan(net * 1e-4);
      for (const part of own) expect(part.backbone).toEqual(hide.backbone);
    }
  });

  test('when all is cut, it is the real yield that is told', async () => {
    const run = await tick('--all', '--json');
    const { stage } = dataOf(run) as {
      readonly stage: { readonly left: number; readonly grossYield: number; readonly isDone: boolean };
    };
    const layout = readLayout(file);
    const cut = layout.placements.filter(({ state }) => state === 'cut');
    const areas = cut.map((one) =>
      layout.pieces.find((p) => p.article === one.article && p.piece === one.piece)!,
    );
    expect(stage.left).toBe(0);
    expect(stage.isDone).toBe(layout.unplaced.length === 0);
    expect(areas.length).toBe(cut.length);
    expect(stage.grossYield).toBeGreaterThan(0.3);
    expect(stage.grossYield).toBeCloseTo(layout.yield.total.grossYield, 3);
  });
});

function isSame(one: Layout['placements'][number], other: Layout['placements'][number]): boolean {
  const keys = ['article', 'piece', 'set', 'copy', 'mirrored', 'hide', 'x', 'y', 'rotationDeg'] as const;
  return keys.every((key) => one[key] === other[key]);
}

describe('when a small layout is ticked', () => {
  const first = smallJob(FOLDER);

  beforeAll(() => {
    const run = hidebound(['lay', first.order, '--effort', '0', '--out', first.layout]);
    expect(run.status, run.stderr).toBe(0);
  });

  /** The same small layout anew, with its files. */
  function laid(): SmallJob {
    const job = smallJob(FOLDER);
    cpSync(first.at, job.at, { recursive: true });
    return job;
  }
  const filesOf = (job: SmallJob): string[] =>
    readdirSync(job.at)
      .sort()
      .map((name) => `${name} ${readFileSync(join(job.at, name), 'utf8')}`);

  test('and nothing is asked, it tells what is left and writes nothing', async () => {
    const job = laid();
    const before = filesOf(job);
    const run = await hideboundHere(['tick', job.layout]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/0 of 2 pieces are cut and 2 are still to be cut/);
    expect(run.stdout).toMatch(/\[ \] 1 {3}plate, tag, set [12], copy 1 \(90 × 60 mm, body\)/);
    expect(filesOf(job)).toEqual(before);
  });

  const REFUSED: readonly (readonly [string, readonly string[], RegExp])[] = [
    ['a number that does not exist', ['--cut', '7'], /no piece with number 7 .* run from 1 to 2/],
    ['a range that runs backwards', ['--cut', '2-1'], /runs backwards/],
    [
      'a name that does not exist',
      ['--cut', 'plat 1/1'],
      /No piece .* "plat 1\/1" \(did you mean "plate"\?\)/,
    ],
    ['one piece twice', ['--cut', '1,1'], /is named twice/],
    ['one as spoiled and cut at once', ['--cut', '1-2', '--spoiled', '2'], /is named twice/],
    ['a tick back that is not there', ['--planned', '1'], /bears no tick/],
    ['nothing at all', ['--cut', ' , '], /can't be read/],
    ['a flaw off the hide', ['--flaw', '900,900,5'], /does not lie on the leather of hide panel-1/],
    ['a flaw without a size', ['--flaw', '100,100'], /can't be read/],
    ['a flaw of no size', ['--flaw', 'hole 100,100 0'], /wider than nothing/],
    ['a hide that it has not', ['--flaw', '100,100,5', '--hide', 'panel-2'], /has no hide "panel-2"/],
  ];

  test.each(REFUSED)(
    'and it is given %s, one sentence says so and nothing is written',
    async (_, more, words) => {
      const job = laid();
      const before = filesOf(job);
      const run = await hideboundHere(['tick', job.layout, ...more]);
      expect(expectOneSentence(run)).toMatch(words);
      expect(run.status).toBe(3);
      expect(filesOf(job)).toEqual(before);
    },
  );

  test('and a piece is ticked again, it is refused', async () => {
    const job = laid();
    expect((await hideboundHere(['tick', job.layout, '--cut', '1', '--spoiled', '2'])).status).toBe(0);
    const cut = await hideboundHere(['tick', job.layout, '--cut', '1']);
    expect(expectOneSentence(cut)).toMatch(/is ticked as cut already/);
    const spoiled = await hideboundHere(['tick', job.layout, '--cut', '2']);
    expect(expectOneSentence(spoiled)).toMatch(/is ticked as spoiled already/);
    expect([cut.status, spoiled.status]).toEqual([3, 3]);
  });

  test('and the ticks are taken back, the layout is what it was', async () => {
    const job = laid();
    const before = readLayout(job.layout);
    expect((await hideboundHere(['tick', job.layout, '--cut', '1', '--spoiled', '2'])).status).toBe(0);
    expect((await hideboundHere(['tick', job.layout, '--planned', '1-2'])).status).toBe(0);
    expect(readLayout(job.layout)).toEqual(before);
  });

  test('and its hide was changed or is cut, that is said and nothing is written', async () => {
    const job = laid();
    const hide = JSON.parse(readFileSync(job.hide, 'utf8')) as object;
    writeFileSync(job.hide, JSON.stringify({ ...hide, notes: 'trimmed' }));
    const changed = await hideboundHere(['tick', job.layout, '--cut', '1']);
    expect(expectOneSentence(changed)).toMatch(/was changed after this layout was made/);
    writeFileSync(job.hide, JSON.stringify({ ...hide, state: 'cut' }));
    const gone = await hideboundHere(['tick', job.layout, '--cut', '1']);
    expect(expectOneSentence(gone)).toMatch(/marked as cut/);
    expect([changed.status, gone.status]).toEqual([3, 3]);
  });

  test('and a flaw is measured from the line for setting out, it lies so far along and out from it', async () => {
    const job = laid();
    const run = await hideboundHere([
      'tick',
      job.layout,
      '--flaw',
      'scar 300,150 10',
      '--from',
      'line',
      '--json',
    ]);
    expect(run.status, run.stderr).toBe(0);
    const hide = parseHide(readFileSync(job.hide, 'utf8'), { file: job.hide });
    const [flaw] = hide.flaws;
    if (flaw?.shape.kind !== 'point') throw new Error('no spot');
    const { at } = flaw.shape;
    expect(flaw).toMatchObject({ id: 'scar-1', kind: 'scar' });
    // The panel's backbone is drawn 10 mm off its upper edge, which is its back edge: out is down, along from one end.
    expect(at.y).toBeCloseTo(150, 0);
    expect(Math.min(Math.abs(at.x - 300), Math.abs(600 - at.x - 300))).toBeLessThan(1);
    expect(pointInRegion(at, hideRegion(hide))).toBe('inside');
  });

  test('and it is written elsewhere, its hides are found from there', async () => {
    const job = laid();
    const folder = join(job.at, 'half-done');
    mkdirSync(folder);
    const out = join(folder, 'now.layout.json');
    const before = readFileSync(job.layout, 'utf8');
    expect((await hideboundHere(['tick', job.layout, '--cut', '1', '--out', out])).status).toBe(0);
    expect((await hideboundHere(['check', out])).status).toBe(0);
    expect(readFileSync(job.layout, 'utf8')).toBe(before);
  });
});
