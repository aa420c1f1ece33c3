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
  /** No more than this on a m² of hide, but one at least. */
  readonly mostPerM2?: number;
  /** Lines that run across the backbone rather than anywhere. */
  readonly isAcross?: boolean;
  /** Patches that may run out over the edge. */
  readonly reachesEdge?: boolean;
}

/**
 * Marks that take leather from the usable share: never to be used, or to be hidden. Most of a poor hide is lost in a
 * few large places, and most of these lie at its edge; a grade counts what lies between many small ones as lost, too.
 */
export const SPOILING_MARKS: readonly ChanceMark[] = [
  {
    kind: 'brand',
    side: 'grain',
    shape: 'patch',
    place: 'rump',
    sizeMm: { min: 90, max: 160 },
    weight: 3,
    mostPerM2: 0.6,
  },
  {
    kind: 'cut',
    side: 'flesh',
    shape: 'line',
    place: 'outer',
    sizeMm: { min: 40, max: 120 },
    widthMm: { min: 3, max: 6 },
    depth: { min: 0.35, max: 0.9 },
    weight: 4,
    mostPerM2: 1,
  },
  {
    kind: 'hole',
    side: 'grain',
    shape: 'spot',
    place: 'anywhere',
    sizeMm: { min: 2, max: 8 },
    weight: 3,
    mostPerM2: 1,
  },
  {
    kind: 'loose grain',
    side: 'grain',
    shape: 'patch',
    place: 'outer',
    sizeMm: { min: 120, max: 300 },
    weight: 6,
    mostPerM2: 2,
    reachesEdge: true,
  },
  {
    kind: 'stain',
    side: 'grain',
    shape: 'patch',
    place: 'outer',
    sizeMm: { min: 60, max: 200 },
    weight: 6,
    reachesEdge: true,
  },
  {
    kind: 'stain',
    side: 'grain',
    shape: 'patch',
    place: 'anywhere',
    sizeMm: { min: 25, max: 120 },
    weight: 2,
    mostPerM2: 1.5,
    reachesEdge: true,
  },
  {
    kind: 'scar',
    side: 'grain',
    shape: 'line',
    place: 'anywhere',
    sizeMm: { min: 80, max: 300 },
    widthMm: { min: 5, max: 12 },
    // A torn one that never closed: a horn's rake, barbed wire.
    effect: { looks: 'C', strength: 'weak' },
    weight: 4,
    mostPerM2: 0.8,
  },
];

const REST: ChanceMark = {
  kind: 'stain',
  side: 'grain',
  shape: 'patch',
  place: 'outer',
  sizeMm: { min: 4, max: 400 },
  weight: 1,
};

/** What fills up the rest of what is to be spoiled: there if it finds room, else anywhere. */
export const LAST_SPOILING_MARKS: readonly ChanceMark[] = [REST, { ...REST, place: 'anywhere' }];

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
