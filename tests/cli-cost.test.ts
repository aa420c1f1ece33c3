import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  SMALL_HIDE,
  expectOneSentence,
  expectRefused,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';
import type { SmallJob } from './cli-support.js';

const folder = testFolder();

/** Two customers share a panel of 600 × 400 mm = 24 dm². Invented. */
const ORDER = `format: hidebound/order@1
name: tags
date: "2026-01-05"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [100, 100]
leathers:
  body: { hides: [panel.hide.json], tannage: vegetable }
articles:
  - name: plate
    goods: plate
    sets: 2
    for: a club
    hours: 0.5
    hardware: [{ name: ring, count: 2, price: 0.30 EUR }]
    pieces: [{ name: plate, leather: body, part: stiffener, rectangle: { width: 60, length: 90 } }]
  - name: tag
    goods: tag
    sets: 4
    for: a friend
    hours: 0.25
    pieces: [{ name: tag, leather: body, part: stiffener, rectangle: { width: 60, length: 45 } }]
`;

const WORKSHOP = `format: hidebound/workshop@1
name: An invented workshop
hourlyRate: 20 EUR
overhead: 10
profit: 10
tax: 20
rounding: { to: 0.10 EUR, way: up }
offers:
  - { name: panel, cut: side, tannage: vegetable, area: 1.8-2.2 m2, price: 40 EUR, per: m2 }
`;

/** 24 dm² at 0.50: 12 EUR. */
const PRICE = { amount: '0.50', currency: 'EUR', per: 'dm2', of: 'invoiced' };
const HIDE = { ...SMALL_HIDE, price: PRICE, area: { invoicedMm2: 240_000 } };

async function laidJob(files: { hide?: unknown; order?: string; workshop?: string } = {}): Promise<SmallJob> {
  const job = smallJob(folder, { order: files.order ?? ORDER, hide: files.hide ?? HIDE });
  writeFileSync(join(job.at, 'workshop.yaml'), files.workshop ?? WORKSHOP);
  const run = await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
  expect(run.status, run.stderr).toBe(0);
  return job;
}

interface Told {
  readonly result: {
    readonly cost: {
      readonly sum: Span;
      readonly articles: readonly {
        readonly article: string;
        readonly sets: number;
        readonly price: Span;
        readonly sum: Span;
        readonly rows: readonly { kind: string; cost?: Span }[];
      }[];
      readonly customers: readonly {
        readonly for: string;
        readonly sum: Span;
        readonly taxInSum: Span;
        readonly beforeTax: Span;
      }[];
      readonly hides: readonly {
        readonly usedUpMm2: number;
        readonly leftMm2: number;
        readonly price: Amount;
        readonly usedUp: Amount;
        readonly left: Amount;
      }[];
      readonly withoutPrice: readonly unknown[];
    };
  };
  readonly diagnostics: readonly { readonly code: string; readonly sentence: string }[];
}
interface Amount {
  readonly amount: string;
}
interface Span {
  readonly low: Amount;
  readonly likely: Amount;
  readonly high: Amount;
}

async function told(args: readonly string[], status = 0): Promise<Told> {
  const run = await hideboundHere([...args, '--json']);
  expect(run.status, run.stderr).toBe(status);
  return JSON.parse(run.stdout) as Told;
}

let job: SmallJob;
beforeAll(async () => {
  job = await laidJob();
}, 60_000);

describe('hidebound cost LAYOUT', () => {
  it('when two customers share a hide, the price follows from the layout by hand', async () => {
    const { result } = await told(['cost', job.layout]);
    const { cost } = result;
    const [hide] = cost.hides;
    expect(hide!.price.amount).toBe('12.00');
    // The hide's price is that of its 24 dm², and what is used up and what is left share it by area.
    const usedUp = (12 * hide!.usedUpMm2) / (hide!.usedUpMm2 + hide!.leftMm2);
    expect(Number(hide!.usedUp.amount)).toBeCloseTo(usedUp, 2);
    expect(Number(hide!.usedUp.amount) + Number(hide!.left.amount)).toBeCloseTo(12, 9);
    // Plates have 2 × 54 cm², tags 4 × 27 cm²: half of it each. Then work, 10 % overhead, 10 % profit, 20 % tax, up to 0.10.
    const price = (leather: number, hardware: number, hours: number): number =>
      Math.ceil(Number(((leather + hardware + hours * 20) * 1.1 * 1.1 * 1.2 * 10).toFixed(6))) / 10;
    expect(cost.articles.map((each) => Number(each.price.likely.amount))).toEqual([
      price(usedUp / 2 / 2, 0.6, 0.5),
      price(usedUp / 2 / 4, 0, 0.25),
    ]);
    for (const { sets, price: each, sum } of cost.articles) {
      expect(Number(sum.likely.amount)).toBeCloseTo(sets * Number(each.likely.amount), 9);
    }
    for (const { sum, taxInSum, beforeTax } of cost.customers) {
      expect(Number(taxInSum.likely.amount)).toBeCloseTo(Number(sum.likely.amount) / 6, 2);
      expect(Number(beforeTax.likely.amount) + Number(taxInSum.likely.amount)).toBeCloseTo(
        Number(sum.likely.amount),
        9,
      );
    }
    expect(cost.customers.map((each) => each.for)).toEqual(['a club', 'a friend']);
  });

  it('when pages are asked for, they are written, and inputs are never written over', async () => {
    const pdf = join(job.at, 'cost.pdf');
    const run = await hideboundHere(['cost', job.layout, '--pdf', pdf]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('Where the money goes');
    expect(readFileSync(pdf, 'latin1').startsWith('%PDF')).toBe(true);
    const over = await hideboundHere(['cost', job.layout, '--pdf', job.layout]);
    expect(over.status).not.toBe(0);
    expect(readFileSync(job.layout, 'utf8').startsWith('{')).toBe(true);
  });

  it('when a quote is asked for, it tells the customer prices and nothing of what lies behind them', async () => {
    const svg = join(job.at, 'quote.svg');
    const run = await hideboundHere(['cost', job.layout, '--quote', '--for', 'a friend', '--page-svg', svg]);
    expect(run.status, run.stderr).toBe(0);
    for (const text of [run.stdout, readFileSync(svg, 'utf8')]) {
      expect(text).toMatch(/tag/);
      expect(text).toContain('The prices hold for the day of the order, 2026-01-05.');
      expect(text).not.toMatch(/overhead|profit|leather|a club|plate|hour/i);
    }
    const all = await hideboundHere(['cost', job.layout, '--quote']);
    expect(all.stdout.match(/^Quote: /gm)).toHaveLength(2);
    const nobody = await hideboundHere(['cost', job.layout, '--quote', '--for', 'a fiend']);
    expect(nobody.status).toBe(2);
    expect(expectOneSentence(nobody)).toContain('one of "a club" or "a friend"');
  });

  it('when the hide was changed after it was laid, a warning says so', async () => {
    const changed = await laidJob();
    writeFileSync(changed.hide, JSON.stringify({ ...HIDE, price: { ...PRICE, amount: '0.60' } }));
    const { diagnostics } = await told(['cost', changed.layout]);
    expect(diagnostics.map(({ code }) => code)).toContain('layout-hide-changed');
  });
});

describe('what has no price', () => {
  it('when the hide has no price, that is said, and no quote is written', async () => {
    const bare = await laidJob({ hide: SMALL_HIDE });
    const { result, diagnostics } = await told(['cost', bare.layout]);
    expect(result.cost.withoutPrice).toHaveLength(1);
    expect(diagnostics.map(({ sentence }) => sentence)).toEqual([
      'The leather of body, hide panel-1 has no price, so that the sums are without it; write a price into the hide file, or an offer that suits into the workshop file.',
    ]);
    const pdf = join(bare.at, 'quote.pdf');
    const quote = await hideboundHere(['cost', bare.layout, '--quote', '--pdf', pdf]);
    expect(quote.status).toBe(1);
    expect(quote.stdout).toContain('No quote is written while something has no price.');
    expect(existsSync(pdf)).toBe(false);
  });

  it('when nothing at all has a price, it is refused', async () => {
    const order = ORDER.replace(', price: 0.30 EUR', '');
    const bare = await laidJob({ hide: SMALL_HIDE, order, workshop: 'format: hidebound/workshop@1\n' });
    const run = await hideboundHere(['cost', bare.layout]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/Nothing here has a price/);
  });
});

describe('bad input', () => {
  it('when a price per area has no area, it is refused in one sentence', async () => {
    const bare = await laidJob({ hide: { ...SMALL_HIDE, price: PRICE } });
    const run = await hideboundHere(['cost', bare.layout]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(
      /"panel-1" costs "0.50 EUR" per dm2 of the invoiced area, but has no invoiced area/,
    );
  });

  it('when prices are in two currencies, both places are named', async () => {
    const run = await hideboundHere([
      'cost',
      (await laidJob({ workshop: WORKSHOP.replace('20 EUR', '20 USD').replace('0.10 EUR', '0.10 USD') }))
        .layout,
    ]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(
      /the price of materials is in EUR, the price of an hour is in USD/,
    );
  });

  it.each([
    ['a price below 0', 'hourlyRate: 20 EUR', 'hourlyRate: -20 EUR', /"-20 EUR" is not a price/],
    [
      'a unit that nobody knows',
      'tax: 20',
      'tax: 20\nprices: [{ name: x, price: 1 EUR, per: spool }]',
      /per "spool" can't be reckoned/,
    ],
    ['an overhead below 0', 'overhead: 10', 'overhead: -10', /a percentage/],
  ])('when the workshop file has %s, it is refused with its line', async (_, from, to, words) => {
    const at = mkdtempSync(join(folder, 'workshop-'));
    const file = join(at, 'workshop.yaml');
    writeFileSync(file, WORKSHOP.replace(from, to));
    const run = await hideboundHere(['cost', job.layout, '--workshop', file]);
    expectRefused(run, file, words);
    expect(run.stderr).toContain(`${file}:`);
  });
});

describe('hidebound cost ORDER', () => {
  it('when there is no hide yet, the price is a span, with the offer that it is reckoned with', async () => {
    const at = mkdtempSync(join(folder, 'order-'));
    const order = join(at, 'tags.order.yaml');
    writeFileSync(order, ORDER.replace('hides: [panel.hide.json], ', ''));
    writeFileSync(join(at, 'workshop.yaml'), WORKSHOP);
    const { result } = await told(['cost', order]);
    const { sum } = result.cost;
    expect(Number(sum.low.amount)).toBeLessThan(Number(sum.high.amount));
    expect(Number(sum.likely.amount)).toBeGreaterThanOrEqual(Number(sum.low.amount));
    const run = await hideboundHere(['cost', order]);
    expect(run.stdout).toMatch(/What it will cost: tags/);
    expect(run.stdout).toMatch(/^body +panel /m);
    const quote = await hideboundHere(['cost', order, '--quote', '--for', 'a club']);
    expect(quote.stdout).toMatch(/The price is certain once the leather is bought/);
  });

  it('when an article is made in as many sets as fit, that is refused before there is a hide', async () => {
    const at = mkdtempSync(join(folder, 'order-'));
    const order = join(at, 'tags.order.yaml');
    writeFileSync(order, ORDER.replace('sets: 4', 'sets: as many as fit'));
    writeFileSync(join(at, 'workshop.yaml'), WORKSHOP);
    const run = await hideboundHere(['cost', order]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/give a number of sets|give "sets" a number/);
  });
});
