import { piece as pieceSchema } from '../files/schema/piece-schema.js';
import { writeStored } from '../files/write-stored.js';
import type { Piece } from '../model/piece.js';
import { sha256Hex } from './sha256.js';

/** SHA-256 of a piece's lines, rounded to 0.001 mm, as hexadecimal digits. Its name does not count. */
export function hashPieceShape(piece: Piece): string {
  return sha256Hex(writeStored(pieceSchema, { ...piece, name: '' }));
}
