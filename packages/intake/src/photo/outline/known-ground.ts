import type { Ring } from '@hidebound/geometry';
import type { EdgeHints } from '@hidebound/leather';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Level } from './level.js';
import { onLevel, paintLine, paintRing } from './paint.js';

/** What is known of each pixel of a level before any colour is looked at. */
export const GROUND = {
  open: 0,
  /** Beyond the photos' edges. */
  unseen: 1,
  /** Under a reference sheet or so: anything. */
  paper: 2,
  /** Said by a stroke. */
  hide: 3,
  floor: 4,
} as const;

/** A sheet's edge curls up, throws a little shadow and is known within a millimetre or two: nothing is learned from there. */
const PAPER_RIM_MM = 4;

/** Half of the width of a stroke that somebody draws with a finger or a mouse. */
const STROKE_RADIUS_MM = 3;

export function knownGround(
  picture: StraightPicture,
  level: Level,
  papers: readonly Ring[],
  hints: EdgeHints | undefined,
): Uint8Array {
  const ground = new Uint8Array(level.width * level.height);
  for (let i = 0; i < ground.length; i++) if (level.seen[i] === 0) ground[i] = GROUND.unseen;
  const paint = (kind: number) => (pixel: number) => {
    if (ground[pixel] !== GROUND.unseen) ground[pixel] = kind;
  };
  for (const paper of papers) {
    const ring = paper.map((corner) => onLevel(picture, level, corner));
    paintRing(level, ring, paint(GROUND.paper));
    paintLine(level, [...ring, ring[0]!], PAPER_RIM_MM * level.pxPerMm, paint(GROUND.paper));
  }
  const radius = Math.max(0.75, STROKE_RADIUS_MM * level.pxPerMm);
  for (const [strokes, kind] of [
    [hints?.floorStrokes ?? [], GROUND.floor],
    [hints?.hideStrokes ?? [], GROUND.hide],
  ] as const)
    for (const stroke of strokes)
      paintLine(
        level,
        stroke.map((p) => onLevel(picture, level, p)),
        radius,
        paint(kind),
      );
  return ground;
}
