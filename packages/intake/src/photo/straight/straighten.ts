import type { Box, Point } from '@hidebound/geometry';
import { seenBox } from '../camera/floor-error.js';
import { isBeforeCamera, pxPerMmAt, toFloorPoint } from '../camera/places.js';
import type { SolvedFloor } from '../camera/solved-floor.js';
import type { Photo } from '../photo.js';
import { withMats } from '../vision/mats.js';
import type { Vision } from '../vision/vision.js';
import { photoLevels } from './photo-levels.js';
import { paintTile, TILE_PX, tileRoom } from './paint-tile.js';
import type { StraightPicture } from './straight-picture.js';

export interface StraightenOptions {
  /** What the photos truly resolve where that is not said. */
  readonly pxPerMm?: number;
  /** The part of the floor that is wanted, mm; all that the photos see where that is not said. */
  readonly box?: Box;
}

/** More shows nothing that a knife could follow. */
const MOST_PX_PER_MM = 4;
/** Larger pictures cost memory and time and show no more than the photo does. */
const MOST_PX = 25e6;
/** A steep photo sees the floor up to the horizon; farther from the middle than this many photo heights nothing is measured. */
const FARTHEST_MM = 6000;
/** Places along each side of a photo at which its resolution is looked up. */
const RESOLUTION_STEPS = 12;

/** The floor as seen from straight above, put together from all photos. */
export function straighten(
  photos: readonly Photo[],
  floor: Pick<SolvedFloor, 'cameras'>,
  options: StraightenOptions,
  vision: Vision,
): StraightPicture {
  const box = options.box ?? nearBox(seenBox(floor.cameras));
  const pxPerMm = options.pxPerMm ?? trueResolution(floor, box);
  const width = Math.max(1, Math.ceil((box.maxX - box.minX) * pxPerMm));
  const height = Math.max(1, Math.ceil((box.maxY - box.minY) * pxPerMm));
  const picture: StraightPicture = {
    width,
    height,
    rgb: new Uint8Array(width * height * 3),
    pxPerMm,
    origin: { x: box.minX, y: box.minY },
    seen: new Uint8Array(width * height),
  };
  withMats((keep) => {
    const levels = photos.map((photo) => photoLevels(photo, vision, keep));
    const room = tileRoom();
    for (let top = 0; top < height; top += TILE_PX) {
      for (let left = 0; left < width; left += TILE_PX) {
        paintTile(picture, left, top, levels, floor.cameras, room, vision);
      }
    }
  });
  return picture;
}

function nearBox({ minX, minY, maxX, maxY }: Box): Box {
  return {
    minX: Math.max(minX, -FARTHEST_MM),
    minY: Math.max(minY, -FARTHEST_MM),
    maxX: Math.min(maxX, FARTHEST_MM),
    maxY: Math.min(maxY, FARTHEST_MM),
  };
}

/**
 * What the photos have for a mm at the middle one of their own pixels, not more than makes sense: counted by pixels and not
 * by floor, so that the far floor of a slanting photo does not make the hide coarse.
 */
function trueResolution({ cameras }: Pick<SolvedFloor, 'cameras'>, box: Box): number {
  const found: number[] = [];
  for (const camera of cameras) {
    for (let row = 0; row < RESOLUTION_STEPS; row++) {
      for (let column = 0; column < RESOLUTION_STEPS; column++) {
        const at = toFloorPoint(camera, {
          x: ((column + 0.5) / RESOLUTION_STEPS) * camera.width,
          y: ((row + 0.5) / RESOLUTION_STEPS) * camera.height,
        });
        if (isBeforeCamera(camera, at) && isInBox(at, box)) found.push(pxPerMmAt(camera, at));
      }
    }
  }
  const typical = found.sort((a, b) => a - b)[found.length >> 1] ?? 1;
  const byMemory = Math.sqrt(MOST_PX / ((box.maxX - box.minX) * (box.maxY - box.minY)));
  return Math.min(typical, MOST_PX_PER_MM, byMemory);
}

const isInBox = ({ x, y }: Point, { minX, minY, maxX, maxY }: Box): boolean =>
  x >= minX && x <= maxX && y >= minY && y <= maxY;
