import type { Translated } from '../translated.js';
import type { LAY_EN } from '../en/lay.js';

/** Die Texte dieses Teils, auf Deutsch. */
export const LAY_DE: Translated<typeof LAY_EN> = {};
