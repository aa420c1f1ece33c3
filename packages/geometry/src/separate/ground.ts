import { interiorRuns } from '../nest/raster.js';
import type { Lattice } from '../nest/raster.js';
import { buildSoup } from '../nest/soup.js';
import type { Random } from '../number/random.js';
import { DECAY_SHARE } from './constants.js';
import { distanceGrid } from './distance-grid.js';
import type { SepShape, ShapeBody } from './shape.js';
import type { TurnedBody, TurnedRings } from './turned.js';
import { isInRings } from './hit.js';

/** Where a body may lie on a sheet, in the sheet's search frame. */
export interface Ground {
  /** Edges of the allowed area. */
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  /** One corner of each of its rings. */
  readonly cornerX: Float64Array;
  readonly cornerY: Float64Array;
  /** Edges by square of a coarse net. */
  readonly netMinU: number;
  readonly netMinV: number;
  readonly netPitch: number;
  readonly netColumns: number;
  readonly netRows: number;
  readonly netStart: Int32Array;
  readonly netEdges: Int32Array;
  /** Distance to the area's edge at the points of a grid, positive inside; right to about a pitch. */
  readonly minU: number;
  readonly minV: number;
  readonly pitch: number;
  readonly columns: number;
  readonly rows: number;
  readonly depth: Float64Array;
  /** Grid points inside, in order of u. */
  readonly cellU: Float64Array;
  readonly cellV: Float64Array;
}

/** Points of the distance grid, at most: bounds the time to make it. */
const MOST_GRID_POINTS = 40_000;
const FINEST_PITCH_MM = 2;
/** How far the depth between grid points may be from the truth, in pitches: the grid's 0.75, and 0.71 to a grid point. */
const DEPTH_SLACK_PITCHES = 1.5;
/** Edges of the area share squares of about this many pitches. */
const NET_PITCHES = 4;

/** From the rings of the allowed area, even-odd, in the search frame. Undefined if nothing is allowed. */
export function buildGround(rings: readonly Float64Array[]): Ground | undefined {
  const soup = buildSoup(rings);
  if (soup.count === 0) return undefined;
  const width = soup.maxX - soup.minX;
  const height = soup.maxY - soup.minY;
  const pitch = Math.max(FINEST_PITCH_MM, Math.sqrt((width * height) / MOST_GRID_POINTS));
  const lattice: Lattice = {
    minX: soup.minX - 1.5 * pitch,
    minY: soup.minY - 1.5 * pitch,
    pitch,
    columns: Math.ceil(width / pitch) + 4,
    rows: Math.ceil(height / pitch) + 4,
  };
  const depth = distanceGrid(interiorRuns(soup, lattice), soup, lattice);
  return {
    ...edgesOf(rings),
    ...netOf(rings, lattice),
    minU: lattice.minX,
    minV: lattice.minY,
    pitch,
    columns: lattice.columns,
    rows: lattice.rows,
    depth,
    ...cellsOf(depth, lattice),
  };
}

function cellsOf(depth: Float64Array, lattice: Lattice): Pick<Ground, 'cellU' | 'cellV'> {
  const { columns, rows, pitch, minX, minY } = lattice;
  const cellU = new Float64Array(columns * rows);
  const cellV = new Float64Array(columns * rows);
  let count = 0;
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < rows; row++) {
      if (depth[row * columns + column]! <= 0) continue;
      cellU[count] = minX + column * pitch;
      cellV[count] = minY + row * pitch;
      count++;
    }
  }
  return { cellU: cellU.slice(0, count), cellV: cellV.slice(0, count) };
}

type Edges = Pick<Ground, 'ax' | 'ay' | 'bx' | 'by' | 'cornerX' | 'cornerY'>;

function edgesOf(rings: readonly Float64Array[]): Edges {
  const from: number[][] = [[], [], [], []];
  for (const ring of rings) {
    const n = ring.length;
    for (let i = 0; i < n; i += 2) {
      from[0]!.push(ring[i]!);
      from[1]!.push(ring[i + 1]!);
      from[2]!.push(ring[(i + 2) % n]!);
      from[3]!.push(ring[(i + 3) % n]!);
    }
  }
  return {
    ax: Float64Array.from(from[0]!),
    ay: Float64Array.from(from[1]!),
    bx: Float64Array.from(from[2]!),
    by: Float64Array.from(from[3]!),
    cornerX: Float64Array.from(rings, (ring) => ring[0]!),
    cornerY: Float64Array.from(rings, (ring) => ring[1]!),
  };
}

type Net = Pick<
  Ground,
  'netMinU' | 'netMinV' | 'netPitch' | 'netColumns' | 'netRows' | 'netStart' | 'netEdges'
>;

function netOf(rings: readonly Float64Array[], lattice: Lattice): Net {
  const { ax, ay, bx, by } = edgesOf(rings);
  const netPitch = NET_PITCHES * lattice.pitch;
  const netColumns = Math.ceil((lattice.columns * lattice.pitch) / netPitch) + 1;
  const netRows = Math.ceil((lattice.rows * lattice.pitch) / netPitch) + 1;
  const squares: number[][] = Array.from({ length: netColumns * netRows }, () => []);
  const column = (u: number): number => Math.floor((u - lattice.minX) / netPitch);
  const row = (v: number): number => Math.floor((v - lattice.minY) / netPitch);
  for (let i = 0; i < ax.length; i++) {
    for (let r = row(Math.min(ay[i]!, by[i]!)); r <= row(Math.max(ay[i]!, by[i]!)); r++) {
      for (let c = column(Math.min(ax[i]!, bx[i]!)); c <= column(Math.max(ax[i]!, bx[i]!)); c++) {
        squares[r * netColumns + c]!.push(i);
      }
    }
  }
  const netStart = new Int32Array(squares.length + 1);
  squares.forEach((edges, k) => (netStart[k + 1] = netStart[k]! + edges.length));
  return {
    netMinU: lattice.minX,
    netMinV: lattice.minY,
    netPitch,
    netColumns,
    netRows,
    netStart,
    netEdges: Int32Array.from(squares.flat()),
  };
}

/** Index of a random grid point inside whose u is below the limit; -1 if there is none. */
export function drawOnGround(ground: Ground, random: Random, limit: number): number {
  const { cellU } = ground;
  let low = 0;
  let high = cellU.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (cellU[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low === 0 ? -1 : random.integer(low);
}

/** Distance to the edge of the area, interpolated; beyond the grid, less the way to it. */
export function depthAt(ground: Ground, u: number, v: number): number {
  const { columns, rows, pitch, depth } = ground;
  const x = (u - ground.minU) / pitch;
  const y = (v - ground.minV) / pitch;
  const bx = x < 0 ? 0 : x > columns - 1.001 ? columns - 1.001 : x;
  const by = y < 0 ? 0 : y > rows - 1.001 ? rows - 1.001 : y;
  const column = Math.floor(bx);
  const row = Math.floor(by);
  const fx = bx - column;
  const fy = by - row;
  const at = row * columns + column;
  const upper = depth[at]! + fx * (depth[at + 1]! - depth[at]!);
  const lower = depth[at + columns]! + fx * (depth[at + columns + 1]! - depth[at + columns]!);
  const beyond = (Math.abs(x - bx) + Math.abs(y - by)) * pitch;
  return upper + fy * (lower - upper) - beyond;
}

/** How badly a body lies on bad ground: 0 if it does not; else as for two shapes that overlap. */
export function groundSeverity(
  ground: Ground,
  body: ShapeBody,
  turned: TurnedBody,
  x: number,
  y: number,
  shape: SepShape,
): number {
  const { poleX, poleY } = turned;
  const { poleR } = body;
  if (poleX.length > 0 && !isOff(ground, body, turned, x, y)) return 0;
  const decay = DECAY_SHARE * shape.diameter;
  let sum = 0;
  for (let k = 0; k < poleX.length; k++) {
    const out = poleR[k]! - depthAt(ground, x + poleX[k]!, y + poleY[k]!);
    sum += (out >= decay ? out : (decay * decay) / (2 * decay - out)) * poleR[k]!;
  }
  return Math.sqrt(sum) * shape.lambda;
}

function isOff(
  ground: Ground,
  { poleR, radius }: ShapeBody,
  { rings, poleX, poleY }: TurnedBody,
  x: number,
  y: number,
): boolean {
  const slack = DEPTH_SLACK_PITCHES * ground.pitch;
  const first = depthAt(ground, x + poleX[0]!, y + poleY[0]!);
  if (first < 0) return true;
  if (first - slack > radius) return false;
  for (let k = 0; k < poleX.length; k++) {
    if (poleR[k]! - depthAt(ground, x + poleX[k]!, y + poleY[k]!) > slack) return true;
  }
  if (crossesEdge(ground, rings, x, y)) return true;
  for (let k = 0; k < ground.cornerX.length; k++) {
    if (isInRings(rings, ground.cornerX[k]! - x, ground.cornerY[k]! - y)) return true;
  }
  return false;
}

/**
 * True if an edge of the rings crosses an edge of the area. An edge whose ends lie deeper, together, than it is long
 * can't get out: depth changes by no more than the way. Only the others are held against the area's edges near them.
 */
function crossesEdge(ground: Ground, rings: TurnedRings, x: number, y: number): boolean {
  const slack = 2 * DEPTH_SLACK_PITCHES * ground.pitch;
  for (let r = 0; r + 1 < rings.start.length; r++) {
    const end = rings.start[r + 1]!;
    let px = x + rings.x[end - 1]!;
    let py = y + rings.y[end - 1]!;
    let before = depthAt(ground, px, py);
    for (let i = rings.start[r]!; i < end; i++) {
      const qx = x + rings.x[i]!;
      const qy = y + rings.y[i]!;
      const after = depthAt(ground, qx, qy);
      const room = before + after - slack;
      const length2 = (qx - px) * (qx - px) + (qy - py) * (qy - py);
      if ((room < 0 || room * room < length2) && meetsNear(ground, px, py, qx, qy)) return true;
      px = qx;
      py = qy;
      before = after;
    }
  }
  return false;
}

function meetsNear(ground: Ground, px: number, py: number, qx: number, qy: number): boolean {
  const { netPitch, netColumns, netRows, netStart, netEdges, ax, ay, bx, by } = ground;
  const lowX = px < qx ? px : qx;
  const highX = px < qx ? qx : px;
  const lowY = py < qy ? py : qy;
  const highY = py < qy ? qy : py;
  const c0 = Math.max(0, Math.floor((lowX - ground.netMinU) / netPitch));
  const c1 = Math.min(netColumns - 1, Math.floor((highX - ground.netMinU) / netPitch));
  const r0 = Math.max(0, Math.floor((lowY - ground.netMinV) / netPitch));
  const r1 = Math.min(netRows - 1, Math.floor((highY - ground.netMinV) / netPitch));
  const ex = qx - px;
  const ey = qy - py;
  for (let r = r0; r <= r1; r++) {
    for (let c = c0; c <= c1; c++) {
      const square = r * netColumns + c;
      for (let k = netStart[square]!; k < netStart[square + 1]!; k++) {
        const e = netEdges[k]!;
        const gx = ax[e]!;
        const gy = ay[e]!;
        const hx = bx[e]!;
        const hy = by[e]!;
        if ((gx < lowX && hx < lowX) || (gx > highX && hx > highX)) continue;
        if ((gy < lowY && hy < lowY) || (gy > highY && hy > highY)) continue;
        const g = ex * (gy - py) - ey * (gx - px);
        const h = ex * (hy - py) - ey * (hx - px);
        if (g > 0 === h > 0) continue;
        const fx = hx - gx;
        const fy = hy - gy;
        const p = fx * (py - gy) - fy * (px - gx);
        const q = fx * (qy - gy) - fy * (qx - gx);
        if (p > 0 !== q > 0) return true;
      }
    }
  }
  return false;
}
