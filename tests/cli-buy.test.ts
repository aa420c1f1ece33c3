import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DEMO, hidebound, hideboundHere, startHidebound, testFolder } from './cli-support.js';

const ORDER = join(DEMO, 'bicycle-goods.order.yaml');
const folder = testFolder();

interface Bought {
  readonly exitStatus: number;
  readonly result: {
    readonly trials: readonly number[];
    readonly stopped: boolean;
    readonly purchases: readonly {
      readonly leathers: readonly string[];
      readonly copies: number;
      readonly piecesMm2: number;
      readonly kinds: readonly {
        readonly name: string;
        readonly trials: number;
        readonly holdsAll: boolean;
        readonly needMm2: { readonly low: number; readonly likely: number; readonly high: number };
        readonly levels: readonly { readonly inHundred: number; readonly hides?: number }[];
      }[];
    }[];
  };
  readonly diagnostics: readonly { readonly code: string; readonly sentence: string }[];
}

function order(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** Small rectangles of one leather, which need not name hides yet. */
function smallOrder(name: string, more: { readonly sets?: string; readonly size?: string } = {}): string {
  const { sets = '2', size = '{ width: 120, length: 180 }' } = more;
  return order(
    name,
    `format: hidebound/order@1
name: Small
version: 1
date: "2026-03-02"
leathers: { body: { colour: natural, hides: [] } }
cutting: { method: hand knife, gap: 2, edge: 5, void: 2 }
mode: place all
articles:
  - name: case
    goods: case
    sets: ${sets}
    value: 1
    pieces:
      - { name: panel, leather: body, part: stiffener, rectangle: ${size}, direction: { rule: along, tolerance: 5 } }
`,
  );
}

const OFFER = `offers:
  - { name: little bend, cut: bend, colour: natural, area: 11-12 ft2, price: 10 EUR, per: ft2 }
`;

function workshop(name: string, text = OFFER): string {
  return order(name, `format: hidebound/workshop@1\n${text}`);
}

describe('buying for the demo order', () => {
  const page = join(folder, 'buying.pdf');
  const run = hidebound(['buy', ORDER, '--trials', '1', '--json', '--pdf', page]);
  const told = JSON.parse(run.stdout) as Bought;

  it('when hides are to be bought, every leather has a number of them, and the whole need covers the pieces', () => {
    expect(run.status).toBe(0);
    expect(told.result.purchases.map(({ leathers }) => leathers)).toEqual([['body', 'wraps'], ['straps']]);
    for (const { kinds, piecesMm2 } of told.result.purchases) {
      const [first] = kinds;
      expect(first!.holdsAll).toBe(true);
      expect(first!.trials).toBe(1);
      const hides = first!.levels.map((level) => level.hides!);
      expect(hides).toEqual([...hides].sort((a, b) => a - b));
      expect(first!.needMm2.low).toBeGreaterThan(piecesMm2);
      expect(first!.needMm2.high).toBeGreaterThan(first!.needMm2.likely);
    }
  });

  it('when a page is asked for, it is a PDF', () => {
    expect(readFileSync(page).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

describe('buying', () => {
  const bought = workshop('shop.yaml');
  const small = smallOrder('small.order.yaml');
  const ask = (...more: readonly string[]) => ['buy', small, '--workshop', bought, ...more];

  it('when trials are counted, one core and two give the same bytes; another draw gives other ones', async () => {
    const one = await hideboundHere(ask('--trials', '3', '--cores', '1', '--json'));
    const two = await hideboundHere(ask('--trials', '3', '--cores', '2', '--json'));
    const other = await hideboundHere(ask('--trials', '3', '--draw', '2', '--json'));
    expect(two.stdout).toBe(one.stdout);
    expect(other.stdout).not.toBe(one.stdout);
  });

  it('when it is told in words, losses stand apart and the words are those of the trade', async () => {
    const { status, stdout } = await hideboundHere(ask('--trials', '2'));
    expect(status).toBe(0);
    for (const words of [
      'Buy 1 of “little bend”, 11–12 ft² each: enough in 9',
      'Lost between pieces',
      'Lost at the edge',
      'Lost to flaws',
      'hides of chance, 2 times',
    ]) {
      expect(stdout).toContain(words);
    }
    expect(stdout).not.toMatch(/simulat|monte|seed|quantile/i);
  });

  it('when there is no time for a trial, the formula answers', async () => {
    const { status, stdout } = await hideboundHere(ask('--seconds', '0'));
    expect(status).toBe(0);
    expect(stdout).toContain('No trial layout was made yet');
    expect(stdout).toContain('Buy 1 of “little bend”');
  });

  it('when it is stopped by hand, the answer so far is given, with the status of a stop', async () => {
    const child = startHidebound(ask('--seconds', '600'), folder);
    let out = '';
    let isAsked = false;
    child.stdout!.on('data', (bytes: Buffer) => (out += bytes.toString()));
    child.stderr!.on('data', () => {
      if (!isAsked) child.kill('SIGINT');
      isAsked = true;
    });
    const status = await new Promise((done) => child.on('close', done));
    expect(status).toBe(130);
    expect(out).toContain('Stopped by hand');
    expect(out).toContain('Buy 1 of “little bend”');
  });

  it('when sets are as many as fit, a number is asked for', async () => {
    const run = await hideboundHere(['buy', smallOrder('many.order.yaml', { sets: 'as many as fit' })]);
    expect(run.status).toBe(3);
    expect(run.stderr).toContain('give a number of sets');
  });

  it('when a piece is too large for all that is offered, the answer is no, and the cut that would hold it is named', async () => {
    const large = smallOrder('large.order.yaml', { size: '{ width: 500, length: 1600 }', sets: '1' });
    const run = await hideboundHere(['buy', large, '--workshop', bought, '--trials', '1', '--json']);
    expect(run.status).toBe(1);
    const { diagnostics } = JSON.parse(run.stdout) as Bought;
    const sentence = diagnostics.find(({ code }) => code === 'piece-fits-no-offer')!.sentence;
    expect(sentence).toMatch(
      /"panel" of case found no place .* a (?:side|whole hide|back|double bend)\b.* would hold it/,
    );
  });

  it('when nothing is offered, usual cuts stand in without prices, and that is told', async () => {
    const run = await hideboundHere(['buy', smallOrder('none.order.yaml'), '--trials', '1', '--json']);
    const { diagnostics, result } = JSON.parse(run.stdout) as Bought;
    expect(diagnostics.map(({ code }) => code)).toContain('no-offers');
    expect(result.purchases[0]!.kinds.map(({ name }) => name).sort()).toEqual([
      'bend',
      'double shoulder',
      'side',
    ]);
  });

  it('when offers have two currencies, it is refused before any trial', async () => {
    const two = workshop(
      'two.yaml',
      `${OFFER}${OFFER.split('\n')[1]!.replace('little', 'other').replace('EUR', 'USD')}\n`,
    );
    const run = await hideboundHere(['buy', small, '--workshop', two, '--trials', '1']);
    expect(run.status).toBe(3);
    expect(run.stderr).toContain('little bend');
    expect(run.stderr).toContain('other bend');
  });

  it('when an offer is of a cut that no table has, the offer is named', async () => {
    const odd = workshop('odd.yaml', OFFER.replace('cut: bend', 'cut: sail'));
    const run = await hideboundHere(['buy', small, '--workshop', odd, '--trials', '1']);
    expect(run.status).toBe(3);
    expect(run.stderr).toContain('sail');
  });

  it('when the page would be written over the order, nothing is written', async () => {
    const before = readFileSync(small, 'utf8');
    const run = await hideboundHere(ask('--trials', '1', '--page-svg', small));
    expect(run.status).not.toBe(0);
    expect(existsSync(small)).toBe(true);
    expect(readFileSync(small, 'utf8')).toBe(before);
  });
});
