import { EDGES_PER_CHUNK } from './constants.js';

/**
 * Closed rings as flat edges, with boxes around runs of edges. Kernel data: flat arrays, no objects, because
 * distance tests run over millions of edges.
 */
export interface Soup {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  /** Edges of ring r: from ringStart[r] up to ringStart[r + 1]. */
  readonly ringStart: Int32Array;
  /** Edges of chunk c: from chunkStart[c] up to chunkStart[c + 1]; four numbers a chunk in chunkBox. */
  readonly chunkStart: Int32Array;
  readonly chunkBox: Float64Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Rings as [x0, y0, x1, y1, …]. */
export function buildSoup(rings: readonly Float64Array[]): Soup {
  let count = 0;
  for (const ring of rings) count += ring.length >> 1;
  const soup = emptySoup(count, rings.length, chunkStarts(rings));
  let edge = 0;
  rings.forEach((ring, r) => {
    soup.ringStart[r] = edge;
    const n = ring.length >> 1;
    for (let i = 0; i < n; i++, edge++) {
      const j = i + 1 === n ? 0 : i + 1;
      soup.ax[edge] = ring[2 * i]!;
      soup.ay[edge] = ring[2 * i + 1]!;
      soup.bx[edge] = ring[2 * j]!;
      soup.by[edge] = ring[2 * j + 1]!;
    }
  });
  soup.ringStart[rings.length] = edge;
  return withBoxes(soup);
}

/** The same rings, moved. */
export function moveSoup(soup: Soup, dx: number, dy: number): Soup {
  const moved = emptySoup(soup.count, soup.ringStart.length - 1, soup.chunkStart);
  moved.ringStart.set(soup.ringStart);
  for (let i = 0; i < soup.count; i++) {
    moved.ax[i] = soup.ax[i]! + dx;
    moved.ay[i] = soup.ay[i]! + dy;
    moved.bx[i] = soup.bx[i]! + dx;
    moved.by[i] = soup.by[i]! + dy;
  }
  return withBoxes(moved);
}

/** True if the point is inside by the even-odd rule over all rings; on the line itself either answer may come. */
export function isInSoup(soup: Soup, x: number, y: number): boolean {
  if (x < soup.minX || x > soup.maxX || y < soup.minY || y > soup.maxY) return false;
  let inside = false;
  const chunks = soup.chunkStart.length - 1;
  for (let c = 0; c < chunks; c++) {
    const box = 4 * c;
    if (y < soup.chunkBox[box + 1]! || y > soup.chunkBox[box + 3]! || x > soup.chunkBox[box + 2]!) continue;
    const end = soup.chunkStart[c + 1]!;
    for (let i = soup.chunkStart[c]!; i < end; i++) {
      const ay = soup.ay[i]!;
      const by = soup.by[i]!;
      if (ay > y === by > y) continue;
      const ax = soup.ax[i]!;
      if (x < ax + ((y - ay) / (by - ay)) * (soup.bx[i]! - ax)) inside = !inside;
    }
  }
  return inside;
}

function chunkStarts(rings: readonly Float64Array[]): Int32Array {
  const starts: number[] = [];
  let edge = 0;
  for (const ring of rings) {
    const n = ring.length >> 1;
    for (let i = 0; i < n; i += EDGES_PER_CHUNK) starts.push(edge + i);
    edge += n;
  }
  starts.push(edge);
  return Int32Array.from(starts);
}

function emptySoup(count: number, rings: number, chunkStart: Int32Array): Soup {
  return {
    count,
    ax: new Float64Array(count),
    ay: new Float64Array(count),
    bx: new Float64Array(count),
    by: new Float64Array(count),
    ringStart: new Int32Array(rings + 1),
    chunkStart,
    chunkBox: new Float64Array(4 * (chunkStart.length - 1)),
    minX: Infinity,
    minY: Infinity,
    maxX: -Infinity,
    maxY: -Infinity,
  };
}

function withBoxes(soup: Soup): Soup {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let c = 0; c + 1 < soup.chunkStart.length; c++) {
    let x0 = Infinity;
    let y0 = Infinity;
    let x1 = -Infinity;
    let y1 = -Infinity;
    for (let i = soup.chunkStart[c]!; i < soup.chunkStart[c + 1]!; i++) {
      const ax = soup.ax[i]!;
      const ay = soup.ay[i]!;
      const bx = soup.bx[i]!;
      const by = soup.by[i]!;
      if (ax < x0) x0 = ax;
      if (bx < x0) x0 = bx;
      if (ax > x1) x1 = ax;
      if (bx > x1) x1 = bx;
      if (ay < y0) y0 = ay;
      if (by < y0) y0 = by;
      if (ay > y1) y1 = ay;
      if (by > y1) y1 = by;
    }
    soup.chunkBox.set([x0, y0, x1, y1], 4 * c);
    if (x0 < minX) minX = x0;
    if (y0 < minY) minY = y0;
    if (x1 > maxX) maxX = x1;
    if (y1 > maxY) maxY = y1;
  }
  return { ...soup, minX, minY, maxX, maxY };
}
