import type { Translated } from '../translated.js';
import type { MARKS_EN } from '../en/marks.js';

/** Die Texte dieses Teils, auf Deutsch. */
export const MARKS_DE: Translated<typeof MARKS_EN> = {};
