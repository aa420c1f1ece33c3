/** Red, green and blue, 0 to 255 each, or a difference of two colours. */
export type Colour = readonly [number, number, number];

export function less(a: Colour, b: Colour): Colour {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function dot(a: Colour, b: Colour): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function lengthOf(a: Colour): number {
  return Math.sqrt(dot(a, a));
}

/** The middle value of each channel. */
export function medianColour(colours: readonly Colour[]): Colour {
  const middle = (channel: 0 | 1 | 2) => median(colours.map((colour) => colour[channel]));
  return [middle(0), middle(1), middle(2)];
}

/** 0 of nothing. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1]!;
}
