import { createRandom } from '@hidebound/geometry';

/** A square of numbers around 0 that goes on seamlessly over its edges; its side is a power of two. */
export interface NoiseTile {
  readonly side: number;
  readonly values: Float32Array;
}

/** Smooth value noise: a random number from -1 to 1 at every `cell` pixels, blended between. `cell` divides `side`. */
export function smoothNoise(side: number, cell: number, seed: number): NoiseTile {
  const random = createRandom(seed);
  const cells = side / cell;
  const knots = Float32Array.from({ length: cells * cells }, () => random.between(-1, 1));
  const values = new Float32Array(side * side);
  const weights = Float32Array.from({ length: cell }, (_, i) => smoothStep(i / cell));
  const blended = new Float32Array(cells + 1);
  for (let y = 0; y < side; y++) {
    const row0 = Math.floor(y / cell) * cells;
    const row1 = ((Math.floor(y / cell) + 1) % cells) * cells;
    const t = weights[y % cell]!;
    for (let c = 0; c < cells; c++) blended[c] = knots[row0 + c]! * (1 - t) + knots[row1 + c]! * t;
    blended[cells] = blended[0]!;
    for (let c = 0, at = y * side; c < cells; c++) {
      const from = blended[c]!;
      const rise = blended[c + 1]! - from;
      for (let i = 0; i < cell; i++, at++) values[at] = from + rise * weights[i]!;
    }
  }
  return { side, values };
}

/** Noise of several sizes together. */
export function mixedNoise(
  side: number,
  layers: readonly { readonly cell: number; readonly weight: number }[],
  seed: number,
): NoiseTile {
  const values = new Float32Array(side * side);
  layers.forEach(({ cell, weight }, i) => {
    const layer = smoothNoise(side, cell, seed + 1000 * i).values;
    for (let at = 0; at < values.length; at++) values[at]! += weight * layer[at]!;
  });
  return { side, values };
}

/** Pebbles: 0 in the creases between them, towards 1 on their tops. */
export function pebbleNoise(side: number, cell: number, seed: number): NoiseTile {
  const random = createRandom(seed);
  const cells = side / cell;
  const xs = Float32Array.from({ length: cells * cells }, () => random.next());
  const ys = Float32Array.from({ length: cells * cells }, () => random.next());
  const values = new Float32Array(side * side);
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      let first = 9;
      let second = 9;
      const cx = Math.floor(x / cell);
      const cy = Math.floor(y / cell);
      for (let j = cy - 1; j <= cy + 1; j++) {
        for (let i = cx - 1; i <= cx + 1; i++) {
          const knot = ((j + cells) % cells) * cells + ((i + cells) % cells);
          const dx = i + xs[knot]! - x / cell;
          const dy = j + ys[knot]! - y / cell;
          const d = dx * dx + dy * dy;
          if (d < first) {
            second = first;
            first = d;
          } else if (d < second) second = d;
        }
      }
      values[y * side + x] = Math.min(1, 1.6 * (Math.sqrt(second) - Math.sqrt(first)));
    }
  }
  return { side, values };
}

/** A wave along a way: random numbers from -1 to 1 every `cell` mm, blended; the way closes after `length` mm. */
export function wayNoise(length: number, cell: number, seed: number): (at: number) => number {
  const count = Math.max(3, Math.round(length / cell));
  const random = createRandom(seed);
  const knots = Array.from({ length: count }, () => random.between(-1, 1));
  return (at) => {
    const place = ((at / length) * count + count) % count;
    const first = Math.floor(place) % count;
    const t = smoothStep(place - Math.floor(place));
    return knots[first]! * (1 - t) + knots[(first + 1) % count]! * t;
  };
}

export function smoothStep(t: number): number {
  return t * t * (3 - 2 * t);
}
