import {
  applyAffine,
  curveFromPolyline,
  distanceBetween,
  regionCentroid,
  sinCosDeg,
} from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { cardPoints, simpleShape } from '@hidebound/leather';
import type { LayablePiece, PieceSource } from '@hidebound/leather';
import { isInside } from '../label/label-box.js';
import { sceneLine } from './template-scene.js';
import type { SceneLine } from './template-scene.js';

/** A sharp angle whose tip is the point: so long, opened by so much to either side. */
const MARK_MM = 5;
const MARK_HALF_DEG = 24;
/** The letter's middle lies so far from the point; it is so high. */
const LETTER_AT_MM = 8.5;
const LETTER_MM = 4;

/** Strokes of the two letters in a square from (-1, -1) to (1, 1). */
const LETTERS: Readonly<Record<'A' | 'B', readonly (readonly (readonly [number, number])[])[]>> = {
  A: [
    [
      [-0.8, 1],
      [0, -1],
      [0.8, 1],
    ],
    [
      [-0.48, 0.2],
      [0.48, 0.2],
    ],
  ],
  B: [
    [
      [-0.6, 0],
      [0.3, 0],
      [0.65, 0.25],
      [0.65, 0.75],
      [0.3, 1],
      [-0.6, 1],
      [-0.6, -1],
      [0.25, -1],
      [0.55, -0.75],
      [0.55, -0.25],
      [0.25, 0],
    ],
  ],
};

/**
 * The points A and B that a card is laid by when a layout is set out: an angle within the piece whose tip is the point,
 * with its letter, upright whatever the card's turn. None on what is cut by its size, without a card.
 */
export function cardPointLines(
  piece: LayablePiece,
  source: PieceSource | undefined,
  toScene: Affine,
): SceneLine[] {
  if (simpleShape(piece, source) !== undefined) return [];
  const { a, b } = cardPoints(piece);
  const middle = regionCentroid(piece.region);
  const inScene = (p: Point): Point => applyAffine(toScene, p);
  return (['A', 'B'] as const).flatMap((letter) => {
    const own = letter === 'A' ? a : b;
    const at = inScene(own);
    const inward = unit(at, inScene(middle));
    const strokes: Point[][] = [cardPointAngle(at, inward, MARK_MM)];
    const length = distanceBetween(own, middle);
    const heart = {
      x: own.x + ((middle.x - own.x) * LETTER_AT_MM) / length,
      y: own.y + ((middle.y - own.y) * LETTER_AT_MM) / length,
    };
    // On a small piece the angle stands alone.
    if (length > LETTER_AT_MM && isInside(heart, piece.region)) {
      const center = inScene(heart);
      for (const stroke of LETTERS[letter]) {
        strokes.push(
          stroke.map(([x, y]) => ({
            x: center.x + (x * LETTER_MM) / 2,
            y: center.y + (y * LETTER_MM) / 2,
          })),
        );
      }
    }
    return strokes.map((stroke) => sceneLine('card point', curveFromPolyline(stroke, false)));
  });
}

/** The angle that marks a point: its tip, and two sides of this length around the way into the card. */
export function cardPointAngle(tip: Point, inward: Point, sideMm: number): Point[] {
  const [one, other] = [-MARK_HALF_DEG, MARK_HALF_DEG].map((deg) => moved(tip, turned(inward, deg), sideMm));
  return [one!, tip, other!];
}

function unit(from: Point, to: Point): Point {
  const length = distanceBetween(from, to);
  return length === 0 ? { x: 1, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function turned(v: Point, deg: number): Point {
  const { sin, cos } = sinCosDeg(deg);
  return { x: v.x * cos - v.y * sin, y: v.x * sin + v.y * cos };
}

function moved(p: Point, way: Point, by: number): Point {
  return { x: p.x + way.x * by, y: p.y + way.y * by };
}
