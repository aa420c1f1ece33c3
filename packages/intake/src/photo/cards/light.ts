import type { Colour } from './colour.js';
import { dot, lengthOf, less } from './colour.js';
import { DEEPEST_SHADOW, HUE_CONTRAST, SHADOW_WAY } from './limits.js';

/** Glare and lamps brighten the ground by this much at most. */
const BRIGHTEST_GROUND = 1.12;

/** How a card differs from the ground around it. */
export interface Contrast {
  readonly card: Colour;
  readonly ground: Colour;
  /** Shadows that leave less of the ground's light are taken for card. */
  readonly deepest: number;
  /** The card is told by its hue alone, since a shadow could be as dark. */
  readonly byHue: boolean;
}

/** Shadow takes the same share of every channel: what differs from the ground across that way is no shadow. */
export function contrastOf(card: Colour, ground: Colour): Contrast {
  const share = dot(card, ground) / Math.max(1, dot(ground, ground));
  const hue = lengthOf(less(card, scaled(ground, share)));
  const isOfHue = hue >= HUE_CONTRAST;
  const deepest =
    isOfHue || share >= 1 ? DEEPEST_SHADOW : Math.max(DEEPEST_SHADOW, 1 - SHADOW_WAY * (1 - share));
  return { card, ground, deepest, byHue: isOfHue && share < 1 };
}

export function scaled(a: Colour, by: number): Colour {
  return [a[0] * by, a[1] * by, a[2] * by];
}

/** How far a colour is from the ground in any shadow that it may lie in. */
export function offShadow(colour: Colour, { ground, deepest }: Contrast): number {
  const share = dot(colour, ground) / Math.max(1, dot(ground, ground));
  const shadow = scaled(ground, Math.min(BRIGHTEST_GROUND, Math.max(deepest, share)));
  return lengthOf(less(colour, shadow));
}

/**
 * The way from ground to card on which an edge is measured: colour · axis - start is 0 on the ground and 1 on the card.
 */
export interface EdgeAxis {
  readonly axis: Colour;
  readonly start: number;
}

export function edgeAxis({ card, ground, byHue }: Contrast): EdgeAxis {
  const full = less(card, ground);
  const share = dot(full, ground) / Math.max(1, dot(ground, ground));
  const way = byHue ? less(full, scaled(ground, share)) : full;
  const axis = scaled(way, 1 / Math.max(1, dot(way, way)));
  return { axis, start: dot(ground, axis) };
}

/** True for a card that is darker than the ground and of its hue, as a deep shadow is: their edge is a faint step. */
export function isOfShadowsHue({ card, ground, byHue }: Contrast): boolean {
  return !byHue && dot(card, ground) < dot(ground, ground);
}
