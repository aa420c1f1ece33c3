import type { FloorTile } from './floor-tile.js';
import { BLOCK, blockWithin } from './leather-map.js';
import type { LeatherMap } from './leather-map.js';
import { meetFloor } from './pinhole.js';
import type { Light, PinholeCamera } from './scene.js';
import { heightOn } from './sheet-surface.js';
import type { SheetSurface } from './sheet-surface.js';

/** Light that reaches the sensor: three numbers a pixel, 1 is white. */
export interface LightPicture {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/** All that lies before the camera. */
export interface Stage {
  readonly camera: PinholeCamera;
  readonly floor: FloorTile;
  readonly leathers: readonly LeatherMap[];
  readonly sheets: readonly SheetSurface[];
  readonly light: Light;
}

/** Rays are worked out at every so many pixels and blended between: off by less than a hundredth of a mm. */
const CELL = 8;
/** Rays a pixel each way. */
const RAYS = 2;

/** White paper and black ink in this light, as shares. */
const PAPER = [0.84, 0.84, 0.81] as const;
const INK = 0.022;
const WALL_STEPS = [0, 0.5] as const;

/** sRGB bytes to light (IEC 61966-2-1). */
const TO_LIGHT = Float32Array.from({ length: 256 }, (_, byte) => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
});

/** Sends rays through every pixel. What stands above the floor is met nearer to the camera's foot: true parallax. */
export function photograph(stage: Stage): LightPicture {
  const { camera } = stage;
  const { width, height } = camera;
  const light = new Float32Array(width * height * 3);
  const nodes = rayNodes(stage);
  const see = createSight(stage);
  const across = Math.ceil(width / CELL);
  for (let cj = 0; cj * CELL < height; cj++)
    for (let ci = 0; ci < across; ci++) photographCell(light, width, height, nodes, ci, cj, see);
  return { width, height, light };
}

/** One cell's pixels, `RAYS` rays each way through every one. */
function photographCell(
  light: Float32Array,
  width: number,
  height: number,
  nodes: Float64Array,
  ci: number,
  cj: number,
  see: Sight,
): void {
  const n0 = 3 * (cj * (Math.ceil(width / CELL) + 1) + ci);
  const n1 = n0 + 3 * (Math.ceil(width / CELL) + 1);
  const [x00, x10, x01, x11] = [nodes[n0]!, nodes[n0 + 3]!, nodes[n1]!, nodes[n1 + 3]!];
  const [y00, y10, y01, y11] = [nodes[n0 + 1]!, nodes[n0 + 4]!, nodes[n1 + 1]!, nodes[n1 + 4]!];
  const [l00, l10, l01, l11] = [nodes[n0 + 2]!, nodes[n0 + 5]!, nodes[n1 + 2]!, nodes[n1 + 5]!];
  const near = see.near(
    Math.min(x00, x10, x01, x11),
    Math.min(y00, y10, y01, y11),
    Math.max(x00, x10, x01, x11),
    Math.max(y00, y10, y01, y11),
  );
  const lastRay = RAYS * Math.min(CELL, height - cj * CELL);
  const raysAcross = RAYS * Math.min(CELL, width - ci * CELL);
  for (let rayJ = 0; rayJ < lastRay; rayJ++) {
    const t = (rayJ + 0.5) / (RAYS * CELL);
    const [xLeft, xRight] = [x00 + t * (x01 - x00), x10 + t * (x11 - x10)];
    const [yLeft, yRight] = [y00 + t * (y01 - y00), y10 + t * (y11 - y10)];
    const [lLeft, lRight] = [l00 + t * (l01 - l00), l10 + t * (l11 - l10)];
    const row = (cj * CELL + Math.floor(rayJ / RAYS)) * width + ci * CELL;
    for (let rayI = 0; rayI < raysAcross; rayI++) {
      const s = (rayI + 0.5) / (RAYS * CELL);
      const seen = see.at(xLeft + s * (xRight - xLeft), yLeft + s * (yRight - yLeft), near);
      const share = (lLeft + s * (lRight - lLeft)) / (RAYS * RAYS);
      const out = 3 * (row + Math.floor(rayI / RAYS));
      light[out] = light[out]! + share * seen[0]!;
      light[out + 1] = light[out + 1]! + share * seen[1]!;
      light[out + 2] = light[out + 2]! + share * seen[2]!;
    }
  }
}

/** Where rays through the cells' corners meet the floor, and how much light falls there: three numbers each. */
function rayNodes({ camera, light, leathers }: Stage): Float64Array {
  const across = Math.ceil(camera.width / CELL) + 1;
  const down = Math.ceil(camera.height / CELL) + 1;
  const nodes = new Float64Array(3 * across * down);
  const lightAt = createLight(light, leathers);
  for (let j = 0; j < down; j++) {
    for (let i = 0; i < across; i++) {
      // The corner of a pixel lies half a pixel before its middle.
      const place = meetFloor(camera, { x: i * CELL - 0.5, y: j * CELL - 0.5 }) ?? FAR_AWAY;
      const at = 3 * (j * across + i);
      nodes[at] = place.x;
      nodes[at + 1] = place.y;
      nodes[at + 2] = lightAt(place.x, place.y);
    }
  }
  return nodes;
}

const FAR_AWAY = { x: 1e5, y: 1e5 } as const;

/** Light over the floor: it falls off to one side, and something soft stands in it. */
function createLight(light: Light, leathers: readonly LeatherMap[]): (x: number, y: number) => number {
  const map = leathers[0]!;
  const middleX = map.x0 + map.width / map.pxPerMm / 2;
  const middleY = map.y0 + map.height / map.pxPerMm / 2;
  const reach = Math.hypot(map.width, map.height) / map.pxPerMm / 2;
  const sin = Math.sin((light.fallTowardsDeg * Math.PI) / 180);
  const cos = Math.cos((light.fallTowardsDeg * Math.PI) / 180);
  return (x, y) => {
    const u = (x - middleX) / reach;
    const v = (y - middleY) / reach;
    const along = Math.max(-1.5, Math.min(1.5, cos * u + sin * v));
    const fall = 1 - light.fall * (0.5 + 0.5 * along);
    // A soft-edged round shadow that reaches in from the side that is darker anyway.
    const away = Math.hypot(u - 0.95 * cos + 0.3 * sin, v - 0.95 * sin - 0.3 * cos);
    const shadow = light.wideShadow * clamp01((0.75 - away) / 0.16);
    return Math.max(0.15, fall * (1 - shadow));
  };
}

interface Sight {
  /** What is seen where a ray would meet the floor: light, three numbers, valid until the next call. */
  at(x: number, y: number, near: Near): Float64Array;
  /** What can be seen by rays that would meet the floor within this box. */
  near(minX: number, minY: number, maxX: number, maxY: number): Near;
}

interface Near {
  readonly sheets: readonly SheetSurface[];
  readonly edges: readonly LeatherMap[];
  /** Leather that fills the box. */
  readonly solid: LeatherMap | undefined;
}

function createSight({ camera, floor, leathers, sheets, light }: Stage): Sight {
  const seen = new Float64Array(3);
  const foot = camera.position;
  const shine = createShine(light, leathers);
  const lift = Math.max(...leathers.map(({ heightMm }) => heightMm)) / foot.z;
  return {
    near: (minX, minY, maxX, maxY) => {
      const around = PARALLAX_MM + lift * Math.hypot((minX + maxX) / 2 - foot.x, (minY + maxY) / 2 - foot.y);
      const states = leathers.map((leather) =>
        blockWithin(leather, minX - around, minY - around, maxX + around, maxY + around),
      );
      return {
        sheets: sheets.filter(
          ({ laid }) =>
            laid.x > minX - PAPER_REACH_MM &&
            laid.x < maxX + PAPER_REACH_MM &&
            laid.y > minY - PAPER_REACH_MM &&
            laid.y < maxY + PAPER_REACH_MM,
        ),
        edges: leathers.filter((_, i) => states[i] !== BLOCK.free),
        solid: leathers.find((_, i) => states[i] === BLOCK.leather),
      };
    },
    at: (x, y, { sheets: papers, edges, solid }) => {
      for (const sheet of papers) if (seeSheet(seen, sheet, foot, x, y)) return seen;
      if (solid !== undefined) {
        const share = solid.heightMm / foot.z;
        const topX = x + (foot.x - x) * share;
        const topY = y + (foot.y - y) * share;
        seeGrain(seen, solid, topX, topY);
        const glint = shine(topX, topY);
        for (let c = 0; c < 3; c++) seen[c] = seen[c]! + glint;
        return seen;
      }
      seeFloor(seen, floor, x, y);
      for (const leather of edges) seeLeather(seen, leather, foot, x, y, shine);
      for (const sheet of papers) shadeByPaper(seen, sheet, x, y);
      return seen;
    },
  };
}

/** Room for the blending of bytes at the border of a block, and for what a lifted corner seems to move. */
const PARALLAX_MM = 3;

/** Half of the larger paper's diagonal, and its shadow. */
const PAPER_REACH_MM = 195;

function seeFloor(seen: Float64Array, { rgb, side, pxPerMm }: FloorTile, x: number, y: number): void {
  const u = x * pxPerMm;
  const v = y * pxPerMm;
  const i = Math.floor(u);
  const j = Math.floor(v);
  const s = u - i;
  const t = v - j;
  const last = side - 1;
  const row0 = (j & last) * side;
  const row1 = ((j + 1) & last) * side;
  const a = 3 * (row0 + (i & last));
  const b = 3 * (row0 + ((i + 1) & last));
  const c = 3 * (row1 + (i & last));
  const d = 3 * (row1 + ((i + 1) & last));
  blend(seen, rgb, a, b, c, d, s, t);
}

function seeLeather(
  seen: Float64Array,
  leather: LeatherMap,
  foot: PinholeCamera['position'],
  x: number,
  y: number,
  shine: (x: number, y: number) => number,
): void {
  const ground = cellOf(leather, x, y);
  if (ground < 0) return;
  const darkness = bilinearByte(leather, leather.shadow, x, y);
  if (darkness > 0) {
    const left = 1 - darkness / 255;
    for (let c = 0; c < 3; c++) seen[c] = seen[c]! * left;
  }
  let solid = 0;
  for (const step of WALL_STEPS) {
    const share = (step * leather.heightMm) / foot.z;
    solid = Math.max(
      solid,
      bilinearByte(leather, leather.cover, x + (foot.x - x) * share, y + (foot.y - y) * share),
    );
  }
  const share = leather.heightMm / foot.z;
  const topX = x + (foot.x - x) * share;
  const topY = y + (foot.y - y) * share;
  const top = bilinearByte(leather, leather.cover, topX, topY) / 255;
  const wall = Math.max(0, solid / 255 - top);
  if (top === 0 && wall === 0) return;
  const [fr, fg, fb] = [seen[0]!, seen[1]!, seen[2]!];
  seeGrain(seen, leather, topX, topY);
  const glint = shine(topX, topY);
  const floor = 1 - top - wall;
  const behind = [fr, fg, fb];
  for (let c = 0; c < 3; c++)
    seen[c] =
      top * (seen[c]! + glint) +
      wall * WALL_LIGHT * TO_LIGHT[leather.edgeColour[c]! | 0]! +
      floor * behind[c]!;
}

/** A raw edge stands upright and gets less light. */
const WALL_LIGHT = 0.6;

function seeGrain(seen: Float64Array, map: LeatherMap, x: number, y: number): void {
  const u = (x - map.x0) * map.pxPerMm - 0.5;
  const v = (y - map.y0) * map.pxPerMm - 0.5;
  const i = Math.max(0, Math.min(map.width - 2, Math.floor(u)));
  const j = Math.max(0, Math.min(map.height - 2, Math.floor(v)));
  const a = 3 * (j * map.width + i);
  const c = a + 3 * map.width;
  blend(seen, map.rgb, a, a + 3, c, c + 3, u - i, v - j);
}

function blend(
  seen: Float64Array,
  rgb: Uint8Array,
  a: number,
  b: number,
  c: number,
  d: number,
  s: number,
  t: number,
): void {
  const wa = (1 - s) * (1 - t);
  const wb = s * (1 - t);
  const wc = (1 - s) * t;
  const wd = s * t;
  for (let k = 0; k < 3; k++)
    seen[k] =
      wa * TO_LIGHT[rgb[a + k]!]! +
      wb * TO_LIGHT[rgb[b + k]!]! +
      wc * TO_LIGHT[rgb[c + k]!]! +
      wd * TO_LIGHT[rgb[d + k]!]!;
}

/** -1 beyond the map. */
function cellOf(map: LeatherMap, x: number, y: number): number {
  const i = Math.floor((x - map.x0) * map.pxPerMm - 0.5);
  const j = Math.floor((y - map.y0) * map.pxPerMm - 0.5);
  return i < 0 || j < 0 || i > map.width - 2 || j > map.height - 2 ? -1 : j * map.width + i;
}

function bilinearByte(map: LeatherMap, bytes: Uint8Array, x: number, y: number): number {
  const at = cellOf(map, x, y);
  if (at < 0) return 0;
  const u = (x - map.x0) * map.pxPerMm - 0.5;
  const v = (y - map.y0) * map.pxPerMm - 0.5;
  const s = u - Math.floor(u);
  const t = v - Math.floor(v);
  const top = bytes[at]! * (1 - s) + bytes[at + 1]! * s;
  const bottom = bytes[at + map.width]! * (1 - s) + bytes[at + map.width + 1]! * s;
  return top * (1 - t) + bottom * t;
}

/** A soft gleam of the lamp on the leather. */
function createShine(
  { shine, shadowTowardsDeg }: Light,
  leathers: readonly LeatherMap[],
): (x: number, y: number) => number {
  if (shine === 0) return () => 0;
  const map = leathers[0]!;
  const reach = Math.min(map.width, map.height) / map.pxPerMm;
  const x0 =
    map.x0 + map.width / map.pxPerMm / 2 - 0.12 * reach * Math.cos((shadowTowardsDeg * Math.PI) / 180);
  const y0 =
    map.y0 + map.height / map.pxPerMm / 2 - 0.12 * reach * Math.sin((shadowTowardsDeg * Math.PI) / 180);
  return (x, y) => shine * Math.exp((-8 * ((x - x0) ** 2 + (y - y0) ** 2)) / (reach * reach));
}

/** True if the ray meets this paper; then `seen` is its light. */
function seeSheet(
  seen: Float64Array,
  sheet: SheetSurface,
  foot: PinholeCamera['position'],
  x: number,
  y: number,
): boolean {
  const { laid, picture } = sheet;
  const sin = Math.sin((laid.turnDeg * Math.PI) / 180);
  const cos = Math.cos((laid.turnDeg * Math.PI) / 180);
  const halfWide = picture.width / picture.pxPerMm / 2;
  const halfHigh = picture.height / picture.pxPerMm / 2;
  let u = cos * (x - laid.x) + sin * (y - laid.y);
  let v = cos * (y - laid.y) - sin * (x - laid.x);
  if (Math.abs(u) > halfWide + PARALLAX_MM || Math.abs(v) > halfHigh + PARALLAX_MM) return false;
  let z = heightOn(sheet, u, v);
  for (let step = 0; step < 2; step++) {
    const px = x + ((foot.x - x) * z) / foot.z - laid.x;
    const py = y + ((foot.y - y) * z) / foot.z - laid.y;
    u = cos * px + sin * py;
    v = cos * py - sin * px;
    z = heightOn(sheet, u, v);
  }
  if (Math.abs(u) >= halfWide || Math.abs(v) >= halfHigh) return false;
  const ink = 1 - inkAt(picture, u / sheet.stretch.x + halfWide, v / sheet.stretch.y + halfHigh) / 255;
  // Paper that slopes up catches a little more light, or less.
  const slope = 1 + 0.04 * (heightOn(sheet, u + 3, v - 3) - z);
  for (let c = 0; c < 3; c++) seen[c] = slope * (PAPER[c]! * (1 - ink) + INK * ink);
  return true;
}

function inkAt({ grey, width, height, pxPerMm }: SheetSurface['picture'], x: number, y: number): number {
  const u = x * pxPerMm - 0.5;
  const v = y * pxPerMm - 0.5;
  const i = Math.max(0, Math.min(width - 2, Math.floor(u)));
  const j = Math.max(0, Math.min(height - 2, Math.floor(v)));
  const s = clamp01(u - i);
  const t = clamp01(v - j);
  const at = j * width + i;
  const top = grey[at]! * (1 - s) + grey[at + 1]! * s;
  const bottom = grey[at + width]! * (1 - s) + grey[at + width + 1]! * s;
  return top * (1 - t) + bottom * t;
}

/** The floor is darker just beside a paper. */
function shadeByPaper(seen: Float64Array, { laid, picture }: SheetSurface, x: number, y: number): void {
  const sin = Math.sin((laid.turnDeg * Math.PI) / 180);
  const cos = Math.cos((laid.turnDeg * Math.PI) / 180);
  const u = Math.abs(cos * (x - laid.x) + sin * (y - laid.y)) - picture.width / picture.pxPerMm / 2;
  const v = Math.abs(cos * (y - laid.y) - sin * (x - laid.x)) - picture.height / picture.pxPerMm / 2;
  const away = Math.hypot(Math.max(0, u), Math.max(0, v));
  if (away > 3) return;
  const left = 1 - 0.3 * (1 - away / 3);
  for (let c = 0; c < 3; c++) seen[c] = seen[c]! * left;
}

function clamp01(value: number): number {
  return value < 0 ? 0 : value > 1 ? 1 : value;
}
