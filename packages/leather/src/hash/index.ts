export { hashHide } from './hash-hide.js';
export { hashPieceShape } from './hash-piece.js';
export { sha256Hex } from './sha256.js';
