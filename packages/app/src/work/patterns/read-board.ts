import type { PatternRead } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  isArticleReference,
  leatherError,
  resolveOrder,
  resolvePieces,
} from '@hidebound/leather';
import type {
  Article,
  Order,
  OrderArticle,
  OrderFile,
  OrderPiece,
  ResolvedPiece,
  Workshop,
} from '@hidebound/leather';
import { pathBeside } from '../../job/job.js';
import { patternOf, readOrder, workshopOf } from '../desk/read-order.js';
import type { OrderInput, ReadPatternFile } from '../desk/read-order.js';
import { toldError } from '../../words/told.js';
import type { Told } from '../../words/told.js';
import type { Board, BoardArticle, BoardPiece, PatternFinding } from '../patterns-tasks.js';
import { findingOf } from './show-pattern.js';

/**
 * All pieces of an order, each by itself: one that can't be had takes nothing from the others, and says why. The order
 * as a whole is read as it is before a layout, so that what contradicts itself is told too.
 */
export async function readBoard(input: OrderInput, read: ReadPatternFile): Promise<Board> {
  const file = input.files.get(input.path);
  if (file?.kind !== 'order') throw leatherError('missing-file', { file: input.path });
  const context: Context = { input, order: file.order, workshop: soundWorkshop(input), read };
  const articles: BoardArticle[] = [];
  for (const article of file.order.articles) articles.push(await boardArticle(context, article));
  const refused = await refusalOf(input, read);
  return { articles, ...(refused === undefined ? {} : { refused }) };
}

interface Context {
  readonly input: OrderInput;
  readonly order: OrderFile;
  readonly workshop: Workshop;
  readonly read: ReadPatternFile;
}

async function refusalOf(input: OrderInput, read: ReadPatternFile): Promise<Told | undefined> {
  try {
    await readOrder(input, read);
    return undefined;
  } catch (error) {
    return toldError(error);
  }
}

/** A workshop file that can't be read is told of with the whole order. */
function soundWorkshop({ files }: OrderInput): Workshop {
  try {
    return workshopOf(files);
  } catch {
    return DEFAULT_WORKSHOP;
  }
}

async function boardArticle(context: Context, written: OrderFile['articles'][number]): Promise<BoardArticle> {
  const article = articleOf(context, written);
  if (article === undefined) {
    const { file } = written as { readonly file: string };
    return { name: file, refused: toldError(leatherError('missing-file', { file })), pieces: [] };
  }
  const pieces: BoardPiece[] = [];
  for (const piece of article.pieces) pieces.push(await boardPiece(context, article, piece));
  return { name: article.name, pieces };
}

function articleOf({ input }: Context, written: OrderFile['articles'][number]): OrderArticle | undefined {
  if (!isArticleReference(written)) return written;
  const named = input.files.get(pathBeside(input.path, written.file));
  if (named?.kind !== 'article') return undefined;
  const { file: _file, ...demand } = written;
  const { leathers: _leathers, lastYield: _yield, notes: _notes, ...body }: Article = named.article;
  return { ...body, ...demand };
}

async function boardPiece(context: Context, article: OrderArticle, piece: OrderPiece): Promise<BoardPiece> {
  const { name } = piece;
  try {
    const resolved = resolvedPiece(context, article, piece);
    const pattern = await patternOfPiece(context, piece);
    const { pieces } = resolvePieces(onePieceOrder(context, article, resolved), () => ({
      pieces: pattern?.pieces ?? [],
    }));
    return { name, resolved, shape: pieces[0]!, findings: findingsOf(pattern, piece) };
  } catch (error) {
    return { name, refused: toldError(error), findings: [] };
  }
}

/** Seams lead to other pieces; they are looked at with the order as a whole. */
function resolvedPiece(context: Context, article: OrderArticle, piece: OrderPiece): ResolvedPiece {
  return resolveOrder(onePieceOrder(context, article, piece), context.workshop, { hidesLater: true })
    .articles[0]!.pieces[0]!;
}

function onePieceOrder<P extends OrderPiece>({ order }: Context, article: OrderArticle, piece: P) {
  const { stitch: _stitch, ...rest } = article;
  const { stitch: _pieceStitch, ...bare } = piece;
  const alone = { ...rest, beside: [], pieces: [{ ...bare, seams: [] } as unknown as P] };
  return { ...order, articles: [alone], cutting: ANY_CUTTING, keepMm: NO_KEEP } satisfies Order;
}

const ANY_CUTTING: Order['cutting'] = { method: '-', gapMm: 0, edgeMm: 0, voidMm: 0, kerfMm: 0 };
const NO_KEEP = [1, 1] as const;

async function patternOfPiece(
  { input, order, read }: Context,
  { from }: OrderPiece,
): Promise<PatternRead | undefined> {
  return from.kind === 'pattern' ? patternOf(from.file, order, input, read) : undefined;
}

/** What the pattern says of this piece and is more than a note. */
function findingsOf(pattern: PatternRead | undefined, { from }: OrderPiece): readonly PatternFinding[] {
  if (pattern === undefined || from.kind !== 'pattern') return [];
  return pattern.diagnostics
    .filter(({ severity }) => severity !== 'note')
    .map((each) => findingOf(each, pattern))
    .filter(({ pieces }) => pieces.includes(from.piece));
}
