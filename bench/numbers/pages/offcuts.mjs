// Which numbers of the stock's sheet follow from its list.
import { area, count, length, money, sum } from '../reckon.mjs';

export const offcuts = {
  name: 'offcuts',
  args: ({ stock }) => ['offcuts', stock],
  unprinted: /\.corners\./,
  derive: ({ hides }) => [
    area(sum(hides.map(({ sizes }) => sizes.usableMm2)), 'usable leather of all', []),
    count([hides.length], 'how many', []),
    count([hides.filter(({ cut }) => cut === 'offcut').length], 'how many offcuts', []),
    ...hides.flatMap(({ hide, sizes }) =>
      largestOf(sizes).map((mm) => length(Math.floor(mm), 'at least', [hide])),
    ),
    ...hides
      .filter(({ price }) => price?.per === 'hide')
      .map(({ hide, price }) => money(toCoin(price), 'to the coin', [hide])),
  ],
  relations: ({ hides }) => hides.flatMap(({ hide, sizes }) => ofHide(hide, sizes)),
};

/** An offcut's share of a price is told to the coin. */
function toCoin({ amount, currency }) {
  return { amount: (Math.round(Number(amount) * 100) / 100).toFixed(2), currency };
}

/** What a hide surely holds is told in whole millimetres below. */
function largestOf({ rectangle, rectangleAlong, strip, stripAlong }) {
  const sides = [rectangle, rectangleAlong].flatMap((each) => [each?.alongMm, each?.acrossMm]);
  return [...sides, strip?.lengthMm, stripAlong?.lengthMm].filter((mm) => mm !== undefined);
}

/** The corners of a rectangle tell its sides by themselves, and it is no larger than the leather. */
function ofHide(hide, { usableMm2, ...sizes }) {
  return Object.entries(sizes)
    .filter(([, shape]) => shape?.corners !== undefined)
    .flatMap(([name, { corners, alongMm, acrossMm, lengthMm = alongMm, widthMm = acrossMm }]) => {
      const [a, b, c] = corners;
      const sides = [Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(c.x - b.x, c.y - b.y)];
      const what = `${hide}: ${name}`;
      return [
        relation(`${what}, along`, lengthMm, sides[0]),
        relation(`${what}, across`, widthMm, sides[1]),
        {
          what: `${what}, area`,
          told: lengthMm * widthMm,
          reckoned: usableMm2,
          isRight: lengthMm * widthMm <= usableMm2,
        },
      ];
    });
}

function relation(what, told, reckoned) {
  return { what, told, reckoned, isRight: Math.abs(told - reckoned) < 0.01 };
}
