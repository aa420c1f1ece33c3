import type { Random } from '@hidebound/geometry';
import type { HidePlan, PlannedRun, PlannedZone, Share } from './hide-plan.js';

/**
 * The half of an animal's skin, in shares. No skin was measured for it: drawn by eye, so that a leather worker knows
 * the animal; `own` is the source of all of it.
 */
export interface AnimalShape {
  /** Half width of the neck where it was cut off, and where it is narrowest. */
  readonly neckEnd: number;
  readonly throat: number;
  readonly throatAt: number;
  /** Middle of the fore and hind leg along the skin, their half widths, and how far out they reach. */
  readonly foreAt: number;
  readonly foreHalf: number;
  readonly hindAt: number;
  readonly hindHalf: number;
  readonly legs: number;
  readonly armpit: number;
  readonly belly: number;
  readonly flank: number;
  readonly flankAt: number;
  readonly tail: number;
  /** Cattle that roam are branded. */
  readonly isBranded: boolean;
}

export const CATTLE: AnimalShape = {
  neckEnd: 0.36,
  throat: 0.47,
  throatAt: 0.1,
  foreAt: 0.2,
  foreHalf: 0.05,
  hindAt: 0.945,
  hindHalf: 0.05,
  legs: 1,
  armpit: 0.77,
  belly: 0.86,
  flank: 0.68,
  flankAt: 0.79,
  tail: 0.01,
  isBranded: true,
};

export const CALF: AnimalShape = {
  ...CATTLE,
  neckEnd: 0.3,
  throat: 0.4,
  foreHalf: 0.042,
  hindHalf: 0.042,
  armpit: 0.7,
  belly: 0.76,
  flank: 0.6,
  tail: 0.02,
  isBranded: false,
};

export const GOAT: AnimalShape = {
  neckEnd: 0.26,
  throat: 0.34,
  throatAt: 0.15,
  foreAt: 0.27,
  foreHalf: 0.045,
  hindAt: 0.93,
  hindHalf: 0.05,
  legs: 1,
  armpit: 0.72,
  belly: 0.78,
  flank: 0.64,
  flankAt: 0.76,
  tail: 0.035,
  isBranded: false,
};

export const SHEEP: AnimalShape = {
  ...GOAT,
  throatAt: 0.12,
  throat: 0.4,
  armpit: 0.78,
  belly: 0.88,
  flank: 0.76,
};

export const PIG: AnimalShape = {
  ...CATTLE,
  neckEnd: 0.55,
  throat: 0.62,
  throatAt: 0.07,
  foreAt: 0.19,
  foreHalf: 0.045,
  hindAt: 0.9,
  hindHalf: 0.055,
  armpit: 0.84,
  belly: 0.9,
  flank: 0.82,
  tail: 0.02,
  isBranded: false,
};

export const DEER: AnimalShape = {
  ...GOAT,
  neckEnd: 0.2,
  throat: 0.27,
  throatAt: 0.17,
  foreAt: 0.29,
  foreHalf: 0.035,
  hindHalf: 0.04,
  armpit: 0.62,
  belly: 0.68,
  flank: 0.54,
  tail: 0.03,
};

/** A whole skin, or with `isWhole` false the half of it along the backbone. */
export function animalPlan(random: Random, shape: AnimalShape, isWhole: boolean): HidePlan {
  const own = varied(random, shape);
  const half: PlannedRun[] = [{ kind: 'natural', points: halfOutline(own) }];
  const bellyLine = random.between(0.57, 0.62) * (own.belly / CATTLE.belly);
  return {
    half,
    isWhole,
    hasBackbone: true,
    zones: animalZones(own, bellyLine),
    strokes: [
      [
        [own.foreAt, bellyLine],
        [own.foreAt - 0.01, 0.92],
      ],
      [
        [own.hindAt, bellyLine],
        [own.hindAt + 0.02, 0.92],
      ],
      [
        [own.foreAt + 0.15, own.belly - 0.1],
        [own.flankAt - 0.05, own.belly - 0.1],
      ],
    ],
    places: {
      anywhere: [0, 1, 0, 1],
      outer: [own.foreAt, 1, bellyLine, 1],
      ...(shape.isBranded ? { rump: [0.64, 0.9, 0.18, 0.55] as const } : {}),
      neck: [0.02, own.throatAt + 0.1, 0.02, own.throat],
    },
  };
}

/** No two animals are alike. */
function varied(random: Random, shape: AnimalShape): AnimalShape {
  const by = (value: number, share: number): number => value * (1 + share * random.between(-1, 1));
  return {
    neckEnd: by(shape.neckEnd, 0.12),
    throat: by(shape.throat, 0.08),
    throatAt: by(shape.throatAt, 0.15),
    foreAt: by(shape.foreAt, 0.06),
    foreHalf: by(shape.foreHalf, 0.15),
    hindAt: by(shape.hindAt, 0.01),
    hindHalf: by(shape.hindHalf, 0.12),
    legs: shape.legs,
    armpit: by(shape.armpit, 0.04),
    belly: by(shape.belly, 0.04),
    flank: by(shape.flank, 0.05),
    flankAt: by(shape.flankAt, 0.015),
    tail: by(shape.tail, 0.4),
    isBranded: shape.isBranded,
  };
}

function halfOutline(s: AnimalShape): readonly Share[] {
  const fore = s.foreAt;
  const hind = s.hindAt;
  const f = s.foreHalf;
  const h = s.hindHalf;
  const middle = (fore + s.flankAt) / 2;
  return [
    [0.012, 0],
    [0, 0.45 * s.neckEnd],
    [0.008, 0.9 * s.neckEnd],
    [0.035, 1.08 * s.neckEnd],
    [s.throatAt, s.throat],
    [fore - 1.35 * f, 0.6 * s.throat + 0.4 * s.armpit],
    [fore - 1.2 * f, 0.5 * s.armpit + 0.42],
    [fore - 1.1 * f, 0.96],
    [fore - 0.5 * f, s.legs],
    [fore + 0.45 * f, 0.985],
    [fore + 0.85 * f, 0.93],
    [fore + 1.15 * f, 0.55 * s.armpit + 0.4],
    [fore + 1.9 * f, s.armpit],
    [fore + 3.2 * f, 0.6 * s.armpit + 0.4 * s.belly],
    [middle - 0.04, s.belly - 0.01],
    [middle + 0.08, s.belly],
    [s.flankAt - 0.09, 0.55 * s.belly + 0.45 * s.flank],
    [s.flankAt, s.flank],
    [hind - 1.35 * h, 0.9 * s.flank + 0.07],
    [hind - 0.95 * h, 0.5 * s.flank + 0.45],
    [hind - 0.55 * h, 0.95],
    [hind + 0.1 * h, 0.985],
    [hind + 0.8 * h, 0.96],
    [hind + 1.1 * h, 0.86],
    [hind + 0.95 * h, 0.68],
    [0.978, 0.5],
    [0.985, 0.3],
    [0.976, 0.14],
    [0.98, 0.05],
    [0.985 + s.tail, 0],
  ];
}

const BEYOND = 1.4;

function animalZones(s: AnimalShape, bellyLine: number): readonly PlannedZone[] {
  const neck = s.throatAt + 0.01;
  const shoulder = 0.24 + 0.5 * s.throatAt + 0.1;
  const armpit = s.foreAt + 1.6 * s.foreHalf;
  const hind = s.hindAt - 1.4 * s.hindHalf;
  const shank = 0.5 * s.armpit + 0.4;
  const flank = s.flankAt - 0.06;
  const box = (x0: number, x1: number, y0: number, y1: number): readonly Share[] => [
    [x0, y0],
    [x0, y1],
    [x1, y1],
    [x1, y0],
  ];
  return [
    { kind: 'neck', joins: true, points: box(-BEYOND, neck, 0, BEYOND) },
    {
      kind: 'shoulder',
      joins: true,
      points: [
        [neck, 0],
        [neck, shank],
        [armpit, shank],
        [armpit, bellyLine],
        [shoulder, bellyLine],
        [shoulder, 0],
      ],
    },
    {
      kind: 'bend',
      joins: true,
      points: [
        [shoulder, 0],
        [shoulder, bellyLine],
        [hind, bellyLine],
        [hind, shank],
        [BEYOND, shank],
        [BEYOND, 0],
      ],
    },
    { kind: 'shank', joins: false, points: box(neck, armpit, shank, BEYOND) },
    { kind: 'belly', joins: false, points: box(armpit, flank, bellyLine, BEYOND) },
    { kind: 'flank', joins: false, points: box(flank, hind, bellyLine, BEYOND) },
    { kind: 'shank', joins: false, points: box(hind, BEYOND, shank, BEYOND) },
  ];
}
