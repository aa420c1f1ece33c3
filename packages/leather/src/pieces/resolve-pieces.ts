import { findSelfCrossing, flattenCurve, roundPoint } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { PieceSource, ResolvedArticle, ResolvedOrder, ResolvedPiece } from '../model/order.js';
import type { LayablePiece, PatternPiece, PatternPieces, Piece } from '../model/piece.js';
import { nearestParams } from '../words/nearest.js';
import type { OrderPieceParams } from '../words/order.js';
import { leatherErrorAs } from '../words/refuse.js';
import { drawDisc, drawRectangle, drawStrap } from './draw.js';
import { layablePiece } from './layable-piece.js';

/** Reads one pattern file of the order, by the name that the order gives it. */
export type ReadPattern = (file: string) => PatternPieces;

export interface ResolvedPieces {
  /** One for each piece of each article, in the order's order. */
  readonly pieces: readonly LayablePiece[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Every piece of the order made ready to be laid; each pattern file is read once. Throws `LeatherError` if a file
 * has no pieces, lacks one that the order names, or has two of that name, and if the cut line of a named one crosses
 * itself.
 */
export function resolvePieces(order: ResolvedOrder, readPattern: ReadPattern): ResolvedPieces {
  const files = new Map<string, readonly PatternPiece[]>();
  const piecesOf = (file: string): readonly PatternPiece[] => {
    const known = files.get(file) ?? readPattern(file).pieces;
    files.set(file, known);
    return known;
  };
  const pieces: LayablePiece[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const article of order.articles) {
    const sources = new Map(
      article.pieces.map((orderPiece) => [orderPiece.name, sourcePiece(article, orderPiece, piecesOf)]),
    );
    for (const orderPiece of article.pieces) {
      const piece = layablePiece({
        article: article.name,
        orderPiece,
        source: sources.get(orderPiece.name)!,
      });
      for (const { line, to } of orderPiece.seams) {
        checkSeamLine(article, orderPiece.name, line, sources);
        checkSeamLine(article, to.piece, to.line, sources);
      }
      pieces.push(piece);
      if (piece.arrowIsGuessed && orderPiece.direction.rule !== 'free') {
        diagnostics.push(guessedArrow(article, orderPiece, piece));
      }
    }
  }
  return { pieces, diagnostics };
}

function sourcePiece(
  article: ResolvedArticle,
  orderPiece: ResolvedPiece,
  piecesOf: (file: string) => readonly PatternPiece[],
): Piece {
  const { from, name } = orderPiece;
  switch (from.kind) {
    case 'strap':
      return drawStrap(name, from.strap);
    case 'rectangle':
      return drawRectangle(name, from);
    case 'disc':
      return drawDisc(name, from);
    case 'pattern':
      return patternPiece(article, orderPiece, from, piecesOf(from.file));
  }
}

function patternPiece(
  article: ResolvedArticle,
  orderPiece: ResolvedPiece,
  from: Extract<PieceSource, { kind: 'pattern' }>,
  found: readonly PatternPiece[],
): Piece {
  const who = { piece: orderPiece.name, article: article.name };
  const place = { file: from.file };
  if (found.length === 0) throw leatherErrorAs('no-pieces', 'pattern-without-pieces', who, place);
  const named = found.filter(({ piece }) => piece.name === from.piece);
  if (named.length > 1) {
    const params = { ...who, count: named.length, wanted: from.piece };
    throw leatherErrorAs('duplicate', 'pattern-name-twice', params, place);
  }
  const [only] = named;
  if (only !== undefined) return soundPiece(only, from.file, who);
  const near = nearestParams(
    from.piece,
    found.map(({ piece }) => piece.name),
  );
  throw leatherErrorAs(
    'unknown-piece',
    'pattern-piece-unknown',
    { ...who, wanted: from.piece, ...near },
    place,
  );
}

/** A pattern file may be read, and shown, with an outline that nobody could cut. */
function soundPiece({ piece, source }: PatternPiece, file: string, who: OrderPieceParams): Piece {
  const crossing = findSelfCrossing(flattenCurve(piece.cut).slice(0, -1));
  if (crossing === undefined) return piece;
  const place = {
    file,
    ...(source.element === undefined ? {} : { at: source.element }),
    point: roundPoint(crossing.place),
  };
  throw leatherErrorAs('bad-outline', 'pattern-outline-crosses', { ...who, wanted: piece.name }, place);
}

function checkSeamLine(
  article: ResolvedArticle,
  piece: string,
  line: string,
  sources: ReadonlyMap<string, Piece>,
): void {
  const lines = sources.get(piece)?.stitchLines ?? [];
  const names = lines.flatMap(({ name }) => (name === undefined ? [] : [name]));
  if (names.includes(line)) return;
  const who = { piece, article: article.name };
  throw leatherErrorAs('unknown-line', 'seam-line-unknown', { ...who, line, ...nearestParams(line, names) });
}

function guessedArrow(article: ResolvedArticle, orderPiece: ResolvedPiece, piece: LayablePiece): Diagnostic {
  return {
    code: 'arrow-guessed',
    severity: 'warning',
    params: { article: article.name, piece: orderPiece.name, angleDeg: piece.arrowDeg },
    place: { at: orderPiece.name },
  };
}
