import { CARD_SPEC } from './cards/card-spec.js';
import { COST_SPEC } from './costing/cost-spec.js';
import type { DrawingUnit, PageJoint, PageOrder } from '@hidebound/leather';
import { BUY_SPEC } from './buying/buy-spec.js';
import { SEARCH_OPTIONS } from './search-spec.js';
import { TICK_SPEC } from './stages/tick-spec.js';
import { OFFCUTS_SPEC } from './stock/offcuts-spec.js';
import { SUIT_SPEC } from './suit/suit-spec.js';
import { PREPARE_SPEC } from './prepare/prepare-spec.js';
import { TABLE_SPEC } from './table/table-spec.js';
import { TRACE_SPEC } from './trace/trace-spec.js';
import { WORKSHOP_SPEC } from './workshop/workshop-spec.js';

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
  /** As commander writes it: "<file...>"; absent where nothing is read. */
  readonly argument?: string;
  readonly argumentDescription?: string;
  readonly summary: string;
  readonly options: readonly OptionSpec[];
  /** What else stands in its help, line by line. */
  readonly notes?: readonly string[];
  /** Command lines that work on the demo's files. */
  readonly examples: readonly string[];
}

export type CommandName =
  | 'pieces'
  | 'hide'
  | 'lay'
  | 'check'
  | 'sheet'
  | 'template'
  | 'cutfile'
  | 'setout'
  | 'list'
  | 'prepare'
  | 'markers'
  | 'trace'
  | 'buy'
  | 'suit'
  | 'cost'
  | 'card'
  | 'tick'
  | 'offcuts'
  | 'workshop'
  | 'table';

/** Pages that a cutting sheet can be made for. */
export const PAGE_NAMES = ['A4', 'A3', 'Letter', 'Tabloid'] as const;
/** Papers that templates can be made for, by the names of `PAPERS`. */
export const PAPER_NAMES = [
  'A4',
  'A3',
  'A2',
  'A1',
  'A0',
  'Letter',
  'Tabloid',
  'ANSI-C',
  'ANSI-D',
  'ANSI-E',
] as const;
/** Papers of the reference sheets: their drawing fits both. */
export const MARKER_PAPER_NAMES = ['A4', 'Letter'] as const;
export const SIDES = ['grain', 'flesh'] as const;
/** By the names of `CUT_CHOICES`, `DXF_VERSIONS` and `LeadInKind`. */
export const CUT_CHOICE_NAMES = ['pieces', 'rough-cuts-first', 'both'] as const;
export const DXF_VERSION_NAMES = ['R12', 'R2000'] as const;
export const TEXT_CHOICES = ['outlines', 'none'] as const;
/** By the names of `DRAWING_UNITS`, `PAGE_JOINTS` and `PAGE_ORDERS`, which are not loaded for a mere help text. */
const UNIT_NAMES = ['mm', 'cm', 'm', 'in', 'ft'] as const satisfies readonly DrawingUnit[];
const JOINT_NAMES = ['marks', 'lines', 'grid', 'apart'] as const satisfies readonly PageJoint[];
const ORDER_NAMES = ['rows', 'columns'] as const satisfies readonly PageOrder[];
export const LEAD_IN_SHAPES = ['straight', 'arc'] as const;

/** Wider than any blade, beam or jet cuts; a lead-in, bridge or overcut longer than that is a slip, too. */
const WIDEST_KERF_MM = 20;
const LONGEST_EXTRA_MM = 100;
const MOST_BRIDGES = 100;
/** More than any page has at its edges. */
const MOST_PAGE_EDGE_MM = 1000;
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

const NO_PHOTO: OptionSpec = {
  flags: '--no-photo',
  description: 'draw the leather plain, without the photo of the hide',
  value: { kind: 'switch' },
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

/** More than a roll of patterns has side by side. */
const MOST_COLUMNS = 1000;

/** Of patterns only: what PDF and DXF leave open, and what a line is. */
const PATTERN_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--units <unit>',
    description: 'what a unit of a DXF drawing is, where the file does not say so or says it wrongly',
    value: { kind: 'choice', choices: UNIT_NAMES },
  },
  {
    flags: '--pages <numbers>',
    description: 'pages of a PDF that hold the pattern, such as "2-7, 9" (all)',
    value: { kind: 'text' },
  },
  {
    flags: '--join <how>',
    description: 'how pages are put together (found out): by marks, by lines, in a grid, or apart',
    value: { kind: 'choice', choices: JOINT_NAMES },
  },
  {
    flags: '--columns <n>',
    description: 'of a grid: pages side by side',
    value: { kind: 'whole number', min: 1, max: MOST_COLUMNS },
  },
  {
    flags: '--page-order <order>',
    description: 'of a grid: whether pages fill it by rows (as usual) or by columns',
    value: { kind: 'choice', choices: ORDER_NAMES },
  },
  {
    flags: '--overlap <length>',
    description:
      'of a grid: how far one page lies over the next, "10 mm", or across and down "10 mm x 12 mm"',
    value: { kind: 'text' },
  },
  {
    flags: '--as-drawn',
    description: 'leave halves that are drawn up to a fold as they are',
    value: { kind: 'switch' },
  },
  {
    flags: '--order <file>',
    description: 'read the files as this order says under "patterns"; what is said here counts more',
    value: { kind: 'text' },
  },
  {
    flags: '--role <role:look>',
    description:
      'what lines of a look are, such as stitch:dashed, fold:layer=hems, cut:colour=#000000; may be given several times',
    value: { kind: 'texts' },
  },
  {
    flags: '--size <size:look>',
    description:
      'which graded size lines of a look belong to, such as M:layer=size-m; may be given several times',
    value: { kind: 'texts' },
  },
];

const SAVE: OptionSpec = {
  flags: '--save <file>',
  description: 'write the pieces as a clean pattern drawing (.svg), which reads back the same',
  value: { kind: 'text' },
};

const STITCH_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--pitch <mm>',
    description: 'mark the holes of the stitch lines, so many mm apart along the line',
    value: { kind: 'text' },
  },
  {
    flags: '--with <tool>',
    description: 'with an iron the pitch stays; with an awl it gives, so that ends and corners get a hole',
    value: { kind: 'choice', choices: ['iron', 'awl'] },
    fallback: 'iron',
  },
];

const WORKSHOP: OptionSpec = {
  flags: '--workshop <file>',
  description: 'your own workshop file; without it, workshop.yaml beside the file that is read',
  value: { kind: 'text' },
};

/** What a person decides of what a photo showed; the hide file is written again. */
const DECISION_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--take <ids>',
    description: 'make flaws of these possible flaws, such as possible-1,possible-4, or of all',
    value: { kind: 'text' },
  },
  {
    flags: '--drop <ids>',
    description: 'take these possible flaws off, or all (that --take does not name)',
    value: { kind: 'text' },
  },
  {
    flags: '--confirm <what>',
    description: 'say that what was guessed is right: backbone, cut, or both with a comma',
    value: { kind: 'text' },
  },
];

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

const PIECES_NOTES: readonly string[] = [
  'A look is one or more of dashed, solid, filled (without a stroke), layer=NAME, label=NAME, colour=#rrggbb, width=FROM-TO (mm), with commas between;',
  '"*" in a name stands for any run of characters. An order says the same under "patterns" (docs/files.md).',
  'docs/patterns.md tells what is read from each kind of file, what is guessed, and how pages are put together.',
];

export const COMMANDS: readonly CommandSpec[] = [
  {
    name: 'pieces',
    argument: '<file...>',
    argumentDescription: 'pattern files (SVG, PDF or DXF)',
    summary: 'Show what is read from pattern files: pieces, sizes, lines and what was not understood.',
    options: [...READING_OPTIONS, ...PATTERN_OPTIONS, PICTURE, SAVE, ...STITCH_OPTIONS],
    notes: PIECES_NOTES,
    examples: [
      'hidebound pieces fixtures/demo/patterns/saddlebag-front.svg',
      'hidebound pieces fixtures/demo/patterns/*.svg --picture pieces.pdf',
      'hidebound pieces drawing.svg --known-length ruler=100mm',
      'hidebound pieces bought.pdf --pages 2-13 --columns 4 --overlap "10 mm" --picture pages.pdf',
      'hidebound pieces bag.dxf --units in --role stitch:dashed --save bag.svg',
      'hidebound pieces fixtures/demo/patterns/saddlebag-front.svg --pitch 3.9 --picture front.svg',
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
        description: 'write the hide file that was made from the drawing, or changed by what you decided',
        value: { kind: 'text' },
      },
      PICTURE,
      NO_PHOTO,
      WORKSHOP,
      ...DECISION_OPTIONS,
    ],
    notes: WORKSHOP_NOTES,
    examples: [
      'hidebound hide fixtures/demo/side.hide.json',
      'hidebound hide fixtures/demo/shoulder-traced.svg --out shoulder.hide.json --picture shoulder.svg',
      'hidebound hide side.hide.json --take possible-1,possible-4 --drop all --confirm backbone,cut',
    ],
  },
  TRACE_SPEC,
  {
    name: 'lay',
    argument: '<order>',
    argumentDescription: 'an order file (.order.yaml)',
    summary: 'Lay the pieces of an order on its hides and write the layout. Ctrl-C stops and keeps the best.',
    options: [
      ...SEARCH_OPTIONS,
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
      NO_PHOTO,
    ],
    examples: [
      'hidebound sheet bicycle-goods.layout.json --pdf sheet.pdf',
      'hidebound sheet bicycle-goods.layout.json --svg layout.svg --page-svg page.svg --page A3 --side flesh',
    ],
  },
  {
    name: 'template',
    argument: '<layout>',
    argumentDescription: 'a layout file (.layout.json)',
    summary:
      'Make templates at full scale: single pieces to glue on card, a hide’s whole layout, or the rough cuts.',
    options: [
      {
        flags: '--pieces',
        description: 'single pieces, several a page where they fit (this is done if nothing else is asked)',
        value: { kind: 'switch' },
      },
      {
        flags: '--piece <name>',
        description: 'only the piece of this name, or article/name; may be given several times',
        value: { kind: 'texts' },
      },
      {
        flags: '--hide <id>',
        description: 'the whole layout of this hide, by its id or its number, on pages to be taped together',
        value: { kind: 'text' },
      },
      {
        flags: '--rough-cuts',
        description: 'the blocks that are cut out first and prepared whole',
        value: { kind: 'switch' },
      },
      { flags: '--pdf <file>', description: 'all pages, to print', value: { kind: 'text' } },
      {
        flags: '--svg <file>',
        description: 'the same pages as drawings, a file for each page',
        value: { kind: 'text' },
      },
      {
        flags: '--paper <name>',
        description: 'paper that is printed on',
        value: { kind: 'choice', choices: PAPER_NAMES },
        fallback: 'A4',
      },
      {
        flags: '--roll <width>',
        description: 'print on a roll of this width, such as 914 or "36 in", on one long page',
        value: { kind: 'text' },
      },
      {
        flags: '--overlap <mm>',
        description: 'width of the strip that two neighbouring pages both show',
        value: { kind: 'number', min: 0, max: MOST_PAGE_EDGE_MM },
        fallback: 10,
      },
      {
        flags: '--margin <mm>',
        description: 'what stays blank at the edges of the paper, where printers do not reach',
        value: { kind: 'number', min: 0, max: MOST_PAGE_EDGE_MM },
        fallback: 10,
      },
      {
        flags: '--side <side>',
        description: 'side of the leather that is seen; from the flesh side everything is mirrored',
        value: { kind: 'choice', choices: SIDES },
        fallback: 'grain',
      },
    ],
    notes: [
      'Print at 100 %, without fitting to the page. Every page has two check bars of 100 mm: hold a rule to both.',
      'docs/templates.md tells how pages are put together.',
    ],
    examples: [
      'hidebound template bicycle-goods.layout.json --pdf pieces.pdf',
      'hidebound template bicycle-goods.layout.json --hide 1 --paper A3 --pdf side.pdf',
      'hidebound template bicycle-goods.layout.json --hide 3 --roll "36 in" --side flesh --pdf bend.pdf',
    ],
  },
  {
    name: 'cutfile',
    argument: '<layout>',
    argumentDescription: 'a layout file (.layout.json)',
    summary: 'Make a file for a cutting machine: knife, laser or water jet, as SVG or DXF at true scale.',
    options: [
      {
        flags: '--hide <id>',
        description: 'only this hide, by its id or its number; without it, a file for each hide',
        value: { kind: 'text' },
      },
      { flags: '--svg <file>', description: 'write an SVG file in mm', value: { kind: 'text' } },
      { flags: '--dxf <file>', description: 'write a DXF file in mm', value: { kind: 'text' } },
      {
        flags: '--dxf-version <name>',
        description: 'R12 for every machine, R2000 with light polylines',
        value: { kind: 'choice', choices: DXF_VERSION_NAMES },
        fallback: 'R12',
      },
      {
        flags: '--cut <what>',
        description: 'the pieces; rough cuts whole and the pieces outside them; or both',
        value: { kind: 'choice', choices: CUT_CHOICE_NAMES },
        fallback: 'pieces',
      },
      {
        flags: '--kerf <mm>',
        description: 'width of the cut; 0 if the machine allows for it (the order’s cutting method)',
        value: { kind: 'number', min: 0, max: WIDEST_KERF_MM },
      },
      {
        flags: '--lead-in <mm>',
        description: 'start each cut so far off in the waste',
        value: { kind: 'number', min: 0, max: LONGEST_EXTRA_MM },
        fallback: 0,
      },
      {
        flags: '--lead-in-shape <shape>',
        description: 'straight at 45°, or a quarter of a circle of that radius',
        value: { kind: 'choice', choices: LEAD_IN_SHAPES },
        fallback: 'straight',
      },
      {
        flags: '--bridges <n>',
        description: 'hold every piece by so many bridges',
        value: { kind: 'whole number', min: 0, max: MOST_BRIDGES },
        fallback: 0,
      },
      {
        flags: '--bridge-width <mm>',
        description: 'width of a bridge when it is cut',
        value: { kind: 'number', min: 0.1, max: LONGEST_EXTRA_MM },
        fallback: 1,
      },
      {
        flags: '--overcut <mm>',
        description: 'run on so far past the start of a closed cut',
        value: { kind: 'number', min: 0, max: LONGEST_EXTRA_MM },
        fallback: 0,
      },
      {
        flags: '--frame',
        description: 'a rectangle around everything; its lower left corner is the zero',
        value: { kind: 'switch' },
      },
      {
        flags: '--no-marks',
        description: 'leave out stitch, fold, skive and cement lines, and notches',
        value: { kind: 'switch' },
      },
      {
        flags: '--text <how>',
        description: 'numbers and names of the pieces, as outlines on a layer of their own',
        value: { kind: 'choice', choices: TEXT_CHOICES },
        fallback: 'none',
      },
      {
        flags: '--side <side>',
        description: 'side of the leather that lies up; from the flesh side everything is mirrored',
        value: { kind: 'choice', choices: SIDES },
        fallback: 'grain',
      },
    ],
    notes: [
      'docs/cut-files.md tells what the layers and colours mean, and what to mind before a laser burns leather.',
    ],
    examples: [
      'hidebound cutfile bicycle-goods.layout.json --hide 1 --dxf side.dxf --frame',
      'hidebound cutfile bicycle-goods.layout.json --svg laser.svg --kerf 0.2 --lead-in 3 --bridges 2',
    ],
  },
  {
    name: 'setout',
    argument: '<layout>',
    argumentDescription: 'a layout file (.layout.json)',
    summary:
      'Make the sheet for setting out: where each piece goes, measured from one chalk line, in the order of cutting.',
    options: [
      {
        flags: '--pdf <file>',
        description: 'for each hide its picture with the base line, then the measures of its pieces',
        value: { kind: 'text' },
      },
      {
        flags: '--page-svg <file>',
        description: 'the same pages as drawings, a file for each page',
        value: { kind: 'text' },
      },
      {
        flags: '--page <name>',
        description: 'paper of the sheet',
        value: { kind: 'choice', choices: PAGE_NAMES },
        fallback: 'A4',
      },
      {
        flags: '--side <side>',
        description: 'side of the hide that is chalked on; from the flesh side everything is mirrored',
        value: { kind: 'choice', choices: SIDES },
        fallback: 'grain',
      },
    ],
    notes: ['docs/setting-out.md tells how to work with it.'],
    examples: [
      'hidebound setout bicycle-goods.layout.json --pdf setting-out.pdf',
      'hidebound setout bicycle-goods.layout.json --page-svg setting-out.svg --page A3 --side flesh',
    ],
  },
  {
    name: 'list',
    argument: '<layout>',
    argumentDescription: 'a layout file (.layout.json)',
    summary: 'List every piece of a layout: on the screen, for a spreadsheet, or for a program.',
    options: [
      {
        flags: '--csv <file>',
        description: 'the list for a spreadsheet, a row for each copy',
        value: { kind: 'text' },
      },
      {
        flags: '--json-file <file>',
        description: 'the list for a program',
        value: { kind: 'text' },
      },
    ],
    examples: [
      'hidebound list bicycle-goods.layout.json',
      'hidebound list bicycle-goods.layout.json --csv pieces.csv --json-file pieces.json',
    ],
  },
  {
    name: 'markers',
    summary: 'Make the reference sheets that lie beside a hide in a photo and give it its scale.',
    options: [
      {
        flags: '--pdf <file>',
        description: 'the sheets to print, one a page',
        value: { kind: 'text' },
      },
      {
        flags: '--sheets <numbers>',
        description: 'which sheets, by their numbers',
        value: { kind: 'text' },
        fallback: '1-8',
      },
      {
        flags: '--paper <name>',
        description: 'what they are printed on',
        value: { kind: 'choice', choices: MARKER_PAPER_NAMES },
        fallback: 'A4',
      },
      {
        flags: '--measured <lengths>',
        description:
          'what a rule shows of the two lines of one printed sheet, across x down; it is remembered',
        value: { kind: 'text' },
      },
      {
        flags: '--readings <file>',
        description: 'where that is remembered (reference-sheets.json)',
        value: { kind: 'text' },
      },
    ],
    notes: [
      'Printers stretch and shrink paper: half a millimetre on the line across is 0.3 % of every length and 0.6 % of the area.',
      'Measure with a steel rule, from the middle of one end mark to the middle of the other.',
    ],
    examples: [
      'hidebound markers --pdf sheets.pdf',
      'hidebound markers --sheets 1-4 --paper Letter --pdf sheets.pdf',
      'hidebound markers --measured "159.2 x 218.9"',
      'hidebound markers --sheets 1-4 --paper Letter --measured "6 1/4 in x 8 5/8 in"',
    ],
  },
  PREPARE_SPEC,
  SUIT_SPEC,
  BUY_SPEC,
  COST_SPEC,
  CARD_SPEC,
  TICK_SPEC,
  OFFCUTS_SPEC,
  WORKSHOP_SPEC,
  TABLE_SPEC,
];
