/** One option of a command, as data: the parser and the help are made from it. */
export interface OptionSpec {
  /** As commander writes it: "--seconds <n>". */
  readonly flags: string;
  readonly description: string;
  readonly value: OptionValue;
  readonly fallback?: string | number;
}

export type OptionValue =
  | { readonly kind: 'switch' }
  | { readonly kind: 'text' }
  /** Given several times, or once. */
  | { readonly kind: 'texts' }
  | { readonly kind: 'number'; readonly min: number; readonly max: number }
  | { readonly kind: 'whole number'; readonly min: number; readonly max: number }
  | { readonly kind: 'choice'; readonly choices: readonly string[] };

export interface CommandSpec {
  readonly name: CommandName;
  /** As commander writes it: "<file...>". */
  readonly argument: string;
  readonly argumentDescription: string;
  readonly summary: string;
  readonly options: readonly OptionSpec[];
  /** What else stands in its help, line by line. */
  readonly notes?: readonly string[];
  /** Command lines that work on the demo's files. */
  readonly examples: readonly string[];
}

export type CommandName = 'pieces' | 'hide' | 'lay' | 'check' | 'sheet';

/** Pages that a cutting sheet can be made for. */
export const PAGE_NAMES = ['A4', 'A3', 'Letter', 'Tabloid'] as const;
export const SIDES = ['grain', 'flesh'] as const;

/** Seconds of search where the user says nothing. */
const DEFAULT_SECONDS = 30;
const ONE_DAY_SECONDS = 86_400;
/** Seeds and efforts stay whole numbers that every part of the program holds exactly. */
const LARGEST_SEED = 0xffffffff;
const LARGEST_EFFORT = 1_000_000;
/** Beyond any machine that this runs on; the search has no use for more than it has streams. */
const MOST_CORES = 1024;
/** Anything outside is a slip: a drawing of 1 px to the inch, or of a hide in micrometres. */
const DPI_RANGE = { min: 1, max: 10_000 } as const;
const SCALE_RANGE = { min: 0.0001, max: 10_000 } as const;

/** On every command. */
export const COMMON_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--json',
    description: 'print the result as JSON on standard output',
    value: { kind: 'switch' },
  },
  {
    flags: '--debug',
    description: 'show where in the program an error came from',
    value: { kind: 'switch' },
  },
];

const PICTURE: OptionSpec = {
  flags: '--picture <file>',
  description: 'draw what was read into an .svg or .pdf file',
  value: { kind: 'text' },
};

const READING_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--dpi <n>',
    description: 'pixels to the inch of a drawing without units (96 by the standard)',
    value: { kind: 'number', ...DPI_RANGE },
  },
  {
    flags: '--scale <n>',
    description: 'multiply every length by this',
    value: { kind: 'number', ...SCALE_RANGE },
  },
  {
    flags: '--known-length <id=length>',
    description: 'scale the drawing so that the line of this id or label is so long, such as ruler=100mm',
    value: { kind: 'text' },
  },
];

const WORKSHOP: OptionSpec = {
  flags: '--workshop <file>',
  description: 'your own workshop file; without it, workshop.yaml beside the file that is read',
  value: { kind: 'text' },
};

/** A whole order, short enough for the help. */
const ORDER_NOTES: readonly string[] = [
  'An order says what is made of what (every key is in docs/files.md; files that it names lie beside it):',
  '  format: hidebound/order@1',
  '  name: Two bags',
  '  date: "2026-03-02"',
  '  cutting: hand knife',
  '  leathers:',
  '    body: { hides: [side.hide.json] }',
  '  articles:',
  '    - name: bag',
  '      goods: bag',
  '      sets: 2',
  '      pieces:',
  '        - { name: front, leather: body, part: front, pattern: bag.svg, piece: front }',
  '        - { name: gusset, leather: body, part: gusset, pattern: bag.svg, piece: side, count: 2, mirrored: 1 }',
  '        - { name: strap, leather: body, part: strap, strap: { width: 25, length: 600, holeEnd: pointed, buckleEnd: square } }',
  '',
];

/** A whole workshop file, short enough for the help. */
const WORKSHOP_NOTES: readonly string[] = [
  'A workshop file says what is different in your workshop; all else stays as built in (see docs/files.md):',
  '  format: hidebound/workshop@1',
  '  parts: { pocket: { looks: { face: B }, zones: any } }',
  '  flaws: { vein: anywhere, stain: never here, scar: { looks: B } }',
  '  zones: { neck: only where hidden }',
  '  cutting: { hand knife: { gap: 2, edge: 8 } }',
];

export const COMMANDS: readonly CommandSpec[] = [
  {
    name: 'pieces',
    argument: '<file...>',
    argumentDescription: 'pattern files (SVG)',
    summary: 'Show what is read from pattern files: pieces, sizes, lines and what was not understood.',
    options: [...READING_OPTIONS, PICTURE],
    examples: [
      'hidebound pieces fixtures/demo/patterns/saddlebag-front.svg',
      'hidebound pieces fixtures/demo/patterns/*.svg --picture pieces.pdf',
      'hidebound pieces drawing.svg --known-length ruler=100mm',
    ],
  },
  {
    name: 'hide',
    argument: '<file>',
    argumentDescription: 'a hide file (.hide.json) or a traced drawing (SVG)',
    summary: 'Show a hide: its areas, zones and flaws; or make a hide file from a traced drawing.',
    options: [
      ...READING_OPTIONS,
      {
        flags: '--out <file>',
        description: 'write the hide file that was made from the drawing',
        value: { kind: 'text' },
      },
      PICTURE,
      WORKSHOP,
    ],
    notes: WORKSHOP_NOTES,
    examples: [
      'hidebound hide fixtures/demo/side.hide.json',
      'hidebound hide fixtures/demo/shoulder-traced.svg --out shoulder.hide.json --picture shoulder.svg',
    ],
  },
  {
    name: 'lay',
    argument: '<order>',
    argumentDescription: 'an order file (.order.yaml)',
    summary: 'Lay the pieces of an order on its hides and write the layout. Ctrl-C stops and keeps the best.',
    options: [
      {
        flags: '--seconds <n>',
        description: 'how long to go on improving',
        value: { kind: 'number', min: 0, max: ONE_DAY_SECONDS },
        fallback: DEFAULT_SECONDS,
      },
      {
        flags: '--effort <n>',
        description: 'do so much work however long it takes; the same effort and seed give the same layout',
        value: { kind: 'whole number', min: 0, max: LARGEST_EFFORT },
      },
      {
        flags: '--seed <n>',
        description: 'another number gives another layout',
        value: { kind: 'whole number', min: 0, max: LARGEST_SEED },
        fallback: 1,
      },
      {
        flags: '--cores <n>',
        description: 'how many processor cores to use (all there are); the same work gives the same layout',
        value: { kind: 'whole number', min: 1, max: MOST_CORES },
      },
      {
        flags: '--keep <layout>',
        description: 'keep what is locked, cut or spoiled in this layout, and lay the rest anew',
        value: { kind: 'text' },
      },
      WORKSHOP,
      {
        flags: '--avoid-unconfirmed-flaws',
        description: 'keep clear of possible flaws, too, that nobody has confirmed yet',
        value: { kind: 'switch' },
      },
      {
        flags: '--out <file>',
        description: 'where to write the layout (beside the order, named after it)',
        value: { kind: 'text' },
      },
    ],
    notes: [...ORDER_NOTES, ...WORKSHOP_NOTES],
    examples: [
      'hidebound lay fixtures/demo/bicycle-goods.order.yaml --out bicycle-goods.layout.json',
      'hidebound lay fixtures/demo/bicycle-goods.order.yaml --effort 1 --seed 7 --out seven.layout.json',
    ],
  },
  {
    name: 'check',
    argument: '<layout>',
    argumentDescription: 'a layout file (.layout.json)',
    summary: 'Prove a layout from its file and its hides alone: every distance, mark, angle and count.',
    options: [],
    examples: ['hidebound check bicycle-goods.layout.json'],
  },
  {
    name: 'sheet',
    argument: '<layout>',
    argumentDescription: 'a layout file (.layout.json)',
    summary: 'Make the cutting sheet of a layout: pages to print, and each hide at true scale.',
    options: [
      {
        flags: '--pdf <file>',
        description: 'the cutting sheet, one page for each hide',
        value: { kind: 'text' },
      },
      {
        flags: '--page-svg <file>',
        description: 'the same pages as drawings, a file for each page',
        value: { kind: 'text' },
      },
      {
        flags: '--svg <file>',
        description: 'the layout at true scale, a file for each hide',
        value: { kind: 'text' },
      },
      {
        flags: '--page <name>',
        description: 'paper of the cutting sheet',
        value: { kind: 'choice', choices: PAGE_NAMES },
        fallback: 'A4',
      },
      {
        flags: '--side <side>',
        description: 'side of the hide that is seen; from the flesh side everything is mirrored',
        value: { kind: 'choice', choices: SIDES },
        fallback: 'grain',
      },
      {
        flags: '--workshop <file>',
        description:
          'your own workshop file, for a layout that does not say itself what flaws and zones mean',
        value: { kind: 'text' },
      },
    ],
    examples: [
      'hidebound sheet bicycle-goods.layout.json --pdf sheet.pdf',
      'hidebound sheet bicycle-goods.layout.json --svg layout.svg --page-svg page.svg --page A3 --side flesh',
    ],
  },
];
