import { regionBox } from '@hidebound/geometry';
import type { Point, Polyline, Region } from '@hidebound/geometry';
import type { DrawingElement } from '../drawing/model.js';
import { growLabelBox, segmentBox } from '../label/label-box.js';
import type { LabelBox } from '../label/label-box.js';
import { placeInside, roomiestPoint } from '../label/place-inside.js';
import { setBlock } from '../label/text-block.js';
import type { BlockLine, TextBlock } from '../label/text-block.js';
import { longAxis, readableDeg } from '../picture/long-axis.js';
import { arrowAngleDeg } from '../picture/direction-arrow.js';
import type { FontBook } from '../text/font-book.js';
import { capitalHeightMm, measureText, wrapText } from '../text/measure-text.js';
import { TEMPLATE_ARROWS_MM, TEMPLATE_ARROW_BREADTH_MM, templateArrow } from './template-arrow.js';
import type { SceneShape, ShapeWords } from './template-scene.js';
import { BLACK, FACT_TEXT_MM, NAME_TEXT_MM } from './template-style.js';

/** Kept free between text and a line. */
const PADDING_MM = 1.2;

/** A shape so many times as long as it is broad carries its words along it. */
const LONG_FROM = 2.4;

/** Facts are broken into lines of these widths, one after the other, until they fit. */
const FACT_WIDTHS_MM: readonly number[] = [110, 75, 50, 160, 240, 400];

/** What stands in a shape: its words, its arrow, or both. */
export interface InsideWords {
  readonly text?: { readonly block: TextBlock; readonly box: LabelBox };
  readonly arrow?: LabelBox;
}

export interface RoomForWords {
  /** Where words may stand: the shape, or its part on a page. */
  readonly region: Region;
  readonly avoid: readonly LabelBox[];
}

/** Lines within a shape as thin boxes that text keeps clear of. */
export function lineBoxes(lines: readonly Polyline[]): LabelBox[] {
  return lines.flatMap((points) =>
    points.slice(1).map((to, i) => growLabelBox(segmentBox(points[i]!, to), PADDING_MM / 2)),
  );
}

/** From one baseline to the next, as a share of the letters' size. */
const LINE_SPACING = 1.3;
/** What hangs below the last baseline, as a share of the letters' size. */
const DESCENT = 0.24;

/** Lines of text at even distances, whatever letters they hold. */
export function evenBlock(fonts: FontBook, lines: readonly BlockLine[]): TextBlock {
  let widthMm = 0;
  let y = 0;
  const baselines: number[] = [];
  lines.forEach(({ face, sizeMm, text }, i) => {
    widthMm = Math.max(widthMm, measureText(fonts, face, sizeMm, text).widthMm);
    const before = lines[i - 1];
    y +=
      before === undefined
        ? capitalHeightMm(fonts, face, sizeMm)
        : (LINE_SPACING * (before.sizeMm + sizeMm)) / 2;
    baselines.push(y);
  });
  const last = lines[lines.length - 1]!;
  return { lines, widthMm, heightMm: y + DESCENT * last.sizeMm, baselines };
}

/** Words and arrow in the room: all the words on the shape's main part, otherwise its short name. */
export function wordsInside(
  fonts: FontBook,
  shape: SceneShape,
  room: RoomForWords,
  isMain: boolean,
): InsideWords {
  const near = roomiestPoint(room.region);
  const options = isMain ? allWords(fonts, shape.words) : shortWords(shape.words);
  for (const lines of options) {
    const block = evenBlock(fonts, lines);
    for (const angleDeg of labelAngles(shape.region)) {
      const box = placeInside(room.region, { ...padded(block), angleDeg, near, avoid: room.avoid });
      if (box === undefined) continue;
      const arrow = arrowInside(shape, room, [...room.avoid, growLabelBox(box, PADDING_MM)], box.center);
      return { text: { block, box }, ...(arrow === undefined ? {} : { arrow }) };
    }
  }
  const arrow = isMain ? arrowInside(shape, room, room.avoid, near) : undefined;
  return arrow === undefined ? {} : { arrow };
}

function arrowInside(
  { arrow }: SceneShape,
  { region }: RoomForWords,
  avoid: readonly LabelBox[],
  near: Point,
): LabelBox | undefined {
  if (arrow === undefined) return undefined;
  const angleDeg = arrowAngleDeg(arrow);
  for (const widthMm of TEMPLATE_ARROWS_MM) {
    const size = { widthMm, heightMm: TEMPLATE_ARROW_BREADTH_MM, angleDeg };
    const box = placeInside(region, { ...size, near, avoid });
    if (box !== undefined) return box;
  }
  return undefined;
}

/** Every word, in ever other lines; the title is set smaller only where nothing else fits. */
function allWords(fonts: FontBook, words: ShapeWords): BlockLine[][] {
  const title = (sizeMm: number): BlockLine => bold(words.title, sizeMm);
  const joined = words.facts.join(', ');
  const broken = FACT_WIDTHS_MM.map((width) =>
    wrapText(fonts, 'narrow', FACT_TEXT_MM, joined, width).map(plain),
  );
  return [
    [title(NAME_TEXT_MM), ...words.facts.map(plain)],
    ...broken.map((lines) => [title(NAME_TEXT_MM), ...lines]),
    ...broken.map((lines) => [title(FACT_TEXT_MM), ...lines]),
  ];
}

function shortWords({ short }: ShapeWords): BlockLine[][] {
  return [[bold(short, NAME_TEXT_MM)], [bold(short, FACT_TEXT_MM)]];
}

function bold(text: string, sizeMm: number): BlockLine {
  return { text, face: 'narrow bold', sizeMm, colour: BLACK };
}

function plain(text: string): BlockLine {
  return { text, face: 'narrow', sizeMm: FACT_TEXT_MM, colour: BLACK };
}

function labelAngles(region: Region): number[] {
  const axis = longAxis(region);
  const along = readableDeg(axis.angleDeg);
  const angles = axis.slenderness >= LONG_FROM ? [along, 0, -90] : [0, along, -90];
  return angles.filter((angle, i) => angles.indexOf(angle) === i);
}

function padded(block: TextBlock): { readonly widthMm: number; readonly heightMm: number } {
  return { widthMm: block.widthMm + 2 * PADDING_MM, heightMm: block.heightMm + 2 * PADDING_MM };
}

/** The words that stand beside a shape: as many lines as on its main part, or the short name. */
export function wordsBeside(fonts: FontBook, words: ShapeWords, isMain: boolean): TextBlock {
  const lines = isMain ? [bold(words.title, NAME_TEXT_MM), ...words.facts.map(plain)] : shortWords(words)[1]!;
  return evenBlock(fonts, lines);
}

/** Draws what stands inside. */
export function drawInside(fonts: FontBook, shape: SceneShape, inside: InsideWords): DrawingElement[] {
  return [
    ...(inside.arrow === undefined || shape.arrow === undefined
      ? []
      : templateArrow(inside.arrow, shape.arrow)),
    ...(inside.text === undefined ? [] : setBlock(fonts, inside.text.block, inside.text.box)),
  ];
}

/** The largest of some regions by its box; undefined if there is none. */
export function largestByBox(regions: readonly Region[]): Region | undefined {
  const size = (region: Region): number => {
    const box = regionBox(region);
    return (box.maxX - box.minX) * (box.maxY - box.minY);
  };
  return [...regions].sort((a, b) => size(b) - size(a))[0];
}
