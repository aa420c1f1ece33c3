import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEMO, closed, expectOneSentence, expectRefused, hideboundHere, testFolder } from './cli-support.js';

const folder = testFolder();

/** The demo, copied, so that files can be written beside it. */
function demo(): string {
  const at = mkdtempSync(join(folder, 'card-'));
  cpSync(DEMO, at, { recursive: true });
  return at;
}

interface Amount {
  readonly amount: string;
}
interface Told {
  readonly result: {
    readonly card: {
      readonly sheet: {
        readonly customers: readonly { readonly for: string }[];
        readonly articles: readonly {
          readonly article: string;
          readonly price: { readonly low: Amount; readonly likely: Amount; readonly high: Amount };
        }[];
      };
      readonly leathers: readonly {
        readonly leather: string;
        readonly piecesMm2: number;
        readonly needMm2: { readonly low: number; readonly likely: number; readonly high: number };
        readonly byLastYieldMm2?: number;
        readonly offers: readonly { readonly name: string }[];
        readonly stock: {
          readonly enough: string;
          readonly hides: readonly { readonly id: string; readonly isTaken: boolean }[];
        };
      }[];
      readonly hardware: readonly { readonly name: string; readonly quantity: number }[];
      readonly threads: readonly { readonly name: string; readonly quantity: number }[];
      readonly hours: number;
    };
  };
}

async function told(args: readonly string[]): Promise<Told> {
  const run = await hideboundHere([...args, '--json']);
  expect(run.status, run.stderr).toBe(0);
  return JSON.parse(run.stdout) as Told;
}

let at: string;
beforeAll(() => {
  at = demo();
});

describe('hidebound card ARTICLE', () => {
  it('when four saddlebags are asked for, it tells price, leather, stock and what to have ready', async () => {
    const { result } = await told(['card', join(at, 'saddlebag.article.yaml'), '--sets', '4', '--stock', at]);
    const { card } = result;
    // By the article file, times four.
    expect(card.hardware).toEqual([
      { name: 'roller buckle 20 mm', quantity: 12 },
      { name: 'D ring 20 mm', quantity: 16 },
    ]);
    expect(card.threads).toEqual([{ name: 'linen 18/3', quantity: 72_000 }]);
    expect(card.hours).toBe(16);
    const [price] = card.sheet.articles.map((each) => each.price);
    expect(Number(price!.low.amount)).toBeLessThanOrEqual(Number(price!.likely.amount));
    expect(Number(price!.likely.amount)).toBeLessThanOrEqual(Number(price!.high.amount));
    // Rounded up to 0.50, as the demo's workshop does.
    expect(Number(price!.likely.amount) * 2).toBe(Math.round(Number(price!.likely.amount) * 2));
    for (const { needMm2, piecesMm2 } of card.leathers) {
      expect(needMm2.low).toBeGreaterThanOrEqual(piecesMm2);
      expect(needMm2.likely).toBeLessThanOrEqual(needMm2.high);
    }
    // Of the demo's hides, the bend is dark brown and thick, side and shoulder natural and thinner.
    const ids = (leather: string) =>
      card.leathers
        .find((each) => each.leather === leather)!
        .stock.hides.map(({ id }) => id)
        .sort();
    expect(ids('body')).toEqual(['shoulder-0231-b', 'side-0231-a']);
    expect(ids('straps')).toEqual(['bend-0198-c']);
  });

  it('when another colour is asked for, hides and offers of the old one do not suit', async () => {
    const args = ['card', join(at, 'saddlebag.article.yaml'), '--stock', at, '--colour', 'body=green'];
    const { leathers } = (await told(args)).result.card;
    const body = leathers.find(({ leather }) => leather === 'body')!;
    expect(body.stock).toMatchObject({ enough: 'no', hides: [] });
    expect(body.offers.map(({ name }) => name)).not.toContain('natural double shoulder');
    const run = await hideboundHere([...args.slice(0, -1), 'bodice=green']);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('There is no leather "bodice" to give a colour');
  });

  it('when the article was made before, its leather is told as it was then, too', async () => {
    const { leathers } = (await told(['card', join(at, 'pump-strap.article.yaml'), '--sets', '6'])).result
      .card;
    expect(leathers[0]!.byLastYieldMm2).toBeCloseTo(leathers[0]!.piecesMm2 / 0.58, 6);
  });

  it('when a card is printed, it is one page', async () => {
    const pdf = join(at, 'card.pdf');
    const run = await hideboundHere([
      'card',
      join(at, 'saddlebag.article.yaml'),
      '--sets',
      '4',
      '--stock',
      at,
      '--pdf',
      pdf,
    ]);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(pdf, 'latin1').match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
  });

  it('when customers order together, one order has them all, and lay goes on from it', async () => {
    const strap = join(at, 'pump-strap.article.yaml');
    const order = join(at, 'both.order.yaml');
    const run = await hideboundHere([
      'card',
      strap,
      '--sets',
      '2',
      '--for',
      'a club',
      '--join',
      `${strap}:3:a friend`,
      '--stock',
      at,
      '--order',
      order,
      '--date',
      '2026-03-02',
    ]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain('goes on from there');
    const layout = join(at, 'both.layout.json');
    const laid = await hideboundHere(['lay', order, '--effort', '0', '--out', layout]);
    expect(laid.status, laid.stderr).toBe(0);
    const cost = await hideboundHere(['cost', layout, '--json']);
    const { result } = JSON.parse(cost.stdout) as {
      result: { cost: { customers: { for: string }[]; hides: unknown[] } };
    };
    expect(result.cost.customers.map((each) => each.for)).toEqual(['a club', 'a friend']);
    expect(result.cost.hides).toHaveLength(1);
    const again = await hideboundHere(['card', strap, '--order', order]);
    expect(again.status).toBe(4);
    expect(expectOneSentence(again)).toContain('There is such an order already');
  }, 60_000);

  it('when the order goes to another folder, the article is written out and its patterns are found', async () => {
    const other = join(at, 'orders');
    mkdirSync(other, { recursive: true });
    const order = join(other, 'straps.order.yaml');
    const run = await hideboundHere([
      'card',
      join(at, 'pump-strap.article.yaml'),
      '--stock',
      at,
      '--order',
      order,
    ]);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(order, 'utf8')).toContain('../patterns/pump-strap.svg');
    const laid = await hideboundHere([
      'lay',
      order,
      '--effort',
      '0',
      '--workshop',
      join(at, 'workshop.yaml'),
    ]);
    expect(laid.status, laid.stderr).toBe(0);
  }, 60_000);

  it('when a layout is done, its yield goes into the article, and only that', async () => {
    const own = demo();
    const article = join(own, 'plate.article.yaml');
    const text = `# Kept.\nformat: hidebound/article@1\nname: plate\ngoods: plate\nleathers: { body: {} }\npieces:\n  - { name: plate, leather: body, part: stiffener, rectangle: { width: 100, length: 100 } }\nlastYield: 0.9 # of old\n`;
    writeFileSync(article, text);
    // A strip of 100 × 50 mm beyond the plate is left, too small to keep: with edge and gap 0 all 1.5 dm² are used up.
    const hide = {
      format: 'hidebound/hide@1',
      id: 'p',
      cut: 'panel',
      outline: closed([0, 0], [150, 0], [150, 100], [0, 100]),
      backbone: [
        [1, 1],
        [149, 1],
      ],
    };
    writeFileSync(join(own, 'p.hide.json'), JSON.stringify(hide));
    const order = join(own, 'plate.order.yaml');
    writeFileSync(
      order,
      `format: hidebound/order@1\nname: one\ndate: "2026-01-05"\ncutting: { method: hand knife, gap: 0, edge: 0, void: 0, kerf: 0 }\nkeep: [90, 90]\nleathers: { body: { hides: [p.hide.json] } }\narticles:\n  - { file: plate.article.yaml, sets: 1 }\n`,
    );
    const layout = join(own, 'plate.layout.json');
    expect((await hideboundHere(['lay', order, '--effort', '0', '--out', layout])).status).toBe(0);
    const run = await hideboundHere(['card', article, '--last-yield', layout]);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(article, 'utf8')).toBe(text.replace('0.9', '0.667'));
    const wrong = await hideboundHere(['card', join(own, 'pump-strap.article.yaml'), '--last-yield', layout]);
    expect(wrong.status).toBe(3);
    expect(expectOneSentence(wrong)).toContain('The layout holds no pieces of "pump strap"');
  }, 60_000);
});

describe('bad input', () => {
  it('when the last yield is 0, that is said, and no card is written', async () => {
    const file = join(at, 'pump-strap-0.article.yaml');
    writeFileSync(file, readFileSync(join(at, 'pump-strap.article.yaml'), 'utf8').replace('0.58', '0'));
    const pdf = join(at, 'zero.pdf');
    const run = await hideboundHere(['card', file, '--pdf', pdf]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toContain('The last yield of "pump strap" is 0');
    expect(existsSync(pdf)).toBe(false);
  });

  it('when two articles ask different things of one leather, that is said', async () => {
    const file = join(at, 'thin.article.yaml');
    writeFileSync(
      file,
      readFileSync(join(at, 'pump-strap.article.yaml'), 'utf8')
        .replace('name: pump strap', 'name: thin strap')
        .replace('3.2-4.2 mm', '2.0-2.4 mm'),
    );
    const run = await hideboundHere(['card', join(at, 'pump-strap.article.yaml'), '--join', `${file}:1`]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toContain(
      '"thin strap" asks for another thickness of the leather "straps"',
    );
  });

  it.each([['thin.article.yaml:0'], ['no-ending:2']])('when --join is %s, it ends with 2', async (join_) => {
    const run = await hideboundHere(['card', join(at, 'pump-strap.article.yaml'), '--join', join_]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('--join');
  });

  it('when the file is an order, it is told what it is', async () => {
    const file = join(at, 'bicycle-goods.order.yaml');
    expectRefused(await hideboundHere(['card', file]), file, /an article file \(.article.yaml\) is wanted/);
  });

  it('when the day is none, it ends with 2', async () => {
    const run = await hideboundHere(['card', join(at, 'pump-strap.article.yaml'), '--date', '2026-13-40']);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toContain('write a day as 2026-03-21');
  });
});
