import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DEMO, hidebound, testFolder } from './cli-support.js';

/** Little work everywhere: the figures must be right, the layout need not be good. */
const EFFORT = '1';
const TRIALS = '1';

interface YieldOfHide {
  readonly hide: string;
  readonly netMm2: number;
  readonly piecesMm2: number;
  readonly usedUpMm2: number;
  readonly offcutMm2: number;
}

interface Listed {
  readonly hide: string;
  readonly parent?: string;
  readonly lot?: string;
  readonly sizes: { readonly usableMm2: number };
}

interface HideCost {
  readonly hide: string;
  readonly usedUpMm2: number;
  readonly usedUp: { readonly amount: string };
  readonly left: { readonly amount: string };
  readonly price: { readonly amount: string };
}

const job = testFolder();
cpSync(DEMO, job, { recursive: true });
const order = join(job, 'bicycle-goods.order.yaml');
const layout = join(job, 'bicycle-goods.layout.json');
const stock = join(job, 'stock');
mkdirSync(stock);
for (const name of ['side', 'shoulder', 'bend']) {
  cpSync(join(DEMO, `${name}.hide.json`), join(stock, `${name}.hide.json`));
}

/** Runs one step of the job and gives its result; fails with the program's words if it does not end with 0. */
function step<Result>(...args: readonly string[]): Result {
  const run = hidebound([...args, '--json'], { cwd: job });
  expect(run.status, `${args.join(' ')}\n${run.stderr}\n${run.stdout.slice(0, 2000)}`).toBe(0);
  return (JSON.parse(run.stdout) as { readonly result: Result }).result;
}

function expectPdf(name: string): void {
  expect(readFileSync(join(job, name)).subarray(0, 5).toString('latin1')).toBe('%PDF-');
}

// Each step works on what the steps before it wrote, so they stand in one order in one file.
describe('when a job goes from choosing leather to putting the offcuts away', () => {
  test('leather is chosen: every piece finds a hide', () => {
    const { suited } = step<{ readonly suited: boolean }>('suit', order, '--pdf', 'choosing.pdf');
    expect(suited).toBe(true);
    expectPdf('choosing.pdf');
  });

  test('leather is bought: each leather of the order is told with hides that are enough', () => {
    const { purchases } = step<{
      readonly purchases: readonly {
        readonly leathers: readonly string[];
        readonly copies: number;
        readonly kinds: readonly { readonly levels: readonly { readonly hides: number }[] }[];
      }[];
    }>('buy', order, '--trials', TRIALS, '--pdf', 'buying.pdf');
    expect(purchases.flatMap(({ leathers }) => leathers).sort()).toEqual(['body', 'straps', 'wraps']);
    // The demo's order asks for 110 pieces: 4 × 5 + 4 × 9 + 6 × 2 + 6 × 1 + 6 × 4 + 6 × 2, counted by hand.
    expect(purchases.reduce((sum, { copies }) => sum + copies, 0)).toBe(110);
    for (const { kinds } of purchases) expect(kinds[0]?.levels[0]?.hides).toBeGreaterThan(0);
    expectPdf('buying.pdf');
  });

  test('the order is laid, and proven', () => {
    const { placed, asked } = step<{ readonly placed: number; readonly asked: number }>(
      ...['lay', order, '--effort', EFFORT, '--out', layout],
    );
    expect([placed, asked]).toEqual([110, 110]);
    expect(step<{ readonly pieces: number }>('check', layout).pieces).toBe(110);
  });

  test('preparing is planned, with a page and a card for each preparation', () => {
    const { jobs, untouched } = step<{
      readonly jobs: readonly { readonly leather: string; readonly pieceCount: number }[];
      readonly untouched: readonly string[];
    }>('prepare', layout, '--pdf', 'preparing.pdf');
    // 42 pieces of body, 12 of wraps: the order's counts, added up by hand; the straps are bought finished.
    expect(jobs.map(({ leather, pieceCount }) => [leather, pieceCount])).toEqual([
      ['body', 42],
      ['wraps', 12],
    ]);
    expect(untouched).toEqual(['straps']);
    expectPdf('preparing.pdf');
  });

  test('it is cut: all pieces are ticked, and the layout before stays beside it', () => {
    step('tick', layout, '--all');
    expect(existsSync(`${layout}.before`)).toBe(true);
    const { placements } = JSON.parse(readFileSync(layout, 'utf8')) as {
      readonly placements: readonly { readonly state: string }[];
    };
    expect(new Set(placements.map(({ state }) => state))).toEqual(new Set(['cut']));
    expect(step<{ readonly pieces: number }>('check', layout).pieces).toBe(110);
  });

  test('it is reckoned: what is used up and what is left make the price of each hide', () => {
    const { cost } = step<{ readonly cost: { readonly hides: readonly HideCost[] } }>(
      ...['cost', layout, '--pdf', 'cost.pdf'],
    );
    const yields = yieldsOf(layout);
    expect(cost.hides.map(({ hide }) => hide).sort()).toEqual(yields.map(({ hide }) => hide).sort());
    for (const { hide, usedUpMm2, usedUp, left, price } of cost.hides) {
      expect(Number(usedUp.amount) + Number(left.amount)).toBeCloseTo(Number(price.amount), 1);
      expect(usedUpMm2).toBeCloseTo(yields.find((each) => each.hide === hide)!.usedUpMm2, 0);
    }
    expectPdf('cost.pdf');
  });

  test('what is left is kept: the hides are cut, their offcuts on hand, and the areas balance', () => {
    const before = step<{ readonly hides: readonly Listed[] }>('offcuts', stock).hides;
    expect(before.map(({ hide }) => hide).sort()).toEqual(['bend-0198-c', 'shoulder-0231-b', 'side-0231-a']);
    step('offcuts', stock, '--take', layout, '--place', 'shelf 3');
    const { hides } = step<{ readonly hides: readonly Listed[] }>('offcuts', stock);
    const ids = hides.map(({ hide }) => hide);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { hide, netMm2, piecesMm2, usedUpMm2, offcutMm2 } of yieldsOf(layout)) {
      expect(ids).not.toContain(hide);
      expect(usedUpMm2 + offcutMm2).toBeCloseTo(netMm2, 0);
      const kept = hides.filter(({ parent }) => parent === hide);
      const keptMm2 = kept.reduce((sum, { sizes }) => sum + sizes.usableMm2, 0);
      expect(keptMm2).toBeLessThanOrEqual(netMm2 - piecesMm2);
      if (offcutMm2 > 0) expect(kept.length).toBeGreaterThan(0);
    }
    for (const { parent, lot } of hides) {
      expect(lot).toBe(before.find(({ hide }) => hide === parent)?.lot);
    }
  });

  test('the same layout is not taken twice, and the step can be undone', () => {
    const again = hidebound(['offcuts', stock, '--take', layout], { cwd: job });
    expect(again.status, again.stderr).not.toBe(0);
    const names = readdirSync(stock).sort();
    step('offcuts', stock, '--undo', 'last');
    const { hides } = step<{ readonly hides: readonly Listed[] }>('offcuts', stock);
    expect(hides.map(({ hide }) => hide).sort()).toEqual(['bend-0198-c', 'shoulder-0231-b', 'side-0231-a']);
    for (const name of ['side', 'shoulder', 'bend']) {
      const [now, then] = [stock, DEMO].map((folder) =>
        readFileSync(join(folder, `${name}.hide.json`), 'utf8'),
      );
      expect(JSON.parse(now!)).toEqual(JSON.parse(then!));
    }
    expect(readdirSync(stock).length).toBeLessThan(names.length);
  });
});

/** Areas of each hide, as the layout's file has them. */
function yieldsOf(file: string): readonly YieldOfHide[] {
  return (
    JSON.parse(readFileSync(file, 'utf8')) as { readonly yield: { readonly hides: readonly YieldOfHide[] } }
  ).yield.hides;
}
