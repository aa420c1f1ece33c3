import type { G } from '@svgdotjs/svg.js';
import type { Box } from '@hidebound/geometry';
import type { App } from '../../../app/app.js';
import { drawPieceInto } from '../../../drawing/piece-layer.js';
import type { Stage } from '../../../drawing/stage.js';
import type { BoardPiece } from '../../../work/patterns-tasks.js';
import { benchOf, orderOf } from '../bench.js';
import { sizeOfPiece } from '../large/snap.js';
import { piecesOfArticle } from '../pieces-of.js';
import { layOutBoard } from './lay-out.js';
import type { BoardLayout, Cell } from './lay-out.js';

/** Height of the words on the board as seen, CSS pixels, and how wide a letter is against it. */
const TEXT_PX = 14;
const LETTER_SHARE = 0.56;
/** Larger words would take the room of the pieces. */
const MOST_TEXT_MM = 110;
/** What stands for a piece that can't be had, mm. */
const UNKNOWN = { widthMm: 90, heightMm: 60 } as const;
/** A name longer than this is cut short on the board. */
const LONGEST = 22;
/** On a stage narrower than this the board is as wide as the stage and is moved down with a finger, CSS pixels. */
const NARROW_PX = 600;
/** How many screens high it may become there. */
const NARROW_SCREENS = 2;

interface Shown {
  readonly article: number;
  readonly piece: number;
  readonly label: string;
  readonly board: BoardPiece | undefined;
  readonly size: { readonly widthMm: number; readonly heightMm: number };
}

/** All pieces of the order, laid out by articles, each once and true to the others. Gives back what to fit. */
export function drawBoard(app: App, stage: Stage, layer: G): Box | undefined {
  const order = orderOf(app);
  if (order === undefined) return undefined;
  const groups = order.articles.map((_, article) => shownOf(app, article));
  if (groups.flat().length === 0) return undefined;
  const { width, height } = stage.size.get();
  const [layout, textMm] = settled(groups, width, height);
  layout.groups.forEach(({ title, cells }, g) => {
    words(layer, titleOf(app, g), title, textMm * 1.15, 'board-title');
    cells.forEach((place, i) => drawShown(layer, groups[g]![i]!, place, textMm));
  });
  const { box } = layout;
  const firstScreen = ((box.maxX - box.minX) * height) / Math.max(1, width);
  return width < NARROW_PX ? { ...box, maxY: Math.min(box.maxY, box.minY + firstScreen) } : box;
}

function shownOf(app: App, article: number): Shown[] {
  const board = benchOf(app).board?.articles[article];
  return piecesOfArticle(app, article).map((piece, i) => {
    const found = board?.pieces[i];
    const known = found?.name === piece.name ? found : undefined;
    const name = piece.name.length > LONGEST ? `${piece.name.slice(0, LONGEST - 1)}…` : piece.name;
    return {
      article,
      piece: i,
      label: app.say('pieces.boardLabel', { name, n: piece.count }),
      board: known,
      size: known?.shape === undefined ? UNKNOWN : sizeOfPiece(known.shape.shape),
    };
  });
}

/** Words have one size on the screen, so the board and its scale follow from each other. */
function settled(groups: readonly Shown[][], width: number, height: number): [BoardLayout, number] {
  const screens = width < NARROW_PX ? NARROW_SCREENS : 1;
  const aspect = width / Math.max(1, height * screens);
  let textMm = 12;
  let layout: BoardLayout | undefined;
  for (let pass = 0; pass < 6; pass++) {
    const cells = groups.map((group) => group.map((shown) => cellOf(shown, textMm)));
    layout = layOutBoard(cells, { aspect, textMm });
    const { box } = layout;
    const scale = Math.min(
      (width - 48) / (box.maxX - box.minX),
      (height * screens - 48) / (box.maxY - box.minY),
    );
    const next = Math.min(TEXT_PX / Math.max(scale, 1e-3), MOST_TEXT_MM);
    if (Math.abs(next - textMm) < 0.02 * textMm) break;
    textMm = (textMm + next) / 2;
  }
  return [layout!, textMm];
}

function cellOf({ label, size }: Shown, textMm: number): Cell {
  return { ...size, labelMm: label.length * LETTER_SHARE * textMm };
}

function drawShown(
  layer: G,
  { article, piece, label, board, size }: Shown,
  { x, y }: { readonly x: number; readonly y: number },
  textMm: number,
): void {
  const state = board === undefined ? '' : board.refused !== undefined ? ' is-missing' : '';
  const group = layer
    .group()
    .attr({ class: `board-piece${state}`, 'data-kind': 'piece', 'data-id': `${article}/${piece}` });
  if (board?.shape === undefined) {
    group
      .rect(size.widthMm, size.heightMm)
      .move(x - size.widthMm / 2, y - size.heightMm / 2)
      .attr({ class: 'board-unknown' });
    words(group, board === undefined ? '…' : '?', { x, y: y + textMm / 3 }, textMm, 'board-name');
  } else {
    // A piece's own middle is that of the circle around it, not of its box.
    const inner = group.group();
    drawPieceInto(inner, board.shape);
    const box = boxOf(board);
    inner.attr({
      transform: `translate(${x - (box.minX + box.maxX) / 2} ${y - (box.minY + box.maxY) / 2})`,
    });
  }
  const isTroubled = board?.refused !== undefined || (board?.findings.length ?? 0) > 0;
  const below = { x, y: y + size.heightMm / 2 + 1.3 * textMm };
  words(group, isTroubled ? `! ${label}` : label, below, textMm, 'board-name');
}

function boxOf({ shape }: BoardPiece): Box {
  const ring = shape!.region.outer;
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

function titleOf(app: App, index: number): string {
  const article = orderOf(app)!.articles[index]!;
  const name = benchOf(app).board?.articles[index]?.name ?? ('file' in article ? article.file : article.name);
  return typeof article.sets === 'number' ? `${name} × ${app.measures().number(article.sets)}` : name;
}

export function words(
  layer: G,
  text: string,
  { x, y }: { readonly x: number; readonly y: number },
  sizeMm: number,
  style: string,
): void {
  layer.plain(text).attr({ x, y, 'font-size': sizeMm, class: style });
}
