import type { Translated } from '../translated.js';
import type { HIDE_EN } from '../en/hide.js';

/** Die Texte dieses Teils, auf Deutsch. */
export const HIDE_DE: Translated<typeof HIDE_EN> = {};
