import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS, WORKSHOP_OPTION } from '../report-options.js';

/** By the names of `STOCK_ORDERS`, which are not loaded for a mere help text. */
const ORDERS = ['name', 'size', 'thickness', 'colour', 'lot', 'place'] as const;
const MOST_WANTED = 500;

/** The table's row for `hidebound offcuts`. */
export const OFFCUTS_SPEC: CommandSpec = {
  name: 'offcuts',
  argument: '<folder>',
  argumentDescription: 'the folder of the stock, in which the hide files (.hide.json) lie',
  summary: 'Keep a stock of hides and offcuts: list it, search it, and take the leather of a layout from it.',
  options: [
    {
      flags: '--take <layout>',
      description: 'this layout was cut: its hides become offcuts, all in one step',
      value: { kind: 'text' },
    },
    {
      flags: '--place <text>',
      description: 'with --take: where the offcuts are put (where their hide lay)',
      value: { kind: 'text' },
    },
    {
      flags: '--undo <step>',
      description: 'undo a step: its number, or "last"',
      value: { kind: 'text' },
    },
    { flags: '--history', description: 'list what was taken and undone', value: { kind: 'switch' } },
    {
      flags: '--for <file>',
      description: 'an order or article; with --piece: what could this piece be cut from?',
      value: { kind: 'text' },
    },
    { flags: '--piece <name>', description: 'with --for: a piece of it', value: { kind: 'text' } },
    {
      flags: '--article <name>',
      description: 'with --for: the article, where several have such a piece',
      value: { kind: 'text' },
    },
    {
      flags: '--count <n>',
      description: 'with --for: so many copies are wanted',
      value: { kind: 'whole number', min: 1, max: MOST_WANTED },
      fallback: 1,
    },
    { flags: '--colour <word>', description: 'only leather of this colour', value: { kind: 'text' } },
    { flags: '--tannage <word>', description: 'only leather of this tannage', value: { kind: 'text' } },
    { flags: '--lot <lot>', description: 'only leather of this lot', value: { kind: 'text' } },
    {
      flags: '--thickness <span>',
      description: 'only leather of such a thickness: "2.0-2.4 mm", "5-6 oz"',
      value: { kind: 'text' },
    },
    {
      flags: '--least <sides>',
      description: 'only what holds a rectangle of these sides, turned any way: "80 x 200 mm"',
      value: { kind: 'text' },
    },
    {
      flags: '--only <which>',
      description: 'only whole hides and cuts of hides, or only offcuts',
      value: { kind: 'choice', choices: ['hides', 'offcuts'] },
    },
    { flags: '--with-cut', description: 'also what is cut already', value: { kind: 'switch' } },
    {
      flags: '--sort <by>',
      description: 'what the list is put in order by',
      value: { kind: 'choice', choices: ORDERS },
      fallback: 'name',
    },
    {
      flags: '--strip <width>',
      description: 'measure the longest strip of this width (the workshop’s narrowest, 20 mm)',
      value: { kind: 'text' },
    },
    {
      flags: '--labels',
      description: 'with --pdf or --page-svg: labels to cut out instead of the list',
      value: { kind: 'switch' },
    },
    WORKSHOP_OPTION,
    ...REPORT_OPTIONS,
  ],
  notes: [
    'What is taken is written into stock.journal.json in that folder; nothing is half taken, whenever the program is ended.',
    'docs/stock.md tells how a stock is kept, what the figures mean, and how a step is undone.',
  ],
  examples: [
    'hidebound offcuts stock --only offcuts --sort size --pdf stock.pdf',
    'hidebound offcuts stock --colour brown --thickness "2.0-2.8 mm" --least "80 x 200 mm"',
    'hidebound offcuts stock --for bicycle-goods.order.yaml --piece keeper --count 4',
    'hidebound offcuts stock --take bicycle-goods.layout.json --place "shelf 3"',
    'hidebound offcuts stock --undo last',
    'hidebound offcuts stock --labels --pdf labels.pdf',
  ],
};
