/** Pixels of a box, its last ones included. */
export interface PixelBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface LabelledAreas {
  /** For each pixel the number of its area from 1, or 0. */
  readonly labels: Int32Array;
  readonly count: number;
  /** Of area n at n - 1. */
  readonly areas: readonly { readonly box: PixelBox; readonly pixels: number }[];
}

/** Numbers the areas of a mask that hang together by sides or corners; smaller ones than asked are dropped. */
export function labelAreas(mask: Uint8Array, width: number, leastPixels: number): LabelledAreas {
  const height = mask.length / width;
  const labels = new Int32Array(mask.length);
  const areas: { box: PixelBox; pixels: number }[] = [];
  const stack: number[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] === 0 || labels[start] !== 0) continue;
    const label = areas.length + 1;
    const members: number[] = [];
    labels[start] = label;
    stack.push(start);
    let [minX, minY, maxX, maxY] = [width, height, 0, 0];
    for (let i = stack.pop(); i !== undefined; i = stack.pop()) {
      members.push(i);
      const x = i % width;
      const y = (i - x) / width;
      [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x)];
      [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y)];
      for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
        for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
          const j = v * width + u;
          if (mask[j] === 0 || labels[j] !== 0) continue;
          labels[j] = label;
          stack.push(j);
        }
      }
    }
    if (members.length >= leastPixels)
      areas.push({ box: { minX, minY, maxX, maxY }, pixels: members.length });
    else for (const i of members) labels[i] = DROPPED;
  }
  for (let i = 0; i < labels.length; i++) if (labels[i] === DROPPED) labels[i] = 0;
  return { labels, count: areas.length, areas };
}

const DROPPED = -1;
