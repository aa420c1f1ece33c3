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
import type { Box, Point, Random, Region, Ring } from '@hidebound/geometry';
import { flawRegions } from '../../hide/flaw-region.js';
import type { Flaw, FlawShape } from '../../model/hide.js';
import type { CutFrame } from './cut-frame.js';
import type { HidePlan, ShareBox } from './hide-plan.js';
import type { ChanceMark } from './mark-kinds.js';
import { shapeOfMark } from './mark-shape.js';

/** The table that marks are put on. */
export interface Ground {
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

/** Chords of the outline that marks are held against; they keep off it by more. */
const OUTLINE_TOLERANCE_MM = 2;
const EDGE_TOLERANCE_MM = 0.2;

/** An empty ground, and the unlucky spots of this hide. */
export function groundOf(random: Random, plan: HidePlan, frame: CutFrame): Ground {
  const outline = flattenCurve(frame.outline, OUTLINE_TOLERANCE_MM).slice(0, -1);
  const spots = Array.from({ length: 2 + random.integer(3) }, () =>
    placeIn(random, plan, frame, plan.places.anywhere),
  );
  const edge = {
    outer: orientRing(flattenCurve(frame.outline, EDGE_TOLERANCE_MM).slice(0, -1), 'outer'),
    openings: [],
  };
  return { random, frame, plan, outline, edge, spots, taken: [], flaws: [] };
}

export interface PutMark {
  readonly flaw: Flaw;
  readonly areaMm2: number;
}

const PLACES_TRIED = 30;
/** Marks keep off the edge and off each other by this, mm. */
const APART_MM = 3;

/** Puts a mark where it lies on the hide and on no other one; none if no place is found or it covers more than `mostMm2`. */
export function putMark(
  ground: Ground,
  mark: ChanceMark,
  size: number,
  mostMm2 = Infinity,
): PutMark | undefined {
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
