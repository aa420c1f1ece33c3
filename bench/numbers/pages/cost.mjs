// Which numbers of the cost page are sums of its result, and what its result must add up to.
import { money, versions } from '../reckon.mjs';
import { costRelations } from './cost-relations.mjs';

export const cost = {
  name: 'cost',
  args: ({ layout }) => ['cost', layout],
  identifying: ['kind'],
  derive: ({ cost: sheet }, inputs) => [
    ...versions(inputs),
    ...totals(sheet),
    ...sheet.customers.flatMap(ofCustomer),
  ],
  relations: ({ cost: sheet }, inputs) => costRelations(sheet, inputs),
};

/** Before there is a hide. */
export const costOfOrder = {
  ...cost,
  name: 'cost-of-order',
  args: ({ order }) => ['cost', order],
};

/** What is printed of the whole order, beside no name of its own. */
function totals({ sum, taxInSum, beforeTax }) {
  return [sum, taxInSum, beforeTax].flatMap((span) =>
    spanOf(span, 'of the order', ['together', 'tax', 'before tax']),
  );
}

/** A customer stands beside the articles. */
function ofCustomer({ sum, taxInSum, beforeTax, articles, for: name = 'nobody named' }) {
  return [sum, taxInSum, beforeTax].flatMap((span) => spanOf(span, 'of a customer', [name, ...articles]));
}

function spanOf(span, path, names) {
  return [span.low, span.likely, span.high].map((amount) => money(amount, path, names));
}
