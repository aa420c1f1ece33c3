import type { WorkerHandle } from '@hidebound/geometry/parallel';
import { describe, expect, test } from 'vitest';
import { plainArticle, plainOrder, plainOrderPiece } from '../../testing/plain.js';
import { resolveOrder } from '../../order/resolve-order.js';
import { resolvePieces } from '../../pieces/resolve-pieces.js';
import { DEFAULT_WORKSHOP } from '../../workshop/default-workshop.js';
import type { OrderArticle } from '../../model/order.js';
import type { Offer } from '../../model/workshop-rules.js';
import type { Workshop } from '../../model/workshop.js';
import { squareFeetToMm2 } from '../../units/area.js';
import { quickEstimate, usableShareOf } from '../estimate/quick-estimate.js';
import { lossPiecesOf, quickNeed } from '../estimate/quick-need.js';
import { buyablesFor } from './buyable.js';
import { purchaseAnswer } from './buying-answer.js';
import { cutThatHolds } from './cut-that-holds.js';
import { purchasesOf } from './purchase.js';
import { runTrial } from './run-trial.js';
import type { TrialInput, TrialOutcome } from './run-trial.js';
import { runTrials } from './run-trials.js';
import { serveTrials } from './serve-trials.js';

function offer(name: string, more: Partial<Offer> = {}): Offer {
  return {
    name,
    cut: 'double shoulder',
    tannage: 'vegetable',
    colour: 'natural',
    areaMm2: { min: squareFeetToMm2(12), max: squareFeetToMm2(15) },
    price: { amount: '10.00', currency: 'EUR' },
    per: 'ft2',
    source: 'test',
    ...more,
  };
}

const WORKSHOP: Workshop = { ...DEFAULT_WORKSHOP, offers: [offer('shoulder')] };

/** Eight pieces of 200 x 300 mm, 480,000 mm² together. */
const PANELS = plainArticle('panel', [
  plainOrderPiece('panel', {
    from: { kind: 'rectangle', widthMm: 200, lengthMm: 300, cornerRadiusMm: 0 },
    count: 8,
    direction: { rule: 'along', angleDeg: 0, toleranceDeg: 5, halfTurn: true },
  }),
]);

function jobOf(articles: readonly OrderArticle[], workshop = WORKSHOP) {
  const leathers = [{ name: 'body', tannage: 'veg', colour: 'Natural', hides: [] }];
  const order = resolveOrder(plainOrder(articles, { leathers }), workshop, { hidesLater: true });
  const { pieces } = resolvePieces(order, () => ({ pieces: [] }));
  const [purchase] = purchasesOf(order, pieces).purchases;
  const { buyables, diagnostics } = buyablesFor(purchase!, workshop);
  const inputs = buyables.map((buyable): TrialInput => ({
    order: purchase!.order,
    pieces,
    workshop,
    rule: buyable.rule,
    areaMm2: buyable.areaMm2,
    usableShare: usableShareOf(buyable, workshop),
    seed: 1,
    piecesMm2: purchase!.piecesMm2,
  }));
  return { order, pieces, purchase: purchase!, buyables, diagnostics, inputs };
}

/** A worker in the same thread that answers after a while; the first one made is the slower one. */
function fakeWorkers(): () => WorkerHandle {
  let made = 0;
  return () => {
    const isSlow = made++ === 0;
    let isOver = false;
    let toWorker: (message: unknown) => void = () => undefined;
    let toOwner: (message: unknown) => void = () => undefined;
    serveTrials({
      post: (message) => {
        setTimeout(() => isOver || toOwner(message), isSlow ? 30 : 0);
      },
      onMessage: (listener) => {
        toWorker = listener;
      },
    });
    return {
      post: (message) => setTimeout(() => isOver || toWorker(structuredClone(message)), 0),
      onMessage: (listener) => {
        toOwner = listener;
      },
      onFailure: () => undefined,
      terminate: () => {
        isOver = true;
      },
    };
  };
}

describe('one trial', () => {
  const { inputs } = jobOf([PANELS]);
  const [input] = inputs;

  test('when it runs twice, it comes to the same; another number comes to another', () => {
    const first = runTrial(input!, 1);
    expect(runTrial(structuredClone(input!), 1)).toEqual(first);
    expect(runTrial(input!, 2).hidesMm2).not.toEqual(first.hidesMm2);
  });

  test('when all is laid, hides are within the offer’s areas, and the need within what they have together', () => {
    for (let number = 1; number <= 3; number++) {
      const { needed, hidesMm2, needMm2, missed } = runTrial(input!, number);
      expect(missed).toEqual([]);
      expect(hidesMm2).toHaveLength(needed!);
      const together = hidesMm2.reduce((sum, area) => sum + area, 0);
      expect(needMm2).toBeGreaterThan(480_000);
      expect(needMm2).toBeLessThanOrEqual(together);
      for (const area of hidesMm2) {
        // Outlines as rings are off by less than half a per cent.
        expect(area / 92_903.04).toBeGreaterThan(12 * 0.995);
        expect(area / 92_903.04).toBeLessThan(15 * 1.005);
      }
    }
  });

  test('when twice as much is to be made, no trial needs less', () => {
    const twice = jobOf([{ ...PANELS, sets: 2 }]).inputs[0]!;
    for (let number = 1; number <= 2; number++) {
      expect(runTrial(twice, number).needMm2).toBeGreaterThan(runTrial(input!, number).needMm2);
    }
  });
});

describe('trials shared among workers', () => {
  const { inputs } = jobOf([PANELS], {
    ...WORKSHOP,
    offers: [offer('shoulder'), offer('bend', { cut: 'bend' })],
  });

  test('when there is one worker or several, fast or slow, the outcomes are the same', async () => {
    const one = await runTrials({ inputs, workers: 1, createWorker: fakeWorkers(), trials: 2 });
    const three = await runTrials({ inputs, workers: 3, createWorker: fakeWorkers(), trials: 2 });
    expect(three).toEqual(one);
    expect(one.map((own) => own.map(({ number }) => number))).toEqual([
      [1, 2],
      [1, 2],
    ]);
  });

  test('when they are stopped, what is done counts, from the first trial on without a gap', async () => {
    const end = new AbortController();
    let seen = 0;
    const rounds = await runTrials({
      inputs,
      workers: 2,
      createWorker: fakeWorkers(),
      signal: end.signal,
      onTrial: () => {
        seen++;
        if (seen === 3) end.abort();
      },
    });
    for (const own of rounds) expect(own.map(({ number }) => number)).toEqual(own.map((_, i) => i + 1));
    expect(rounds.flat().length).toBeLessThanOrEqual(3);
  });

  test('when a worker breaks, it is told', async () => {
    const broken = { ...inputs[0]!, pieces: [] };
    await expect(
      runTrials({ inputs: [broken], workers: 1, createWorker: fakeWorkers(), trials: 1 }),
    ).rejects.toMatchObject({ code: 'worker-failed' });
  });

  test('when there is neither a number nor a way to stop, they are refused', async () => {
    await expect(runTrials({ inputs, workers: 1, createWorker: fakeWorkers() })).rejects.toMatchObject({
      code: 'bad-argument',
    });
  });
});

describe('what is bought', () => {
  test('when sets are as many as fit, a number is asked for', () => {
    expect(() => jobOf([{ ...PANELS, sets: 'as many as fit' }])).toThrow(/give a number of sets/);
  });

  test('when the order asks for no piece, there is nothing to buy', () => {
    expect(() => jobOf([{ ...PANELS, sets: 0 }])).toThrow(/nothing to buy/);
  });

  test('when leathers ask for the same, they are bought as one; a leather without pieces is told', () => {
    const leathers = [
      { name: 'body', colour: 'natural', hides: [] },
      { name: 'dyed', colour: 'natural', hides: [] },
      { name: 'straps', colour: 'black', hides: [] },
      { name: 'unused', hides: [] },
    ];
    const articles = ['body', 'dyed', 'straps'].map((leather) =>
      plainArticle(leather, [plainOrderPiece('piece', { leather })]),
    );
    const order = resolveOrder(plainOrder(articles, { leathers }), WORKSHOP, { hidesLater: true });
    const { pieces } = resolvePieces(order, () => ({ pieces: [] }));
    const { purchases, diagnostics } = purchasesOf(order, pieces);
    expect(purchases.map((own) => own.leathers)).toEqual([['body', 'dyed'], ['straps']]);
    // 60 x 100 mm each.
    expect(purchases[0]!.piecesMm2).toBeCloseTo(12_000, 6);
    expect(diagnostics.map(({ code, params }) => [code, params['leather']])).toEqual([
      ['leather-without-pieces', 'unused'],
    ]);
  });

  test('when offers differ in tannage, colour or thickness, only those that suit are taken', () => {
    const offers = [
      offer('right'),
      offer('chrome', { tannage: 'chrome' }),
      offer('black', { colour: 'black' }),
      offer('not told', { tannage: undefined!, colour: undefined! }),
    ];
    expect(jobOf([PANELS], { ...WORKSHOP, offers }).buyables.map(({ name }) => name)).toEqual([
      'right',
      'not told',
    ]);
  });

  test('when no offer suits, or there is none, usual cuts stand in without prices, and that is told', () => {
    for (const [offers, code] of [
      [[], 'no-offers'],
      [[offer('black', { colour: 'black' })], 'no-offer-suits'],
    ] as const) {
      const { buyables, diagnostics } = jobOf([PANELS], { ...WORKSHOP, offers });
      expect(buyables.map(({ name }) => name).sort()).toEqual(['bend', 'double shoulder', 'side']);
      expect(buyables.every((own) => own.offer === undefined)).toBe(true);
      expect(diagnostics.map((own) => own.code)).toEqual([code]);
    }
  });

  test('when an offer names a cut or grade that no table has, it is refused', () => {
    expect(() => jobOf([PANELS], { ...WORKSHOP, offers: [offer('x', { cut: 'sail' })] })).toThrow(/"sail"/);
    expect(() => jobOf([PANELS], { ...WORKSHOP, offers: [offer('x', { grade: 'Q' })] })).toThrow(/"Q"/);
  });

  test('when a piece is larger than what is offered, the smallest cut that holds it is named', () => {
    const apron = plainArticle('apron', [
      plainOrderPiece('apron', {
        from: { kind: 'rectangle', widthMm: 600, lengthMm: 1500, cornerRadiusMm: 0 },
      }),
    ]);
    const { purchase, pieces, inputs } = jobOf([apron]);
    const { missed } = runTrial(inputs[0]!, 1);
    expect(missed.map(({ piece, reason }) => [piece, reason])).toEqual([
      ['apron', 'larger-than-every-sheet'],
    ]);
    const cut = cutThatHolds(purchase, pieces, missed[0]!, WORKSHOP);
    const row = WORKSHOP.cuts.find(({ name }) => name === cut)!;
    expect(row.lengthMm.max).toBeGreaterThan(1500);
    expect(row.widthMm.max).toBeGreaterThan(600);
  });
});

/** Trials that all come to the same. */
function outcomes(needMm2: number, count = 30): TrialOutcome[] {
  return Array.from({ length: count }, (_, i) => ({
    number: i + 1,
    hidesMm2: [needMm2],
    needed: 1,
    needMm2,
    missed: [],
  }));
}

describe('the answer', () => {
  const ft2 = squareFeetToMm2;
  const { purchase, buyables, pieces } = jobOf([PANELS], {
    ...WORKSHOP,
    offers: [offer('dear', { price: { amount: '12.00', currency: 'EUR' } }), offer('cheap')],
  });
  const lossPieces = lossPiecesOf(purchase, pieces);
  const kindsWith = (needMm2: number) =>
    buyables.map((buyable) => ({
      buyable,
      outcomes: outcomes(needMm2),
      quick: quickNeed(
        purchase,
        lossPieces,
        { ...buyable, usableShare: usableShareOf(buyable, WORKSHOP) },
        WORKSHOP,
      ),
    }));

  test('when two offers take the same, the cheaper one comes first, at its exact cost', () => {
    const { kinds } = purchaseAnswer(purchase, kindsWith(ft2(6)), WORKSHOP);
    expect(kinds.map(({ name }) => name)).toEqual(['cheap', 'dear']);
    const level = kinds[0]!.levels.find(({ inHundred }) => inHundred === 90)!;
    expect(level.hides).toBe(1);
    // 12 to 15 ft² at 10.00 EUR.
    expect(level.cost).toEqual({
      from: { amount: '120.00', currency: 'EUR' },
      to: { amount: '150.00', currency: 'EUR' },
    });
  });

  test('when the likely need is known, a square foot in pieces costs the price over the yield', () => {
    const [first] = purchaseAnswer(purchase, kindsWith(ft2(6)), WORKSHOP).kinds;
    const yieldShare = purchase.piecesMm2 / first!.needMm2.likely;
    expect(Number(first!.truePricePerFt2!.amount)).toBeCloseTo(10 / yieldShare, 1);
  });

  test('when the three losses are told, they make up the likely need with the pieces', () => {
    const [first] = purchaseAnswer(purchase, kindsWith(ft2(8)), WORKSHOP).kinds;
    const { piecesMm2, betweenMm2, edgeMm2, flawsMm2 } = first!.losses;
    expect(piecesMm2).toBeCloseTo(480_000, 3);
    expect(piecesMm2 + betweenMm2 + edgeMm2 + flawsMm2).toBeCloseTo(first!.needMm2.likely, 3);
    for (const loss of [betweenMm2, edgeMm2, flawsMm2]) expect(loss).toBeGreaterThan(0);
  });

  test('when pieces were missed in most trials, the kind is last and no number of it is told', () => {
    const [dear, cheap] = kindsWith(ft2(6));
    const missed = [{ article: 'panel', piece: 'panel', reason: 'no-room' as const }];
    const failed = outcomes(ft2(6)).map(({ number, hidesMm2, needMm2 }) => ({
      number,
      hidesMm2,
      needMm2,
      missed,
    }));
    const { kinds } = purchaseAnswer(purchase, [dear!, { ...cheap!, outcomes: failed }], WORKSHOP);
    expect(kinds.map(({ name, holdsAll }) => [name, holdsAll])).toEqual([
      ['dear', true],
      ['cheap', false],
    ]);
    expect(kinds[1]!.levels.every(({ hides }) => hides === undefined)).toBe(true);
    expect(kinds[1]!.missed).toEqual([{ ...missed[0]!, trials: 30 }]);
  });

  test('when two offers are in two currencies, both are named', () => {
    const [first, second] = kindsWith(ft2(6));
    const foreign = {
      ...second!,
      buyable: {
        ...second!.buyable,
        offer: offer('cheap', { price: { amount: '1.00', currency: 'USD' } }),
      },
    };
    expect(() => purchaseAnswer(purchase, [first!, foreign], WORKSHOP)).toThrow(/"dear".*"cheap"/);
  });
});

describe('the quick estimate', () => {
  test('when an order is estimated, low, likely and high rise, and cost goes with the area', () => {
    const { order, pieces } = jobOf([PANELS]);
    const [estimate] = quickEstimate({ order, pieces, workshop: WORKSHOP });
    expect(estimate).toMatchObject({ leather: 'body', copies: 8 });
    const { areaMm2, cost, hides } = estimate!.kinds[0]!;
    expect(areaMm2.low).toBeGreaterThan(480_000);
    expect(areaMm2.likely).toBeGreaterThan(areaMm2.low);
    expect(areaMm2.high).toBeGreaterThan(areaMm2.likely);
    expect(hides.high).toBeGreaterThanOrEqual(hides.likely!);
    // 10.00 EUR a square foot of 92903.04 mm².
    expect(Number(cost!.likely.amount)).toBeCloseTo((10 * areaMm2.likely) / 92_903.04, 1);
  });
});
