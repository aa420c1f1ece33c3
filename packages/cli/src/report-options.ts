import type { OptionSpec } from './option-table.js';

/** Pages that a report can be made for: those of a cutting sheet. */
const PAGES = ['A4', 'A3', 'Letter', 'Tabloid'] as const;

/** On every command that tells a report. */
export const REPORT_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--pdf <file>',
    description: 'the same as pages to print',
    value: { kind: 'text' },
  },
  {
    flags: '--page-svg <file>',
    description: 'the same as pictures, one a page',
    value: { kind: 'text' },
  },
  {
    flags: '--page <name>',
    description: 'which paper the pages are for',
    value: { kind: 'choice', choices: PAGES },
    fallback: 'A4',
  },
];

export const WORKSHOP_OPTION: OptionSpec = {
  flags: '--workshop <file>',
  description: 'your own values; else workshop.yaml beside the file counts, where there is one',
  value: { kind: 'text' },
};
