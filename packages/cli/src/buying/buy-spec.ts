import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS, WORKSHOP_OPTION } from '../report-options.js';

/** A first answer comes at once; by then it is a good one on two cores. */
const DEFAULT_SECONDS = 45;
const ONE_DAY_SECONDS = 86_400;
const MOST_TRIALS = 10_000;
const MOST_CORES = 1024;
const LARGEST_NUMBER = 0xffffffff;

/** The table's row for `hidebound buy`. */
export const BUY_SPEC: CommandSpec = {
  name: 'buy',
  argument: '<order>',
  argumentDescription: 'an order file (.order.yaml)',
  summary: 'Tell how much leather to buy for an order, before there is a hide.',
  options: [
    {
      flags: '--seconds <n>',
      description: 'how long to try layouts on hides of chance; the more, the surer',
      value: { kind: 'number', min: 0, max: ONE_DAY_SECONDS },
      fallback: DEFAULT_SECONDS,
    },
    {
      flags: '--trials <n>',
      description:
        'instead of a time: so many trial layouts for each kind of hide; always gives the same answer',
      value: { kind: 'whole number', min: 1, max: MOST_TRIALS },
    },
    {
      flags: '--draw <n>',
      description: 'which hides of chance: another number, other hides',
      value: { kind: 'whole number', min: 0, max: LARGEST_NUMBER },
      fallback: 1,
    },
    {
      flags: '--cores <n>',
      description: 'processor cores to use (all); they do not change what a number of trials gives',
      value: { kind: 'whole number', min: 1, max: MOST_CORES },
    },
    WORKSHOP_OPTION,
    ...REPORT_OPTIONS,
  ],
  notes: [
    'The order’s leathers need not list hides yet. What can be bought stands under "offers" in the workshop file.',
    'Ctrl-C stops the trials; the answer so far is given.',
    'docs/buying.md tells how it is reckoned and how far to trust it.',
  ],
  examples: [
    'hidebound buy fixtures/demo/bicycle-goods.order.yaml',
    'hidebound buy bags.order.yaml --seconds 120 --pdf buying.pdf',
    'hidebound buy bags.order.yaml --trials 20 --json',
  ],
};
