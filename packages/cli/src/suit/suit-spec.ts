import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS, WORKSHOP_OPTION } from '../report-options.js';

/** The table's row for `hidebound suit`. */
export const SUIT_SPEC: CommandSpec = {
  name: 'suit',
  argument: '<order>',
  argumentDescription: 'an order file (.order.yaml)',
  summary: 'Choose leather: which hide fits which piece, and what is skived or doubled.',
  options: [
    {
      flags: '--stock <folder>',
      description: 'hides on hand besides the order’s own: every .hide.json of this folder that is not cut',
      value: { kind: 'text' },
    },
    {
      flags: '--hide <file>',
      description: 'another hide on hand; may be given several times',
      value: { kind: 'texts' },
    },
    WORKSHOP_OPTION,
    ...REPORT_OPTIONS,
  ],
  notes: [
    'The order’s leathers need not list hides yet: with --stock or --hide, what fits is found.',
    'Thickness counts in this order: the piece’s own, the article’s "wants", its leather’s, the table of goods, the rule of its part.',
    'docs/choosing.md has the table of goods and tells how to overrule it.',
  ],
  examples: [
    'hidebound suit fixtures/demo/bicycle-goods.order.yaml',
    'hidebound suit bags.order.yaml --stock offcuts --pdf choosing.pdf',
  ],
};
