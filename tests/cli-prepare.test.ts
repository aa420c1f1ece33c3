import { cpSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { parseHide, parseLayout } from '@hidebound/leather';
import type { Layout } from '@hidebound/leather';
import { placedRegion } from '../packages/leather/src/layout/placed-region.js';
import { loadJudge } from '../packages/geometry/src/check/test-judge.js';
import {
  DEMO,
  expectOneSentence,
  expectRefused,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';

/** The demo's order, laid once: chestnut hides that are prepared whole, and black blocks with a margin. */
const folder = testFolder();
const at = join(folder, 'job');
const layoutFile = join(at, 'bicycle-goods.layout.json');

interface PlanResult {
  readonly nothingToDo: boolean;
  readonly jobs: readonly {
    readonly name: string;
    readonly areaMm2: number;
    readonly piecesMm2: number;
    readonly liquids: readonly { readonly product: string; readonly ml: Ends }[];
    readonly hazards: readonly string[];
  }[];
  readonly untouched: readonly string[];
  readonly timetable: { readonly tasks: readonly Timed[] };
  readonly written: readonly string[];
}

interface Ends {
  readonly min: number;
  readonly max: number;
}

interface Timed {
  readonly id: string;
  readonly step: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly readyMin: number;
  readonly after: readonly string[];
  readonly begins?: string;
}

beforeAll(async () => {
  mkdirSync(at);
  cpSync(DEMO, at, { recursive: true });
  const run = await hideboundHere([
    'lay',
    join(at, 'bicycle-goods.order.yaml'),
    '--effort',
    '0',
    '--out',
    layoutFile,
  ]);
  expect(run.status, run.stderr).toBe(0);
}, 120_000);

async function planOf(args: readonly string[] = []): Promise<PlanResult> {
  const run = await hideboundHere(['prepare', layoutFile, '--json', ...args]);
  expect(run.status, run.stderr).toBe(0);
  return (JSON.parse(run.stdout) as { result: PlanResult }).result;
}

function readLayout(path: string): Layout {
  return parseLayout(readFileSync(path, 'utf8'), { file: path });
}

/** Area of a ring by the shoelace formula. */
function areaOf(ring: readonly { readonly x: number; readonly y: number }[]): number {
  return Math.abs(
    ring.reduce((sum, p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      return sum + p.x * q.y - q.x * p.y;
    }, 0) / 2,
  );
}

describe('hidebound prepare on the demo', () => {
  it('when blocks have a margin, what is prepared is their own area, and liquids follow from it', async () => {
    const { jobs, untouched } = await planOf();
    expect(untouched).toEqual(['straps']);
    expect(jobs.map(({ name }) => name)).toEqual(['body', 'wraps']);
    const wraps = jobs[1]!;
    const blocks = readLayout(layoutFile).roughCuts.filter(({ leather }) => leather === 'wraps');
    const area = blocks.reduce((sum, { outline }) => sum + areaOf(outline), 0);
    expect(wraps.areaMm2).toBeCloseTo(area, 3);
    // Built-in: 100 to 200 mL/m² a coat; 2 coats, both sides, 10 to 15 % for edges and spill.
    const black = wraps.liquids.find(({ product }) => product === 'black')!;
    expect(black.ml.min).toBeCloseTo((area / 1e6) * 2 * 2 * 100 * 1.1, 6);
    expect(black.ml.max).toBeCloseTo((area / 1e6) * 2 * 2 * 200 * 1.15, 6);
  });

  it('when a leather has no margins, whole hides are prepared less the blocks of others, and both areas are told', async () => {
    const { jobs } = await planOf();
    const body = jobs[0]!;
    const layout = readLayout(layoutFile);
    const hides = layout.yield.hides.filter(({ hide }) => hide !== 'bend-0198-c');
    const blocks = layout.roughCuts.reduce((sum, { outline }) => sum + areaOf(outline), 0);
    const whole = hides.reduce((sum, { netMm2 }) => sum + netMm2, 0);
    expect(body.areaMm2).toBeCloseTo(whole - blocks, -1);
    expect(body.piecesMm2).toBeLessThan(body.areaMm2);
  });

  it('when it is timed, one pair of hands works within its hours and no waiting is cut short', async () => {
    const { timetable } = await planOf(['--start', '2026-03-02 08:00', '--hours', '8-17']);
    const byId = new Map(timetable.tasks.map((task) => [task.id, task]));
    const inOrder = [...timetable.tasks].sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin);
    inOrder.forEach((task, i) => {
      if (i > 0) expect(task.startMin).toBeGreaterThanOrEqual(inOrder[i - 1]!.endMin);
      for (const id of task.after) expect(task.startMin).toBeGreaterThanOrEqual(byId.get(id)!.readyMin);
      expect(task.startMin % 1440).toBeGreaterThanOrEqual(8 * 60);
      expect(((task.endMin - 1) % 1440) + 1).toBeLessThanOrEqual(17 * 60);
    });
    expect(inOrder[0]!.begins).toBe('Mon 2026-03-02 8:00');
  });

  it('when a dye was weighed, the plan goes by that and says so', async () => {
    const workshop = join(at, 'weighed.yaml');
    writeFileSync(
      workshop,
      'format: hidebound/workshop@1\ncoverages:\n  black: { before: 412, after: 396, over: 20 dm2, gPerMl: 0.8 }\n',
    );
    const run = await hideboundHere(['prepare', layoutFile, '--workshop', workshop]);
    expect(run.status, run.stderr).toBe(0);
    // 16 g / 0.8 g/mL = 20 mL over 0.2 m².
    expect(run.stdout).toMatch(/^black +dye +2 +100 +\d/m);
    expect(run.stdout).toMatch(/black: measured/);
    expect(run.stdout).toMatch(/1 part dye \+ 1 part thinner/);
    expect(run.stdout).toMatch(/only with the thinner that the dye’s label names/);
  });

  it('when margins are small, it warns; when hazards are there, each has its caution on the card', async () => {
    const run = await hideboundHere(['prepare', layoutFile]);
    expect(run.stdout).toMatch(/keep 8 mm around the pieces; .* a margin of 10 mm or more/s);
    const card = run.stdout.slice(run.stdout.indexOf('wraps: black, oiled'));
    const cautions = card.split('\n\n').filter((text) => text.startsWith('Caution: '));
    for (const words of [
      /burns/,
      /Air the room/,
      /gloves/,
      /[Rr]ags/,
      /40 °C/,
      /heater and sun/,
      /Knives/,
      /Dust of any leather/,
    ]) {
      expect(
        cautions.some((text) => words.test(text.replaceAll('\n', ' '))),
        String(words),
      ).toBe(true);
    }
    for (const text of cautions)
      expect(text.replaceAll('\n', ' ').trim()).toMatch(/local rules come first\.$/);
  });

  it('when pages are asked for, the plan and a card a preparation come as PDF and pictures', async () => {
    const pdf = join(at, 'plan.pdf');
    const { written } = await planOf(['--pdf', pdf, '--page-svg', join(at, 'plan.svg')]);
    expect(readFileSync(pdf, 'latin1').startsWith('%PDF')).toBe(true);
    const pages = written.filter((path) => path.endsWith('.svg')).map((path) => readFileSync(path, 'utf8'));
    expect(pages.filter((text) => text.includes('Order of work'))).toHaveLength(2);
    expect(pages.filter((text) => text.includes('leather waits'))).toHaveLength(1);
    expect(pages.filter((text) => text.includes('Sheet 1 of 1'))).toHaveLength(2);
  });
});

describe('test pieces (judged by jsts 2.12.1, which takes no part in placing them)', () => {
  it('when the layout is written again, they lie in the waste, off all else, and the layout is proven', async () => {
    const out = join(at, 'with-test-pieces.layout.json');
    const before = readFileSync(layoutFile, 'utf8');
    await planOf(['--out', out]);
    expect(readFileSync(layoutFile, 'utf8')).toBe(before);
    const layout = readLayout(out);
    expect(layout.swatches).toHaveLength(4);
    expect({ ...layout, swatches: [] }).toEqual({ ...readLayout(layoutFile), swatches: [] });
    const check = await hideboundHere(['check', out]);
    expect(check.status, check.stdout).toBe(0);
    const judge = await loadJudge();
    for (const swatch of layout.swatches) {
      const own = judge.shapeOf({ outer: swatch.outline, openings: [] });
      const others = [
        ...layout.placements
          .filter(({ hide }) => hide === swatch.hide)
          .map((placement) => placedRegion(placement, layout.pieces).region),
        ...[...layout.roughCuts, ...layout.swatches]
          .filter((each) => each.hide === swatch.hide && each.id !== swatch.id)
          .map(({ outline }) => ({ outer: outline, openings: [] })),
      ];
      for (const other of others) {
        expect(judge.distance(own, judge.shapeOf(other))).toBeGreaterThanOrEqual(
          layout.order.cutting.gapMm - 0.002,
        );
      }
      expect(areaOf(swatch.outline)).toBeGreaterThan(1599);
    }
  });
});

describe('prepared blocks', () => {
  it('when they are written as hides, their pieces are laid again within them, proven', async () => {
    const blocks = join(at, 'prepared');
    await planOf(['--hides', blocks]);
    const names = readdirSync(blocks).filter((name) => name.endsWith('.order.yaml'));
    const layout = readLayout(layoutFile);
    expect(names).toHaveLength(layout.roughCuts.length);
    for (const [i, name] of names.entries()) {
      const base = join(blocks, name.replace('.order.yaml', ''));
      const hide = parseHide(readFileSync(`${base}.hide.json`, 'utf8'), { file: 'h' });
      expect(hide.parent).toBe('shoulder-0231-b');
      expect(hide.leather).toMatchObject({ colour: 'black', finish: 'neatsfoot oil' });
      expect((await hideboundHere(['check', `${base}.layout.json`])).status).toBe(0);
      const again = `${base}.again.layout.json`;
      const run = await hideboundHere([
        'lay',
        `${base}.order.yaml`,
        '--effort',
        '0',
        '--keep',
        `${base}.layout.json`,
        '--out',
        again,
      ]);
      expect(run.status, run.stderr).toBe(0);
      expect(readLayout(again).placements).toHaveLength(layout.roughCuts[i]!.members.length);
      expect((await hideboundHere(['check', again])).status).toBe(0);
    }
  }, 120_000);
});

describe('where there is nothing to do, or something is wrong', () => {
  it('when no leather has a preparation, it says that there is nothing to do and ends with 0', async () => {
    const job = smallJob(folder);
    await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
    const run = await hideboundHere(['prepare', job.layout]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/Nothing to do: no leather of this layout is to be prepared/);
    expect(run.stdout).toMatch(/Cut as bought: body/);
  });

  it('when a hide changed or is cut already, it is refused in one sentence and nothing is written', async () => {
    const job = smallJob(folder);
    await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
    const hide = JSON.parse(readFileSync(job.hide, 'utf8')) as Record<string, unknown>;
    const pdf = join(job.at, 'plan.pdf');
    writeFileSync(job.hide, JSON.stringify({ ...hide, notes: 'moved' }));
    expectRefused(await hideboundHere(['prepare', job.layout, '--pdf', pdf]), job.layout, /changed since/);
    writeFileSync(job.hide, JSON.stringify({ ...hide, state: 'cut' }));
    expectRefused(await hideboundHere(['prepare', job.layout, '--pdf', pdf]), job.layout, /marked as cut/);
    expect(readdirSync(job.at)).not.toContain('plan.pdf');
  });

  it.each([
    ['a start that is no day', ['--start', 'tomorrow'], /--start can't be "tomorrow"/],
    ['hours the wrong way round', ['--hours', '17-8'], /--hours can't be "17-8"/],
    ['hours too short for a step', ['--hours', '8-8:05'], /longer than the working hours/],
  ])('when it is given %s, it ends with 2 and one sentence', async (_, args, words) => {
    const run = await hideboundHere(['prepare', layoutFile, ...args]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(words);
  });
});
