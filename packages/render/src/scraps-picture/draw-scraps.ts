import { applyAffine, composeAffine, scaling, transformRegion, translation } from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import { chain, group, path, regionCurves } from '../drawing/build.js';
import type { Drawing, DrawingElement, ImageFile } from '../drawing/model.js';
import { HIDE_EDGE_MM, INK, OXBLOOD, PAPER } from '../sheet/palette.js';
import { PAGE_SIZES, lyingPage } from '../sheet/page-size.js';
import type { FontBook } from '../text/font-book.js';
import { capitalHeightMm, textLine } from '../text/measure-text.js';

/** One scrap as it lies on the table, mm. */
export interface NumberedScrap extends Region {
  readonly number: number;
  /** Where its number has most room, and how high it may be written. */
  readonly numberAt: Point;
  readonly numberHeightMm: number;
}

export interface ScrapsPictureOptions {
  readonly scraps: readonly NumberedScrap[];
  /** The photo from straight above, and which part of the table it shows. */
  readonly photo: { readonly file: ImageFile; readonly box: Box };
  readonly fonts: FontBook;
  readonly title: string;
}

const MARGIN_MM = 10;
const TITLE_MM = 5;
const TITLE_ROOM_MM = 9;
/** Numbers on the page, from so small that one can still read it to so large that it covers no scrap. */
const LEAST_NUMBER_MM = 2.2;
const MOST_NUMBER_MM = 9;
const PHOTO_OPACITY = 0.75;
/** A white rim keeps a number readable on any leather. */
const RIM_SHARE = 0.72;

/** Which number goes on the back of which scrap: the photo, reduced to one A4 page, with outlines and numbers. */
export function drawScraps({ scraps, photo, fonts, title }: ScrapsPictureOptions): Drawing {
  const { box } = photo;
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const { widthMm, heightMm } = wide > high ? lyingPage(PAGE_SIZES.A4) : PAGE_SIZES.A4;
  const top = MARGIN_MM + TITLE_ROOM_MM;
  const scale = Math.min((widthMm - 2 * MARGIN_MM) / wide, (heightMm - top - MARGIN_MM) / high);
  const toPage = composeAffine(
    translation(MARGIN_MM, top),
    composeAffine(scaling(scale), translation(-box.minX, -box.minY)),
  );
  const heading = textLine(fonts, title, {
    at: { x: MARGIN_MM, y: MARGIN_MM + TITLE_MM },
    sizeMm: TITLE_MM,
    face: 'bold',
    colour: INK,
  });
  const image = { kind: 'image', file: photo.file, box, opacity: PHOTO_OPACITY } as const;
  return {
    widthMm,
    heightMm,
    title,
    layers: [
      { name: 'photo', elements: [group('photo', [image], { transform: toPage })] },
      { name: 'scraps', elements: scraps.map((scrap) => edgeOf(transformRegion(toPage, scrap))) },
      {
        name: 'numbers',
        elements: scraps.flatMap(({ number, numberAt, numberHeightMm }) =>
          numberOn(fonts, number, applyAffine(toPage, numberAt), numberHeightMm * scale),
        ),
      },
      { name: 'title', elements: [heading] },
    ],
  };
}

function edgeOf(scrap: Region): DrawingElement {
  return path(regionCurves(scrap), { stroke: { colour: OXBLOOD, widthMm: HIDE_EDGE_MM } });
}

function numberOn(fonts: FontBook, number: number, middle: Point, roomMm: number): DrawingElement[] {
  const heightMm = Math.min(MOST_NUMBER_MM, Math.max(LEAST_NUMBER_MM, roomMm / 2));
  const sizeMm = heightMm / capitalHeightMm(fonts, 'bold', 1);
  const text = String(number);
  const half = { x: heightMm * RIM_SHARE * Math.max(1, text.length * 0.62), y: heightMm * RIM_SHARE };
  const plate = chain(
    [
      { x: middle.x - half.x, y: middle.y - half.y },
      { x: middle.x + half.x, y: middle.y - half.y },
      { x: middle.x + half.x, y: middle.y + half.y },
      { x: middle.x - half.x, y: middle.y + half.y },
    ],
    true,
    { fill: PAPER, opacity: 0.8 },
  );
  const at = { x: middle.x, y: middle.y + heightMm / 2 };
  return [plate, textLine(fonts, text, { at, sizeMm, face: 'bold', colour: INK, anchor: 'middle' })];
}
