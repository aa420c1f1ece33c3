import { applyAffine, createRandom, orientRing, transformRing } from '@hidebound/geometry';
import type { Affine, Point, Polyline } from '@hidebound/geometry';
import type { LaidSheet } from './lay-sheets.js';
import { aimCamera } from './pinhole.js';
import { renderStage } from './render-scene.js';
import type { SimulatedPhoto } from './render-scene.js';
import type { HideTruth, MarkTruth, Scene } from './scene.js';
import { drawSheet } from './sheet-picture.js';

/** One of several photos of the same hide: who looks says the scene, what lies where is said here. */
export interface Shot {
  readonly scene: Scene;
  readonly hide: HideTruth;
  readonly sheets: readonly LaidSheet[];
  /** Places that the camera must see; what lies beyond them may leave the picture. */
  readonly sees: readonly Point[];
}

export function takeShot({ scene, hide, sheets, sees }: Shot): SimulatedPhoto {
  const surfaces = sheets.map((laid) => ({
    laid,
    picture: drawSheet(laid.sheet),
    lifts: liftsOf(laid.sheet, scene.sheets.curlMm),
    stretch: scene.sheets.stretch,
  }));
  return renderStage(scene, { hides: [hide], sheets: surfaces, camera: aimCamera(scene, sees) });
}

/** A sheet curls alike in every photo of it. */
function liftsOf(sheet: number, curlMm: number): readonly number[] {
  const random = createRandom(1000 + sheet);
  const highest = random.integer(4);
  return [0, 1, 2, 3].map((corner) => curlMm * (corner === highest ? 1 : random.next()));
}

/** The hide laid elsewhere, or turned over where the motion mirrors; with its own marks unless others are given (both lie as before the motion). */
export function movedHide(
  hide: HideTruth,
  motion: Affine,
  marks: readonly MarkTruth[] = hide.marks,
): HideTruth {
  return {
    ...hide,
    outline: orientRing(transformRing(motion, hide.outline), 'outer'),
    openings: hide.openings.map((ring) => orientRing(transformRing(motion, ring), 'opening')),
    backbone: hide.backbone.map((point) => applyAffine(motion, point)),
    marks: marks.map((mark) => ({
      ...mark,
      lines: mark.lines.map((line) => line.map((point) => applyAffine(motion, point))),
      middle: applyAffine(motion, mark.middle),
    })),
  };
}

const CHALK_MM = 5;

/** Rings as a hand draws them are no circles. */
export function chalkRing(middle: Point, radiusMm: number): MarkTruth {
  const line = Array.from({ length: 121 }, (_, i) => {
    const turn = (Math.PI * i) / 60;
    const out = radiusMm * (1 + 0.06 * Math.cos(2 * turn + 1) + 0.04 * Math.sin(3 * turn));
    return { x: middle.x + out * Math.cos(turn), y: middle.y + out * Math.sin(turn) };
  });
  return { kind: 'chalk ring', lines: [line], widthMm: CHALK_MM, middle, reachMm: 1.1 * radiusMm + CHALK_MM };
}

export function chalkCross(middle: Point): MarkTruth {
  const half = 20;
  const stroke = (deg: number): Polyline => {
    const [dx, dy] = [half * Math.cos((deg * Math.PI) / 180), half * Math.sin((deg * Math.PI) / 180)];
    return [
      { x: middle.x - dx, y: middle.y - dy },
      { x: middle.x + dx, y: middle.y + dy },
    ];
  };
  const lines = [stroke(40), stroke(128)];
  return { kind: 'chalk cross', lines, widthMm: CHALK_MM, middle, reachMm: half + CHALK_MM };
}

/** A healed cut or a wrinkle that stands up and has no colour of its own. */
export function ridgeAlong(line: Polyline, widthMm: number): MarkTruth {
  const middle = line[line.length >> 1]!;
  const reachMm = Math.max(...line.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y))) + widthMm;
  return { kind: 'ridge', lines: [line], widthMm, middle, reachMm };
}
