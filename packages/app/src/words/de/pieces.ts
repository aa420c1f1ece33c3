import type { Translated } from '../translated.js';
import type { PIECES_EN } from '../en/pieces.js';

/** Die Texte dieses Teils, auf Deutsch. */
export const PIECES_DE: Translated<typeof PIECES_EN> = {};
