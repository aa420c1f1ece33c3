import { pointInRing, ringBox, ringCentroid } from '@hidebound/geometry';
import type { Point, Polyline, Ring } from '@hidebound/geometry';
import type { HideCut } from '@hidebound/leather';
import { longestStraight } from './longest-straight.js';
import { mirrorAxis } from './mirror-axis.js';
import { acrossAxis, axisEnds, gridInside } from './outline-shape.js';
import type { Axis } from './outline-shape.js';

/** Where the backbone may lie, to be confirmed by a person. */
export interface BackboneGuess {
  /** From head to tail, its ends within the outline; absent where the cut has none or the shape says nothing. */
  readonly backbone?: Polyline;
  readonly cut: HideCut;
  /** 0 to 1, of the backbone and which of its ends is the head; without one, of the cut. */
  readonly confidence: number;
}

/** Cuts that have both halves of the animal, the backbone in the middle. */
const WHOLE_CUTS: readonly HideCut[] = ['whole hide', 'butt', 'double shoulder'];
/** Cuts along the backbone, one half each. */
const HALF_CUTS: readonly HideCut[] = ['side', 'back', 'bend', 'shoulder'];

/** A hide folds onto itself about its backbone by this share at least. */
const ALIKE = 0.86;
/** A side's straight edge is this share of its length at least, a lesser one is a cut-off corner. */
const LONG = 0.6;
/** Less leather than this is a scrap: no shape of a whole animal is looked for. */
const SCRAP_MM2 = 150_000;

/** Guesses the cut if it is not given, and the backbone from the outline's shape alone. */
export function guessBackbone(outline: Ring, openings: readonly Ring[] = [], cut?: HideCut): BackboneGuess {
  const points = gridInside(outline, openings);
  const straight = longestStraight(outline);
  const mirror = mirrorAxis(points, outline);
  const { minX, minY, maxX, maxY } = ringBox(outline);
  const isScrap = (maxX - minX) * (maxY - minY) < SCRAP_MM2;
  const guessed = cut ?? guessCut(mirror.share, straight.length / longSide(points), isScrap);
  if (guessed === 'belly') return { cut: guessed, confidence: cut === undefined ? 0.3 : 0.9 };
  if (WHOLE_CUTS.includes(guessed)) return wholeBackbone(outline, points, mirror, guessed);
  if (HALF_CUTS.includes(guessed)) return edgeBackbone(outline, points, straight, guessed);
  return longAxisBackbone(outline, points, guessed);
}

function guessCut(alike: number, straightShare: number, isScrap: boolean): HideCut {
  if (isScrap) return 'offcut';
  // A panel is straight and folds onto itself too, but then nothing tells one from the other: a side is bought more often.
  if (straightShare > LONG) return alike > 0.97 ? 'panel' : 'side';
  return alike > ALIKE ? 'whole hide' : 'offcut';
}

function longSide(points: readonly Point[]): number {
  const centre = meanOf(points);
  const angle = mainDirection(points);
  const along = points.map((p) => (p.x - centre.x) * Math.cos(angle) + (p.y - centre.y) * Math.sin(angle));
  return Math.max(...along) - Math.min(...along);
}

function wholeBackbone(
  outline: Ring,
  points: readonly Point[],
  mirror: Axis & { readonly share: number; readonly lead: number },
  cut: HideCut,
): BackboneGuess {
  const ends = axisEnds(outline, mirror);
  if (ends === undefined) return { cut, confidence: 0.2 };
  const { line, sure } = headFirst(points, mirror, ends);
  const alike = Math.max(0, Math.min(1, (mirror.share - 0.75) / 0.2));
  return {
    backbone: line,
    cut,
    confidence: round(0.15 + 0.5 * alike * Math.min(1, mirror.lead / 0.04) + 0.2 * sure),
  };
}

/** Along the long straight edge, just within it. */
function edgeBackbone(
  outline: Ring,
  points: readonly Point[],
  straight: { readonly from: Point; readonly to: Point; readonly length: number },
  cut: HideCut,
): BackboneGuess {
  const { from, to, length } = straight;
  const share = length / longSide(points);
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const inside = { x: -Math.sin(angle), y: Math.cos(angle) };
  for (const depth of [1, 3, 8, 20]) {
    const trimmed = Math.min(depth + 4, length / 10);
    const at = (p: Point, way: number): Point => ({
      x: p.x + depth * inside.x + way * trimmed * Math.cos(angle),
      y: p.y + depth * inside.y + way * trimmed * Math.sin(angle),
    });
    const ends: readonly [Point, Point] = [at(from, 1), at(to, -1)];
    if (ends.some((end) => pointInRing(end, outline) !== 'inside')) continue;
    const { line, sure } = headFirst(points, { at: ends[0], angle }, ends);
    return {
      backbone: line,
      cut,
      confidence: round(0.1 + 0.5 * Math.max(0, Math.min(1, (share - 0.4) / 0.4)) + 0.2 * sure),
    };
  }
  return { cut, confidence: 0.2 };
}

function longAxisBackbone(outline: Ring, points: readonly Point[], cut: HideCut): BackboneGuess {
  const axis = { at: ringCentroid(outline), angle: mainDirection(points) };
  const ends = axisEnds(outline, axis);
  return ends === undefined ? { cut, confidence: 0.1 } : { backbone: ends, cut, confidence: 0.15 };
}

/** The neck is narrower than the rump: the end with less leather near it comes first. */
function headFirst(
  points: readonly Point[],
  axis: Axis,
  [a, b]: readonly [Point, Point],
): { readonly line: Polyline; readonly sure: number } {
  const across = acrossAxis(points, axis, a, b);
  const sum = across.start + across.end;
  const lead = sum === 0 ? 0 : Math.abs(across.start - across.end) / sum;
  return { line: across.start <= across.end ? [a, b] : [b, a], sure: Math.min(1, lead / 0.25) };
}

function meanOf(points: readonly Point[]): Point {
  const sum = points.reduce((s, p) => ({ x: s.x + p.x, y: s.y + p.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

/** The direction in which points spread most, radians. */
function mainDirection(points: readonly Point[]): number {
  const centre = meanOf(points);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of points) {
    xx += (p.x - centre.x) ** 2;
    xy += (p.x - centre.x) * (p.y - centre.y);
    yy += (p.y - centre.y) ** 2;
  }
  return Math.atan2(2 * xy, xx - yy) / 2;
}

function round(confidence: number): number {
  return Math.round(confidence * 100) / 100;
}
