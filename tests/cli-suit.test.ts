import { copyFileSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  DEMO,
  SMALL_HIDE,
  expectOneSentence,
  expectRefused,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';

const folder = testFolder();
const ORDER = join(DEMO, 'bicycle-goods.order.yaml');

interface Told {
  readonly result: {
    readonly suited: boolean;
    readonly hides: readonly { readonly id: string; readonly leathers: readonly string[] }[];
    readonly pieces: readonly {
      readonly piece: string;
      readonly copies: number;
      readonly fits: readonly {
        readonly hide: string;
        readonly kind: string;
        readonly work: readonly object[];
      }[];
    }[];
  };
  readonly diagnostics: readonly { readonly code: string; readonly sentence: string }[];
}

const told = (stdout: string): Told => JSON.parse(stdout) as Told;

/** An order that lists no hides yet, for a wallet of 0.9–1.6 mm. */
const PLAN = `format: hidebound/order@1
name: wallets
date: "2026-01-05"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
leathers: { main: {} }
articles:
  - name: wallet
    goods: wallet
    sets: 2
    pieces:
      - { name: outer, leather: main, part: front, rectangle: { width: 90, length: 200 } }
      - { name: pocket, leather: main, part: pocket, rectangle: { width: 90, length: 90 }, count: 3 }
`;

function hideFile(id: string, leather: object, more: object = {}): string {
  return JSON.stringify({ ...SMALL_HIDE, id, leather, ...more });
}

const THIN = { tannage: 'vegetable', temper: 'medium', thickness: { minMm: 1, maxMm: 1.2 } };
const THICK = { tannage: 'vegetable', temper: 'firm', thickness: { minMm: 3.8, maxMm: 4 } };

/** A folder with that order and a stock of these hides. */
function planWith(hides: Readonly<Record<string, string>>, order = PLAN) {
  const job = smallJob(folder, { order });
  const stock = join(job.at, 'stock');
  mkdirSync(stock);
  for (const [name, text] of Object.entries(hides)) writeFileSync(join(stock, `${name}.hide.json`), text);
  return { ...job, stock };
}

describe('hidebound suit on the demo’s order', () => {
  it('when its own hides are looked at, each fits its leather, and gussets are skived', async () => {
    const run = await hideboundHere(['suit', ORDER]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('Every piece finds a hide that fits.');
    // 4 tool rolls of 3 pieces, 4 saddlebags of 6 (two gussets), 6 protectors: counted by hand from the order.
    expect(run.stdout).toContain(
      'side-0231-a fits all 42 pieces of body; gusset skived to 1.2–2.4 mm all over.',
    );
    expect(run.stdout).toContain('shoulder-0231-b fits all 12 pieces of wraps.');
    // 8 ties, 8 saddle straps, 4 keepers, 12 long and 6 short straps, 6 washers, 6 pump straps, 6 cradles.
    expect(run.stdout).toContain('bend-0198-c fits all 56 pieces of straps.');
    expect(run.stdout).not.toContain('warning:');
  });

  it('when JSON is asked for, every piece is told against every hide', async () => {
    const { result } = told((await hideboundHere(['suit', ORDER, '--json'])).stdout);
    expect(result.suited).toBe(true);
    expect(result.hides.map(({ id }) => id)).toEqual(['side-0231-a', 'shoulder-0231-b', 'bend-0198-c']);
    for (const { fits } of result.pieces) expect(fits).toHaveLength(3);
    const gusset = result.pieces.find(({ piece }) => piece === 'gusset')!;
    expect(gusset.copies).toBe(8);
    expect(gusset.fits.map(({ kind }) => kind)).toEqual(['skive', 'skive', 'no']);
    expect(gusset.fits[0]!.work[0]).toMatchObject({ kind: 'all over', to: { minMm: 1.2, maxMm: 2.4 } });
  });

  it('when pages are asked for, they are written as PDF and as drawings', async () => {
    const at = smallJob(folder).at;
    const [pdf, svg] = [join(at, 'choosing.pdf'), join(at, 'choosing.svg')];
    const run = await hideboundHere(['suit', ORDER, '--pdf', pdf, '--page-svg', svg]);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(pdf, 'latin1').startsWith('%PDF')).toBe(true);
    const drawings = readdirSync(at).filter((name) => name.startsWith('choosing.') && name.endsWith('.svg'));
    const text = drawings.map((name) => readFileSync(join(at, name), 'utf8')).join('');
    expect(text).toContain('Choosing leather');
    expect(text).toContain('skive to 1.2–2.4 mm');
  });
});

describe('hidebound suit on a stock', () => {
  it('when the order lists no hide yet, the stock’s are tried, and those that are cut are not', async () => {
    const { order, stock } = planWith({
      thin: hideFile('thin-1', THIN),
      thick: hideFile('thick-1', THICK),
      gone: hideFile('gone-1', THIN, { state: 'cut' }),
    });
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('thin-1 fits all 8 pieces of main; pocket skived to 0.5–0.8 mm all over.');
    expect(run.stdout).toContain('Nothing of this order fits on thick-1.');
    expect(run.stdout).not.toContain('gone-1');
  });

  it('when the order’s own hide lies in the stock, too, it is one hide', async () => {
    const own = PLAN.replace('{ main: {} }', '{ main: { hides: [panel.hide.json] } }');
    const job = planWith({}, own);
    writeFileSync(job.hide, hideFile('thin-1', THIN));
    copyFileSync(job.hide, join(job.stock, 'again.hide.json'));
    const run = await hideboundHere(['suit', job.order, '--stock', job.stock, '--hide', job.hide, '--json']);
    expect(run.status, run.stderr).toBe(0);
    expect(told(run.stdout).result.hides).toMatchObject([{ id: 'thin-1', leathers: ['main'] }]);
  });

  it('when no hide fits a piece, it ends with 1 and says why', async () => {
    const { order, stock } = planWith({ thick: hideFile('thick-1', THICK) });
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.status).toBe(1);
    expect(run.stdout).toContain('2 of 2 kinds of pieces find no hide on hand: outer and pocket.');
    expect(run.stdout).toMatch(/error: No hide on hand fits "outer" of wallet .*too much to skive off/);
  });

  it('when a thickness is not known, it goes on with a warning', async () => {
    const { order, stock } = planWith({ new: hideFile('new-1', { tannage: 'vegetable', temper: 'medium' }) });
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('warning: Thickness of hide new-1 is not known; measure it');
    expect(run.stdout).toContain('measure first');
  });

  it('when the workshop has a row of its own for the goods, it counts', async () => {
    const { at, order, stock } = planWith({ thick: hideFile('thick-1', THICK) });
    writeFileSync(
      join(at, 'workshop.yaml'),
      [
        'format: hidebound/workshop@1',
        'goods:',
        '  wallet: { thickness: 3.6-4.2 mm, temper: firm }',
        '  wallet pocket: { thickness: 3.6-4.2 mm, temper: firm }',
        '',
      ].join('\n'),
    );
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('thick-1 fits all 8 pieces of main.');
  });
});

describe('hidebound suit on bad input', () => {
  it('when goods are in no table, it goes on with one sentence that names the nearest row', async () => {
    const { order, stock } = planWith(
      { thin: hideFile('thin-1', THIN) },
      PLAN.replace('goods: wallet', 'goods: walet'),
    );
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/warning: The table of goods has no row "walet".*did you mean "wallet"/);
  });

  it('when what is asked contradicts its goods, it goes on with a warning', async () => {
    const { order, stock } = planWith(
      { thick: hideFile('thick-1', THICK) },
      PLAN.replace('count: 3 }', 'count: 3, thickness: 3.2-4.0 mm }'),
    );
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.stdout).toMatch(
      /warning: Thickness asked for "pocket" of wallet is 3\.2–4\.0 mm, but wallet pocket is usually of 0\.5–0\.8 mm/,
    );
  });

  it('when a thickness is the wrong way round, it is refused', async () => {
    const { order, stock } = planWith(
      { thin: hideFile('thin-1', THIN) },
      PLAN.replace('count: 3 }', 'count: 3, thickness: 0.8-0.5 mm }'),
    );
    expectRefused(await hideboundHere(['suit', order, '--stock', stock]), order, /0\.8.*0\.5/);
  });

  it('when a figure of the workshop file is mistyped, it is refused', async () => {
    const { at, order, stock } = planWith({ thin: hideFile('thin-1', THIN) });
    const workshop = join(at, 'own.yaml');
    const figures = (name: string): void => {
      writeFileSync(workshop, `format: hidebound/workshop@1\nfigures: { "${name}": 40 }\n`);
    };
    figures('fold, thinned to');
    const right = await hideboundHere(['suit', order, '--stock', stock, '--workshop', workshop]);
    expect(right.status, right.stderr).toBe(0);
    figures('fold, thined to');
    const run = await hideboundHere(['suit', order, '--stock', stock, '--workshop', workshop]);
    expectRefused(run, workshop, /"fold, thined to".*fold, thinned to/);
  });

  it('when there is no hide at all, it ends with 2 and says how to give one', async () => {
    const { order } = planWith({});
    const run = await hideboundHere(['suit', order]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('--stock');
  });

  it('when two hides that differ have one id, they are refused', async () => {
    const job = planWith({ one: hideFile('same', THIN) });
    writeFileSync(job.hide, hideFile('same', THICK));
    const run = await hideboundHere(['suit', job.order, '--stock', job.stock, '--hide', job.hide]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toContain('have the same id "same"');
  });

  it('when a hide of the stock is broken, it is left out with a warning', async () => {
    const { order, stock } = planWith({ thin: hideFile('thin-1', THIN), broken: '{ "format": ' });
    const run = await hideboundHere(['suit', order, '--stock', stock]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/warning: .*broken\.hide\.json/);
  });

  it('when the stock is no folder, it is refused', async () => {
    const { at, order } = planWith({});
    const none = join(at, 'nowhere');
    expectRefused(await hideboundHere(['suit', order, '--stock', none]), none, /no such folder/);
  });

  it('when a page would be written over a hide, or has another format’s name, it ends with 2', async () => {
    const { order, stock, hide } = planWith({ thin: hideFile('thin-1', THIN) });
    writeFileSync(hide, hideFile('panel-1', THIN));
    const over = await hideboundHere(['suit', order, '--hide', hide, '--pdf', hide]);
    expect(over.status).toBe(2);
    expect(readFileSync(hide, 'utf8')).toBe(hideFile('panel-1', THIN));
    const wrong = await hideboundHere(['suit', order, '--stock', stock, '--pdf', 'page.svg']);
    expect(wrong.status).toBe(2);
  });
});
