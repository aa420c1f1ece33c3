/** Numbers on a grid, row by row. */
export interface GridSize {
  readonly width: number;
  readonly height: number;
}

/** Mean over a square window of 2 × `radius` + 1, of what counts (`weights` above 0). Where nothing does, `empty`. */
export function windowMean(
  { width, height }: GridSize,
  values: Float32Array,
  weights: Float32Array,
  radius: number,
  empty: number,
): Float32Array {
  const product = new Float32Array(values.length);
  for (let i = 0; i < product.length; i++) product[i] = values[i]! * weights[i]!;
  const sums = windowSum({ width, height }, product, radius);
  const totals = windowSum({ width, height }, weights, radius);
  for (let i = 0; i < sums.length; i++) sums[i] = totals[i]! > 1e-3 ? sums[i]! / totals[i]! : empty;
  return sums;
}

/** Sums over a square window, cut off at the borders. */
export function windowSum({ width, height }: GridSize, values: Float32Array, radius: number): Float32Array {
  const rows = new Float32Array(values.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    let sum = 0;
    for (let x = 0; x < Math.min(radius, width); x++) sum += values[start + x]!;
    for (let x = 0; x < width; x++) {
      if (x + radius < width) sum += values[start + x + radius]!;
      if (x - radius > 0) sum -= values[start + x - radius - 1]!;
      rows[start + x] = sum;
    }
  }
  const result = new Float32Array(values.length);
  const sums = new Float64Array(width);
  for (let y = 0; y < Math.min(radius, height); y++)
    for (let x = 0; x < width; x++) sums[x]! += rows[y * width + x]!;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (y + radius < height) sums[x]! += rows[(y + radius) * width + x]!;
      if (y - radius > 0) sums[x]! -= rows[(y - radius - 1) * width + x]!;
      result[y * width + x] = sums[x]!;
    }
  }
  return result;
}

/**
 * Distance in pixels from each pixel to the nearest one that is marked; beyond the grid counts as marked if
 * `outsideCounts`. Steps of 1 and √2 (Borgefors 1986), so up to 8 % too long.
 */
export function distanceToMarked(
  { width, height }: GridSize,
  isMarked: (pixel: number) => boolean,
  outsideCounts: boolean,
): Float32Array {
  const far = width + height;
  const away = new Float32Array(width * height);
  const rim = outsideCounts ? 1 : far;
  for (let i = 0; i < away.length; i++) away[i] = isMarked(i) ? 0 : far;
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? rim - 1 : away[y * width + x]!;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const here = y * width + x;
      if (away[here] === 0) continue;
      away[here] = Math.min(
        away[here]!,
        at(x - 1, y) + 1,
        at(x, y - 1) + 1,
        at(x - 1, y - 1) + Math.SQRT2,
        at(x + 1, y - 1) + Math.SQRT2,
      );
    }
  for (let y = height - 1; y >= 0; y--)
    for (let x = width - 1; x >= 0; x--) {
      const here = y * width + x;
      if (away[here] === 0) continue;
      away[here] = Math.min(
        away[here]!,
        at(x + 1, y) + 1,
        at(x, y + 1) + 1,
        at(x + 1, y + 1) + Math.SQRT2,
        at(x - 1, y + 1) + Math.SQRT2,
      );
    }
  return away;
}

/** Pieces of ground that hang together. */
export interface Patches {
  /** The patch of each pixel, from 0; -1 where there is none. */
  readonly labels: Int32Array;
  /** Pixels in each patch. */
  readonly sizes: readonly number[];
}

/** Numbers the patches of marked pixels that touch along a side, or also at a corner. */
export function patchesOf(
  { width, height }: GridSize,
  isMarked: (pixel: number) => boolean,
  alsoAtCorners: boolean,
): Patches {
  const labels = new Int32Array(width * height).fill(-1);
  const sizes: number[] = [];
  const stack: number[] = [];
  const visit = (x: number, y: number, label: number): void => {
    if (x < 0 || y < 0 || x >= width || y >= height) return;
    const pixel = y * width + x;
    if (labels[pixel] !== -1 || !isMarked(pixel)) return;
    labels[pixel] = label;
    stack.push(pixel);
  };
  for (let start = 0; start < labels.length; start++) {
    if (labels[start] !== -1 || !isMarked(start)) continue;
    const label = sizes.length;
    let size = 0;
    visit(start % width, Math.floor(start / width), label);
    for (let pixel = stack.pop(); pixel !== undefined; pixel = stack.pop()) {
      size += 1;
      const x = pixel % width;
      const y = (pixel - x) / width;
      visit(x - 1, y, label);
      visit(x + 1, y, label);
      visit(x, y - 1, label);
      visit(x, y + 1, label);
      if (!alsoAtCorners) continue;
      visit(x - 1, y - 1, label);
      visit(x + 1, y - 1, label);
      visit(x - 1, y + 1, label);
      visit(x + 1, y + 1, label);
    }
    sizes.push(size);
  }
  return { labels, sizes };
}
