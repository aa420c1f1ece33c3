// Which numbers of the page for buying are scales of its charts, or shares and sums of its result.
import { listed } from '../json-values.mjs';
import { count, mark, money, share, sum, versions } from '../reckon.mjs';
import { buyRelations } from './buy-relations.mjs';

const FT2_MM2 = 304.8 ** 2;
/** A chart of chances from 0 to 100 is ruled so. */
const CHANCES = [0, 25, 50, 75, 90, 100];
/** Scales of an area go by such steps. */
const STEPS_FT2 = [1, 2, 5, 10, 20, 50, 100];
/** A scale has so many steps at most. */
const MOST_STEPS = 12;

export const buy = {
  name: 'buy',
  args: ({ order }) => ['buy', order, '--trials', '2'],
  identifying: ['leathers'],
  unprinted: /\.curve\./,
  figures: ['error of a stated area'],
  derive: ({ purchases }, inputs) => [
    ...versions(inputs),
    ...CHANCES.map((chance) => mark(chance, 'scale of chances')),
    ...purchases.map(({ leathers, copies }) => count([copies], 'copies', [listed(leathers)])),
    ...purchases.flatMap(scaleOf),
    ...purchases.flatMap((purchase) => purchase.kinds.flatMap((kind) => sharesOf(purchase, kind))),
    ...together(purchases),
  ],
  relations: ({ purchases }) => buyRelations(purchases),
};

/** Losses as shares of all that is needed. */
function sharesOf({ leathers }, { name, losses }) {
  const parts = Object.values(losses);
  return parts.map((part) => share(part / sum(parts), 'losses', [name, ...leathers]));
}

function scaleOf({ kinds }) {
  const areas = kinds.flatMap(({ curve }) => curve.map(({ areaMm2 }) => areaMm2 / FT2_MM2));
  const [least, most] = [Math.min(...areas), Math.max(...areas)];
  const step = STEPS_FT2.find((each) => (most - least) / each <= MOST_STEPS);
  const ticks = Array.from({ length: Math.ceil(most / step) + 1 }, (_, i) => i * step);
  return ticks.map((tick) => mark(tick, 'scale of areas'));
}

/** What is bought of the best kind of each leather, together. */
function together(purchases) {
  return ['from', 'to'].map((end) => {
    const costs = purchases.map(
      ({ kinds }) => kinds[0].levels.find(({ inHundred }) => inHundred === 90)?.cost?.[end],
    );
    const amount = sum(costs.map((cost) => Number(cost?.amount))).toFixed(2);
    return money({ amount, currency: costs[0]?.currency }, `sum of ${end}`, ['bought']);
  });
}
