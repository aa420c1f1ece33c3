import type { Point } from '@hidebound/geometry';
import type { EdgeHints, HintedPhoto, PhotoHints, StatedReference } from '@hidebound/leather';
import type { Beside, Four, StatedPlaces } from '../bring-in.js';
import { NO_MARKS } from '../bring-in.js';

/** Four places where a person finds them at once: well within the photo. */
export function firstPlaces(
  { file, width, height }: { readonly file: string; readonly width: number; readonly height: number },
  beside: Exclude<Beside, 'sheets'>,
): StatedPlaces {
  const at = (x: number, y: number): Point => ({ x: Math.round(x * width), y: Math.round(y * height) });
  const box: Four<Point> = [at(0.25, 0.25), at(0.75, 0.25), at(0.75, 0.75), at(0.25, 0.75)];
  const rules: Four<Point> = [at(0.2, 0.85), at(0.8, 0.85), at(0.12, 0.2), at(0.12, 0.8)];
  return {
    file,
    at: beside === 'rules' ? rules : box,
    sidesMm: [undefined, undefined],
    readsMm: [undefined, undefined, undefined, undefined],
  };
}

/** What the places say, once all lengths are there; undefined before. */
export function referenceOf(
  beside: Beside,
  { at, sidesMm, readsMm }: StatedPlaces,
): StatedReference | undefined {
  if (beside === 'sheets') return undefined;
  if (beside === 'card') return { kind: 'card', corners: cardCorners(clockwise(at)) };
  if (beside === 'rectangle') {
    const [widthMm, heightMm] = sidesMm;
    if (widthMm === undefined || heightMm === undefined) return undefined;
    return { kind: 'rectangle', corners: clockwise(at), widthMm, heightMm };
  }
  const [a, b, c, d] = readsMm;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  if (a === b || c === d) return undefined;
  return {
    kind: 'rules',
    along: [
      { at: at[0], mm: a },
      { at: at[1], mm: b },
    ],
    across: [
      { at: at[2], mm: c },
      { at: at[3], mm: d },
    ],
  };
}

/**
 * Four corners clockwise as seen, from the top left one: a person may have dragged them past each other. They are taken
 * by their direction from their middle, and begin with the one that lies most to the top left.
 */
export function clockwise(at: Four<Point>): Four<Point> {
  const middle = {
    x: at.reduce((sum, { x }) => sum + x, 0) / 4,
    y: at.reduce((sum, { y }) => sum + y, 0) / 4,
  };
  const turn = ({ x, y }: Point): number => Math.atan2(y - middle.y, x - middle.x);
  const round = [...at].sort((one, other) => turn(one) - turn(other));
  const first = round.reduce((best, { x, y }, i) => (x + y < round[best]!.x + round[best]!.y ? i : best), 0);
  return [0, 1, 2, 3].map((i) => round[(first + i) % 4]!) as unknown as Four<Point>;
}

/** A card's long side is its first one. */
function cardCorners(corners: Four<Point>): Four<Point> {
  const [a, b, c, d] = corners;
  const long = (one: Point, other: Point) => Math.hypot(other.x - one.x, other.y - one.y);
  return long(a, b) + long(d, c) >= long(b, c) + long(a, d) ? corners : [b, c, d, a];
}

/** All that was said of the photos. */
export function hintsOf(
  files: readonly string[],
  strokes: ReadonlyMap<string, EdgeHints>,
  stated: { readonly file: string; readonly reference: StatedReference } | undefined,
): PhotoHints {
  const photos = files.flatMap((file): HintedPhoto[] => {
    const marks = strokes.get(file);
    const reference = stated?.file === file ? stated.reference : undefined;
    if (marks === undefined && reference === undefined) return [];
    return [{ photo: file, ...(reference === undefined ? {} : { reference }), ...(marks ?? NO_MARKS) }];
  });
  return { photos };
}
