import { createRandom } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { MARKERS_PER_SHEET, MARKER_FIELDS, MARKER_MM, PAPER_RING } from '@hidebound/leather';
import { markerCorners, markerFields, markerId } from '@hidebound/leather';
import type { Photo } from '../photo.js';
import type { SeenReferences } from './seen-references.js';

/**
 * A camera written for the tests alone, after OpenCV's documentation ("Camera Calibration and 3D Reconstruction", detailed
 * description): turned and moved, divided by depth, moved by k1, k2, k3, p1, p2 in units of the focal length, then put on
 * the picture by the focal length and an axis that need not be the middle.
 */
export interface TestCamera {
  readonly width: number;
  readonly height: number;
  readonly focalPx: number;
  readonly axis: Point;
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
  readonly p1: number;
  readonly p2: number;
  /** Rows of the turn from floor to camera, and the camera's place (z above the floor). */
  readonly turn: readonly (readonly [number, number, number])[];
  readonly at: readonly [number, number, number];
}

export interface TestSheet {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
  /** Printed over drawn size. */
  readonly stretch?: Point;
  /** How far its rim stands up along its length, mm. */
  readonly curlMm?: number;
  /** How far its corners stand up, mm: each comes down to the floor over 80 mm. */
  readonly liftsMm?: readonly [number, number, number, number];
}

/** A camera above (x, y) that looks at the floor's (0, 0) mm, its right side turned by `rollDeg`. */
export function testCamera(
  given: {
    readonly x: number;
    readonly y: number;
    readonly heightMm: number;
    readonly rollDeg?: number;
    readonly width?: number;
    readonly height?: number;
    readonly focalShare?: number;
  } & Partial<Pick<TestCamera, 'k1' | 'k2' | 'k3' | 'p1' | 'p2'>> & { readonly axisShift?: Point },
): TestCamera {
  const { x, y, heightMm, rollDeg = 0, width = 4000, height = 3000, focalShare = 1.2 } = given;
  const away = Math.hypot(x, y, heightMm);
  const forward = [-x / away, -y / away, -heightMm / away] as const;
  const roll = (rollDeg * Math.PI) / 180;
  // Right and down on the picture; y grows downwards on the floor as seen from above, so z grows towards the camera's back.
  const rough = [Math.cos(roll), Math.sin(roll), 0] as const;
  const along = rough[0] * forward[0] + rough[1] * forward[1];
  const rightRaw = [rough[0] - along * forward[0], rough[1] - along * forward[1], -along * forward[2]];
  const length = Math.hypot(...rightRaw);
  const right = rightRaw.map((v) => v / length) as [number, number, number];
  // In the frame x right, y down, z up (left-handed) the cross product changes its sign.
  const down = [
    -(forward[1] * right[2] - forward[2] * right[1]),
    -(forward[2] * right[0] - forward[0] * right[2]),
    -(forward[0] * right[1] - forward[1] * right[0]),
  ] as [number, number, number];
  return {
    width,
    height,
    focalPx: (focalShare * Math.hypot(width, height)) / 2,
    axis: {
      x: (width - 1) / 2 + (given.axisShift?.x ?? 0),
      y: (height - 1) / 2 + (given.axisShift?.y ?? 0),
    },
    k1: given.k1 ?? 0,
    k2: given.k2 ?? 0,
    k3: given.k3 ?? 0,
    p1: given.p1 ?? 0,
    p2: given.p2 ?? 0,
    turn: [right, down, [...forward]],
    at: [x, y, heightMm],
  };
}

/** Where the camera shows a place, z mm above the floor. */
export function shownAt(camera: TestCamera, x: number, y: number, z = 0): Point {
  const way = [x - camera.at[0], y - camera.at[1], z - camera.at[2]] as const;
  const [u, v, depth] = camera.turn.map((row) => row[0] * way[0] + row[1] * way[1] + row[2] * way[2]) as [
    number,
    number,
    number,
  ];
  return onPicture(camera, u / depth, v / depth);
}

function onPicture(camera: TestCamera, x: number, y: number): Point {
  const rSq = x * x + y * y;
  const radial = 1 + rSq * (camera.k1 + rSq * (camera.k2 + rSq * camera.k3));
  const { p1, p2 } = camera;
  return {
    x: camera.axis.x + camera.focalPx * (x * radial + 2 * p1 * x * y + p2 * (rSq + 2 * x * x)),
    y: camera.axis.y + camera.focalPx * (y * radial + p1 * (rSq + 2 * y * y) + 2 * p2 * x * y),
  };
}

/** A place of a sheet on the floor, and how far it stands up there. */
export function onSheet(sheet: TestSheet, on: Point): readonly [number, number, number] {
  const turn = (sheet.turnDeg * Math.PI) / 180;
  const x = on.x * (sheet.stretch?.x ?? 1);
  const y = on.y * (sheet.stretch?.y ?? 1);
  const share = on.y / 148.5;
  return [
    sheet.x + Math.cos(turn) * x - Math.sin(turn) * y,
    sheet.y + Math.sin(turn) * x + Math.cos(turn) * y,
    (sheet.curlMm ?? 0) * share * share + liftAt(sheet, on),
  ];
}

function liftAt({ liftsMm }: TestSheet, on: Point): number {
  if (liftsMm === undefined) return 0;
  return PAPER_RING.reduce((sum, corner, i) => {
    const near = Math.max(0, 1 - Math.hypot(on.x - corner.x, on.y - corner.y) / 80);
    return sum + liftsMm[i]! * near * near;
  }, 0);
}

/** What a perfect finder would report, each place off by some noise. */
export function seenBy(
  camera: TestCamera,
  sheets: readonly TestSheet[],
  { noisePx = 0, seed = 1, file = 'invented.jpg' } = {},
): SeenReferences {
  const random = createRandom(seed);
  const markers = sheets.flatMap((sheet) =>
    Array.from({ length: MARKERS_PER_SHEET }, (_, place) => {
      const corners = markerCorners(place).map((on) => {
        const { x, y } = shownAt(camera, ...onSheet(sheet, on));
        return { x: x + noisePx * random.normal(), y: y + noisePx * random.normal() };
      });
      const none = { points: [], scatterPx: noisePx };
      return {
        id: markerId({ sheet: sheet.sheet, place }),
        corners: corners as [Point, Point, Point, Point],
        sides: [none, none, none, none] as const,
        blurPx: 0.8,
        white: 0.8,
        black: 0.05,
      };
    }),
  );
  const inside = ({ x, y }: Point): boolean =>
    x > 0 && y > 0 && x < camera.width - 1 && y < camera.height - 1;
  return {
    file,
    width: camera.width,
    height: camera.height,
    markers: markers.filter(({ corners }) => corners.every(inside)),
  };
}

/** Light of paper, ink and floor. */
const PAPER = 0.75;
const INK = 0.04;
const FLOOR = 0.2;

/** A photo of sheets on a plain floor, its light spread as a bell curve of `blurPx` and stored as sRGB. */
export function photographSheets(
  camera: TestCamera,
  sheets: readonly TestSheet[],
  { blurPx = 0.7, noise = 0, seed = 1, file = 'invented.png' } = {},
): Photo {
  const { width, height } = camera;
  const random = createRandom(seed);
  const rgb = new Uint8Array(width * height * 3).fill(stored(FLOOR));
  for (const sheet of sheets) {
    const corners = PAPER_RING.map((on) => shownAt(camera, ...onSheet(sheet, on)));
    const [minX, maxX] = [Math.min(...corners.map(({ x }) => x)), Math.max(...corners.map(({ x }) => x))];
    const [minY, maxY] = [Math.min(...corners.map(({ y }) => y)), Math.max(...corners.map(({ y }) => y))];
    const paint = sheetPainter(sheet);
    for (let y = Math.max(0, Math.floor(minY) - 3); y <= Math.min(height - 1, maxY + 3); y++) {
      for (let x = Math.max(0, Math.floor(minX) - 3); x <= Math.min(width - 1, maxX + 3); x++) {
        const light = lightOfPixel(camera, sheet, paint, x, y, blurPx);
        if (light === undefined) continue;
        const value = stored(light + noise * random.normal());
        rgb.fill(value, (y * width + x) * 3, (y * width + x) * 3 + 3);
      }
    }
  }
  return { file, width, height, rgb };
}

/** Light is gathered from so many places to each side of a pixel's middle. */
const SPREAD_STEPS = 3;

function lightOfPixel(
  camera: TestCamera,
  sheet: TestSheet,
  paint: (x: number, y: number) => number | undefined,
  px: number,
  py: number,
  blurPx: number,
): number | undefined {
  const middle = sheetPlaceAt(camera, sheet, px, py);
  const right = sheetPlaceAt(camera, sheet, px + 1, py);
  const below = sheetPlaceAt(camera, sheet, px, py + 1);
  let sum = 0;
  let weights = 0;
  const reach = Math.max(0.5, 2 * blurPx);
  for (let j = -SPREAD_STEPS; j <= SPREAD_STEPS; j++) {
    for (let i = -SPREAD_STEPS; i <= SPREAD_STEPS; i++) {
      const [dx, dy] = [(i / SPREAD_STEPS) * reach, (j / SPREAD_STEPS) * reach];
      const weight = Math.exp(-(dx * dx + dy * dy) / (2 * blurPx * blurPx));
      const x = middle.x + dx * (right.x - middle.x) + dy * (below.x - middle.x);
      const y = middle.y + dx * (right.y - middle.y) + dy * (below.y - middle.y);
      sum += weight * (paint(x, y) ?? FLOOR);
      weights += weight;
    }
  }
  return sum / weights;
}

/** The place of the floor that a pixel shows. */
export function floorShownAt(camera: TestCamera, px: number, py: number): Point {
  let x = (px - camera.axis.x) / camera.focalPx;
  let y = (py - camera.axis.y) / camera.focalPx;
  for (let i = 0; i < INVERSE_STEPS; i++) {
    const at = onPicture(camera, x, y);
    x -= (at.x - px) / camera.focalPx;
    y -= (at.y - py) / camera.focalPx;
  }
  const [right, down, forward] = [camera.turn[0]!, camera.turn[1]!, camera.turn[2]!];
  const ray = ([0, 1, 2] as const).map((k) => right[k] * x + down[k] * y + forward[k]);
  const reach = -camera.at[2] / ray[2]!;
  return { x: camera.at[0] + reach * ray[0]!, y: camera.at[1] + reach * ray[1]! };
}

/** Each step is some ten times nearer. */
const INVERSE_STEPS = 12;

/** The place of a flat sheet that a pixel shows. */
function sheetPlaceAt(camera: TestCamera, sheet: TestSheet, px: number, py: number): Point {
  const floor = floorShownAt(camera, px, py);
  const [x, y] = [floor.x - sheet.x, floor.y - sheet.y];
  const turn = (sheet.turnDeg * Math.PI) / 180;
  return {
    x: (Math.cos(turn) * x + Math.sin(turn) * y) / (sheet.stretch?.x ?? 1),
    y: (-Math.sin(turn) * x + Math.cos(turn) * y) / (sheet.stretch?.y ?? 1),
  };
}

function sheetPainter({ sheet }: TestSheet): (x: number, y: number) => number | undefined {
  const field = MARKER_MM / MARKER_FIELDS;
  const drawn = Array.from({ length: MARKERS_PER_SHEET }, (_, place) => ({
    corner: markerCorners(place)[0],
    fields: markerFields(markerId({ sheet, place })),
  }));
  return (x, y) => {
    if (Math.abs(x) > 105 || Math.abs(y) > 148.5) return undefined;
    for (const { corner, fields } of drawn) {
      const white = fields[Math.floor((y - corner.y) / field)]?.[Math.floor((x - corner.x) / field)];
      if (white !== undefined) return white ? PAPER : INK;
    }
    return PAPER;
  };
}

/** Light as sRGB stores it (IEC 61966-2-1). */
function stored(light: number): number {
  const v = Math.max(0, Math.min(1, light));
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
}
