// What a cost sheet must add up to. Its lines are rounded to the cent one by one, so a sum of n of them may be off by
// half a cent for each, and by half a cent of its own.
import { sum } from '../reckon.mjs';

const MATERIALS = ['leather', 'thread', 'hardware', 'liquid'];
const ENDS = ['low', 'likely', 'high'];

export function costRelations(sheet, inputs) {
  const rate = rateOf(inputs);
  return ENDS.flatMap((end) => [
    ...sheet.articles.flatMap((article) => ofArticle(article, end, rate)),
    relation(`sum, ${end}`, at(sheet.sum, end), sum(sheet.articles.map((each) => at(each.sum, end))), 0),
    relation(`tax, ${end}`, at(sheet.taxInSum, end) + at(sheet.beforeTax, end), at(sheet.sum, end), 0),
    relation(
      `customers, ${end}`,
      sum(sheet.customers.map((each) => at(each.sum, end))),
      at(sheet.sum, end),
      0,
    ),
    relation(
      `where it goes, ${end}`,
      sum(sheet.kinds.map((each) => at(each.cost, end))),
      at(sheet.sum, end),
      sheet.kinds.length,
    ),
    ...sheet.customers.map((customer) => ofCustomer(customer, sheet.articles, end)),
  ]).concat(sheet.hides.flatMap(ofHide));
}

/** The lines of one set, from the materials down to its price. */
function ofArticle({ article, sets, rows, price, sum: inAll, pieces }, end, rate) {
  const name = (what) => `${article}: ${what}, ${end}`;
  const all = (...kinds) => rows.filter((row) => kinds.includes(row.kind) && row.cost !== undefined);
  const cost = (...kinds) => sum(all(...kinds).map((row) => at(row.cost, end)));
  const percentOf = (kind) => sum(all(kind).map(({ percent }) => percent?.[end] ?? 0)) / 100;
  const materials = cost(...MATERIALS, 'supplies');
  const withReturn = cost('materials') + cost('return on materials');
  const costs = withReturn + cost('work', 'overhead');
  const found = [
    relation(name('materials'), cost('materials'), materials, all(...MATERIALS, 'supplies').length),
    relation(name('work'), cost('work'), rate * sum(all('work').map(({ quantity }) => quantity[end])), 1),
    relation(name('overhead'), cost('overhead'), percentOf('overhead') * (withReturn + cost('work')), 2),
    relation(name('profit'), cost('profit'), percentOf('profit') * costs, 3),
    relation(name('before tax'), cost('before tax'), costs + cost('profit', 'rounding'), 6),
    relation(name('tax'), cost('tax'), percentOf('tax') * cost('before tax'), 1),
    relation(name('price'), cost('price'), cost('before tax') + cost('tax'), 2),
    relation(name('price of a set'), at(price, end), cost('price'), 0),
    relation(name('price of all sets'), at(inAll, end), sets * at(price, end), 0),
  ];
  const priced = pieces.filter((piece) => piece.cost !== undefined);
  if (priced.length < pieces.length) return found;
  const byPieces = sum(priced.map((piece) => piece.copies * at(piece.cost, end)));
  return [
    ...found,
    relation(
      name('leather of its pieces'),
      cost('leather'),
      byPieces,
      sum(priced.map(({ copies }) => copies + 1)),
    ),
  ];
}

function ofCustomer(customer, articles, end) {
  const own = articles.filter((article) => article.for === customer.for);
  return relation(
    `${customer.for ?? 'nobody named'}, ${end}`,
    at(customer.sum, end),
    sum(own.map((each) => at(each.sum, end))),
    0,
  );
}

/** A hide's price goes to what is used up and to what is left; a price of usable area buys the same hide. */
function ofHide(hide) {
  if (hide.usedUp === undefined) return [];
  const amount = (money) => Number(money.amount);
  const perSquareFoot = (amount(hide.price) * 304.8 ** 2) / hide.usableMm2;
  return [
    relation(
      `${hide.hide}: used up and left`,
      amount(hide.usedUp) + amount(hide.left),
      amount(hide.price),
      2,
    ),
    relation(`${hide.hide}: a usable ft²`, amount(hide.perUsableFt2), perSquareFoot, 1),
    relation(
      `${hide.hide}: a usable dm²`,
      amount(hide.perUsableDm2),
      (amount(hide.price) * 10_000) / hide.usableMm2,
      1,
    ),
    relation(
      `${hide.hide}: as usable leather`,
      amount(hide.byUsable),
      (amount(hide.price) * hide.piecesMm2) / hide.usableMm2,
      1,
    ),
  ];
}

/** "28 EUR" an hour, as the workshop file says it. */
function rateOf(inputs) {
  const { hourlyRate } = inputs.find((input) => input.hourlyRate !== undefined) ?? {};
  return Number(/^[\d.]+/.exec(hourlyRate ?? '')?.[0]);
}

function at(span, end) {
  return Number(span[end].amount);
}

/** `rounded` numbers, each to the cent, go into it; the told one is rounded itself. */
function relation(what, told, reckoned, rounded) {
  const slack = 0.005 * (rounded + 1) + 1e-6;
  return { what, told, reckoned, isRight: Math.abs(told - reckoned) <= (rounded === 0 ? 1e-6 : slack) };
}
