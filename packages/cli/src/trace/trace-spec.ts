import type { CommandSpec, OptionSpec } from '../option-table.js';

/** By the names of `HIDE_CUTS`, which are not loaded for a mere help text. */
const CUT_NAMES = [
  'whole hide',
  'side',
  'back',
  'bend',
  'butt',
  'shoulder',
  'double shoulder',
  'belly',
  'panel',
  'offcut',
] as const;

/** Scans have 72 to 2400 px to the inch. */
const SCAN_DPI = { min: 30, max: 4800 } as const;

const PHOTO_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--out <file>',
    description: 'where to write the hide file, or the pattern (named after the photo)',
    value: { kind: 'text' },
  },
  {
    flags: '--up <side>',
    description: 'which side of the leather the camera saw; a photo alone does not tell it',
    value: { kind: 'choice', choices: ['grain', 'flesh'] },
  },
  {
    flags: '--bars <lengths>',
    description:
      'how long the lines of the printed sheets came out, across x down; else reference-sheets.json beside the photo counts',
    value: { kind: 'text' },
  },
  {
    flags: '--hints <file>',
    description: 'what you know of the photos (.hints.yaml): strokes, places on the edge, a known rectangle',
    value: { kind: 'text' },
  },
  {
    flags: '--rectangle <corners=sides>',
    description:
      'four corners of a rectangle on the photo, clockwise from the top left, and its sides: "310,250 3700,260 3720,2800 280,2790 = 900 x 600"',
    value: { kind: 'text' },
  },
  {
    flags: '--raking <photo>',
    description: 'the same leather, untouched, with light from low at one side; may be given several times',
    value: { kind: 'texts' },
  },
  {
    flags: '--other-side <photo>',
    description: 'the hide turned over, with what you chalked on its other side; may be given several times',
    value: { kind: 'texts' },
  },
  {
    flags: '--moved',
    description: 'the leather was dragged along between the photos; crosses chalked on it join them',
    value: { kind: 'switch' },
  },
];

const HIDE_OPTIONS: readonly OptionSpec[] = [
  { flags: '--id <name>', description: 'the hide’s name (that of its file)', value: { kind: 'text' } },
  {
    flags: '--cut <cut>',
    description: 'which cut of the animal it is (guessed)',
    value: { kind: 'choice', choices: CUT_NAMES },
  },
  {
    flags: '--check-area <area>',
    description: 'the area on the hide or the invoice, such as "22 3/4 ft2"; it is kept and compared',
    value: { kind: 'text' },
  },
  { flags: '--thickness <thickness>', description: '"2.0-2.4 mm" or "4-5 oz"', value: { kind: 'text' } },
  { flags: '--tannage <words>', description: 'such as "vegetable"', value: { kind: 'text' } },
  { flags: '--colour <words>', description: 'such as "natural"', value: { kind: 'text' } },
  { flags: '--lot <name>', description: 'hides of one lot match in shade', value: { kind: 'text' } },
  {
    flags: '--no-candidates',
    description: 'do not look for possible flaws',
    value: { kind: 'switch' },
  },
  {
    flags: '--picture <file>',
    description: 'draw the hide over its photo into an .svg or .pdf file',
    value: { kind: 'text' },
  },
];

const OTHER_USES: readonly OptionSpec[] = [
  {
    flags: '--pieces',
    description:
      'instead of a hide, read card or paper templates (a photo, a scan or a scanned PDF) into a pattern',
    value: { kind: 'switch' },
  },
  {
    flags: '--dpi <n>',
    description: 'with --pieces: pixels to the inch of a scan, where the file does not say so',
    value: { kind: 'number', ...SCAN_DPI },
  },
  {
    flags: '--names <names>',
    description: 'with --pieces: names of the pieces in reading order, with commas between',
    value: { kind: 'text' },
  },
  {
    flags: '--scraps',
    description:
      'instead of one hide, write every piece of leather as an offcut of its own, numbered after --id',
    value: { kind: 'switch' },
  },
];

const TRACE_NOTES: readonly string[] = [
  'Print reference sheets ("hidebound markers"), lay four or more flat around the hide, and photograph it from above.',
  'Hints name places in pixels of the photo (see docs/photo.md and docs/files.md):',
  '  format: hidebound/photo-hints@1',
  '  photos:',
  '    - photo: side.jpg',
  '      hide: [[[1200, 900], [2400, 1100]]]',
  '      floor: [[[80, 60], [90, 2900]]]',
  '      edge: [[402, 1500], [3511, 1720]]',
];

/** The table's row for `hidebound trace`. */
export const TRACE_SPEC: CommandSpec = {
  name: 'trace',
  argument: '<photo...>',
  argumentDescription: 'photos of one hide (JPEG, PNG or WebP)',
  summary: 'Make a hide file from photos: scaled, straightened, its edge traced, flaws marked.',
  options: [...PHOTO_OPTIONS, ...HIDE_OPTIONS, ...OTHER_USES],
  notes: TRACE_NOTES,
  examples: [
    'hidebound trace side.jpg --up grain --check-area "22 3/4 ft2" --picture side.svg',
    'hidebound trace left.jpg right.jpg --up flesh --cut side --bars "159.2 x 218.9" --out side.hide.json',
    'hidebound trace side.jpg --up grain --raking side-low.jpg --other-side side-back.jpg',
    'hidebound trace --pieces cards.jpg --names "front, back, gusset" --out bag.svg',
    'hidebound trace --scraps scraps.jpg --up grain --id scrap --thickness "2 mm"',
  ],
};
