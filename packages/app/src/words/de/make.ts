import type { Translated } from '../translated.js';
import type { MAKE_EN } from '../en/make.js';

/** Die Texte dieses Teils, auf Deutsch. */
export const MAKE_DE: Translated<typeof MAKE_EN> = {};
