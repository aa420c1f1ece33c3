import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS, WORKSHOP_OPTION } from '../report-options.js';

/** The table's row for `hidebound cost`. */
export const COST_SPEC: CommandSpec = {
  name: 'cost',
  argument: '<file>',
  argumentDescription: 'a layout file (.layout.json), or an order (.order.yaml) before there is a hide',
  summary: 'Reckon what an order costs, and its price: for each set, each article and each customer.',
  options: [
    {
      flags: '--quote',
      description: 'a page for the customer: articles, counts, prices; nothing of what lies behind them',
      value: { kind: 'switch' },
    },
    {
      flags: '--for <name>',
      description: 'with --quote: only for this customer, as "for" says in the order',
      value: { kind: 'text' },
    },
    WORKSHOP_OPTION,
    ...REPORT_OPTIONS,
  ],
  notes: [
    'Prices stand in the hide files, in the order, and in the workshop file, with the price of an hour, overhead,',
    'profit, tax and how prices are rounded. What has no price is named, and the sums are without it.',
    'docs/costing.md tells how everything is reckoned.',
  ],
  examples: [
    'hidebound cost bicycle-goods.layout.json --pdf cost.pdf',
    'hidebound cost fixtures/demo/bicycle-goods.order.yaml',
    'hidebound cost bicycle-goods.layout.json --quote --for "a touring club" --pdf quote.pdf',
  ],
};
