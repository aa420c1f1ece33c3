import type { FlawKind } from '../../model/hide.js';
import type { Effect, Side } from '../../model/marks.js';
import type { Span } from '../../model/workshop-rules.js';
import type { LikelyPlaces } from './hide-plan.js';

/** One kind of mark as it comes on hides of chance. How often and how large is our own: nobody counted marks for it. */
export interface ChanceMark {
  readonly kind: FlawKind;
  readonly side: Side;
  readonly shape: 'patch' | 'line' | 'spot';
  readonly place: keyof LikelyPlaces;
  /** A patch's diameter, a line's length, a spot's radius. */
  readonly sizeMm: Span;
  /** Of a line. */
  readonly widthMm?: Span;
  readonly depth?: Span;
  /** Where it does more than its kind usually does. */
  readonly effect?: Partial<Effect>;
  /** How often, against the others of the list. */
  readonly weight: number;
  /** No more than this on one hide. */
  readonly most?: number;
  /** Lines that run across the backbone rather than anywhere. */
  readonly isAcross?: boolean;
}

/** Marks that take leather from the usable share: never to be used, or to be hidden. */
export const SPOILING_MARKS: readonly ChanceMark[] = [
  {
    kind: 'brand',
    side: 'grain',
    shape: 'patch',
    place: 'rump',
    sizeMm: { min: 90, max: 160 },
    weight: 5,
    most: 2,
  },
  {
    kind: 'cut',
    side: 'flesh',
    shape: 'line',
    place: 'anywhere',
    sizeMm: { min: 40, max: 150 },
    widthMm: { min: 3, max: 7 },
    depth: { min: 0.35, max: 0.9 },
    weight: 4,
  },
  { kind: 'hole', side: 'grain', shape: 'spot', place: 'anywhere', sizeMm: { min: 2, max: 8 }, weight: 3 },
  {
    kind: 'loose grain',
    side: 'grain',
    shape: 'patch',
    place: 'outer',
    sizeMm: { min: 90, max: 240 },
    weight: 6,
    most: 5,
  },
  {
    kind: 'stain',
    side: 'grain',
    shape: 'patch',
    place: 'anywhere',
    sizeMm: { min: 25, max: 120 },
    weight: 4,
  },
  {
    kind: 'scar',
    side: 'grain',
    shape: 'line',
    place: 'anywhere',
    sizeMm: { min: 80, max: 400 },
    widthMm: { min: 5, max: 14 },
    // A torn one that never closed: a horn's rake, barbed wire.
    effect: { looks: 'C', strength: 'weak' },
    weight: 4,
  },
];

/** What fills up the rest of what is to be spoiled. */
export const LAST_SPOILING_MARK: ChanceMark = {
  kind: 'stain',
  side: 'grain',
  shape: 'patch',
  place: 'anywhere',
  sizeMm: { min: 4, max: 400 },
  weight: 1,
};

/** Marks that are seen, and no more. */
export const PLAIN_MARKS: readonly ChanceMark[] = [
  {
    kind: 'scar',
    side: 'grain',
    shape: 'line',
    place: 'anywhere',
    sizeMm: { min: 25, max: 220 },
    widthMm: { min: 2, max: 5 },
    weight: 9,
  },
  { kind: 'bite', side: 'grain', shape: 'spot', place: 'outer', sizeMm: { min: 1, max: 3.5 }, weight: 8 },
  {
    kind: 'vein',
    side: 'grain',
    shape: 'line',
    place: 'outer',
    sizeMm: { min: 100, max: 300 },
    widthMm: { min: 2, max: 3.5 },
    weight: 3,
  },
  {
    kind: 'wrinkle',
    side: 'grain',
    shape: 'line',
    place: 'neck',
    sizeMm: { min: 80, max: 260 },
    widthMm: { min: 3, max: 6 },
    weight: 5,
    isAcross: true,
  },
];
