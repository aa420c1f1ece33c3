import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS, WORKSHOP_OPTION } from '../report-options.js';

/** The table's row for `hidebound prepare`. */
export const PREPARE_SPEC: CommandSpec = {
  name: 'prepare',
  argument: '<layout>',
  argumentDescription: 'a layout file (.layout.json)',
  summary:
    'Plan what is done to the leather before it is cut: order of work, liquids, timetable, a card for the bench.',
  options: [
    {
      flags: '--start <time>',
      description:
        'when work begins, such as "2026-03-02 08:00"; else days are numbered, or only hours counted',
      value: { kind: 'text' },
    },
    {
      flags: '--hours <from-to>',
      description: 'when hands work, such as 8-17 or 8:30-16:30 (8-17 where --start is given)',
      value: { kind: 'text' },
    },
    {
      flags: '--out <file>',
      description: 'write the layout again with test pieces in its waste, to be drawn on the cutting sheet',
      value: { kind: 'text' },
    },
    {
      flags: '--hides <folder>',
      description:
        'write each rough cut as a hide of its own, with an order that lays its pieces again on it',
      value: { kind: 'text' },
    },
    WORKSHOP_OPTION,
    ...REPORT_OPTIONS,
  ],
  notes: [
    'How far a liquid goes you learn by weighing its bottle before and after one coat; write it into workshop.yaml:',
    '  coverages:',
    '    chestnut: { before: 412, after: 396, over: 20 dm2, gPerMl: 0.8 }',
  ],
  examples: [
    'hidebound prepare bicycle-goods.layout.json',
    'hidebound prepare bicycle-goods.layout.json --start "2026-03-02 08:00" --hours 8-17 --pdf prepare.pdf',
    'hidebound prepare bicycle-goods.layout.json --out with-test-pieces.layout.json --hides prepared',
  ],
};
