// The orders of the calibration, each on one kind of hide.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buyablesFor, purchasesOf } from '@hidebound/leather';
import { loadOrderPlan } from '../../packages/cli/dist/io/load-order.js';
import { loadWorkshop } from '../../packages/cli/dist/io/load-workshop.js';

const here = dirname(fileURLToPath(import.meta.url));
const DEMO = join(here, '../../fixtures/demo/bicycle-goods.order.yaml');
const SMALL = join(here, 'orders/small-goods.order.yaml');

/** Sets of the articles; those that are not named are left out. */
const CASES = [
  {
    name: 'body and wraps, first grade sides',
    file: DEMO,
    leather: 'body',
    offer: 'natural side, first grade',
  },
  { name: 'straps, bends', file: DEMO, leather: 'straps', offer: 'dark brown bend' },
  {
    name: 'bags, first grade sides',
    file: DEMO,
    leather: 'body',
    offer: 'natural side, first grade',
    sets: { saddlebag: 6 },
  },
  {
    name: 'wraps and protectors, double shoulders',
    file: DEMO,
    leather: 'body',
    offer: 'natural double shoulder',
    sets: { 'grip wraps': 12, 'tube protector': 16 },
  },
  {
    name: 'many straps, bends',
    file: DEMO,
    leather: 'straps',
    offer: 'dark brown bend',
    sets: { 'trunk straps': 30, 'pump strap': 10 },
  },
  {
    name: 'protectors and guards, third grade sides',
    file: DEMO,
    leather: 'body',
    offer: 'natural side, third grade',
    sets: { 'tube protector': 20, 'grip wraps': 20 },
  },
  {
    name: 'small goods, third grade sides',
    file: SMALL,
    leather: 'small',
    offer: 'natural side, third grade',
  },
  { name: 'small goods, double shoulders', file: SMALL, leather: 'small', offer: 'natural double shoulder' },
  { name: 'belts, first grade sides', file: SMALL, leather: 'belts', offer: 'natural side, first grade' },
];

/** Each case with the input of its trials. */
export async function calibrationCases() {
  const { workshop } = loadWorkshop(undefined, DEMO);
  const cases = [];
  for (const { name, file, leather, offer, sets } of CASES) {
    const plan = await loadOrderPlan(file, workshop);
    const order = {
      ...plan.order,
      articles: plan.order.articles
        .filter((article) => sets === undefined || sets[article.name] !== undefined)
        .map((article) => ({ ...article, sets: sets?.[article.name] ?? article.sets })),
    };
    const { purchases } = purchasesOf(order, plan.pieces);
    const purchase = purchases.find(({ leathers }) => leathers.includes(leather));
    const { buyables } = buyablesFor(purchase, workshop);
    const buyable = buyables.find((own) => own.name === offer);
    const { order: own, piecesMm2 } = purchase;
    const input = {
      order: own,
      pieces: plan.pieces,
      workshop,
      rule: buyable.rule,
      areaMm2: buyable.areaMm2,
      ...(buyable.usableShare === undefined ? {} : { usableShare: buyable.usableShare }),
      seed: 1,
      piecesMm2,
    };
    cases.push({ name, order: own, pieces: plan.pieces, workshop, input, purchase, buyable });
  }
  return cases;
}
