import {
  applyAffine,
  curveFromPolyline,
  enclosingCircle,
  intersectRegions,
  regionArea,
  roundPoint,
  translation,
  MIRROR_X,
} from '@hidebound/geometry';
import type { Curve, Point, Region } from '@hidebound/geometry';
import { addAllowance, isArticleReference, leatherError, mirrorPiece, pieceRegion } from '@hidebound/leather';
import type { OrderPiece, Piece } from '@hidebound/leather';
import { writePatternSvg } from '@hidebound/render';
import { patternOf } from '../desk/read-order.js';
import type { OrderInput, ReadPatternFile } from '../desk/read-order.js';
import type { PaintInput } from '../patterns-tasks.js';

/** Less is a slip of the hand, no face, mm². */
const LEAST_FACE_MM2 = 4;

/**
 * The pattern of one piece with a face painted on it, as a file of its own. What was painted beyond the cut line is cut
 * off there; lines that cross each other become what they enclose. Throws where nothing is left.
 */
export async function paintFace(
  input: OrderInput,
  read: ReadPatternFile,
  { article, piece: index, rings, path }: PaintInput,
): Promise<{ readonly name: string; readonly svg: Uint8Array }> {
  const file = input.files.get(path);
  const written = file?.kind === 'order' ? file.order.articles[article] : undefined;
  if (file?.kind !== 'order' || written === undefined || isArticleReference(written))
    throw leatherError('missing-file', { file: path });
  const piece = written.pieces[index]!;
  const { from } = piece;
  if (from.kind !== 'pattern') throw leatherError('missing-file', { file: path });
  const pattern = await patternOf(from.file, file.order, input, read);
  const found = pattern.pieces.find((each) => each.piece.name === from.piece);
  if (found === undefined) throw leatherError('missing-file', { file: from.file });
  const face = faceCurves(found.piece, piece, rings);
  const painted = { ...found, piece: { ...found.piece, face } };
  const svg = writePatternSvg([painted], { title: piece.name });
  return { name: from.piece, svg: new TextEncoder().encode(svg) };
}

function faceCurves(source: Piece, piece: OrderPiece, rings: PaintInput['rings']): readonly Curve[] {
  const back = toDrawing(source, piece);
  const drawn = rings.map((ring): Region => ({ outer: ring.map(back), openings: [] }));
  const inside = intersectRegions(drawn, [pieceRegion(source)]);
  const faces = inside.filter((region) => regionArea(region) >= LEAST_FACE_MM2);
  return faces.map(({ outer }) => curveFromPolyline(outer, true));
}

/** From the frame in which the piece is laid to that of its drawing: as it is made ready to be laid, the other way. */
function toDrawing(source: Piece, { allowanceMm, side }: OrderPiece): (point: Point) => Point {
  const grown = addAllowance(source, allowanceMm);
  const seen = side === 'flesh' ? mirrorPiece(grown) : grown;
  const origin = roundPoint(enclosingCircle(pieceRegion(seen).outer).center);
  const move = translation(origin.x, origin.y);
  return (point) => {
    const moved = applyAffine(move, point);
    return side === 'flesh' ? applyAffine(MIRROR_X, moved) : moved;
  };
}
