import {
  applyAffine,
  composeAffine,
  regionBox,
  rotationDeg,
  scaling,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { cardPoints } from '@hidebound/leather';
import type { LayablePiece, SettingOut } from '@hidebound/leather';
import { path, regionCurves } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { directionArrow } from '../picture/direction-arrow.js';
import { roomiestPoint } from '../label/place-inside.js';
import type { PictureStyle } from '../picture/picture-style.js';
import { pieceKey } from '../picture/placed-pieces.js';
import { CUT_LINE_MM, INK, PIECE } from '../sheet/palette.js';
import type { PanelBlock, PanelRow, PanelStyle } from '../sheet/panel.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { markA, markB } from './setting-picture.js';

/** Cards stand side by side in so many letters' width, so many letters high. */
const CELL_LETTERS = 11;
const CARD_LETTERS = 7;
/** Kept between a card and its neighbours, as a share of its cell. */
const INSET = 0.1;
const ARROW_SHARE = 0.35;

/** A small picture of each card with its A and B, for marking them on the cards. */
export function cardKey(
  out: SettingOut,
  pieces: readonly LayablePiece[],
  fonts: FontBook,
  style: PanelStyle,
  picture: PictureStyle,
): PanelBlock {
  const cards = cardsOf(out, pieces);
  const perRow = Math.max(1, Math.floor(style.columnMm / (CELL_LETTERS * style.textMm)));
  const rows: PanelRow[] = [];
  for (let i = 0; i < cards.length; i += perRow) {
    rows.push(cardRow(cards.slice(i, i + perRow), perRow, fonts, style, picture));
  }
  return { title: 'Cards: mark A (dot) and B (ring) on both sides', rows, keepRows: 1 };
}

/** The pieces that are laid by a card, each once, in the order in which they are first cut. */
function cardsOf({ steps }: SettingOut, pieces: readonly LayablePiece[]): LayablePiece[] {
  const byKey = new Map(pieces.map((piece) => [pieceKey(piece), piece]));
  const settings = steps.flatMap((step) => {
    if (step.kind === 'piece') return [step.piece];
    return step.kind === 'rough cut' ? step.roughCut.pieces : [];
  });
  const keys = new Set(settings.filter(({ by }) => by.kind === 'card').map(({ copy }) => pieceKey(copy)));
  return [...keys].map((key) => byKey.get(key)!);
}

function cardRow(
  cards: readonly LayablePiece[],
  perRow: number,
  fonts: FontBook,
  style: PanelStyle,
  picture: PictureStyle,
): PanelRow {
  const heightMm = CARD_LETTERS * style.textMm;
  return {
    heightMm: heightMm + style.rowMm * 1.4,
    draw: (x, y, widthMm) => {
      const cell = widthMm / perRow;
      return cards.flatMap((card, i): DrawingElement[] => [
        ...drawCard(card, { x: x + i * cell, y, widthMm: cell, heightMm }, { fonts, style, picture }),
        textLine(fonts, fitText(fonts, 'narrow bold', style.textMm, card.piece, cell * (1 - INSET)), {
          at: { x: x + (i + 0.5) * cell, y: y + heightMm + style.rowMm * 0.8 },
          sizeMm: style.textMm,
          colour: INK,
          face: 'narrow bold',
          anchor: 'middle',
        }),
      ]);
    },
  };
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

interface CardDesk {
  readonly fonts: FontBook;
  readonly style: PanelStyle;
  readonly picture: PictureStyle;
}

/** The marks are larger than on the picture of the hide. */
const MARK_GROW = 1.3;
/** How far a letter stands from its mark, and half its height, in its size. */
const LETTER_AWAY = 0.75;
const CAPITAL_HALF = 0.36;

/** The card with its arrow to the right, as large as its cell holds. */
function drawCard(card: LayablePiece, cell: Cell, { fonts, style, picture }: CardDesk): DrawingElement[] {
  const { textMm } = style;
  const turned = rotationDeg(-card.arrowDeg);
  const own = regionBox(transformRegion(turned, card.region));
  const scale = Math.min(
    (cell.widthMm * (1 - 2 * INSET)) / (own.maxX - own.minX),
    (cell.heightMm * (1 - 2 * INSET)) / (own.maxY - own.minY),
  );
  const middle = { x: (own.minX + own.maxX) / 2, y: (own.minY + own.maxY) / 2 };
  const place = { x: cell.x + cell.widthMm / 2, y: cell.y + cell.heightMm / 2 };
  const map = composeAffine(
    translation(place.x - middle.x * scale, place.y - middle.y * scale),
    composeAffine(scaling(scale), turned),
  );
  const region = transformRegion(map, card.region);
  const { a, b } = cardPoints(card);
  const widthMm = (own.maxX - own.minX) * scale * ARROW_SHARE;
  const large = { ...picture, grow: picture.grow * MARK_GROW };
  const named = (letter: 'A' | 'B', at: Point): DrawingElement[] => [
    (letter === 'A' ? markA : markB)(at, large),
    textLine(fonts, letter, {
      // Outside the card, on the way from its middle.
      at: { x: at.x + Math.sign(at.x - place.x) * LETTER_AWAY * textMm, y: at.y + textMm * CAPITAL_HALF },
      sizeMm: textMm,
      colour: INK,
      face: 'narrow bold',
      anchor: 'middle',
    }),
  ];
  return [
    path(regionCurves(region), { fill: PIECE, stroke: { colour: INK, widthMm: CUT_LINE_MM } }),
    ...directionArrow(
      { center: roomiestPoint(region), widthMm, heightMm: 1, angleDeg: 0 },
      { x: 1, y: 0 },
      picture.grow,
    ),
    ...named('B', applyAffine(map, b)),
    ...named('A', applyAffine(map, a)),
  ];
}
