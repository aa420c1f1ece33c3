import { createRandom, pointToSegment } from '@hidebound/geometry';
import type { Point, Polyline, Random, Region } from '@hidebound/geometry';
import type { StraightPicture } from '../straight/straight-picture.js';

/** Colours as L*, a*, b*. */
export type Lab = readonly [number, number, number];

/** Invented leathers. */
export const LEATHERS = {
  natural: [72, 10, 24],
  brown: [42, 14, 22],
  black: [18, 0, 1],
  pale: [88, 3, 12],
} as const satisfies Readonly<Record<string, Lab>>;

export const CHALKS = {
  white: [93, 0, 2],
  yellow: [90, -4, 32],
  blue: [82, -6, -16],
  silver: [76, 0, 0],
} as const satisfies Readonly<Record<string, Lab>>;

export interface TestLeather {
  readonly picture: StraightPicture;
  readonly leather: Region;
  /** L*, a*, b* of each pixel, to be drawn on before `finish`. */
  readonly lab: Float32Array;
}

interface LeatherOptions {
  readonly seed: number;
  readonly colour: Lab;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pxPerMm: number;
  /** Deviation of the grain in L*. */
  readonly grain?: number;
  /** How much darker the far corner is lit, in L*. */
  readonly shade?: number;
  /** Depth of soft growth lines, in L*. */
  readonly growth?: number;
}

const MARGIN_MM = 30;

/** A rectangle of leather with rounded corners on a grey floor: grain at three sizes, drift of colour, uneven light. */
export function drawLeather(options: LeatherOptions): TestLeather {
  const { seed, colour, widthMm, heightMm, pxPerMm, grain = 1.8, shade = 8, growth = 0 } = options;
  const random = createRandom(seed);
  const width = Math.round((widthMm + 2 * MARGIN_MM) * pxPerMm);
  const height = Math.round((heightMm + 2 * MARGIN_MM) * pxPerMm);
  const fine = cloud(random.fork(1), width, height, 1.2 * pxPerMm);
  const middle = cloud(random.fork(2), width, height, 4 * pxPerMm);
  const drift = cloud(random.fork(3), width, height, 160 * pxPerMm);
  const hue = cloud(random.fork(4), width, height, 220 * pxPerMm);
  const waves = cloud(random.fork(5), width, height, 60 * pxPerMm);
  const lab = new Float32Array(3 * width * height);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const inside =
        i / pxPerMm > MARGIN_MM &&
        i / pxPerMm < widthMm + MARGIN_MM &&
        j / pxPerMm > MARGIN_MM &&
        j / pxPerMm < heightMm + MARGIN_MM;
      const dark = (shade * (i + j)) / (width + height);
      if (!inside) {
        lab.set([55 - dark + random.between(-1.5, 1.5), 0, 0], 3 * k);
        continue;
      }
      const wave = growth * Math.sin(((j / pxPerMm) * 2 * Math.PI) / 38 + 3 * waves[k]!);
      const L =
        colour[0] -
        dark +
        grain * (0.7 * fine[k]! + 0.55 * middle[k]!) +
        2.2 * drift[k]! +
        wave +
        random.between(-1.2, 1.2);
      lab.set(
        [
          L,
          colour[1] + 0.8 * hue[k]! + random.between(-0.7, 0.7),
          colour[2] + 1.2 * hue[k]! + random.between(-0.7, 0.7),
        ],
        3 * k,
      );
    }
  }
  const corner = { x: MARGIN_MM, y: MARGIN_MM };
  const leather: Region = {
    outer: [
      corner,
      { x: MARGIN_MM + widthMm, y: MARGIN_MM },
      { x: MARGIN_MM + widthMm, y: MARGIN_MM + heightMm },
      { x: MARGIN_MM, y: MARGIN_MM + heightMm },
    ],
    openings: [],
  };
  const picture: StraightPicture = {
    width,
    height,
    pxPerMm,
    origin: { x: 0, y: 0 },
    rgb: new Uint8Array(3 * width * height),
    seen: new Uint8Array(width * height).fill(255),
  };
  return { picture, leather, lab };
}

/** Smooth noise of mean 0 and deviation 1 that changes over some `size` pixels: bilinear between random nodes. */
function cloud(random: Random, width: number, height: number, size: number): Float32Array {
  const columns = Math.ceil(width / size) + 2;
  const rows = Math.ceil(height / size) + 2;
  const nodes = Float32Array.from({ length: columns * rows }, () => 3 * random.between(-1, 1));
  const values = new Float32Array(width * height);
  for (let j = 0; j < height; j++) {
    const v = j / size;
    const j0 = Math.floor(v);
    for (let i = 0; i < width; i++) {
      const u = i / size;
      const i0 = Math.floor(u);
      const at = j0 * columns + i0;
      const high = nodes[at]! + (u - i0) * (nodes[at + 1]! - nodes[at]!);
      const low = nodes[at + columns]! + (u - i0) * (nodes[at + columns + 1]! - nodes[at + columns]!);
      values[j * width + i] = high + (v - j0) * (low - high);
    }
  }
  return values;
}

/** Goes over the pixels within `reachMm` of a line, with their distance from it in mm. */
export function alongLine(
  { picture }: TestLeather,
  line: Polyline,
  reachMm: number,
  paint: (index: number, distanceMm: number, at: Point) => void,
): void {
  const { width, height, pxPerMm } = picture;
  const nearest = new Map<number, number>();
  for (let s = 0; s + 1 < line.length; s++) {
    const a = line[s]!;
    const b = line[s + 1]!;
    const x0 = Math.max(0, Math.floor((Math.min(a.x, b.x) - reachMm) * pxPerMm));
    const x1 = Math.min(width - 1, Math.ceil((Math.max(a.x, b.x) + reachMm) * pxPerMm));
    const y0 = Math.max(0, Math.floor((Math.min(a.y, b.y) - reachMm) * pxPerMm));
    const y1 = Math.min(height - 1, Math.ceil((Math.max(a.y, b.y) + reachMm) * pxPerMm));
    for (let j = y0; j <= y1; j++) {
      for (let i = x0; i <= x1; i++) {
        const d = pointToSegment({ x: (i + 0.5) / pxPerMm, y: (j + 0.5) / pxPerMm }, a, b);
        const k = j * width + i;
        if (d <= reachMm && d < (nearest.get(k) ?? Infinity)) nearest.set(k, d);
      }
    }
  }
  for (const [k, d] of nearest) {
    paint(k, d, { x: ((k % width) + 0.5) / pxPerMm, y: (Math.floor(k / width) + 0.5) / pxPerMm });
  }
}

/** A mark that changes the colour by `change` in its middle and fades at its edges, as scars and veins do. */
export function drawLineMark(leather: TestLeather, line: Polyline, widthMm: number, change: Lab): void {
  alongLine(leather, line, widthMm, (k, d) => {
    const share = Math.exp(-0.5 * (d / (0.42 * widthMm)) ** 2);
    for (let c = 0; c < 3; c++) leather.lab[3 * k + c] = leather.lab[3 * k + c]! + share * change[c]!;
  });
}

/** A round mark with an edge of a mm or more. */
export function drawSpot(leather: TestLeather, at: Point, radiusMm: number, change: Lab, softMm = 0.7): void {
  alongLine(leather, [at, at], radiusMm + 3 * softMm, (k, d) => {
    const share = 1 / (1 + Math.exp((2 * (d - radiusMm)) / softMm));
    for (let c = 0; c < 3; c++) leather.lab[3 * k + c] = leather.lab[3 * k + c]! + share * change[c]!;
  });
}

/** Chalk by hand: the line wavers, its width and cover change along it, the grain shows through, and it has gaps. */
export function drawChalk(
  leather: TestLeather,
  line: Polyline,
  chalk: Lab,
  { widthMm = 5, cover = 0.75, seed = 1, gaps = true } = {},
): void {
  const random = createRandom(seed);
  const { width, height, pxPerMm } = leather.picture;
  const grainy = cloud(random.fork(1), width, height, 1.6 * pxPerMm);
  const slow = cloud(random.fork(2), width, height, 12 * pxPerMm);
  alongLine(leather, line, widthMm, (k, d) => {
    const half = (widthMm / 2) * (1 + 0.18 * slow[k]!);
    const edge = 1 / (1 + Math.exp((d - half) / 0.4));
    const gap = gaps && slow[k]! > 1.9 ? 0.15 : 1;
    const share = Math.min(1, Math.max(0, edge * gap * cover * (1 + 0.3 * grainy[k]!)));
    for (let c = 0; c < 3; c++) {
      leather.lab[3 * k + c] = leather.lab[3 * k + c]! + share * (chalk[c]! - leather.lab[3 * k + c]!);
    }
  });
}

/** A ring drawn by hand, from `fromDeg` for `overDeg` degrees: more than 360 overlaps, less leaves a gap. */
export function handRing(at: Point, radius: number, seed: number, overDeg = 375, fromDeg = 20): Point[] {
  const random = createRandom(seed);
  const waver = Array.from({ length: 3 }, () => random.between(-0.05, 0.05));
  return Array.from({ length: 90 }, (_, i) => {
    const t = ((fromDeg + (overDeg * i) / 89) * Math.PI) / 180;
    const r =
      radius *
      (1 +
        waver[0]! * Math.cos(t) +
        waver[1]! * Math.cos(2 * t) +
        waver[2]! * Math.sin(3 * t) +
        0.04 * (i / 89));
    return { x: at.x + r * Math.cos(t), y: at.y + 0.9 * r * Math.sin(t) };
  });
}

/** The two strokes of a cross. */
export function crossStrokes(at: Point, sizeMm: number, turnDeg: number): readonly [Point[], Point[]] {
  const t = (turnDeg * Math.PI) / 180;
  const stroke = (angle: number, share: number): Point[] => [
    { x: at.x - share * sizeMm * Math.cos(angle), y: at.y - share * sizeMm * Math.sin(angle) },
    { x: at.x + (1 - share) * sizeMm * Math.cos(angle), y: at.y + (1 - share) * sizeMm * Math.sin(angle) },
  ];
  return [stroke(t, 0.5), stroke(t + 1.48, 0.45)];
}

/** Fills in the picture's pixels from L*, a*, b* (CIE 1976, white D65) by sRGB (IEC 61966-2-1). */
export function finish(leather: TestLeather): TestLeather {
  const { lab, picture } = leather;
  for (let k = 0; k < picture.width * picture.height; k++) {
    const fy = (lab[3 * k]! + 16) / 116;
    const x = 0.95047 * unfold(fy + lab[3 * k + 1]! / 500);
    const y = unfold(fy);
    const z = 1.08883 * unfold(fy - lab[3 * k + 2]! / 200);
    picture.rgb[3 * k] = encoded(3.2406 * x - 1.5372 * y - 0.4986 * z);
    picture.rgb[3 * k + 1] = encoded(-0.9689 * x + 1.8758 * y + 0.0415 * z);
    picture.rgb[3 * k + 2] = encoded(0.0557 * x - 0.204 * y + 1.057 * z);
  }
  return leather;
}

function unfold(t: number): number {
  return t > 6 / 29 ? t ** 3 : 3 * (6 / 29) ** 2 * (t - 4 / 29);
}

function encoded(linear: number): number {
  const value = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.max(0, linear) ** (1 / 2.4) - 0.055;
  return Math.max(0, Math.min(255, Math.round(255 * value)));
}
