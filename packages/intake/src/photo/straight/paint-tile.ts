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

/** Paints one tile of the picture from all photos that see it. */
export function paintTile(
  picture: StraightPicture,
  left: number,
  top: number,
  levels: readonly PhotoLevels[],
  cameras: readonly Camera[],
  vision: Vision,
): void {
  const tile = tileAt(picture, left, top);
  const sources = sourcesOf(picture, tile, cameras);
  const total = new Float32Array(tile.width * tile.height);
  const sum = new Float32Array(sources.length > 1 ? tile.width * tile.height * 3 : 0);
  for (const source of sources) {
    const map = spread(tile, source);
    const colours = readPhoto(levels[source.photo]!, source, tile, map, vision);
    addColours(picture, tile, sources.length > 1, cameras[source.photo]!, map, colours, sum, total);
  }
  if (sources.length > 1) writeMean(picture, tile, sum, total);
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

/** Nodes spread over the pixels of the tile. */
interface TileMap {
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly weight: Float32Array;
}

function spread(tile: Tile, source: TileSource): TileMap {
  const count = tile.width * tile.height;
  const map = { x: new Float32Array(count), y: new Float32Array(count), weight: new Float32Array(count) };
  spreadOne(tile, source.x, map.x);
  spreadOne(tile, source.y, map.y);
  spreadOne(tile, source.weight, map.weight);
  return map;
}

function spreadOne(tile: Tile, nodes: Float32Array, out: Float32Array): void {
  for (let row = 0; row < tile.height; row++) {
    const nodeRow = Math.floor(row / STEP_PX);
    const down = (row % STEP_PX) / STEP_PX;
    const first = nodeRow * tile.columns;
    for (let column = 0; column < tile.width; column += STEP_PX) {
      const node = first + column / STEP_PX;
      const start = nodes[node]! + (nodes[node + tile.columns]! - nodes[node]!) * down;
      const end = nodes[node + 1]! + (nodes[node + 1 + tile.columns]! - nodes[node + 1]!) * down;
      const step = (end - start) / STEP_PX;
      const stop = Math.min(STEP_PX, tile.width - column);
      const at = row * tile.width + column;
      for (let k = 0; k < stop; k++) out[at + k] = start + step * k;
    }
  }
}

function readPhoto(
  levels: PhotoLevels,
  { shrink }: TileSource,
  tile: Tile,
  map: TileMap,
  vision: Vision,
): Uint8Array {
  const level = levelFor(shrink);
  const factor = 2 ** -level;
  return withMats((keep) => {
    const mapX = keep(new vision.Mat(tile.height, tile.width, vision.CV_32FC1));
    const mapY = keep(new vision.Mat(tile.height, tile.width, vision.CV_32FC1));
    const toLevel = (from: Float32Array, to: Float32Array): void => {
      // Middles of pixels are whole numbers on every level.
      for (let i = 0; i < from.length; i++) to[i] = (from[i]! + 0.5) * factor - 0.5;
    };
    toLevel(map.x, mapX.data32F);
    toLevel(map.y, mapY.data32F);
    const out = keep(new vision.Mat());
    vision.remap(levels[level]!, out, mapX, mapY, vision.INTER_CUBIC, vision.BORDER_REPLICATE);
    return out.data.slice();
  });
}

function addColours(
  picture: StraightPicture,
  tile: Tile,
  isMixed: boolean,
  camera: Camera,
  map: TileMap,
  colours: Uint8Array,
  sum: Float32Array,
  total: Float32Array,
): void {
  for (let row = 0; row < tile.height; row++) {
    const target = (tile.top + row) * picture.width + tile.left;
    for (let column = 0; column < tile.width; column++) {
      const i = row * tile.width + column;
      if (!(insideBy(camera, map.x[i]!, map.y[i]!) >= 0)) continue;
      picture.seen[target + column] = 255;
      const weight = map.weight[i]!;
      for (let c = 0; c < 3; c++) {
        if (isMixed) sum[i * 3 + c]! += weight * colours[i * 3 + c]!;
        else picture.rgb[(target + column) * 3 + c] = colours[i * 3 + c]!;
      }
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
