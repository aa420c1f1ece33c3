import type { CommandSpec } from '../option-table.js';
import { REPORT_OPTIONS } from '../report-options.js';
import { SEARCH_OPTIONS } from '../search-spec.js';

export const TICK_SPEC: CommandSpec = {
  name: 'tick',
  argument: '<layout>',
  argumentDescription: 'a layout file (.layout.json)',
  summary: 'Tick pieces as cut or spoiled, tell of flaws found while cutting, and lay the rest again.',
  options: [
    {
      flags: '--cut <pieces>',
      description: 'these are cut: numbers as on the sheet, "1-12, 15, 37.2", or names, "front 2/1"',
      value: { kind: 'text' },
    },
    {
      flags: '--spoiled <pieces>',
      description: 'these were cut and can not be used; each is to be cut again',
      value: { kind: 'text' },
    },
    {
      flags: '--planned <pieces>',
      description: 'take ticks back: these are still to be cut',
      value: { kind: 'text' },
    },
    {
      flags: '--all',
      description: 'all that is left, and not named as spoiled, is cut',
      value: { kind: 'switch' },
    },
    {
      flags: '--flaw <flaw>',
      description:
        'a flaw that was found: place and radius in mm, "hole 310,420 12", or places and width, "scar 310,420 390,460 8"; may be given several times',
      value: { kind: 'texts' },
    },
    {
      flags: '--from <frame>',
      description:
        'what its places are measured from: the hide’s own zero, or along and out from the line of the sheet for setting out',
      value: { kind: 'choice', choices: ['hide', 'line'] },
      fallback: 'hide',
    },
    {
      flags: '--hide <id>',
      description: 'which hide it is on, where the layout has several',
      value: { kind: 'text' },
    },
    {
      flags: '--lay',
      description: 'lay again what has no place; all else stays where it is',
      value: { kind: 'switch' },
    },
    {
      flags: '--anew',
      description: 'lay all again that is not cut yet',
      value: { kind: 'switch' },
    },
    ...SEARCH_OPTIONS,
    {
      flags: '--rest <folder>',
      description: 'write what is left of each hide as hide files into this folder',
      value: { kind: 'text' },
    },
    {
      flags: '--out <file>',
      description: 'write the layout here (in its own place, with the one before kept beside it as .before)',
      value: { kind: 'text' },
    },
    ...REPORT_OPTIONS,
  ],
  notes: ['docs/stages.md tells how cutting in stages goes.'],
  examples: [
    'hidebound tick bicycle-goods.layout.json',
    'hidebound tick bicycle-goods.layout.json --cut 1-12,15 --spoiled 14 --lay',
    'hidebound tick bicycle-goods.layout.json --flaw "hole 310,420 12" --hide side-0231-a --lay',
    'hidebound tick bicycle-goods.layout.json --planned "front 2/1"',
    'hidebound tick bicycle-goods.layout.json --rest half-cut --pdf left-to-cut.pdf',
  ],
};
