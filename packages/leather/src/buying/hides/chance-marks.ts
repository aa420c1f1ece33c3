import {
  boxesTouch,
  curveBox,
  curveCorners,
  curveFromPolyline,
  flattenCurve,
  growBox,
  intersectRegions,
  orientRing,
  pointInRing,
  pointToRing,
  regionsArea,
  roundPoint,
  ringBox,
} from '@hidebound/geometry';
import type { Box, Curve, Point, Random, Region, Ring } from '@hidebound/geometry';
import { flawRegions } from '../../hide/flaw-region.js';
import type { Flaw, FlawShape } from '../../model/hide.js';
import type { CutFrame } from './cut-frame.js';
import type { HidePlan, ShareBox } from './hide-plan.js';
import { LAST_SPOILING_MARKS, PLAIN_MARKS, SPOILING_MARKS } from './mark-kinds.js';
import type { ChanceMark } from './mark-kinds.js';
import { shapeOfMark } from './mark-shape.js';

/** What a hide of chance has that is no good leather. */
export interface ChanceMarks {
  readonly openings: readonly Curve[];
  readonly flaws: readonly Flaw[];
}

/** The table that marks are put on. */
interface Ground {
  readonly random: Random;
  readonly frame: CutFrame;
  readonly plan: HidePlan;
  readonly outline: Ring;
  /** The same, closer. */
  readonly edge: Region;
  /** Where the animal or the flayer was unlucky: marks gather there. */
  readonly spots: readonly Point[];
  /** Of what spoils leather already: two such marks never overlap, so that their areas add up. */
  readonly taken: Box[];
  readonly flaws: Flaw[];
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
  const outline = flattenCurve(frame.outline, OUTLINE_TOLERANCE_MM).slice(0, -1);
  const spots = Array.from({ length: 2 + random.integer(3) }, () =>
    placeIn(random, plan, frame, plan.places.anywhere),
  );
  const edge = {
    outer: orientRing(flattenCurve(frame.outline, EDGE_TOLERANCE_MM).slice(0, -1), 'outer'),
    openings: [],
  };
  const ground: Ground = { random, frame, plan, outline, edge, spots, taken: [], flaws: [] };
  const spoiled = 1 - usableShare;
  const openings = chanceOpenings(ground, spoiled * frame.areaMm2 * OPEN_SHARE);
  const netMm2 = frame.areaMm2 - openings.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  spoil(ground, spoiled * netMm2);
  addPlainMarks(ground, usableShare);
  return { openings: openings.map(({ outline: curve }) => curve), flaws: named(ground.flaws) };
}

/** Chords of the outline that marks are held against; they keep off it by more. */
const OUTLINE_TOLERANCE_MM = 2;
const EDGE_TOLERANCE_MM = 0.2;

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

interface PutMark {
  readonly flaw: Flaw;
  readonly areaMm2: number;
}

const PLACES_TRIED = 30;
/** Marks keep off the edge and off each other by this, mm. */
const APART_MM = 3;

/** Puts a mark where it lies on the hide and on no other one; none if no place is found or it covers more than `mostMm2`. */
function putMark(ground: Ground, mark: ChanceMark, size: number, mostMm2 = Infinity): PutMark | undefined {
  const { random, outline, taken } = ground;
  for (let attempt = 0; attempt < PLACES_TRIED; attempt++) {
    const at = likelyPlace(ground, mark);
    if (at === undefined) return undefined;
    // The cheap looks first: most places that are tried on a bad hide are taken.
    if (!isRoomFor(ground, ringBox([at]))) continue;
    const drawn = shapeOfMark(random, mark, at, size);
    if (!isRoomFor(ground, roughBox(drawn))) continue;
    const shape = liesOn(flawRegions(drawn), outline) ? drawn : clipped(ground, mark, drawn);
    if (shape === undefined) continue;
    const areaMm2 = regionsArea(flawRegions(shape));
    if (areaMm2 > mostMm2) return undefined;
    const boxes = coveringBoxes(shape);
    if (taken.some((other) => boxes.some((box) => boxesTouch(other, box)))) continue;
    taken.push(...boxes);
    const { kind, side, depth, effect } = mark;
    const flaw: Flaw = {
      id: '',
      kind,
      side,
      ...(depth === undefined ? {} : { depth: Math.round(100 * random.between(depth.min, depth.max)) / 100 }),
      shape,
      ...(effect === undefined ? {} : { effect }),
    };
    return { flaw, areaMm2 };
  }
  return undefined;
}

/** So many marks of those that may lie anywhere gather at the unlucky spots, within about this share of the size. */
const GATHERED = 0.6;
const SPOT_SHARE = 0.06;

function likelyPlace({ random, plan, frame, spots }: Ground, mark: ChanceMark): Point | undefined {
  const box = plan.places[mark.place];
  if (box === undefined) return undefined;
  if (mark.place === 'anywhere' && random.next() < GATHERED) {
    const spot = spots[random.integer(spots.length)]!;
    const reach = SPOT_SHARE * Math.sqrt(frame.areaMm2);
    return { x: spot.x + reach * random.normal(), y: spot.y + reach * random.normal() };
  }
  return placeIn(random, plan, frame, box);
}

function placeIn(random: Random, plan: HidePlan, frame: CutFrame, [x0, x1, y0, y1]: ShareBox): Point {
  const out = random.between(y0, y1);
  const isFar = plan.isWhole && random.next() < 0.5;
  return frame.at([random.between(x0, x1), isFar ? -out : out]);
}

/** A patch that runs out over the edge ends there; one of which less than this share is left is none. */
const LEAST_LEFT = 0.35;

function clipped({ edge }: Ground, mark: ChanceMark, shape: FlawShape): FlawShape | undefined {
  if (mark.reachesEdge !== true || shape.kind !== 'area') return undefined;
  const whole = flawRegions(shape);
  const parts = intersectRegions(whole, [edge]);
  const [part] = parts;
  if (part === undefined || parts.length > 1 || part.openings.length > 0) return undefined;
  if (regionsArea(parts) < LEAST_LEFT * regionsArea(whole)) return undefined;
  return { kind: 'area', outline: curveFromPolyline(part.outer.map(roundPoint), true) };
}

/** The box of a shape's own points, without its width. */
function roughBox(shape: FlawShape): Box {
  switch (shape.kind) {
    case 'point':
      return ringBox([shape.at]);
    case 'line':
      return ringBox(shape.line);
    case 'area':
      return ringBox(curveCorners(shape.outline));
  }
}

/** True if no mark is near the box and its middle lies on the hide. */
function isRoomFor({ taken, outline }: Ground, box: Box): boolean {
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return !taken.some((other) => boxesTouch(other, box)) && pointInRing(middle, outline) === 'inside';
}

/** Boxes that cover a shape and what it keeps apart from others; of a line one for each stretch. */
function coveringBoxes(shape: FlawShape): Box[] {
  switch (shape.kind) {
    case 'point':
      return [growBox(ringBox([shape.at]), shape.radiusMm * TANGENTS_REACH + APART_MM)];
    case 'line': {
      const reach = (shape.widthMm / 2) * TANGENTS_REACH + APART_MM;
      return shape.line.slice(1).map((to, i) => growBox(ringBox([shape.line[i]!, to]), reach));
    }
    case 'area':
      return [growBox(curveBox(shape.outline), APART_MM)];
  }
}

/** The regions that stand for circles and ends of lines reach a little beyond them. */
const TANGENTS_REACH = 1.03;

/** Whole, and off the edge. A mark is small against the waves of an edge, so its corners and the edge's tell. */
function liesOn(regions: readonly Region[], outline: Ring): boolean {
  return regions.every(({ outer }) => {
    if (!outer.every((p) => pointInRing(p, outline) === 'inside')) return false;
    const { minX, minY, maxX, maxY } = ringBox(outer);
    const near = outline.filter(({ x, y }) => x >= minX && x <= maxX && y >= minY && y <= maxY);
    return (
      near.every((p) => pointInRing(p, outer) === 'outside') &&
      outer.every((p) => pointToRing(p, outline) > APART_MM)
    );
  });
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
