import type { CommandSpec } from '../option-table.js';

const LAST_PORT = 65535;

/** The table's row for `hidebound table`. */
export const TABLE_SPEC: CommandSpec = {
  name: 'table',
  argument: '[folder]',
  argumentDescription: 'the folder with the files of the job: hides, patterns, orders, layouts (this folder)',
  summary: 'Do the whole job in a browser, with the files of a folder. Ctrl-C ends it.',
  options: [
    {
      flags: '--port <n>',
      description: 'port of this computer to answer at; 0 for any free one (always the same for a folder)',
      value: { kind: 'whole number', min: 0, max: LAST_PORT },
    },
  ],
  notes: [
    'Only browsers of this computer reach it, and only with the key in the address that it prints.',
    'What a file held before is kept in .hidebound/before and .hidebound/kept within the folder.',
    'docs/parts/table-server.md tells what is checked, and what is kept where.',
  ],
  examples: ['hidebound table fixtures/demo', 'hidebound table ~/bags --port 8080'],
};
