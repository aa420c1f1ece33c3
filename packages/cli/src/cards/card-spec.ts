import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS, WORKSHOP_OPTION } from '../report-options.js';

const MOST_SETS = 10_000;

/** The table's row for `hidebound card`. */
export const CARD_SPEC: CommandSpec = {
  name: 'card',
  argument: '<article>',
  argumentDescription: 'an article file (.article.yaml)',
  summary:
    'Answer a repeat order: price, leather to buy or in stock, what to have ready; and write its order file.',
  options: [
    {
      flags: '--sets <n>',
      description: 'how many sets',
      value: { kind: 'whole number', min: 1, max: MOST_SETS },
      fallback: 1,
    },
    {
      flags: '--colour <colour>',
      description: 'colour of the leathers, or of one as LEATHER=COLOUR; may be given several times',
      value: { kind: 'texts' },
    },
    { flags: '--for <name>', description: 'for whom', value: { kind: 'text' } },
    {
      flags: '--join <article:sets:name>',
      description: 'another article for the same order, so that they share hides; may be given several times',
      value: { kind: 'texts' },
    },
    { flags: '--stock <folder>', description: 'hides on hand', value: { kind: 'text' } },
    {
      flags: '--order <file>',
      description:
        'write the order file, with the hides from the stock that suit; "hidebound lay" goes on from there',
      value: { kind: 'text' },
    },
    {
      flags: '--cutting <method>',
      description: 'how it is cut, as the workshop’s table calls it',
      value: { kind: 'text' },
      fallback: 'hand knife',
    },
    {
      flags: '--date <day>',
      description: 'day of the order (today), as 2026-03-21',
      value: { kind: 'text' },
    },
    {
      flags: '--last-yield <layout>',
      description:
        'write the yield that this layout really had into the article file; nothing else in it changes',
      value: { kind: 'text' },
    },
    WORKSHOP_OPTION,
    ...REPORT_OPTIONS,
  ],
  notes: ['docs/costing.md tells how prices and quantities are reckoned.'],
  examples: [
    'hidebound card fixtures/demo/saddlebag.article.yaml --sets 4 --stock offcuts --pdf card.pdf',
    'hidebound card saddlebag.article.yaml --sets 2 --for "a club" --join pump-strap.article.yaml:6:"a friend" --order both.order.yaml',
    'hidebound card saddlebag.article.yaml --last-yield saddlebag.layout.json',
  ],
};
