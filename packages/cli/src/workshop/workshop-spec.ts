import type { WorkshopTopic } from '@hidebound/leather';
import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS } from '../report-options.js';

/** By the names of `WORKSHOP_TOPICS`, which are not loaded for a mere help text. */
const TOPIC_NAMES = [
  'parts',
  'flaws',
  'zones',
  'cutting',
  'goods',
  'tannages',
  'cuts',
  'grades',
  'figures',
  'coverages',
  'irons',
  'offers',
  'prices',
  'rates',
] as const satisfies readonly WorkshopTopic[];

export const WORKSHOP_SPEC: CommandSpec = {
  name: 'workshop',
  argument: '[file]',
  argumentDescription: 'a workshop file (workshop.yaml)',
  summary: 'Show every value that is reckoned with, where it comes from, and which are your own.',
  options: [
    {
      flags: '--topic <name>',
      description: 'only this table',
      value: { kind: 'choice', choices: TOPIC_NAMES },
    },
    { flags: '--own', description: 'only what your own file says', value: { kind: 'switch' } },
    {
      flags: '--write <file>',
      description: 'write a workshop file with every value in it, to edit; an existing file stays as it is',
      value: { kind: 'text' },
    },
    {
      flags: '--add',
      description:
        'add to your file what it lacks; each of its lines stays, and the file as it was is kept beside it',
      value: { kind: 'switch' },
    },
    ...REPORT_OPTIONS,
  ],
  examples: [
    'hidebound workshop --topic goods',
    'hidebound workshop --write workshop.yaml',
    'hidebound workshop workshop.yaml --own',
    'hidebound workshop workshop.yaml --add',
  ],
};
