import { pointInRing } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { toFloor, toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { withMats } from '../vision/mats.js';
import type { Mat, Vision } from '../vision/vision.js';
import type { Colour } from './colour.js';
import { lengthOf, less, medianColour } from './colour.js';
import { groundAt } from './ground.js';
import type { Ground } from './ground.js';
import { contrastOf, offShadow, scaled } from './light.js';
import {
  CLOSE_MM,
  GROUND_SIGMAS,
  HOLE_LIGHT,
  LEAST_CONTRAST,
  MOST_CARDS,
  NARROWEST_CUT_OUT_MM,
  NO_GROUND_CONTRAST,
  OPEN_MM,
  SMALLEST_CARD_MM2,
  SMALLEST_HOLE_MM,
} from './limits.js';
import { labelAreas } from './label-areas.js';
import type { LabelledAreas } from './label-areas.js';

/** A card as it is seen roughly, within about half a pixel of the coarse picture; floor mm. */
export interface RoughCard {
  /** As in light that is even over the picture. */
  readonly colour: Colour;
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

export interface RoughCards {
  readonly cards: readonly RoughCard[];
  /** Places of cards that the picture's border or a paper cuts off. */
  readonly cutOff: readonly Point[];
}

/** Cards on the plain ground of a coarse picture; what lies under or over the papers is left out. */
export function findCards(
  picture: StraightPicture,
  ground: Ground,
  papers: readonly Ring[],
  vision: Vision,
): RoughCards {
  const usable = usableMask(picture, papers);
  const first = openClose(differentMask(picture, ground, usable), picture, { vision, closes: false });
  const told = labelAreas(first, picture.width, leastPixels(picture));
  const plain = cardMask(picture, ground, told);
  const refined = openClose(plain, picture, { vision, closes: true });
  const areas = labelAreas(refined, picture.width, leastPixels(picture));
  const cards: RoughCard[] = [];
  const cutOff: Point[] = [];
  for (let label = 1; label <= Math.min(areas.count, MOST_CARDS); label++) {
    if (isCutOff(areas, label, usable, picture)) cutOff.push(someplace(areas, label, picture));
    else cards.push(roughCard({ picture, ground, plain, vision }, areas, label));
  }
  return { cards, cutOff };
}

function leastPixels({ pxPerMm }: StraightPicture): number {
  return SMALLEST_CARD_MM2 * pxPerMm * pxPerMm;
}

/** Around a paper, its own edge and shadow. */
const PAPER_RIM_MM = 5;

/** 1 where a photo shows the floor and no paper lies. */
function usableMask(picture: StraightPicture, papers: readonly Ring[]): Uint8Array {
  const { width, height, seen } = picture;
  const mask = Uint8Array.from(seen, (value) => (value === 0 ? 0 : 1));
  for (const paper of papers) {
    const ring = grown(paper);
    const corners = ring.map((p) => toPicture(picture, p));
    const [minX, maxX] = spanOf(
      corners.map(({ x }) => x),
      width,
    );
    const [minY, maxY] = spanOf(
      corners.map(({ y }) => y),
      height,
    );
    for (let y = minY; y <= maxY; y++) {
      for (let x = minX; x <= maxX; x++)
        if (pointInRing({ x, y }, corners) !== 'outside') mask[y * width + x] = 0;
    }
  }
  return mask;
}

function grown(ring: Ring): Ring {
  const middle = ring.reduce((a, p) => ({ x: a.x + p.x / ring.length, y: a.y + p.y / ring.length }), {
    x: 0,
    y: 0,
  });
  return ring.map((p) => {
    const away = Math.hypot(p.x - middle.x, p.y - middle.y) || 1;
    const by = 1 + (PAPER_RIM_MM * Math.SQRT2) / away;
    return { x: middle.x + (p.x - middle.x) * by, y: middle.y + (p.y - middle.y) * by };
  });
}

function spanOf(values: readonly number[], size: number): [number, number] {
  return [Math.max(0, Math.floor(Math.min(...values))), Math.min(size - 1, Math.ceil(Math.max(...values)))];
}

function colourAt({ rgb }: StraightPicture, i: number): Colour {
  return [rgb[3 * i]!, rgb[3 * i + 1]!, rgb[3 * i + 2]!];
}

function differentMask(picture: StraightPicture, ground: Ground, usable: Uint8Array): Uint8Array {
  const { width, height } = picture;
  const least = Math.max(LEAST_CONTRAST, GROUND_SIGMAS * ground.sigma);
  const mask = new Uint8Array(width * height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (usable[i] === 1 && lengthOf(less(colourAt(picture, i), groundAt(ground, x, y))) > least)
        mask[i] = 255;
    }
  }
  return mask;
}

/** How much brighter the middle of the picture is lit than a place. */
export function lightAt(ground: Ground, x: number, y: number): number {
  const sum = (c: Colour) => Math.max(3, c[0] + c[1] + c[2]);
  return sum(groundAt(ground, ground.width / 2, ground.height / 2)) / sum(groundAt(ground, x, y));
}

/** Each thing on the ground less its shadow: nearer to its own colour than to the ground in any shadow. */
function cardMask(picture: StraightPicture, ground: Ground, areas: LabelledAreas): Uint8Array {
  const { width, height } = picture;
  const mask = new Uint8Array(width * height);
  const colours = Array.from({ length: areas.count + 1 }, (_, label) =>
    label === 0 ? ([0, 0, 0] as const) : ownColour(picture, ground, areas, label),
  );
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const label = areas.labels[i]!;
      if (label === 0) continue;
      const light = lightAt(ground, x, y);
      const colour = scaled(colourAt(picture, i), light);
      const contrast = contrastOf(colours[label]!, scaled(groundAt(ground, x, y), light));
      const off = offShadow(colour, contrast);
      if (off > NO_GROUND_CONTRAST || lengthOf(less(colour, contrast.card)) < off) mask[i] = 255;
    }
  }
  return mask;
}

/** Pixels that are looked at for a thing's colour. */
const COLOUR_SAMPLES = 4000;

/** The middle colour of a thing, in even light; pixels at its edge are left out. */
function ownColour(picture: StraightPicture, ground: Ground, areas: LabelledAreas, label: number): Colour {
  const { width, height } = picture;
  const rim = Math.max(1, Math.round(picture.pxPerMm));
  const { box, pixels } = areas.areas[label - 1]!;
  const every = Math.max(1, Math.floor(pixels / COLOUR_SAMPLES));
  const isOf = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && areas.labels[y * width + x] === label;
  const [inner, all]: [Colour[], Colour[]] = [[], []];
  for (let y = box.minY, n = 0; y <= box.maxY; y++) {
    for (let x = box.minX; x <= box.maxX; x++) {
      if (!isOf(x, y) || n++ % every !== 0) continue;
      const colour = scaled(colourAt(picture, y * width + x), lightAt(ground, x, y));
      all.push(colour);
      if (isOf(x - rim, y) && isOf(x + rim, y) && isOf(x, y - rim) && isOf(x, y + rim)) inner.push(colour);
    }
  }
  return medianColour(inner.length > all.length / 10 ? inner : all);
}

function openClose(
  mask: Uint8Array,
  { width, height, pxPerMm }: StraightPicture,
  { vision, closes }: { readonly vision: Vision; readonly closes: boolean },
): Uint8Array {
  return withMats((keep) => {
    const mat = keep(new vision.Mat(height, width, vision.CV_8UC1));
    mat.data.set(mask);
    const kernel = (mm: number): Mat => {
      const size = 2 * Math.max(1, Math.round(mm * pxPerMm)) + 1;
      return keep(vision.getStructuringElement(vision.MORPH_ELLIPSE, new vision.Size(size, size)));
    };
    if (closes) vision.morphologyEx(mat, mat, vision.MORPH_CLOSE, kernel(CLOSE_MM));
    vision.morphologyEx(mat, mat, vision.MORPH_OPEN, kernel(OPEN_MM));
    return new Uint8Array(mat.data);
  });
}

/** True if the thing reaches what no photo shows, or a paper. */
function isCutOff(
  { labels, areas }: LabelledAreas,
  label: number,
  usable: Uint8Array,
  { width, height }: StraightPicture,
): boolean {
  const { box } = areas[label - 1]!;
  if (box.minX <= 1 || box.minY <= 1 || box.maxX >= width - 2 || box.maxY >= height - 2) return true;
  for (let y = box.minY; y <= box.maxY; y++) {
    for (let x = box.minX; x <= box.maxX; x++) {
      const i = y * width + x;
      if (labels[i] !== label) continue;
      if (!usable[i - 2] || !usable[i + 2] || !usable[i - 2 * width] || !usable[i + 2 * width]) return true;
    }
  }
  return false;
}

function someplace({ areas }: LabelledAreas, label: number, picture: StraightPicture): Point {
  const { box } = areas[label - 1]!;
  return toFloor(picture, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
}

interface Seen {
  readonly picture: StraightPicture;
  readonly ground: Ground;
  /** 0 where the ground or its shadow is seen. */
  readonly plain: Uint8Array;
  readonly vision: Vision;
}

function roughCard(seen: Seen, areas: LabelledAreas, label: number): RoughCard {
  const [outer, ...inner] = contoursOf(areas, label, seen.picture, seen.vision);
  const colour = ownColour(seen.picture, seen.ground, areas, label);
  return { colour, outline: outer!, holes: inner.filter((ring) => isHole(ring, seen)) };
}

/** Drawn lines that lie close may make a gap in the mask as well, but card is seen between them. */
function isHole(ring: Ring, { picture, ground, plain }: Seen): boolean {
  const { area, length } = ringSize(ring);
  if ((4 * area) / length < SMALLEST_HOLE_MM) return false;
  const corners = ring.map((p) => toPicture(picture, p));
  const [minX, maxX] = spanOf(
    corners.map(({ x }) => x),
    picture.width,
  );
  const [minY, maxY] = spanOf(
    corners.map(({ y }) => y),
    picture.height,
  );
  let [all, open, light] = [0, 0, 0];
  for (let y = minY; y <= maxY; y++) {
    for (let x = minX; x <= maxX; x++) {
      if (pointInRing({ x, y }, corners) !== 'inside') continue;
      all++;
      if (plain[y * picture.width + x] !== 0) continue;
      open++;
      light += shareOfLight(colourAt(picture, y * picture.width + x), groundAt(ground, x, y));
    }
  }
  const isSmall = (4 * area) / length < NARROWEST_CUT_OUT_MM;
  return open >= OPEN_SHARE * all && (!isSmall || light >= HOLE_LIGHT * open);
}

/** How much of the ground's light a colour has. Of a dark ground ink can't be told by it. */
function shareOfLight(colour: Colour, ground: Colour): number {
  const sum = (c: Colour) => c[0] + c[1] + c[2];
  return sum(ground) < DARK_GROUND ? 1 : sum(colour) / sum(ground);
}

const DARK_GROUND = 300;

/** Of a hole, this much is ground: dirt and the shadow of its own edge may take some. */
const OPEN_SHARE = 0.8;

/** A ring's area without sign, mm², and length, mm. */
export function ringSize(ring: Ring): { readonly area: number; readonly length: number } {
  let area = 0;
  let length = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    area += (p.x * q.y - p.y * q.x) / 2;
    length += Math.hypot(q.x - p.x, q.y - p.y);
  });
  return { area: Math.abs(area), length };
}

/** The outline of one thing, then those of its holes; floor mm. */
function contoursOf(
  { labels, areas }: LabelledAreas,
  label: number,
  picture: StraightPicture,
  vision: Vision,
): Ring[] {
  const { box } = areas[label - 1]!;
  const [width, height] = [box.maxX - box.minX + 3, box.maxY - box.minY + 3];
  return withMats((keep) => {
    const mat = keep(new vision.Mat(height, width, vision.CV_8UC1));
    mat.data.fill(0);
    for (let y = box.minY; y <= box.maxY; y++) {
      for (let x = box.minX; x <= box.maxX; x++) {
        if (labels[y * picture.width + x] === label)
          mat.data[(y - box.minY + 1) * width + x - box.minX + 1] = 255;
      }
    }
    const found = keep(new vision.MatVector());
    const hierarchy = keep(new vision.Mat());
    vision.findContours(mat, found, hierarchy, vision.RETR_CCOMP, vision.CHAIN_APPROX_NONE);
    const rings = Array.from({ length: found.size() }, (_, i) => {
      const contour = keep(found.get(i));
      const ring = Array.from({ length: contour.rows }, (_, k) =>
        toFloor(picture, {
          x: contour.data32S[2 * k]! + box.minX - 1,
          y: contour.data32S[2 * k + 1]! + box.minY - 1,
        }),
      );
      // Next, previous, first child, parent.
      return { ring, isOuter: hierarchy.data32S[4 * i + 3]! < 0 };
    }).filter(({ ring }) => ring.length >= 3);
    const outer = rings.filter(({ isOuter }) => isOuter).map(({ ring }) => ring);
    outer.sort((a, b) => ringSize(b).area - ringSize(a).area);
    return [outer[0]!, ...rings.filter(({ isOuter }) => !isOuter).map(({ ring }) => ring)];
  });
}
