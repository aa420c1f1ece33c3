import { translation } from '@hidebound/geometry';
import type { Affine, Box, Point } from '@hidebound/geometry';
import { packCards, sheetFrame } from '@hidebound/leather';
import type { CardPacking, Orientation, PackedCard, PageSettings, SheetFrame } from '@hidebound/leather';
import { group, line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { setBlock } from '../label/text-block.js';
import type { TextBlock } from '../label/text-block.js';
import type { FontBook } from '../text/font-book.js';
import type { CardScene, TemplateCard } from './card-scene.js';
import { drawInside, lineBoxes, wordsBeside, wordsInside } from './shape-labels.js';
import type { InsideWords } from './shape-labels.js';
import type { SceneLine } from './template-scene.js';
import { BLACK } from './template-style.js';
import { drawLines } from './tile-page.js';

/** A card drawn one way round, with its words, ready to be put somewhere. */
interface DrawnCard {
  readonly scene: CardScene;
  readonly inside: InsideWords;
  /** Words that found no room inside, below the shape. */
  readonly below?: TextBlock;
  /** All that it takes up, in its own frame. */
  readonly box: Box;
}

/** Between the cards, and from the window's edge. */
const CARD_GAP_MM = 5;
const WINDOW_AIR_MM = 3;
const LEADER_MM = 3;

/** One page of cards. */
export interface CardPage {
  readonly frame: SheetFrame;
  readonly elements: readonly DrawingElement[];
  readonly lines: readonly SceneLine[];
}

/**
 * Puts cards that fit on a sheet as a whole on as few pages as it can, standing or turned by a quarter, on upright or
 * lying sheets; those that are too large are given back.
 */
export function cardPages(
  fonts: FontBook,
  settings: PageSettings,
  cards: readonly TemplateCard[],
): { readonly pages: readonly CardPage[]; readonly tooLarge: readonly TemplateCard[] } {
  const drawn = new Map(
    cards.map((card) => [card.id, new Map([0, 90].map((turn) => [turn, drawCard(fonts, card.draw(turn))]))]),
  );
  const wanted = cards.map(({ id }) => ({
    id,
    sizes: [...drawn.get(id)!].map(([turnDeg, { box }]) => ({
      turnDeg,
      widthMm: box.maxX - box.minX,
      heightMm: box.maxY - box.minY,
    })),
  }));
  const tries = framesOf(settings, wanted).map((frame) => ({
    frame,
    packing: packCards(wanted, roomOf(frame), CARD_GAP_MM),
  }));
  const best = tries.reduce((a, b) => (isBetter(b.packing, a.packing) ? b : a));
  const large = new Set(best.packing.tooLarge.map(({ id }) => id));
  return {
    pages: Array.from({ length: best.packing.pages }, (_, page) =>
      toPage(
        fonts,
        best.frame,
        best.packing.packed.filter((card) => card.page === page),
        (card) => drawn.get(card.id)!.get(card.turnDeg)!,
      ),
    ),
    tooLarge: cards.filter(({ id }) => large.has(id)),
  };
}

function isBetter(a: CardPacking, b: CardPacking): boolean {
  if (a.tooLarge.length !== b.tooLarge.length) return a.tooLarge.length < b.tooLarge.length;
  return a.pages < b.pages;
}

function roomOf({ window }: SheetFrame): { readonly widthMm: number; readonly heightMm: number } {
  return {
    widthMm: window.maxX - window.minX - 2 * WINDOW_AIR_MM,
    heightMm: window.maxY - window.minY - 2 * WINDOW_AIR_MM,
  };
}

/** Sheets both ways round; of a roll, a page as long as the longest card. */
function framesOf(
  settings: PageSettings,
  cards: readonly { readonly sizes: readonly { readonly widthMm: number; readonly heightMm: number }[] }[],
): SheetFrame[] {
  const longest = Math.max(...cards.flatMap(({ sizes }) => sizes.map((each) => each.heightMm)), 0);
  const content = { widthMm: longest + 2 * WINDOW_AIR_MM, heightMm: longest + 2 * WINDOW_AIR_MM };
  return (['upright', 'lying'] as readonly Orientation[]).flatMap(
    (each) => sheetFrame(settings, each, content) ?? [],
  );
}

function drawCard(fonts: FontBook, scene: CardScene): DrawnCard {
  const { shape } = scene;
  const room = { region: shape.region, avoid: lineBoxes(shape.inner) };
  const inside = wordsInside(fonts, shape, room, true);
  if (inside.text !== undefined) return { scene, inside, box: shape.box };
  const below = wordsBeside(fonts, shape.words, true);
  const { minX, minY, maxX, maxY } = shape.box;
  const box = {
    minX,
    minY,
    maxX: Math.max(maxX, minX + below.widthMm),
    maxY: maxY + LEADER_MM + below.heightMm + 1,
  };
  return { scene, inside, below, box };
}

function toPage(
  fonts: FontBook,
  frame: SheetFrame,
  packed: readonly PackedCard[],
  drawnOf: (card: PackedCard) => DrawnCard,
): CardPage {
  const placed = packed.map((card) => {
    const drawn = drawnOf(card);
    const dx = frame.window.minX + WINDOW_AIR_MM + card.x - drawn.box.minX;
    const dy = frame.window.minY + WINDOW_AIR_MM + card.y - drawn.box.minY;
    return { drawn, move: translation(dx, dy) };
  });
  return {
    frame,
    elements: placed.map(({ drawn, move }) => cardGroup(fonts, drawn, move)),
    lines: placed.flatMap(({ drawn }) => drawn.scene.lines),
  };
}

function cardGroup(fonts: FontBook, { scene, inside, below }: DrawnCard, transform: Affine): DrawingElement {
  const { shape, lines } = scene;
  return group(
    shape.name,
    [
      ...drawLines(lines),
      ...drawInside(fonts, shape, inside),
      ...(below === undefined ? [] : wordsBelow(fonts, shape.box, below)),
    ],
    { transform },
  );
}

/** Words under the shape, and a short line up to it. */
function wordsBelow(fonts: FontBook, box: Box, block: TextBlock): DrawingElement[] {
  const top: Point = {
    x: box.minX + Math.min(block.widthMm, box.maxX - box.minX) / 2,
    y: box.maxY + LEADER_MM - 0.6,
  };
  const center = { x: box.minX + block.widthMm / 2, y: box.maxY + LEADER_MM + block.heightMm / 2 };
  return [
    line(top, { x: top.x, y: top.y - LEADER_MM }, { colour: BLACK, widthMm: 0.2 }),
    ...setBlock(fonts, block, {
      center,
      widthMm: block.widthMm,
      heightMm: block.heightMm,
      angleDeg: 0,
    }),
  ];
}
