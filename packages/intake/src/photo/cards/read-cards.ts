import { distanceBetween, ringBox } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import type { DirectionArrow, MarkLine, PatternPiece, Piece } from '@hidebound/leather';
import { IntakeError } from '../../error.js';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import { readingNumbers } from '../../pieces/reading-order.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Vision } from '../vision/vision.js';
import { cardShape } from './card-piece.js';
import type { CardShape } from './card-piece.js';
import { findCards } from './find-cards.js';
import type { RoughCard } from './find-cards.js';
import { findGround, groundFor } from './ground.js';
import { drawnMarks } from './ink/drawn-marks.js';
import type { DrawnMarks, DrawnRole } from './ink/drawn-marks.js';
import { tellMarks } from './ink/tell-marks.js';
import type { NamedMarks } from './ink/tell-marks.js';
import { COARSE_PX_PER_MM, DRAWN_PX_PER_MM } from './limits.js';
import { reducePicture } from './reduce-picture.js';

export interface CardOptions {
  /** Of the pieces, in reading order; the others are called "piece 1" and so on. */
  readonly names?: readonly string[];
  /** Reference sheets and whatever else lies there and is no card; floor mm. */
  readonly papers?: readonly Ring[];
  /** What lines drawn on the cards mean, where the guess is wrong: solid ones (fold), and dashes or rows of dots (stitch). */
  readonly solid?: DrawnRole;
  readonly dashed?: DrawnRole;
}

/**
 * Cards and paper templates on a plain ground → pattern pieces in reading order, in floor mm. Rejects with
 * `no-cards-found` where there are none.
 */
export function readCards(
  picture: StraightPicture,
  options: CardOptions,
  vision: Vision,
  findings: Findings,
): PatternPiece[] {
  const coarse = reducePicture(picture, COARSE_PX_PER_MM);
  const ground = findGround(coarse);
  const { cards, cutOff } = findCards(coarse, ground, options.papers ?? [], vision);
  for (const point of cutOff) tell(findings, 'warning', 'card-cut-off', {}, { point });
  const drawn = reducePicture(picture, DRAWN_PX_PER_MM);
  const told: NamedMarks[] = [];
  const fine = { picture, ground: groundFor(ground, picture) };
  const pieces = inReadingOrder(cards).flatMap((card, i): PatternPiece[] => {
    const name = options.names?.[i] ?? `piece ${i + 1}`;
    const shape = cardShape(card, { ...fine, colour: card.colour }, name, findings);
    if (shape === undefined) return [];
    const marks = drawnMarks(drawn, shape, vision);
    told.push({ name, marks });
    const source = { file: findings.file, element: `card ${i + 1}` };
    return [{ piece: { name, ...shape, ...linesOf(marks, options) }, source }];
  });
  if (pieces.length === 0) throw new IntakeError('no-cards-found', {}, { file: findings.file });
  tellMarks(told, options, findings);
  tellNames(options.names, pieces.length, findings);
  return pieces;
}

/** Of several arrows the longest is meant. */
function linesOf(
  marks: DrawnMarks,
  { solid = 'fold', dashed = 'stitch' }: CardOptions,
): Omit<Piece, keyof CardShape | 'name'> {
  const as = (role: DrawnRole): MarkLine[] => [
    ...(solid === role ? marks.solid.map((curve) => ({ curve })) : []),
    ...(dashed === role ? marks.dashed.map((curve) => ({ curve })) : []),
  ];
  const length = ({ from, to }: DirectionArrow) => distanceBetween(from, to);
  const [longest] = [...marks.arrows].sort((a, b) => length(b) - length(a));
  return {
    notches: marks.notches,
    stitchLines: as('stitch'),
    foldLines: as('fold'),
    skiveLines: as('skive'),
    cementLines: as('cement'),
    face: [],
    ...(longest === undefined ? {} : { direction: longest }),
  };
}

function inReadingOrder(cards: readonly RoughCard[]): RoughCard[] {
  const numbers = readingNumbers(cards.map(({ outline }) => ringBox(outline)));
  const ordered: RoughCard[] = [];
  cards.forEach((card, i) => (ordered[numbers[i]! - 1] = card));
  return ordered;
}

function tellNames(names: readonly string[] | undefined, pieces: number, findings: Findings): void {
  if (names === undefined || names.length <= pieces) return;
  tell(findings, 'warning', 'names-left-over', { names: names.length, pieces });
}
