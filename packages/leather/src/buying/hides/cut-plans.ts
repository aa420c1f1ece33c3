import type { Random } from '@hidebound/geometry';
import type { CutSizeRule } from '../../model/workshop-rules.js';
import { CALF, CATTLE, DEER, GOAT, PIG, SHEEP, animalPlan } from './animal-plan.js';
import type { AnimalShape } from './animal-plan.js';
import type { HidePlan, PlannedRun, Share } from './hide-plan.js';

/** A plan by chance of the cut or skin that a row of the table of cuts speaks of. Shapes are our own, drawn by eye. */
export function planOfCut(random: Random, rule: Pick<CutSizeRule, 'name' | 'cut'>): HidePlan {
  switch (rule.cut) {
    case 'whole hide':
      return animalPlan(random, animalNamed(rule.name), true);
    case 'side':
      return animalPlan(random, animalNamed(rule.name), false);
    case 'back':
      return backPlan(random);
    case 'bend':
      return bendPlan(random, /\bdouble\b/.test(rule.name));
    case 'butt':
      return /\bhorse\b/.test(rule.name) ? shellPlan(random) : bendPlan(random, true);
    case 'shoulder':
      return shoulderPlan(random, false);
    case 'double shoulder':
      return shoulderPlan(random, true);
    case 'belly':
      return bellyPlan(random);
    case 'panel':
    case 'offcut':
      return panelPlan();
  }
}

const ANIMALS: readonly (readonly [name: RegExp, shape: AnimalShape])[] = [
  [/\b(goat|kid)\b/, GOAT],
  [/\b(sheep|lamb)\b/, SHEEP],
  [/\b(pig|hog)\b/, PIG],
  [/\b(deer|elk)\b/, DEER],
  [/\b(calf|kip)\b/, CALF],
];

function animalNamed(name: string): AnimalShape {
  return ANIMALS.find(([pattern]) => pattern.test(name))?.[1] ?? CATTLE;
}

function natural(...points: Share[]): PlannedRun {
  return { kind: 'natural', points };
}

function cut(...points: Share[]): PlannedRun {
  return { kind: 'cut', points };
}

/** A side without its belly: neck and rump as they grew, the belly cut off along a line. */
function backPlan(random: Random): HidePlan {
  const front = random.between(0.12, 0.17);
  const rear = random.between(0.92, 0.96);
  const low = random.between(0.93, 1);
  const neck = random.between(0.5, 0.6);
  return {
    half: [
      natural(
        [0.008, 0],
        [0, 0.3],
        [0.01, 0.9 * neck],
        [0.035, 1.1 * neck],
        [0.09, random.between(0.74, 0.8)],
        [front, 1],
      ),
      cut([front, 1], [rear, low]),
      natural(
        [rear, low],
        [0.985, 0.8 * low],
        [0.978, 0.55],
        [0.988, 0.35],
        [0.978, 0.16],
        [0.982, 0.05],
        [0.994, 0],
      ),
    ],
    isWhole: false,
    hasBackbone: true,
    zones: [
      { kind: 'neck', joins: true, points: rectangle(-0.4, 0.1, 0, 1.4) },
      { kind: 'shoulder', joins: true, points: rectangle(0.1, 0.4, 0, 1.4) },
      { kind: 'bend', joins: true, points: rectangle(0.4, 1.4, 0, 1.4) },
    ],
    strokes: [],
    places: {
      anywhere: [0, 1, 0, 1],
      outer: [0.1, 1, 0.75, 1],
      rump: [0.64, 0.9, 0.25, 0.8],
      neck: [0.02, 0.2, 0.05, 0.7],
    },
  };
}

/** The hind part without shoulder and belly: squared in front and below, the rump as it grew. */
function bendPlan(random: Random, isDouble: boolean): HidePlan {
  const front = random.between(0, 0.015);
  const low = random.between(0.93, 1);
  const rear = random.between(0.9, 0.94);
  return {
    half: [
      cut([0, 0], [front, 1]),
      cut([front, 1], [rear, low]),
      natural(
        [rear, low],
        [0.965, 0.86 * low],
        [0.978, 0.62],
        [random.between(0.985, 1), 0.4],
        [0.98, 0.18],
        [0.982, 0.06],
        [0.995, 0],
      ),
    ],
    isWhole: isDouble,
    hasBackbone: true,
    zones: [],
    strokes: [],
    places: { anywhere: [0, 1, 0, 1], outer: [0, 1, 0.75, 1], rump: [0.4, 0.85, 0.25, 0.8] },
  };
}

/** The fore part: cut straight from the bend behind, neck in front, the foreleg's stump below. */
function shoulderPlan(random: Random, isDouble: boolean): HidePlan {
  const neck = random.between(0.34, 0.42);
  const leg = random.between(0.46, 0.54);
  const rear = random.between(0.97, 1);
  const low = random.between(0.84, 0.9);
  return {
    half: [
      natural(
        [0.03, 0],
        [0, 0.5 * neck],
        [0.015, 0.85 * neck],
        [0.09, 1.06 * neck],
        [0.22, 1.35 * neck],
        [leg - 0.16, 0.7],
        [leg - 0.14, 0.86],
        [leg - 0.1, 0.97],
        [leg, 1],
        [leg + 0.09, 0.965],
        [leg + 0.14, 0.88],
        [leg + 0.24, 0.82],
        [0.86, low - 0.02],
        [rear, low],
      ),
      cut([rear, low], [0.985, 0]),
    ],
    isWhole: isDouble,
    hasBackbone: true,
    zones: [
      { kind: 'neck', joins: true, points: rectangle(-0.4, 0.2, 0, 1.4) },
      { kind: 'shank', joins: false, points: rectangle(0.2, leg + 0.2, 0.84, 1.4) },
      { kind: 'flank', joins: false, points: rectangle(leg + 0.2, 1.4, 0.76, 1.4) },
    ],
    strokes: [],
    places: { anywhere: [0, 1, 0, 1], outer: [0.3, 1, 0.6, 1], neck: [0.04, 0.5, 0.05, 0.4] },
  };
}

/** What was cut off along the side: straight above, below the leg stumps and the belly's waves. */
function bellyPlan(random: Random): HidePlan {
  const body = random.between(0.62, 0.74);
  const flank = random.between(0.42, 0.52);
  const stump = random.between(0.13, 0.17);
  return {
    half: [
      natural(
        [0, 0],
        [0.005, 0.25],
        [stump - 0.085, 0.52],
        [stump - 0.075, 0.85],
        [stump - 0.04, 0.985],
        [stump + 0.03, 0.97],
        [stump + 0.065, 0.8],
        [stump + 0.1, body - 0.1],
        [0.34, body - 0.03],
        [0.46, body + random.between(-0.03, 0.05)],
        [0.57, body],
        [0.67, 0.5 * (body + flank)],
        [0.75, flank],
        [0.82, flank + 0.08],
        [0.86, 0.8],
        [0.9, 0.97],
        [0.955, random.between(0.93, 1)],
        [0.985, 0.75],
        [0.99, 0.4],
        [1, 0.1],
        [0.995, 0],
      ),
    ],
    isWhole: false,
    hasBackbone: false,
    zones: [
      { kind: 'shank', joins: false, points: rectangle(-0.4, stump + 0.09, 0.62, 1.4) },
      { kind: 'flank', joins: false, points: rectangle(0.68, 0.84, -0.4, 1.4) },
      { kind: 'shank', joins: false, points: rectangle(0.84, 1.4, 0.6, 1.4) },
    ],
    strokes: [
      [
        [0.15, 0.3],
        [0.9, 0.25],
      ],
    ],
    places: { anywhere: [0, 1, 0, 1], outer: [0, 1, 0.3, 1] },
  };
}

/** A horse's butt: two round shells that hang together over the backbone. */
function shellPlan(random: Random): HidePlan {
  const waist = random.between(0.3, 0.36);
  return {
    half: [
      natural(
        [waist, 0],
        [0.2, 0.14],
        [0.04, 0.34],
        [0, 0.58],
        [0.1, 0.84],
        [0.34, 1],
        [0.62, 0.97],
        [0.86, 0.8],
        [1, 0.52],
        [0.97, 0.25],
        [0.9, 0],
      ),
    ],
    isWhole: true,
    hasBackbone: true,
    zones: [],
    strokes: [],
    places: { anywhere: [0, 1, 0, 1], outer: [0, 1, 0.7, 1] },
  };
}

/** A rectangle as bought, or an offcut of no known shape. */
function panelPlan(): HidePlan {
  return {
    half: [cut([0, 0], [0, 1]), cut([0, 1], [1, 1]), cut([1, 1], [1, 0])],
    isWhole: false,
    hasBackbone: false,
    zones: [],
    strokes: [
      [
        [0.2, 0.5],
        [0.8, 0.5],
      ],
    ],
    places: { anywhere: [0, 1, 0, 1], outer: [0, 1, 0.7, 1] },
  };
}

function rectangle(x0: number, x1: number, y0: number, y1: number): readonly Share[] {
  return [
    [x0, y0],
    [x0, y1],
    [x1, y1],
    [x1, y0],
  ];
}
