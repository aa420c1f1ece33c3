import { ringBox } from '@hidebound/geometry';
import type { Region, Ring } from '@hidebound/geometry';
import type { StraightPicture } from '../../straight/straight-picture.js';
import { withMats } from '../../vision/mats.js';
import type { Mat, Vision } from '../../vision/vision.js';
import { fillRings } from './fill-rings.js';
import { ringsOnGrid } from './grid.js';
import type { Grid } from './grid.js';

/** The part of a straightened picture around the leather: lightness L* (0 to 100) and colour a*, b* (CIE 1976) of each cell. */
export interface LeatherCells {
  readonly grid: Grid;
  readonly lightness: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** 255 where all of a cell is seen. */
  readonly seen: Uint8Array;
}

/** The leather in a straightened picture, ready to be searched: which cells are leather, far enough from its edges. */
export interface LeatherMap extends Omit<LeatherCells, 'seen'> {
  /** 255 for leather to be searched, 0 elsewhere. */
  readonly mask: Uint8Array;
}

/**
 * Cells a mm. Finer ones hold no more of a mark that matters (a bite is 2 mm, a scar 1 mm wide and long) and take four
 * times as long each time they are halved.
 */
const CELLS_PER_MM = 1;

/** Room around the leather, so that smoothing near its edge finds cells. */
const ROOM_MM = 8;

/** The cells that show leather with this outline, 1 a mm at most; nothing where the picture does not show it. */
export function leatherCells(
  picture: StraightPicture,
  outline: Ring,
  vision: Vision,
): LeatherCells | undefined {
  const cut = cutOf(picture, outline);
  if (cut === undefined) return undefined;
  return withMats((keep) => {
    const { grid, colour, seen } = reduced(picture, cut, keep, vision);
    const lab = keep(new vision.Mat());
    vision.cvtColor(colour, lab, vision.COLOR_RGB2Lab);
    return { grid, seen, ...channels(lab.data, grid.width * grid.height) };
  });
}

/**
 * The cells that are to be searched. What lies within `edgeMm` of an edge, of an opening, or of what no photo shows is
 * left out: there the outline may be wrong, and edges cast shadows.
 */
export function leatherMap(
  { seen, ...cells }: LeatherCells,
  leather: Region,
  options: { readonly edgeMm: number; readonly leftOut?: readonly Region[] },
  vision: Vision,
): LeatherMap {
  return { ...cells, mask: searchMask(cells.grid, leather, seen, options, vision) };
}

interface Cut {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function cutOf(picture: StraightPicture, outline: Ring): Cut | undefined {
  const box = ringBox(outline);
  const { origin, pxPerMm } = picture;
  const x = Math.max(0, Math.floor((box.minX - ROOM_MM - origin.x) * pxPerMm));
  const y = Math.max(0, Math.floor((box.minY - ROOM_MM - origin.y) * pxPerMm));
  const right = Math.min(picture.width, Math.ceil((box.maxX + ROOM_MM - origin.x) * pxPerMm));
  const low = Math.min(picture.height, Math.ceil((box.maxY + ROOM_MM - origin.y) * pxPerMm));
  return right - x < 2 || low - y < 2 ? undefined : { x, y, width: right - x, height: low - y };
}

function reduced(
  picture: StraightPicture,
  cut: Cut,
  keep: <Held extends { delete(): void }>(held: Held) => Held,
  vision: Vision,
): { readonly grid: Grid; readonly colour: Mat; readonly seen: Uint8Array } {
  const share = Math.min(1, CELLS_PER_MM / picture.pxPerMm);
  const width = Math.max(2, Math.round(cut.width * share));
  const height = Math.max(2, Math.round(cut.height * share));
  const size = new vision.Size(width, height);
  const whole = keep(new vision.Mat(cut.height, cut.width, vision.CV_8UC3));
  copyRows(picture.rgb, whole.data, picture.width, cut, 3);
  const colour = keep(new vision.Mat());
  vision.resize(whole, colour, size, 0, 0, vision.INTER_AREA);
  const grid: Grid = {
    width,
    height,
    x: picture.origin.x + cut.x / picture.pxPerMm,
    y: picture.origin.y + cut.y / picture.pxPerMm,
    stepX: cut.width / width / picture.pxPerMm,
    stepY: cut.height / height / picture.pxPerMm,
  };
  return { grid, colour, seen: reducedSeen(picture, cut, { width, height }, vision) };
}

function reducedSeen(
  { seen, width: rowPx }: StraightPicture,
  cut: Cut,
  { width, height }: Pick<Grid, 'width' | 'height'>,
  vision: Vision,
): Uint8Array {
  // Most hides lie wholly within the photo.
  if (isWhollySeen(seen, rowPx, cut)) return new Uint8Array(width * height).fill(255);
  return withMats((keep) => {
    const from = keep(new vision.Mat(cut.height, cut.width, vision.CV_8UC1));
    copyRows(seen, from.data, rowPx, cut, 1);
    const to = keep(new vision.Mat());
    vision.resize(from, to, new vision.Size(width, height), 0, 0, vision.INTER_AREA);
    return to.data.slice();
  });
}

function isWhollySeen(seen: Uint8Array, rowPx: number, cut: Cut): boolean {
  for (let j = cut.y; j < cut.y + cut.height; j++) {
    const end = j * rowPx + cut.x + cut.width;
    for (let i = j * rowPx + cut.x; i < end; i++) if (seen[i] !== 255) return false;
  }
  return true;
}

function copyRows(from: Uint8Array, to: Uint8Array, rowPx: number, cut: Cut, bytes: number): void {
  for (let j = 0; j < cut.height; j++) {
    const start = ((cut.y + j) * rowPx + cut.x) * bytes;
    to.set(from.subarray(start, start + cut.width * bytes), j * cut.width * bytes);
  }
}

function searchMask(
  grid: Grid,
  leather: Region,
  seen: Uint8Array,
  { edgeMm, leftOut = [] }: { readonly edgeMm: number; readonly leftOut?: readonly Region[] },
  vision: Vision,
): Uint8Array {
  const { width, height } = grid;
  const inside = fillRings(
    ringsOnGrid(grid, [leather.outer, ...leather.openings]),
    width,
    height,
    'even-odd',
  );
  const without = fillRings(
    ringsOnGrid(
      grid,
      leftOut.map(({ outer }) => outer),
    ),
    width,
    height,
    'any',
  );
  for (let i = 0; i < inside.length; i++) if (seen[i] !== 255) inside[i] = 0;
  return withMats((keep) => {
    const shown = keep(new vision.Mat(height, width, vision.CV_8UC1));
    shown.data.set(inside);
    const depth = keep(new vision.Mat());
    vision.distanceTransform(shown, depth, vision.DIST_L2, 3);
    const least = edgeMm / grid.stepX;
    const far = depth.data32F;
    const mask = new Uint8Array(far.length);
    for (let i = 0; i < mask.length; i++) if (without[i] === 0 && far[i]! > least) mask[i] = 255;
    return mask;
  });
}

/** The library's 8-bit Lab: L* stretched to 255, a* and b* moved by 128. */
function channels(lab: Uint8Array, cells: number): Pick<LeatherCells, 'lightness' | 'a' | 'b'> {
  const lightness = new Float32Array(cells);
  const a = new Float32Array(cells);
  const b = new Float32Array(cells);
  for (let i = 0; i < cells; i++) {
    lightness[i] = (lab[3 * i]! * 100) / 255;
    a[i] = lab[3 * i + 1]! - 128;
    b[i] = lab[3 * i + 2]! - 128;
  }
  return { lightness, a, b };
}
