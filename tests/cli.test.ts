import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { COMMANDS } from '@hidebound/cli';
import {
  DEMO,
  ROOT,
  SMALL_ORDER,
  expectOneSentence,
  hidebound,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';

const folder = testFolder();
const ORDER = join(DEMO, 'bicycle-goods.order.yaml');
const LAYOUT = join(folder, 'demo.layout.json');

interface Told {
  readonly command: string;
  readonly ok: boolean;
  readonly exitStatus: number;
  readonly result: Record<string, unknown>;
  readonly diagnostics: readonly {
    readonly code: string;
    readonly severity: string;
    readonly sentence: string;
  }[];
}

function told(stdout: string): Told {
  return JSON.parse(stdout) as Told;
}

describe('help and use', () => {
  it('when asked for help, it lists every command, an example and the exit statuses', () => {
    const run = hidebound(['--help']);
    expect(run.status).toBe(0);
    for (const { name } of COMMANDS) expect(run.stdout).toMatch(new RegExp(`^  ${name} `, 'm'));
    expect(run.stdout).toContain('130 stopped by hand');
  });

  it.each(COMMANDS.map((spec) => [spec.name, spec] as const))(
    'when asked for help on %s, it explains every option and shows an example',
    async (name, spec) => {
      const run = await hideboundHere([name, '--help']);
      expect(run.status).toBe(0);
      for (const { flags } of spec.options) expect(run.stdout).toContain(flags);
      for (const flag of ['--json', '--debug']) expect(run.stdout).toContain(flag);
      for (const example of spec.examples) expect(run.stdout).toContain(`$ ${example}`);
    },
  );

  it('when asked for its version, it says that of its package', () => {
    const { version } = JSON.parse(
      readFileSync(new URL('../packages/cli/package.json', import.meta.url), 'utf8'),
    ) as { version: string };
    expect(hidebound(['--version']).stdout).toBe(`${version}\n`);
  });

  it.each([
    ['no argument', ['check'], /Nothing to read; give a layout file \(\.layout\.json\)/],
    ['an unknown command', ['lai', ORDER], /Unknown command 'lai' \(Did you mean lay\?\)/],
    ['an unknown option', ['check', LAYOUT, '--fast'], /Unknown option '--fast'; see hidebound check --help/],
    ['a number that is none', ['lay', ORDER, '--seconds', 'soon'], /number from 0 to/],
    ['an effort below zero', ['lay', ORDER, '--effort', '-1'], /whole number from 0 to/],
    ['a page that is none', ['sheet', LAYOUT, '--page', 'A7'], /A4, A3, Letter, Tabloid/],
    ['a known length that is none', ['pieces', 'x.svg', '--known-length', 'ruler'], /ruler=100mm/],
  ])('when used with %s, it ends with 2 and says what is wrong', async (_, args, words) => {
    const run = await hideboundHere(args);
    expect(run.status).toBe(2);
    expect(run.stderr).toMatch(words);
    expect(run.stderr).not.toMatch(/\bat .*\.(js|ts):\d+/);
  });
});

describe('hidebound pieces', () => {
  // Sizes as drawn: see the comment at the top of each pattern file.
  it.each([
    // Drawn as 16.5 x 11 in.
    ['toolroll-body.svg', 'toolroll-body', 419.1, 279.4],
    ['toolroll-guard.svg', 'toolroll-guard', 400, 100],
    ['saddlebag-front.svg', 'saddlebag-front', 240, 150],
    ['saddlebag-back.svg', 'saddlebag-back', 240, 335],
    ['saddlebag-pockets.svg', 'pocket', 160, 110],
    ['tube-protector.svg', 'tube-protector', 200, 85],
    ['pump-strap.svg', 'pump-cradle', 86, 60],
  ])('when it reads %s, the piece %s is %d × %d mm', async (file, name, width, height) => {
    const run = await hideboundHere(['pieces', join(DEMO, 'patterns', file), '--json']);
    expect(run.status, run.stderr).toBe(0);
    const files = told(run.stdout).result['files'] as {
      pieces: { name: string; widthMm: number; heightMm: number }[];
    }[];
    const piece = files[0]!.pieces.find((each) => each.name === name)!;
    expect(piece.widthMm).toBeCloseTo(width, 1);
    expect(piece.heightMm).toBeCloseTo(height, 1);
  });

  it('when a known length is given, every size follows from it', async () => {
    const file = join(folder, 'unknown-scale.svg');
    writeFileSync(
      file,
      '<svg xmlns="http://www.w3.org/2000/svg" width="500" height="500"><line id="ruler" x1="0" y1="0" x2="200" y2="0"/><path id="tab" d="M10 10H110V60H10Z"/></svg>',
    );
    const run = await hideboundHere(['pieces', file, '--known-length', 'ruler=100mm', '--json']);
    expect(told(run.stdout).result).toMatchObject({ files: [{ pieces: [{ widthMm: 50, heightMm: 25 }] }] });
  });

  it('when a picture is asked for, it is written as its name says', async () => {
    for (const [name, start] of [
      ['pieces.svg', '<?xml'],
      ['pieces.pdf', '%PDF'],
    ] as const) {
      const picture = join(folder, name);
      const drawing = join(DEMO, 'patterns', 'grip-wrap.svg');
      const run = await hideboundHere(['pieces', drawing, '--picture', picture]);
      expect(run.status, run.stderr).toBe(0);
      expect(readFileSync(picture, 'latin1').startsWith(start)).toBe(true);
    }
  });

  it('when a file has no piece, it ends with 1 and says so', () => {
    const file = join(folder, 'nothing.svg');
    writeFileSync(file, '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"/>');
    const run = hidebound(['pieces', file]);
    expect(run.status).toBe(1);
    expect(run.stdout).toMatch(/warning: .*nothing\.svg/);
  });
});

describe('hidebound hide', () => {
  it('when it reads the side, it gives its areas in m² and ft² and its flaws', () => {
    const run = hidebound(['hide', join(DEMO, 'side.hide.json')]);
    expect(run.status, run.stderr).toBe(0);
    // 2.106 m² is 22.66 ft² by the international foot of 0.3048 m.
    expect(run.stdout).toMatch(/gross area +2\.106 m² \(22\.66 ft²\)/);
    expect(run.stdout).toMatch(/brand-1 +flaw: brand/);
    expect(run.stdout).toMatch(/hole-1 +flaw: hole +never to be used/);
  });

  it('when it reads the traced shoulder, the hide file that it writes is the same hide', async () => {
    const out = join(folder, 'traced.hide.json');
    expect((await hideboundHere(['hide', join(DEMO, 'shoulder-traced.svg'), '--out', out])).status).toBe(0);
    const facts = async (file: string): Promise<object> => {
      const { areas, hide } = told((await hideboundHere(['hide', file, '--json'])).stdout).result as {
        areas: { grossMm2: number; usableMm2: number };
        hide: { flaws: { id: string; kind: string; side: string }[]; zones: { id: string; kind: string }[] };
      };
      return {
        grossCm2: Math.round(areas.grossMm2 / 100),
        usableCm2: Math.round(areas.usableMm2 / 100),
        flaws: hide.flaws.map(({ id, kind, side }) => `${id} ${kind} ${side}`),
        zones: hide.zones.map(({ id, kind }) => `${id} ${kind}`),
      };
    };
    expect(await facts(out)).toEqual(await facts(join(DEMO, 'shoulder.hide.json')));
  });

  it('when a hide file is given a scale, it ends with 2: the file has its own', () => {
    const run = hidebound(['hide', join(DEMO, 'side.hide.json'), '--dpi', '90']);
    expect(run.status).toBe(2);
    expectOneSentence(run);
  });
});

describe('the whole job on the demo', () => {
  let lay: Told;

  beforeAll(() => {
    const run = hidebound(['lay', ORDER, '--effort', '1', '--out', LAYOUT, '--json']);
    expect([0, 1], run.stderr).toContain(run.status);
    lay = told(run.stdout);
  });

  it('when it lays the order with effort 1, every piece is laid and the layout is proven', () => {
    expect(lay.result).toMatchObject({ proven: true, unplaced: [] });
    expect(lay.exitStatus).toBe(0);
    expect(lay.result['placed']).toBe(lay.result['asked']);
  });

  it('when it checks the layout, it is proven', () => {
    const run = hidebound(['check', LAYOUT]);
    expect(run.status, run.stdout).toBe(0);
    expect(run.stdout).toMatch(/proven\. \d+ pieces on 3 hides keep every rule/);
  });

  it('when a piece was moved onto its neighbour, the check ends with 1 and names the piece and the cause', async () => {
    const layout = JSON.parse(readFileSync(LAYOUT, 'utf8')) as {
      placements: { hide: string; piece: string; x: number; y: number }[];
    };
    const [first, second] = layout.placements.filter(({ hide }) => hide === layout.placements[0]!.hide);
    Object.assign(first!, { x: second!.x, y: second!.y });
    const broken = join(folder, 'broken.layout.json');
    writeFileSync(broken, JSON.stringify(layout));
    const run = hidebound(['check', broken]);
    expect(run.status).toBe(1);
    expect(run.stdout).toMatch(new RegExp(`error: .*broken\\.layout\\.json.*"${first!.piece}".*lies over`));
    const data = told((await hideboundHere(['check', broken, '--json'])).stdout);
    expect(data).toMatchObject({ ok: false, exitStatus: 1, result: { proven: false } });
    expect(data.diagnostics.map(({ code }) => code)).toContain('broken-gap');
  });

  it('when the sheet is made, it is a PDF, a page drawing for each page and a true-scale drawing for each hide', () => {
    const run = hidebound([
      'sheet',
      LAYOUT,
      '--pdf',
      join(folder, 'sheet.pdf'),
      '--page-svg',
      join(folder, 'page.svg'),
      '--svg',
      join(folder, 'true.svg'),
      '--page',
      'A3',
      '--json',
    ]);
    expect(run.status, run.stderr).toBe(0);
    const written = told(run.stdout).result['written'] as string[];
    expect(written).toContain(join(folder, 'true.side-0231-a.svg'));
    expect(written).toContain(join(folder, 'page.1.svg'));
    expect(readFileSync(join(folder, 'sheet.pdf'), 'latin1').startsWith('%PDF')).toBe(true);
    // ISO 216: A3 is 297 × 420 mm.
    expect(readFileSync(join(folder, 'page.1.svg'), 'utf8')).toMatch(
      /<svg[^>]*(width="297mm" height="420mm"|width="420mm" height="297mm")/,
    );
  });

  it('when no file is asked for, the sheet ends with 2', async () => {
    const run = await hideboundHere(['sheet', LAYOUT]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/give --pdf, --page-svg or --svg/);
  });
});

describe('hidebound sheet', () => {
  it('when the sheet is asked for twice, the files are the same to the byte', async () => {
    const layout = join(ROOT, 'fixtures', 'layouts', 'hand-written.layout.json');
    const made = async (name: string): Promise<Buffer> => {
      const file = join(folder, name);
      const run = await hideboundHere(['sheet', layout, '--pdf', file, '--side', 'flesh']);
      expect(run.status, run.stderr).toBe(0);
      return readFileSync(file);
    };
    expect((await made('one.pdf')).equals(await made('two.pdf'))).toBe(true);
  });
});

/** The small order with enough pieces for the search to better its first layout. */
const SIXTEEN_PIECES = `${SMALL_ORDER.replace('sets: 2', 'sets: 8')}      - name: round
        leather: body
        part: tab
        disc: { diameter: 70 }
`;

describe('laying again', () => {
  it('when seed and effort are the same, the file is the same to the byte, whatever the number of cores', () => {
    const { at, order } = smallJob(folder, { order: SIXTEEN_PIECES });
    const laid = (effort: string, cores: string): string => {
      const out = join(at, `effort-${effort}-${cores}.layout.json`);
      const run = hidebound(['lay', order, '--effort', effort, '--cores', cores, '--out', out]);
      expect(run.status, run.stderr).toBe(0);
      return readFileSync(out, 'utf8');
    };
    const once = laid('1', '1');
    expect(laid('1', '3')).toBe(once);
    expect(placementsOf(laid('0', '1'))).not.toEqual(placementsOf(once));
  });

  it('when a placement is locked, it is kept where it is, even where the search would not lay it', async () => {
    const { at, order, layout } = smallJob(folder);
    const lay = ['lay', order, '--effort', '0'];
    expect((await hideboundHere([...lay, '--out', layout])).status).toBe(0);
    const before = JSON.parse(readFileSync(layout, 'utf8')) as StoredLayout;
    const [moved, ...others] = before.placements as [StoredPlacement, ...StoredPlacement[]];
    const locked = { ...moved, x: 250.125, y: 190.5, locked: true };
    const keep = join(at, 'keep.layout.json');
    const out = join(at, 'kept.layout.json');
    writeFileSync(keep, JSON.stringify({ ...before, placements: [locked, ...others] }));
    const run = await hideboundHere([...lay, '--seed', '5', '--keep', keep, '--out', out]);
    expect(run.status, run.stderr).toBe(0);
    const kept = placementsOf(readFileSync(out, 'utf8'));
    expect(kept).toHaveLength(2);
    const { article, piece, set, copy, mirrored, x, y } = locked;
    expect(kept).toContainEqual(
      expect.objectContaining({ article, piece, set, copy, mirrored, x, y, locked: true }),
    );
  });
});

interface StoredPlacement {
  readonly article: string;
  readonly piece: string;
  readonly set: number;
  readonly copy: number;
  readonly mirrored: boolean;
  readonly locked: boolean;
  readonly x: number;
  readonly y: number;
}

interface StoredLayout {
  readonly placements: readonly StoredPlacement[];
}

function placementsOf(layout: string): StoredLayout['placements'] {
  return (JSON.parse(layout) as StoredLayout).placements;
}
