import { createRandom, pointInRing } from '@hidebound/geometry';
import type { Point, Random, Ring } from '@hidebound/geometry';
import type { StraightPicture } from '../straight/straight-picture.js';
import { windowMean } from './grid.js';
import { paintRing } from './paint.js';

export type TestFloor = 'plain' | 'planks' | 'tiles' | 'cloth';
type Colour = readonly [number, number, number];

/** A drawn scene: leather on a floor as a straightened photo would show it. Colours are sRGB, 0 to 255. */
export interface TestScene {
  readonly seed: number;
  readonly floor: TestFloor;
  readonly floorColour: Colour;
  readonly hideColour: Colour;
  readonly pxPerMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly rings: readonly Ring[];
  readonly papers?: readonly Ring[];
  /** Brands, scars, stains and chalk drawn over the leather. */
  readonly marks?: boolean;
  /** Chalk drawn over the leather, as areas. */
  readonly chalk?: readonly Ring[];
  /** How much light is lost in the corners, 0 to 1. */
  readonly vignette?: number;
  /** A soft shadow over one side of the floor, hide and all. */
  readonly softShadow?: boolean;
  /** How far the hide's own shadow falls, mm. */
  readonly edgeShadowMm?: number;
  readonly glare?: boolean;
  readonly noise?: number;
}

const OVER = 3;

/** Draws the scene: three samples a pixel each way for edges, then blur, light, noise and rounding to 8 bits. */
export function drawScene(scene: TestScene): StraightPicture {
  const width = Math.round(scene.widthMm * scene.pxPerMm);
  const height = Math.round(scene.heightMm * scene.pxPerMm);
  const random = createRandom(scene.seed);
  const size = { width, height };
  const cover = coverOf(size, scene.rings, scene.pxPerMm, 0, 0);
  const shift = (scene.edgeShadowMm ?? 0) * 0.6;
  const shade = softened(
    size,
    coverOf(size, scene.rings, scene.pxPerMm, shift, shift),
    (scene.edgeShadowMm ?? 0) * scene.pxPerMm,
  );
  const paper = coverOf(size, scene.papers ?? [], scene.pxPerMm, 0, 0);
  const leather = leatherTone(size, scene, random.fork(1));
  const floor = floorTone(size, scene, random.fork(2));
  const channels = [0, 1, 2].map((channel) => {
    const linear = new Float32Array(width * height);
    for (let i = 0; i < linear.length; i++) {
      const dark = 1 - 0.55 * (scene.edgeShadowMm === undefined ? 0 : shade[i]!);
      const ground = amount(scene.floorColour[channel]!) * floor[i]! * dark;
      const hide = leatherColour(scene, leather, i, channel);
      const below = cover[i]! * hide + (1 - cover[i]!) * ground;
      linear[i] = (paper[i]! * 0.8 + (1 - paper[i]!) * below) * lightOn(scene, size, i);
    }
    return softened(size, softened(size, linear, 0.8), 0.8);
  });
  const rgb = new Uint8Array(width * height * 3);
  const normals = Float32Array.from({ length: 8192 }, () => random.normal());
  for (let i = 0; i < width * height; i++)
    for (let channel = 0; channel < 3; channel++)
      rgb[i * 3 + channel] = Math.max(
        0,
        Math.min(
          255,
          Math.round(level(channels[channel]![i]!) + (scene.noise ?? 2.5) * normals[random.integer(8192)]!),
        ),
      );
  return {
    ...size,
    rgb,
    pxPerMm: scene.pxPerMm,
    origin: { x: 0, y: 0 },
    seen: new Uint8Array(width * height).fill(255),
  };
}

/** A shape with four legs and a neck of about the given length around a place, everywhere smooth; invented. */
export function hideRing(lengthMm: number, at: Point): Ring {
  return Array.from({ length: 720 }, (_, i) => {
    const turn = (i * Math.PI) / 360;
    const legs =
      0.1 * Math.cos(4 * turn) * -1 + 0.04 * Math.cos(9 * turn + 1) + 0.015 * Math.cos(23 * turn + 2);
    const size = 0.42 * lengthMm * (1 + legs);
    return { x: at.x + 1.15 * size * Math.cos(turn), y: at.y + 0.85 * size * Math.sin(turn) };
  });
}

/** A round opening, its corners the other way round. */
export function roundOpening(at: Point, radius: number): Ring {
  return Array.from({ length: 40 }, (_, i) => {
    const angle = (-i * Math.PI) / 20;
    return { x: at.x + radius * Math.cos(angle), y: at.y + radius * Math.sin(angle) };
  });
}

export function rectangle(x: number, y: number, width: number, height: number, turnDeg = 0): Ring {
  const turn = (turnDeg * Math.PI) / 180;
  return [
    [-width / 2, -height / 2],
    [width / 2, -height / 2],
    [width / 2, height / 2],
    [-width / 2, height / 2],
  ].map(([u, v]) => ({
    x: x + u! * Math.cos(turn) - v! * Math.sin(turn),
    y: y + u! * Math.sin(turn) + v! * Math.cos(turn),
  }));
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Share of each pixel within the rings (even-odd), moved by so many mm. */
function coverOf(
  { width, height }: Size,
  rings: readonly Ring[],
  pxPerMm: number,
  dx: number,
  dy: number,
): Float32Array {
  const fine = new Uint8Array(width * height * OVER * OVER);
  const cover = new Float32Array(width * height);
  for (const ring of rings)
    paintRing(
      { width: width * OVER, height: height * OVER },
      // Middle of pixel 0 lies at half a pixel of the floor.
      ring.map(({ x, y }) => ({ x: (x + dx) * pxPerMm * OVER - 0.5, y: (y + dy) * pxPerMm * OVER - 0.5 })),
      (pixel) => {
        fine[pixel] = 1 - fine[pixel]!;
        const row = Math.floor(pixel / (width * OVER));
        const column = pixel - row * width * OVER;
        cover[Math.floor(row / OVER) * width + Math.floor(column / OVER)]! +=
          (fine[pixel] === 1 ? 1 : -1) / (OVER * OVER);
      },
    );
  return cover;
}

function softened(size: Size, values: Float32Array, radius: number): Float32Array {
  if (radius < 0.5) return values;
  const ones = new Float32Array(values.length).fill(1);
  const whole = Math.max(1, Math.round(radius));
  const once = windowMean(size, values, ones, whole, 0);
  const share = Math.min(1, radius / whole);
  return once.map((value, i) => share * value + (1 - share) * values[i]!);
}

/** Noise that changes over so many pixels: random numbers on a grid, smoothly joined. */
function cloud({ width, height }: Size, step: number, random: Random): Float32Array {
  const columns = Math.ceil(width / step) + 2;
  const knots = Float32Array.from({ length: columns * (Math.ceil(height / step) + 2) }, () =>
    random.normal(),
  );
  return Float32Array.from({ length: width * height }, (_, i) => {
    const x = (i % width) / step;
    const y = Math.floor(i / width) / step;
    const u = x - Math.floor(x);
    const v = y - Math.floor(y);
    const at = Math.floor(y) * columns + Math.floor(x);
    const top = knots[at]! * (1 - u) + knots[at + 1]! * u;
    const bottom = knots[at + columns]! * (1 - u) + knots[at + columns + 1]! * u;
    return top * (1 - v) + bottom * v;
  });
}

interface Leather {
  readonly tone: Float32Array;
  readonly dark: Float32Array;
  readonly chalk: Float32Array;
  readonly shine: Float32Array;
}

function leatherTone(size: Size, scene: TestScene, random: Random): Leather {
  const count = size.width * size.height;
  const grain = cloud(size, 2, random);
  const drift = cloud(size, size.width / 5, random);
  const dark = new Float32Array(count);
  const chalk = new Float32Array(count);
  const shine = new Float32Array(count);
  const [ring] = scene.rings;
  const inside = (): Point => {
    for (;;) {
      const p = { x: random.between(0, scene.widthMm), y: random.between(0, scene.heightMm) };
      if (pointInRing(p, ring!) === 'inside') return p;
    }
  };
  if (scene.marks === true)
    for (let k = 0; k < 8; k++) {
      const p = inside();
      const kind = k % 4;
      const mark =
        kind === 0
          ? roundOpening(p, 12)
          : rectangle(p.x, p.y, [1, 160, 50, 400][kind]!, [1, 3, 35, 2.5][kind]!, random.between(0, 180));
      const cover = coverOf(size, [mark], scene.pxPerMm, 0, 0);
      cover.forEach((c, i) => {
        if (kind === 3) chalk[i] = Math.max(chalk[i]!, c);
        else dark[i] = Math.max(dark[i]!, c * [0.6, 0.4, 0.35][kind]!);
      });
    }
  coverOf(size, scene.chalk ?? [], scene.pxPerMm, 0, 0).forEach((c, i) => {
    chalk[i] = Math.max(chalk[i]!, Math.min(1, c));
  });
  if (scene.glare === true) {
    const p = inside();
    for (let i = 0; i < count; i++) {
      const dx = (i % size.width) / scene.pxPerMm - p.x;
      const dy = Math.floor(i / size.width) / scene.pxPerMm - p.y;
      shine[i] = 0.5 * Math.exp(-(dx * dx + 2 * dy * dy) / (2 * 90 * 90));
    }
  }
  return { tone: grain.map((g, i) => 1 + 0.06 * g + 0.08 * drift[i]!), dark, chalk, shine };
}

function leatherColour(
  scene: TestScene,
  { tone, dark, chalk, shine }: Leather,
  i: number,
  channel: number,
): number {
  const base = amount(scene.hideColour[channel]!) * tone[i]! * (1 - dark[i]!);
  return Math.min(1, base * (1 - 0.7 * chalk[i]!) + 0.6 * chalk[i]! + shine[i]!);
}

function floorTone(size: Size, scene: TestScene, random: Random): Float32Array {
  const grain = cloud(size, 1.5, random);
  const slow = cloud(size, 60, random);
  const toned = Float32Array.from({ length: 64 }, () => random.normal());
  return grain.map((g, i) => {
    const x = (i % size.width) / scene.pxPerMm;
    const y = Math.floor(i / size.width) / scene.pxPerMm;
    const base = 1 + 0.04 * g + 0.03 * slow[i]!;
    if (scene.floor === 'planks') {
      const plank = Math.floor(y / 120);
      const gap = y % 120 < 3 ? 0.45 : 1;
      const rings = 0.06 * Math.sin(x / 40 + 6 * Math.sin(y / 17 + plank));
      return base * gap * (1 + 0.16 * toned[(plank * 7 + Math.floor((x + plank * 333) / 900)) % 64]! + rings);
    }
    if (scene.floor === 'tiles') {
      const tile = Math.floor(x / 300) * 5 + Math.floor(y / 300);
      return base * (x % 300 < 5 || y % 300 < 5 ? 0.6 : 1) * (1 + 0.08 * toned[tile % 64]!);
    }
    if (scene.floor === 'cloth') return base * (1 + 0.15 * Math.sin(x * 1.1) * Math.sin(y * 1.1));
    return base;
  });
}

function lightOn(scene: TestScene, { width, height }: Size, i: number): number {
  const x = (i % width) / width - 0.5;
  const y = Math.floor(i / width) / height - 0.5;
  const corner = 1 - (scene.vignette ?? 0) * 2 * (x * x + y * y);
  const shadow = scene.softShadow === true ? 1 - 0.4 / (1 + Math.exp(-(x + 0.4 * y - 0.15) * 40)) : 1;
  return corner * shadow;
}

function amount(byte: number): number {
  const share = byte / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

function level(light: number): number {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * Math.max(0, light) ** (1 / 2.4) - 0.055);
}
