import type { Curve, Random } from '@hidebound/geometry';
import type { Flaw } from '../../model/hide.js';
import type { CutFrame } from './cut-frame.js';
import type { HidePlan } from './hide-plan.js';
import { LAST_SPOILING_MARKS, PLAIN_MARKS, SPOILING_MARKS } from './mark-kinds.js';
import type { ChanceMark } from './mark-kinds.js';
import { groundOf, putMark } from './put-mark.js';
import type { Ground } from './put-mark.js';

/** What a hide of chance has that is no good leather. */
export interface ChanceMarks {
  readonly openings: readonly Curve[];
  readonly flaws: readonly Flaw[];
}

/**
 * Openings, and flaws that leave the wanted share of the net area usable: what is neither never to be used nor ugly
 * (looks C), over the area less the openings. Then marks that are only seen, the more the worse the hide is.
 */
export function chanceMarks(
  random: Random,
  plan: HidePlan,
  frame: CutFrame,
  usableShare: number,
): ChanceMarks {
  const ground = groundOf(random, plan, frame);
  const spoiled = 1 - usableShare;
  const openings = chanceOpenings(ground, spoiled * frame.areaMm2 * OPEN_SHARE);
  const netMm2 = frame.areaMm2 - openings.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  spoil(ground, spoiled * netMm2);
  addPlainMarks(ground, usableShare);
  return { openings: openings.map(({ outline: curve }) => curve), flaws: named(ground.flaws) };
}

/** Openings are at most this share of what flaws spoil. */
const OPEN_SHARE = 1 / 8;

interface Opening {
  readonly outline: Curve;
  readonly areaMm2: number;
}

const OPENING: ChanceMark = {
  kind: 'hole',
  side: 'grain',
  shape: 'patch',
  place: 'outer',
  sizeMm: { min: 12, max: 45 },
  weight: 1,
};
const MOST_OPENINGS = 3;

function chanceOpenings(ground: Ground, mostMm2: number): Opening[] {
  const openings: Opening[] = [];
  const count = ground.random.integer(MOST_OPENINGS + 1);
  let leftMm2 = mostMm2;
  for (let i = 0; i < count; i++) {
    const { min, max } = OPENING.sizeMm;
    const largest = Math.sqrt(leftMm2 / 0.8);
    if (largest < min) break;
    const put = putMark(ground, OPENING, ground.random.between(min, Math.min(max, largest)));
    if (put?.flaw.shape.kind !== 'area') continue;
    openings.push({ outline: put.flaw.shape.outline, areaMm2: put.areaMm2 });
    leftMm2 -= put.areaMm2;
  }
  return openings;
}

/** What is left to spoil at last is too small to see, mm². */
const NOTHING_MM2 = 20;
/** So much of what is left to spoil goes into one patch at least, so that a bad hide has large ones, not hundreds. */
const LEAST_PART = 0.12;
const MOST_PART = 0.5;
/** A patch that is drawn for an area covers it but for rounding, mm². */
const ROUNDING_MM2 = 5;
/** So many marks may find no place before patches of any size take theirs. */
const PATIENCE = 12;
/** A patch that finds no room is tried this much smaller. */
const SMALLER = 0.7;
/** A hide so full of marks that no more find room keeps what it has. */
const MOST_ROUNDS = 800;

function spoil(ground: Ground, wantedMm2: number): void {
  const { random } = ground;
  const counts = new Map<ChanceMark, number>();
  let leftMm2 = wantedMm2;
  let failed = 0;
  let share = 1;
  for (let round = 0; round < MOST_ROUNDS && leftMm2 > NOTHING_MM2; round++) {
    const marks = SPOILING_MARKS.filter(
      (each) =>
        ground.plan.places[each.place] !== undefined &&
        (counts.get(each) ?? 0) < mostOf(each, ground.frame.areaMm2),
    );
    const mark = weighted(random, marks);
    let put = putMark(ground, mark, sizeWithin(random, mark, leftMm2), leftMm2);
    if (put === undefined) failed += 1;
    // What finds no room, or is too large for the rest, makes way for a patch that finds it and is as large.
    if (put === undefined && (failed > PATIENCE || leftMm2 < wantedMm2 * LEAST_PART)) {
      const part = share * Math.min(leftMm2, wantedMm2 * LEAST_PART) * random.between(0.5, 1);
      const isLast = part > leftMm2 / 2;
      const size = diameterOf(isLast ? leftMm2 : part);
      for (const last of LAST_SPOILING_MARKS) put ??= putMark(ground, last, size, leftMm2 + ROUNDING_MM2);
      share = put === undefined ? share * SMALLER : 1;
    }
    if (put === undefined) continue;
    counts.set(mark, (counts.get(mark) ?? 0) + 1);
    ground.flaws.push(put.flaw);
    leftMm2 -= put.areaMm2;
  }
}

function mostOf({ mostPerM2 = Infinity }: ChanceMark, areaMm2: number): number {
  return Math.max(1, Math.round((mostPerM2 * areaMm2) / 1e6));
}

function sizeWithin(random: Random, mark: ChanceMark, leftMm2: number): number {
  const size = random.between(mark.sizeMm.min, mark.sizeMm.max);
  if (mark.shape !== 'patch') return size;
  return Math.max(diameterOf(leftMm2 * LEAST_PART), Math.min(size, diameterOf(leftMm2 * MOST_PART)));
}

function diameterOf(areaMm2: number): number {
  return Math.sqrt((4 * areaMm2) / Math.PI);
}

/** Marks that are only seen, per m²: of a flawless hide, and more by so many for each hundredth that is spoiled. */
const PLAIN_PER_M2 = 3;
const PLAIN_PER_M2_AND_HUNDREDTH = 0.6;

function addPlainMarks(ground: Ground, usableShare: number): void {
  const { random, frame, plan } = ground;
  const perM2 = PLAIN_PER_M2 + PLAIN_PER_M2_AND_HUNDREDTH * 100 * (1 - usableShare);
  const count = Math.round((random.between(0.6, 1.4) * perM2 * frame.areaMm2) / 1e6);
  const marks = PLAIN_MARKS.filter(({ place }) => plan.places[place] !== undefined);
  for (let i = 0; i < count; i++) {
    const mark = weighted(random, marks);
    const put = putMark(ground, mark, random.between(mark.sizeMm.min, mark.sizeMm.max));
    if (put !== undefined) ground.flaws.push(put.flaw);
  }
}

function weighted(random: Random, marks: readonly ChanceMark[]): ChanceMark {
  let left = random.next() * marks.reduce((sum, { weight }) => sum + weight, 0);
  for (const mark of marks) {
    left -= mark.weight;
    if (left < 0) return mark;
  }
  return marks[marks.length - 1]!;
}

/** "scar-2": numbered by kind. */
function named(flaws: readonly Flaw[]): Flaw[] {
  const counts = new Map<string, number>();
  return flaws.map((flaw) => {
    const base = (flaw.kind ?? 'flaw').replace(/\s+/g, '-');
    const count = (counts.get(base) ?? 0) + 1;
    counts.set(base, count);
    return { ...flaw, id: `${base}-${count}` };
  });
}
