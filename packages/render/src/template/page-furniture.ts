import { composeAffine, rotationDeg, translation } from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import type { PageSide, Paper, SheetFrame } from '@hidebound/leather';
import { chain, circle, group, line, path } from '../drawing/build.js';
import type { DrawingElement, Stroke } from '../drawing/model.js';
import type { SeenFrom } from '../picture/hide-view.js';
import type { FontBook } from '../text/font-book.js';
import { capitalHeightMm, fitText, measureText, textLine } from '../text/measure-text.js';
import type { TextSetting } from '../text/measure-text.js';
import { cardPointAngle } from './card-points.js';
import { CHECK_BAR_HEIGHT_MM, checkBar } from './check-bar.js';
import { stitchHole } from './piece-holes.js';
import { BAND_TEXT_MM, BLACK, lineName, lineStroke } from './template-style.js';
import type { TemplateLine } from './template-style.js';
import { wrongScales } from './wrong-scales.js';

/** What a page says of itself, in the bands left of and below its window. */
export interface PageWords {
  readonly name: string;
  /** "page 5 of 61". */
  readonly counted: string;
  /** "layout 3f9a2c": the same on all pages of one layout. */
  readonly mark: string | undefined;
  readonly neighbours: Readonly<Partial<Record<PageSide, string>>>;
  /** "Bicycle goods, week 10, version 3, 2026-03-02; hide side-0231-a". */
  readonly subject: string;
  readonly side: SeenFrom;
  readonly isBridge: boolean;
  /** Whole pieces to be glued on card, not a part of something larger. */
  readonly isCard: boolean;
  /** Kinds of lines on the page, for its legend. */
  readonly lines: readonly TemplateLine[];
}

/** Width of the block at the right of the bottom band: the page's name with its neighbours, and the map. */
const NAME_BLOCK_MM = 23;
const MAP_MM = 24;
const GAP_MM = 2;

/** From the live edge to where the check bars begin: their "0 mm" is set around that. */
const BAR_INSET_MM = 3.5;
const BAR_DROP_MM = 1;

/** Baselines of the lines of words, from the band's top. */
const FIRST_ROW_MM = 18.6;
const ROW_MM = 3.35;

/** Where the map goes. */
export function mapBox({ bottomBand }: SheetFrame): Box {
  return {
    minX: bottomBand.maxX - MAP_MM,
    minY: bottomBand.minY + BAR_DROP_MM,
    maxX: bottomBand.maxX,
    maxY: bottomBand.maxY,
  };
}

/** Both check bars, and the words of the page; `hasMap` leaves room for the map. */
export function pageFurniture(
  fonts: FontBook,
  frame: SheetFrame,
  paper: Paper,
  words: PageWords,
  hasMap: boolean,
): DrawingElement[] {
  return [
    ...checkBars(fonts, frame, paper),
    ...bandRows(fonts, frame, words, hasMap),
    ...nameBlock(fonts, frame, words, hasMap),
  ];
}

function checkBars(fonts: FontBook, frame: SheetFrame, paper: Paper): DrawingElement[] {
  const bar = checkBar(fonts, wrongScales(paper));
  const { leftBand, bottomBand } = frame;
  const level = translation(bottomBand.minX + BAR_INSET_MM, bottomBand.minY + BAR_DROP_MM);
  const upright = composeAffine(translation(leftBand.minX, leftBand.maxY - BAR_INSET_MM), rotationDeg(-90));
  return [
    group('check bar along', [bar], { transform: level }),
    group('check bar up', [bar], { transform: upright }),
  ];
}

/** Rows of words between the level bar and the sheet's margin. */
function bandRows(fonts: FontBook, frame: SheetFrame, words: PageWords, hasMap: boolean): DrawingElement[] {
  const { bottomBand } = frame;
  const right = bottomBand.maxX - NAME_BLOCK_MM - GAP_MM - (hasMap ? MAP_MM + GAP_MM : 0);
  const row = (i: number, runs: readonly Run[]): DrawingElement[] =>
    runsOfText(
      fonts,
      { minX: bottomBand.minX, maxX: right },
      bottomBand.minY + FIRST_ROW_MM + i * ROW_MM,
      runs,
    );
  return [
    ...row(0, [
      {
        text: 'Hold a rule to both bars: from 0, its 100 mm must meet the end of the bar.',
        face: 'narrow bold',
      },
    ]),
    ...row(1, [
      { text: 'If not, cut nothing by this page: print again at 100 %, “actual size”, without fitting.' },
    ]),
    ...row(2, [{ text: joinWords(words) }]),
    ...row(3, [{ text: sideWords(words.side), face: 'narrow bold' }, { text: words.subject }]),
    ...legendRow(
      fonts,
      { minX: bottomBand.minX, maxX: right + NAME_BLOCK_MM },
      bottomBand.minY + FIRST_ROW_MM + 4 * ROW_MM,
      words,
    ),
  ];
}

interface Run {
  readonly text: string;
  readonly face?: 'narrow' | 'narrow bold';
}

/** Words of several faces one after the other; what finds no room is cut short. */
function runsOfText(
  fonts: FontBook,
  span: { readonly minX: number; readonly maxX: number },
  y: number,
  runs: readonly Run[],
): DrawingElement[] {
  const elements: DrawingElement[] = [];
  let x = span.minX;
  for (const run of runs) {
    if (run.text === '') continue;
    const face = run.face ?? 'narrow';
    const text = fitText(fonts, face, BAND_TEXT_MM, run.text, Math.max(1, span.maxX - x));
    elements.push(textLine(fonts, text, { at: { x, y }, sizeMm: BAND_TEXT_MM, colour: BLACK, face }));
    x += measureText(fonts, face, BAND_TEXT_MM, text).widthMm + BAND_TEXT_MM;
  }
  return elements;
}

/** Said on every page: a drawing that is mirrored without a word spoils leather. */
function sideWords(side: SeenFrom): string {
  return side === 'grain' ? 'Seen from the GRAIN side.' : 'Seen from the FLESH side: all is mirrored.';
}

function joinWords({ neighbours, isBridge, isCard }: PageWords): string {
  if (isCard) return 'Glue on card, cut out along the cut line, and prick the marks through.';
  const bridge = isBridge ? 'Nothing to cut here; this page holds its neighbours together. ' : '';
  const edges = [
    ...(neighbours.right === undefined ? [] : ['right']),
    ...(neighbours.above === undefined ? [] : ['upper']),
  ];
  if (edges.length > 0) {
    return `${bridge}Trim the ${edges.join(' and ')} edge at the dots; lay it on the next page so that each square is whole.`;
  }
  if (neighbours.left === undefined && neighbours.below === undefined) return bridge;
  return `${bridge}Other pages are laid on this one so that each square is whole.`;
}

/** Long enough for one run of every line's dashes. */
const SWATCH_MM = 10;

/** What the lines on this page are, each with a length of it. */
function legendRow(
  fonts: FontBook,
  span: { readonly minX: number; readonly maxX: number },
  y: number,
  { lines }: PageWords,
): DrawingElement[] {
  const elements: DrawingElement[] = [];
  let x = span.minX;
  for (const kind of lines) {
    const name = lineName(kind);
    const width = measureText(fonts, 'narrow', BAND_TEXT_MM, name).widthMm;
    if (x + SWATCH_MM + 1 + width > span.maxX) break;
    const middle = y - BAND_TEXT_MM * 0.3;
    elements.push(
      ...swatch(kind, { x, y: middle }),
      textLine(fonts, name, {
        at: { x: x + SWATCH_MM + 1, y },
        sizeMm: BAND_TEXT_MM,
        colour: BLACK,
        face: 'narrow',
      }),
    );
    x += SWATCH_MM + 1 + width + BAND_TEXT_MM;
  }
  return elements;
}

/** A length of the line; of what is no line, one of it. */
function swatch(kind: TemplateLine, at: Point): DrawingElement[] {
  const stroke = swatchStroke(kind);
  const middle = { x: at.x + SWATCH_MM / 2, y: at.y };
  if (kind === 'hole') return [circle(middle, 1, { stroke })];
  if (kind === 'stitch hole') return [path(stitchHole(middle), { stroke })];
  if (kind === 'card point')
    return [chain(cardPointAngle(middle, { x: 1, y: 0 }, CARD_POINT_SWATCH_MM), false, { stroke })];
  return [line(at, { x: at.x + SWATCH_MM, y: at.y }, stroke)];
}

/** Sides of the angle that marks a card's point, small enough for a line of text. */
const CARD_POINT_SWATCH_MM = 3;

/** The dashes reduced, so that a short length shows them. */
function swatchStroke(kind: TemplateLine): Stroke {
  const stroke = lineStroke(kind);
  return stroke.dashMm === undefined
    ? stroke
    : { ...stroke, dashMm: stroke.dashMm.map((each) => each * DASH_SHARE) };
}

const DASH_SHARE = 0.65;

const NAME_MM = 8.5;
const NEIGHBOUR_MM = 3.2;

/** The page's name with its neighbours' names around it, as they lie. */
function nameBlock(fonts: FontBook, frame: SheetFrame, words: PageWords, hasMap: boolean): DrawingElement[] {
  const { bottomBand } = frame;
  const right = bottomBand.maxX - (hasMap ? MAP_MM + GAP_MM : 0);
  const x = right - NAME_BLOCK_MM / 2;
  const y = bottomBand.minY + CHECK_BAR_HEIGHT_MM + 0.6;
  const sizeMm = nameSizeMm(fonts, words);
  const half = capitalHeightMm(fonts, 'bold', sizeMm) / 2;
  const set = (text: string | undefined, setting: Omit<TextSetting, 'colour'>): DrawingElement[] =>
    text === undefined ? [] : [textLine(fonts, text, { colour: BLACK, face: 'narrow', ...setting })];
  const small = { sizeMm: NEIGHBOUR_MM, anchor: 'middle' } as const;
  const middle = y + NEIGHBOUR_MM * 0.36;
  const [left, beside, above, below] = (['left', 'right', 'above', 'below'] as const).map((each) =>
    shortName(words.neighbours[each]),
  );
  return [
    ...set(words.name, { at: { x, y: y + half }, sizeMm, anchor: 'middle', face: 'bold' }),
    ...set(above, { ...small, at: { x, y: y - half - 2 } }),
    ...set(below, { ...small, at: { x, y: y + half + 2 + NEIGHBOUR_MM * 0.73 } }),
    ...set(left, { ...small, at: { x: right - NAME_BLOCK_MM, y: middle }, anchor: 'start' }),
    ...set(beside, { ...small, at: { x: right, y: middle }, anchor: 'end' }),
    ...set(words.counted, {
      at: { x, y: bottomBand.minY + FIRST_ROW_MM + 3 * ROW_MM },
      sizeMm: BAND_TEXT_MM,
      anchor: 'middle',
    }),
    ...set(words.mark, {
      at: { x, y: bottomBand.minY + FIRST_ROW_MM + 4 * ROW_MM },
      sizeMm: BAND_TEXT_MM,
      anchor: 'middle',
    }),
  ];
}

/** Neighbours are of the same whole: "2/B1" is B1 beside "2/A1". */
function shortName(name: string | undefined): string | undefined {
  return name?.slice(name.indexOf('/') + 1);
}

/** Between the name and the names beside it. */
const NAME_AIR_MM = 1.2;

/** As large as it may be between its neighbours' names. */
function nameSizeMm(fonts: FontBook, { name, neighbours }: PageWords): number {
  const widthOf = (text?: string): number =>
    measureText(fonts, 'narrow', NEIGHBOUR_MM, shortName(text) ?? '').widthMm;
  const beside = Math.max(widthOf(neighbours.left), widthOf(neighbours.right));
  const room = NAME_BLOCK_MM - 2 * (beside + NAME_AIR_MM);
  const { widthMm } = measureText(fonts, 'bold', NAME_MM, name);
  return Math.min(NAME_MM, (NAME_MM * room) / widthMm);
}
