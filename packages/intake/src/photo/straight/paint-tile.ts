import type { Camera } from '../camera/camera.js';
import { isBeforeCamera, pxPerMmAt, toPhotoPx } from '../camera/places.js';
import { withMats } from '../vision/mats.js';
import type { Vision } from '../vision/vision.js';
import { levelFor } from './photo-levels.js';
import type { PhotoLevels } from './photo-levels.js';
import { toFloor } from './straight-picture.js';
import type { StraightPicture } from './straight-picture.js';

/** The picture is painted in squares of this size: small enough to read a level each, large enough to be quick. */
export const TILE_PX = 256;
/** Where a place comes from is computed every so many px and runs straight between; off by far less than 0.01 px. */
const STEP_PX = 16;
/** A photo fades out over this share of its shorter side towards its edge, where others see the place. */
const FADE_SHARE = 0.06;
/** A photo with fewer px for a mm than this share of the best one's is not used; it fades in up to the second share. */
const USED_FROM = 0.75;
const USED_FULLY_FROM = 0.95;

/** What one photo gives to a tile: for nodes every STEP_PX the place on the photo, and how much it counts. */
interface TileSource {
  readonly photo: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly weight: Float32Array;
  /** Photo px on one px of the picture. */
  readonly shrink: number;
}

interface Tile {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Nodes along each side. */
  readonly columns: number;
  readonly rows: number;
}

/** Room for one tile, to be used for all of them. */
export interface TileRoom {
  readonly x: Float32Array;
  readonly y: Float32Array;
}

export function tileRoom(): TileRoom {
  return { x: new Float32Array(TILE_PX * TILE_PX), y: new Float32Array(TILE_PX * TILE_PX) };
}

/** Paints one tile of the picture from all photos that see it. */
export function paintTile(
  picture: StraightPicture,
  left: number,
  top: number,
  levels: readonly PhotoLevels[],
  cameras: readonly Camera[],
  room: TileRoom,
  vision: Vision,
): void {
  const tile = tileAt(picture, left, top);
  const sources = sourcesOf(picture, tile, cameras);
  const only = sources.length === 1 ? sources[0] : undefined;
  if (only !== undefined) {
    const camera = cameras[only.photo]!;
    const isWhole = isWholeInside(only, camera);
    readPhoto(levels[only.photo]!, only, tile, room, vision, (read) => {
      if (isWhole) copyTile(picture, tile, read.colours);
      else copySeen(picture, tile, camera, read);
    });
    return;
  }
  const total = new Float32Array(tile.width * tile.height);
  const sum = new Float32Array(tile.width * tile.height * 3);
  const weight = new Float32Array(tile.width * tile.height);
  for (const source of sources) {
    spreadNodes(tile, source.weight, weight, 1);
    readPhoto(levels[source.photo]!, source, tile, room, vision, (read) => {
      addColours(picture, tile, cameras[source.photo]!, read, weight, sum, total);
    });
  }
  writeMean(picture, tile, sum, total);
}

/** Then no pixel needs to be looked at by itself. */
function isWholeInside({ x, y }: TileSource, camera: Camera): boolean {
  return x.every((value, node) => insideBy(camera, value, y[node]!) > 1);
}

function copyTile(picture: StraightPicture, tile: Tile, colours: Uint8Array): void {
  for (let row = 0; row < tile.height; row++) {
    const target = (tile.top + row) * picture.width + tile.left;
    picture.rgb.set(colours.subarray(row * tile.width * 3, (row + 1) * tile.width * 3), target * 3);
    picture.seen.fill(255, target, target + tile.width);
  }
}

/** The pixels of the tile that the photo shows. */
function copySeen(picture: StraightPicture, tile: Tile, camera: Camera, read: TileRead): void {
  const { colours } = read;
  for (let row = 0; row < tile.height; row++) {
    const target = (tile.top + row) * picture.width + tile.left;
    for (let column = 0; column < tile.width; column++) {
      const i = row * tile.width + column;
      if (!isSeen(camera, read, i)) continue;
      picture.seen[target + column] = 255;
      for (let c = 0; c < 3; c++) picture.rgb[(target + column) * 3 + c] = colours[i * 3 + c]!;
    }
  }
}

function tileAt(picture: StraightPicture, left: number, top: number): Tile {
  const width = Math.min(TILE_PX, picture.width - left);
  const height = Math.min(TILE_PX, picture.height - top);
  return {
    left,
    top,
    width,
    height,
    columns: Math.ceil(width / STEP_PX) + 1,
    rows: Math.ceil(height / STEP_PX) + 1,
  };
}

function sourcesOf(picture: StraightPicture, tile: Tile, cameras: readonly Camera[]): TileSource[] {
  const count = tile.columns * tile.rows;
  const resolution = cameras.map(() => new Float32Array(count));
  const sources = cameras.map((camera, photo) => {
    const [x, y, weight] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
    let shrink = 0;
    for (let node = 0; node < count; node++) {
      const at = toFloor(picture, nodePlace(tile, node));
      if (!isBeforeCamera(camera, at)) {
        x[node] = y[node] = FAR_OUTSIDE;
        continue;
      }
      const px = toPhotoPx(camera, at);
      x[node] = px.x;
      y[node] = px.y;
      weight[node] = edgeWeight(camera, px.x, px.y, cameras.length > 1);
      if (!(insideBy(camera, px.x, px.y) > -STEP_PX * SHRINK_REACH)) continue;
      const pxPerMm = pxPerMmAt(camera, at);
      resolution[photo]![node] = pxPerMm;
      shrink = Math.max(shrink, pxPerMm / picture.pxPerMm);
    }
    return { photo, x, y, weight, shrink };
  });
  if (cameras.length > 1) sources.forEach(({ weight }, i) => preferSharper(weight, i, resolution));
  return sources.filter(({ shrink }) => shrink > 0);
}

/** Beyond the horizon: a place that no photo has. */
const FAR_OUTSIDE = -1e6;
/** A tile whose nodes lie this many steps outside the photo shows nothing of it. */
const SHRINK_REACH = 4;

function nodePlace(tile: Tile, node: number): { x: number; y: number } {
  return {
    x: tile.left + (node % tile.columns) * STEP_PX,
    y: tile.top + Math.floor(node / tile.columns) * STEP_PX,
  };
}

/** How far within the photo a place lies, px; below 0 outside. */
function insideBy({ width, height }: Camera, x: number, y: number): number {
  return Math.min(x + 0.5, y + 0.5, width - 0.5 - x, height - 0.5 - y);
}

function edgeWeight(camera: Camera, x: number, y: number, fades: boolean): number {
  if (!fades) return 1;
  const fade = FADE_SHARE * Math.min(camera.width, camera.height);
  return Math.max(LEAST_WEIGHT, Math.min(1, insideBy(camera, x, y) / fade));
}

/** Counts only where no other photo sees the place. */
const LEAST_WEIGHT = 1e-4;

function preferSharper(weight: Float32Array, photo: number, resolution: readonly Float32Array[]): void {
  for (let node = 0; node < weight.length; node++) {
    const best = Math.max(...resolution.map((of) => of[node]!));
    const share = best === 0 ? 1 : resolution[photo]![node]! / best;
    const counts = Math.min(1, (share - USED_FROM) / (USED_FULLY_FROM - USED_FROM));
    weight[node] = Math.max(LEAST_WEIGHT, weight[node]! * counts);
  }
}

/** Values at nodes spread over the pixels of the tile; `factor` takes places to a smaller level of the photo. */
function spreadNodes(tile: Tile, nodes: Float32Array, out: Float32Array, factor: number): void {
  // Middles of pixels are whole numbers on every level.
  const shift = factor / 2 - 0.5;
  for (let row = 0; row < tile.height; row++) {
    const nodeRow = Math.floor(row / STEP_PX);
    const down = (row % STEP_PX) / STEP_PX;
    const first = nodeRow * tile.columns;
    for (let column = 0; column < tile.width; column += STEP_PX) {
      const node = first + column / STEP_PX;
      const below = node + tile.columns;
      const start = factor * (nodes[node]! + (nodes[below]! - nodes[node]!) * down) + shift;
      const end = factor * (nodes[node + 1]! + (nodes[below + 1]! - nodes[node + 1]!) * down) + shift;
      const step = (end - start) / STEP_PX;
      const stop = Math.min(STEP_PX, tile.width - column);
      const at = row * tile.width + column;
      for (let k = 0; k < stop; k++) out[at + k] = start + step * k;
    }
  }
}

/** A tile as one photo shows it, and where on the level of the photo each pixel was read. */
interface TileRead {
  readonly colours: Uint8Array;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly factor: number;
}

/** What is read holds only as long as it is used. */
function readPhoto(
  levels: PhotoLevels,
  source: TileSource,
  tile: Tile,
  { x, y }: TileRoom,
  vision: Vision,
  use: (read: TileRead) => void,
): void {
  const level = levelFor(source.shrink);
  const factor = 2 ** -level;
  spreadNodes(tile, source.x, x, factor);
  spreadNodes(tile, source.y, y, factor);
  withMats((keep) => {
    const mapX = keep(new vision.Mat(tile.height, tile.width, vision.CV_32FC1));
    const mapY = keep(new vision.Mat(tile.height, tile.width, vision.CV_32FC1));
    mapX.data32F.set(x.subarray(0, tile.width * tile.height));
    mapY.data32F.set(y.subarray(0, tile.width * tile.height));
    const out = keep(new vision.Mat());
    vision.remap(levels(level), out, mapX, mapY, vision.INTER_CUBIC, vision.BORDER_REPLICATE);
    use({ colours: out.data, x, y, factor });
  });
}

/** Whether a pixel of the tile lies within the photo. */
function isSeen(camera: Camera, { x, y, factor }: TileRead, i: number): boolean {
  const shift = factor / 2 - 0.5;
  return insideBy(camera, (x[i]! - shift) / factor, (y[i]! - shift) / factor) >= 0;
}

function addColours(
  picture: StraightPicture,
  tile: Tile,
  camera: Camera,
  read: TileRead,
  weights: Float32Array,
  sum: Float32Array,
  total: Float32Array,
): void {
  const { colours } = read;
  for (let row = 0; row < tile.height; row++) {
    const target = (tile.top + row) * picture.width + tile.left;
    for (let column = 0; column < tile.width; column++) {
      const i = row * tile.width + column;
      if (!isSeen(camera, read, i)) continue;
      picture.seen[target + column] = 255;
      const weight = weights[i]!;
      for (let c = 0; c < 3; c++) sum[i * 3 + c]! += weight * colours[i * 3 + c]!;
      total[i]! += weight;
    }
  }
}

function writeMean(picture: StraightPicture, tile: Tile, sum: Float32Array, total: Float32Array): void {
  for (let row = 0; row < tile.height; row++) {
    const target = (tile.top + row) * picture.width + tile.left;
    for (let column = 0; column < tile.width; column++) {
      const i = row * tile.width + column;
      if (total[i] === 0) continue;
      for (let c = 0; c < 3; c++) {
        picture.rgb[(target + column) * 3 + c] = Math.round(sum[i * 3 + c]! / total[i]!);
      }
    }
  }
}
