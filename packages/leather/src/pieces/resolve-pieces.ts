import { findSelfCrossing, flattenCurve, roundPoint } from '@hidebound/geometry';
import { LeatherError } from '../leather-error.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { PieceSource, ResolvedArticle, ResolvedOrder, ResolvedPiece } from '../model/order.js';
import type { LayablePiece, PatternPiece, PatternPieces, Piece } from '../model/piece.js';
import { placeWords } from '../words/catalogue.js';
import { nearestName } from '../words/nearest.js';
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
  const wanted = `the piece "${orderPiece.name}" of the article "${article.name}"`;
  if (found.length === 0) {
    throw new LeatherError(
      'no-pieces',
      `${from.file}: no piece was found in this file, but ${wanted} is to come from it; it needs a closed cut line.`,
    );
  }
  const named = found.filter(({ piece }) => piece.name === from.piece);
  if (named.length > 1) {
    throw new LeatherError(
      'duplicate',
      `${from.file}: ${named.length} pieces are named "${from.piece}", so ${wanted} can't tell which is meant; give each its own name.`,
    );
  }
  const [only] = named;
  if (only !== undefined) return soundPiece(only, from.file, wanted);
  throw new LeatherError(
    'unknown-piece',
    `${from.file}: ${wanted} is to be "${from.piece}", which is not in this file${nearestName(
      from.piece,
      found.map(({ piece }) => piece.name),
    )}`,
  );
}

/** A pattern file may be read, and shown, with an outline that nobody could cut. */
function soundPiece({ piece, source }: PatternPiece, file: string, wanted: string): Piece {
  const crossing = findSelfCrossing(flattenCurve(piece.cut).slice(0, -1));
  if (crossing === undefined) return piece;
  const place = {
    file,
    ...(source.element === undefined ? {} : { at: source.element }),
    point: roundPoint(crossing.place),
  };
  throw new LeatherError(
    'bad-outline',
    `${placeWords(place)}: the cut line of "${piece.name}" crosses itself here, so ${wanted} can't be cut from it; pull the line apart in the drawing.`,
    place,
  );
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
  throw new LeatherError(
    'unknown-line',
    `The piece "${piece}" of the article "${article.name}" is sewn along its line "${line}", but has no stitch line of that name${nearestName(line, names)}`,
  );
}

function guessedArrow(article: ResolvedArticle, orderPiece: ResolvedPiece, piece: LayablePiece): Diagnostic {
  return {
    code: 'arrow-guessed',
    severity: 'warning',
    params: { article: article.name, piece: orderPiece.name, angleDeg: piece.arrowDeg },
    place: { at: orderPiece.name },
  };
}
