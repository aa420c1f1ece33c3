import type { Figure, FigureUnit } from '../model/workshop-rules.js';

const MEMORY = 'from memory';
const WIDE = 'from memory, a wide span';
const PRACTICE = 'common practice, no source';
const TEACHER = 'a craft teacher';

function figure(
  name: string,
  words: string,
  unit: FigureUnit,
  [min, max]: readonly [number, number],
  source: string,
): Figure {
  return { name, words, value: { min, max }, unit, source };
}

/** How leather changes its size, and the room that it is cut with for that. */
const SIZES: readonly Figure[] = [
  figure(
    'shrinkage, wetted and dried',
    'How much shorter leather gets that was dyed wet, tooled or moulded, and dried; belly up to 5 %',
    '%',
    [1, 3],
    WIDE,
  ),
  figure(
    'margin of a rough cut',
    'Least room around the pieces of a rough cut that is only dyed',
    'mm',
    [10, 10],
    PRACTICE,
  ),
  figure(
    'margin of a rough cut, tooled or moulded',
    'Room around pieces that are tooled, moulded, or large',
    'mm',
    [15, 25],
    PRACTICE,
  ),
  figure('margin as a share', 'Least room around a piece as a share of its length', '%', [3, 3], PRACTICE),
  figure('large piece', 'From which length on a piece counts as large', 'mm', [300, 300], MEMORY),
  figure('test piece, sides', 'Shorter and longer side of a test piece', 'mm', [40, 60], MEMORY),
  figure('water, at most', 'How warm water for leather may be', '°C', [40, 40], MEMORY),
];

/** How much of a liquid goes besides what the leather takes. */
const LIQUIDS: readonly Figure[] = [
  figure(
    'extra for edges and spill',
    'What the edges take and what stays in cloth and cup',
    '%',
    [10, 15],
    MEMORY,
  ),
  figure(
    'second conditioning',
    'What the light conditioning after the dye takes, as a share of the first one',
    '%',
    [30, 50],
    MEMORY,
  ),
  figure('coats of dye', 'Coats of dye where the order does not say', 'coats', [2, 2], 'a maker’s notes'),
  figure('coats of finish', 'Coats of finish where the order does not say', 'coats', [1, 1], MEMORY),
];

/** Waiting. */
const WAITS: readonly Figure[] = [
  figure('test piece dries', 'How long a test piece dries before it shows its colour', 'h', [2, 24], MEMORY),
  figure(
    'damp leather evens out',
    'How long wiped leather lies until its colour is even again',
    'h',
    [0.25, 1],
    MEMORY,
  ),
  figure(
    'cased leather evens out',
    'How long soaked leather lies covered before it is tooled or moulded',
    'h',
    [1, 12],
    WIDE,
  ),
  figure(
    'wet leather dries',
    'How long tooled or moulded leather dries through, in the room',
    'h',
    [24, 48],
    WIDE,
  ),
  figure(
    'rest after conditioning',
    'How long leather rests after it was conditioned',
    'h',
    [12, 24],
    TEACHER,
  ),
  figure('between coats, spirit dye', 'From one coat of spirit dye to the next', 'h', [0.25, 0.5], MEMORY),
  figure('between coats, oil dye', 'From one coat of oil dye to the next', 'h', [1, 2], 'a dye guide'),
  figure('between coats, water dye', 'From one coat of water dye to the next', 'h', [2, 4], MEMORY),
  figure('between coats, pigment', 'From one coat of pigment to the next', 'h', [0.25, 1], MEMORY),
  figure('dye dries, spirit', 'From the last coat of spirit dye to what follows', 'h', [12, 24], MEMORY),
  figure(
    'dye dries, oil',
    'From the last coat of oil dye to what follows',
    'h',
    [12, 24],
    'a dye guide and a makers’ forum',
  ),
  figure('dye dries, water', 'From the last coat of water dye to what follows', 'h', [24, 24], MEMORY),
  figure('dye dries, pigment', 'From the last coat of pigment to what follows', 'h', [12, 24], MEMORY),
  figure('resist dries', 'From the resist to what follows', 'h', [0.5, 2], MEMORY),
  figure(
    'between coats, acrylic finish',
    'From one coat of acrylic finish to the next',
    'min',
    [10, 20],
    'a makers’ forum',
  ),
  figure('between coats, oil', 'From one coat of oil to the next', 'h', [1, 12], MEMORY),
  figure(
    'between coats, wax or resin finish',
    'From one coat of wax, lacquer or resin to the next',
    'h',
    [0.5, 2],
    MEMORY,
  ),
  figure(
    'cure, acrylic finish',
    'From the last coat of acrylic finish to the knife',
    'h',
    [24, 24],
    'a makers’ forum',
  ),
  figure('cure, oil', 'From the last coat of oil to the knife', 'h', [24, 24], MEMORY),
  figure(
    'cure, wax or resin finish',
    'From the last coat of wax, lacquer or resin to the knife',
    'h',
    [0.5, 24],
    MEMORY,
  ),
];

/** Hands at work: nobody but the user knows them well. */
const HANDS: readonly Figure[] = [
  figure('hands, looking over', 'Looking over the leather of one preparation', 'min', [5, 15], MEMORY),
  figure(
    'hands, test piece',
    'Cutting and dyeing the test pieces of one preparation',
    'min',
    [15, 30],
    MEMORY,
  ),
  figure('hands, rough cut', 'Cutting out one rough cut', 'min', [4, 10], MEMORY),
  figure(
    'hands, setting up',
    'Laying out one block before each coat, and away after it',
    'min',
    [2, 4],
    MEMORY,
  ),
  figure('hands, wiping or casing', 'Wiping or casing a square metre, each side', 'min', [10, 20], MEMORY),
  figure('hands, a coat', 'Putting a coat on a square metre, each side', 'min', [12, 25], MEMORY),
  figure('hands, buffing', 'Buffing a square metre, each side', 'min', [8, 15], MEMORY),
  figure(
    'hands, tooling or moulding',
    'Tooling or moulding one piece; patterns differ widely',
    'min',
    [30, 120],
    WIDE,
  ),
  figure('hands, cutting a piece', 'Cutting out one piece', 'min', [2, 6], MEMORY),
  figure(
    'hands, edges of a piece',
    'Bevelling and burnishing the edges of one piece',
    'min',
    [5, 15],
    MEMORY,
  ),
];

/** Figures of preparation that a user may know better. */
export const PREPARING_FIGURES: readonly Figure[] = [...SIZES, ...LIQUIDS, ...WAITS, ...HANDS];
