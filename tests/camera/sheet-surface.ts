import { BAR_MM } from '@hidebound/leather';
import type { Point } from '@hidebound/geometry';
import type { LaidSheet } from './lay-sheets.js';
import type { SheetPicture } from './sheet-picture.js';

/** A laid sheet of paper, its corners lifted off the floor. */
export interface SheetSurface {
  readonly laid: LaidSheet;
  readonly picture: SheetPicture;
  /** Of each corner: top left, top right, bottom right, bottom left; mm. */
  readonly lifts: readonly number[];
  /** Printed size over drawn size. */
  readonly stretch: Point;
}

/** A lifted corner comes down to the floor over so much. */
const CURL_REACH_MM = 0.5 * BAR_MM.across;

/** How high the paper stands at a place on it, in the sheet's own frame, mm. */
export function heightOn({ lifts, picture }: SheetSurface, x: number, y: number): number {
  const halfWide = picture.width / picture.pxPerMm / 2;
  const halfHigh = picture.height / picture.pxPerMm / 2;
  let height = 0;
  for (let corner = 0; corner < 4; corner++) {
    const cx = corner === 0 || corner === 3 ? -halfWide : halfWide;
    const cy = corner < 2 ? -halfHigh : halfHigh;
    const awaySq = (x - cx) * (x - cx) + (y - cy) * (y - cy);
    if (awaySq >= CURL_REACH_MM * CURL_REACH_MM) continue;
    const near = 1 - Math.sqrt(awaySq) / CURL_REACH_MM;
    height += lifts[corner]! * near * near;
  }
  return height;
}

/** Where a printed place, in the drawing's frame, is in space. */
export function placeOnFloor(surface: SheetSurface, { x, y }: Point): Point & { readonly z: number } {
  const { laid, stretch } = surface;
  const sin = Math.sin((laid.turnDeg * Math.PI) / 180);
  const cos = Math.cos((laid.turnDeg * Math.PI) / 180);
  const u = x * stretch.x;
  const v = y * stretch.y;
  return { x: laid.x + cos * u - sin * v, y: laid.y + sin * u + cos * v, z: heightOn(surface, u, v) };
}
