/**
 * Colours as they are compared here. In CIE L*a*b* all of (L + 16, a, b) grow by one and the same factor when more
 * light falls on a thing (each is made of cube roots of what the eye's three receptors get; CIE 15, definition of
 * L*a*b*). So the logarithm of L + 16 only shifts with the light, and a and b over L + 16 stay as they are: a shadow
 * changes one of the three numbers.
 */
export const COLOUR_NUMBERS = 3;

/** Middle lightness plus 16: there, colours count as much as in L*a*b* itself. */
const MIDDLE = 66;

const LIGHT = new Float32Array(256);
const OVER_LIGHT = new Float32Array(256);
for (let level = 0; level < 256; level++) {
  const plus16 = (level * 100) / 255 + 16;
  LIGHT[level] = MIDDLE * Math.log(plus16 / MIDDLE);
  OVER_LIGHT[level] = MIDDLE / plus16;
}

/** How light it is: 0 for L = 50, -93 for black, 37 for white. `lab` as in a level. */
export function lightOf(lab: Uint8Array, pixel: number): number {
  return LIGHT[lab[pixel * 3]!]!;
}

/** From green to red, whatever the light. */
export function redOf(lab: Uint8Array, pixel: number): number {
  return (lab[pixel * 3 + 1]! - 128) * OVER_LIGHT[lab[pixel * 3]!]!;
}

/** From blue to yellow, whatever the light. */
export function yellowOf(lab: Uint8Array, pixel: number): number {
  return (lab[pixel * 3 + 2]! - 128) * OVER_LIGHT[lab[pixel * 3]!]!;
}
