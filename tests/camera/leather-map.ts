import type { Ring } from '@hidebound/geometry';
import { edgeField } from './edge-field.js';
import type { MapGrid } from './edge-field.js';
import { mixedNoise, pebbleNoise } from './noise.js';
import { paintMark } from './paint-mark.js';
import type { HideLook, HideTruth, LeatherColour, Light } from './scene.js';

/** A hide as seen from straight above. */
export interface LeatherMap extends MapGrid {
  /** sRGB, three bytes a pixel. */
  readonly rgb: Uint8Array;
  /** How much of the pixel is leather, 0 to 255. */
  readonly cover: Uint8Array;
  /** How much light the hide takes from the floor, 0 to 255. */
  readonly shadow: Uint8Array;
  /** Of the raw edge. */
  readonly edgeColour: readonly [number, number, number];
  readonly heightMm: number;
  /** Whether squares of `BLOCK_PX` pixels are free of leather and shadow, all leather, or mixed. */
  readonly blocks: Uint8Array;
  readonly blocksAcross: number;
}

export const BLOCK_PX = 16;
export const BLOCK = { free: 0, leather: 1, mixed: 2 } as const;

const COLOURS: Readonly<Record<LeatherColour, readonly [number, number, number]>> = {
  'veg tan': [218, 184, 148],
  natural: [203, 160, 118],
  tan: [174, 116, 70],
  chestnut: [118, 66, 44],
  'dark brown': [78, 52, 40],
  black: [44, 42, 43],
};

/** The edge is known so far around it; beyond the widest shadow and bevel. */
const BAND_MM = 14;
const SHADOW_DARK = 0.62;
const SHADOW_SOFT_MM = 3;
/** Shadow of a hide over how high it lies: light from about 35° over the floor. */
const SHADOW_LONG = 1.4;

const NOISE_SIDE = 1024;
/** Grain repeats after so many pixels; nobody sees it. */
const PEBBLE_SIDE = 256;

export function leatherMap(
  look: HideLook,
  truth: HideTruth,
  light: Light,
  pxPerMm: number,
  seed: number,
): LeatherMap {
  const grid = gridAround(truth.outline, pxPerMm);
  const field = edgeField(grid, [truth.outline, ...truth.openings], BAND_MM);
  const { cover, shadow } = coverAndShadow(grid, field, look.heightMm, light);
  const rgb = paintLeather(look, grid, field, light.raking ?? 0, seed);
  truth.marks.forEach((mark, i) => paintMark({ ...grid, rgb }, mark, light, seed + 7 * i));
  const colour = COLOURS[look.colour];
  const raw = (of: number) => Math.min(255, 0.75 * of + 20);
  return {
    ...grid,
    rgb,
    cover,
    shadow,
    heightMm: look.heightMm,
    ...blocksOf(grid, cover, shadow),
    edgeColour: [raw(colour[0]), raw(colour[1]), raw(colour[2])],
  };
}

function gridAround(outline: Ring, pxPerMm: number): MapGrid {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const x0 = Math.floor(Math.min(...xs)) - 2 * BAND_MM;
  const y0 = Math.floor(Math.min(...ys)) - 2 * BAND_MM;
  return {
    x0,
    y0,
    pxPerMm,
    width: Math.ceil((Math.max(...xs) + 2 * BAND_MM - x0) * pxPerMm),
    height: Math.ceil((Math.max(...ys) + 2 * BAND_MM - y0) * pxPerMm),
  };
}

function blocksOf(
  { width, height }: MapGrid,
  cover: Uint8Array,
  shadow: Uint8Array,
): Pick<LeatherMap, 'blocks' | 'blocksAcross'> {
  const blocksAcross = Math.ceil(width / BLOCK_PX);
  const blocksDown = Math.ceil(height / BLOCK_PX);
  const blocks = new Uint8Array(blocksAcross * blocksDown);
  for (let bj = 0; bj < blocksDown; bj++) {
    for (let bi = 0; bi < blocksAcross; bi++) {
      let isFree = true;
      let isLeather = true;
      for (let j = bj * BLOCK_PX; j < Math.min(height, (bj + 1) * BLOCK_PX); j++) {
        for (
          let at = j * width + bi * BLOCK_PX;
          at < j * width + Math.min(width, (bi + 1) * BLOCK_PX);
          at++
        ) {
          if (cover[at] !== 255) isLeather = false;
          if (cover[at] !== 0 || shadow[at] !== 0) isFree = false;
        }
      }
      blocks[bj * blocksAcross + bi] = isFree ? BLOCK.free : isLeather ? BLOCK.leather : BLOCK.mixed;
    }
  }
  return { blocks, blocksAcross };
}

/** What lies within a box of the floor, all of it: free, leather, or mixed. */
export function blockWithin(map: LeatherMap, minX: number, minY: number, maxX: number, maxY: number): number {
  const scale = map.pxPerMm / BLOCK_PX;
  const down = map.blocks.length / map.blocksAcross;
  const firstI = Math.floor((minX - map.x0) * scale);
  const lastI = Math.floor((maxX - map.x0) * scale);
  const firstJ = Math.floor((minY - map.y0) * scale);
  const lastJ = Math.floor((maxY - map.y0) * scale);
  if (lastI < 0 || lastJ < 0 || firstI >= map.blocksAcross || firstJ >= down) return BLOCK.free;
  const first = blockAt(map, firstI, firstJ);
  for (let j = firstJ; j <= lastJ; j++)
    for (let i = firstI; i <= lastI; i++) if (blockAt(map, i, j) !== first) return BLOCK.mixed;
  return first;
}

function blockAt({ blocks, blocksAcross }: LeatherMap, i: number, j: number): number {
  return i < 0 || j < 0 || i >= blocksAcross ? BLOCK.free : (blocks[j * blocksAcross + i] ?? BLOCK.free);
}

function coverAndShadow(
  { width, height, pxPerMm }: MapGrid,
  field: Float32Array,
  heightMm: number,
  { shadowTowardsDeg }: Light,
): Pick<LeatherMap, 'cover' | 'shadow'> {
  const cover = new Uint8Array(width * height);
  const shadow = new Uint8Array(width * height);
  const long = SHADOW_LONG * heightMm * pxPerMm;
  const shiftX = Math.round(long * Math.cos((shadowTowardsDeg * Math.PI) / 180));
  const shiftY = Math.round(long * Math.sin((shadowTowardsDeg * Math.PI) / 180));
  for (let j = 0; j < height; j++) {
    const fromJ = Math.max(0, Math.min(height - 1, j - shiftY));
    for (let i = 0; i < width; i++) {
      const at = j * width + i;
      cover[at] = 255 * clamp01(0.5 - field[at]! * pxPerMm);
      const fromI = Math.max(0, Math.min(width - 1, i - shiftX));
      const cast = clamp01(0.5 - field[fromJ * width + fromI]! / (2 * SHADOW_SOFT_MM));
      // Light from all around is missing close to the edge too.
      const near = 0.3 * clamp01(1 - field[at]! / 4);
      shadow[at] = 255 * SHADOW_DARK * Math.max(cast, near);
    }
  }
  return { cover, shadow };
}

/** Grain, drift of colour, and the lines of growth that run across the neck and the belly. */
function paintLeather(
  look: HideLook,
  grid: MapGrid,
  field: Float32Array,
  raking: number,
  seed: number,
): Uint8Array {
  const { x0, y0, width, height, pxPerMm } = grid;
  const rgb = new Uint8Array(width * height * 3);
  const pebbles = pebbleNoise(PEBBLE_SIDE, 4, seed).values;
  const fine = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 1, weight: 0.5 },
      { cell: 2, weight: 0.5 },
    ],
    seed + 1,
  ).values;
  const wide = mixedNoise(
    NOISE_SIDE,
    [
      { cell: 256, weight: 0.6 },
      { cell: 64, weight: 0.35 },
      { cell: 16, weight: 0.15 },
    ],
    seed + 2,
  ).values;
  const colour = COLOURS[look.colour];
  // Dark leather shows its grain by shine, pale leather by shadow.
  // Light from low at one side shows every grain.
  const grainDepth = (look.colour === 'black' || look.colour === 'dark brown' ? 0.16 : 0.07) * (1 + raking);
  const sin = Math.sin((look.turnDeg * Math.PI) / 180);
  const cos = Math.cos((look.turnDeg * Math.PI) / 180);
  const wideStep = 0.25;
  for (let j = 0, at = 0, out = 0; j < height; j++) {
    const y = y0 + (j + 0.5) / pxPerMm - look.at.y;
    for (let i = 0; i < width; i++, at++, out += 3) {
      const edge = field[at]!;
      if (edge > 2) continue;
      const x = x0 + (i + 0.5) / pxPerMm - look.at.x;
      // In the hide's own frame: shares of its length from its middle.
      const along = (cos * x + sin * y) / look.lengthMm;
      const beside = Math.abs(cos * y - sin * x) / look.lengthMm;
      const drift = bilinear(wide, i * wideStep, j * wideStep);
      const warp = bilinear(wide, i * wideStep * 0.5 + 300, j * wideStep * 0.5);
      const neck = clamp01((-0.22 - along) * 5);
      const belly = look.form === 'side' ? 0.4 : clamp01((beside - 0.3) * 6);
      const growth =
        neck === 0 && belly === 0 ? 0 : growthLines(along, beside, look.lengthMm, warp, neck, belly);
      const grain =
        grainDepth * (pebbles[((j & (PEBBLE_SIDE - 1)) << 8) | (i & (PEBBLE_SIDE - 1))]! - 0.6) +
        0.05 * fine[mask(i, j)]!;
      const rim = edge > -3 ? -0.05 * (1 + edge / 3) : 0;
      const light = 1 + 0.075 * drift + grain + growth + rim + 0.05 * belly - 0.04 * neck;
      const red = 0.025 * warp;
      rgb[out] = clampByte(colour[0] * light * (1 + red));
      rgb[out + 1] = clampByte(colour[1] * light);
      rgb[out + 2] = clampByte(colour[2] * light * (1 - 1.5 * red));
    }
  }
  return rgb;
}

/** Creases in bundles: they wander, come and go. */
function growthLines(
  along: number,
  beside: number,
  lengthMm: number,
  warp: number,
  neck: number,
  belly: number,
): number {
  const across = Math.sin((along * lengthMm) / 7 + 16 * warp + 10 * beside);
  const between = Math.sin((along * lengthMm) / 4.4 - 13 * warp + 3);
  const down = Math.sin((beside * lengthMm) / 8 + 15 * warp);
  const patches = clamp01(0.35 + 1.3 * Math.sin(5 * warp + 21 * beside + 13 * along));
  const crease = (wave: number) => -Math.max(0, wave - 0.5) * 0.13;
  return patches * (neck * (crease(across) + 0.6 * crease(between)) + 0.5 * belly * crease(down));
}

function bilinear(values: Float32Array, u: number, v: number): number {
  const i = Math.floor(u);
  const j = Math.floor(v);
  const s = u - i;
  const t = v - j;
  const top = values[mask(i, j)]! * (1 - s) + values[mask(i + 1, j)]! * s;
  const bottom = values[mask(i, j + 1)]! * (1 - s) + values[mask(i + 1, j + 1)]! * s;
  return top * (1 - t) + bottom * t;
}

function mask(x: number, y: number): number {
  return ((y & (NOISE_SIDE - 1)) << 10) | (x & (NOISE_SIDE - 1));
}

function clamp01(value: number): number {
  return value < 0 ? 0 : value > 1 ? 1 : value;
}

function clampByte(value: number): number {
  return value < 0 ? 0 : value > 255 ? 255 : value;
}
