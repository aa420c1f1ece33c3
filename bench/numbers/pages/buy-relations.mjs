// What a result of buying must add up to.
import { sum } from '../reckon.mjs';

/** mm² of what a price is for. */
const PRICED_MM2 = { ft2: 304.8 ** 2, m2: 1e6, dm2: 1e4 };

export function buyRelations(purchases) {
  return purchases.flatMap((purchase) => purchase.kinds.flatMap((kind) => ofKind(purchase, kind)));
}

function ofKind({ piecesMm2 }, kind) {
  const { name, losses, needMm2, levels, counts, areaMm2, price } = kind;
  const named = (what) => `${name}: ${what}`;
  const found = [
    relation(named('pieces and losses'), needMm2.likely, sum(Object.values(losses)), 1),
    relation(named('pieces'), losses.piecesMm2, piecesMm2, 1e-3),
    ...levels.filter(({ hides }) => hides !== undefined).flatMap((level) => ofLevel(kind, level, named)),
    ...counts.slice(1).map((each, i) => ({
      what: named(`${each.hides} hides are enough no less often than one less`),
      told: each.inHundred,
      reckoned: counts[i].inHundred,
      isRight: each.inHundred >= counts[i].inHundred,
    })),
  ];
  if (price === undefined || kind.truePricePerFt2 === undefined || price.per === 'hide') return found;
  const perFt2 = (Number(price.amount) * PRICED_MM2.ft2) / PRICED_MM2[price.per];
  const reckoned = (perFt2 * needMm2.likely) / piecesMm2;
  return [
    ...found,
    relation(named('a ft² in pieces'), Number(kind.truePricePerFt2.amount), reckoned, 0.0051),
  ];
}

/** The fewest hides that are enough so often; their area and their cost. */
function ofLevel({ areaMm2, price, counts }, { inHundred, hides, areaMm2: bought, cost }, named) {
  const name = (what) => named(`${what}, ${inHundred} of 100`);
  const fewest = counts.find((each) => each.inHundred >= inHundred)?.hides;
  const ends = [
    ['min', 'from'],
    ['max', 'to'],
  ];
  return [
    ...(fewest === undefined ? [] : [relation(name('hides'), hides, fewest, 0)]),
    ...ends.map(([end]) => relation(name(`area ${end}`), bought[end], hides * areaMm2[end], 1)),
    ...(cost === undefined
      ? []
      : ends.map(([end, at]) =>
          relation(
            name(`cost ${at}`),
            Number(cost[at].amount),
            hides * costOfOne(price, areaMm2[end]),
            0.0051,
          ),
        )),
  ];
}

function costOfOne({ amount, per }, areaMm2) {
  return per === 'hide' ? Number(amount) : (Number(amount) * areaMm2) / PRICED_MM2[per];
}

function relation(what, told, reckoned, slack) {
  return { what, told, reckoned, isRight: Math.abs(told - reckoned) <= slack };
}
