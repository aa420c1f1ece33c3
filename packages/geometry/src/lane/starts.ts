import { toV } from '../nest/frame.js';
import { GRID_MM } from '../tolerance.js';
import { MOST_STARTS, START_HALVINGS, START_SAMPLES } from './constants.js';
import { limitInBand } from './corridor.js';
import type { LaneSite } from './lane-site.js';
import type { StockEntry } from './row.js';
import { fillRow } from './row.js';

/** From which side and end lanes are looked for, and the width of their first row. */
export interface StartQuery {
  readonly side: 1 | -1;
  readonly openSign: 1 | -1;
  readonly leadMm: number;
}

/** A first row that lays less than this share more than the one before it is no better. */
const BETTER_SHARE = 1.02;

interface Rise {
  /** Lesser side of the first row. */
  readonly lowV: number;
  /** And of the row before it, which lays less. */
  readonly beforeV: number;
  readonly levelMm: number;
  /** What is laid from here on, at most all that is left of this width. */
  readonly promiseMm: number;
  readonly acrossMm: number;
}

/**
 * First cuts (v) that are worth following up: where a first row lays more than one a little nearer to the hide's edge,
 * as near to it as may be; along the backbone; and exactly along what lies there, and along a straight edge.
 */
export function laneStarts(site: LaneSite, query: StartQuery, stock: readonly StockEntry[]): number[] {
  const level = (lowV: number): number => rowLevel(site, query, stock, lowV);
  const firstOf = (lowV: number): number => (query.side > 0 ? lowV : lowV + query.leadMm);
  const starts = exactStarts(site, query).filter(
    (firstV) => level(query.side > 0 ? firstV : firstV - query.leadMm) > 0,
  );
  for (const rise of risesOf(site, query, stock, level)) {
    const firstV = firstOf(refined(rise, query.side, level));
    if (!starts.some((other) => Math.abs(other - firstV) < GRID_MM)) starts.push(firstV);
  }
  return starts;
}

function rowLevel(site: LaneSite, query: StartQuery, stock: readonly StockEntry[], lowV: number): number {
  const { openSign, leadMm } = query;
  const soups = site.occupied.map(({ soup }) => soup);
  const limitT = limitInBand(soups, { lowV, highV: lowV + leadMm }, openSign);
  return fillRow(site, { lowV, widthMm: leadMm, openSign, limitT }, stock).laidMm;
}

function risesOf(
  site: LaneSite,
  { side, leadMm }: StartQuery,
  stock: readonly StockEntry[],
  level: (lowV: number) => number,
): Rise[] {
  const { minY, maxY } = site.space.rings;
  const room = maxY - minY - leadMm;
  if (room <= 0) return [];
  const step = room / (START_SAMPLES - 1);
  const lows = Array.from({ length: START_SAMPLES }, (_, i) =>
    side > 0 ? minY + i * step : maxY - leadMm - i * step,
  );
  const levels = lows.map(level);
  const wantedMm = stock.reduce(
    (sum, { kind, count }) => (kind.lane.widthMm === leadMm ? sum + count * kind.lengthMm : sum),
    0,
  );
  const rises: Rise[] = [];
  for (const [i, levelMm] of levels.entries()) {
    if (levelMm === 0 || levelMm < BETTER_SHARE * (levels[i - 1] ?? 0)) continue;
    const { promiseMm, acrossMm } = promise(levels.slice(i), step, leadMm, wantedMm);
    rises.push({ lowV: lows[i]!, beforeV: lows[i]! - side * step, levelMm, promiseMm, acrossMm });
  }
  return rises.sort((a, b) => b.promiseMm - a.promiseMm || a.acrossMm - b.acrossMm).slice(0, MOST_STARTS);
}

/** How much rows would lay one beside the other, and how far across they would reach for it. */
function promise(
  levels: readonly number[],
  step: number,
  leadMm: number,
  wantedMm: number,
): { readonly promiseMm: number; readonly acrossMm: number } {
  let promiseMm = 0;
  let acrossMm = 0;
  for (const levelMm of levels) {
    if (levelMm === 0 || promiseMm >= wantedMm) break;
    promiseMm += levelMm * (step / leadMm);
    acrossMm += step;
  }
  return { promiseMm: Math.min(promiseMm, wantedMm), acrossMm };
}

/** As near to the row before as the first row lays as much; on the grid. */
function refined(rise: Rise, side: 1 | -1, level: (lowV: number) => number): number {
  let good = rise.lowV;
  let bad = rise.beforeV;
  for (let i = 0; i < START_HALVINGS; i++) {
    const middle = (good + bad) / 2;
    if (level(middle) >= rise.levelMm) good = middle;
    else bad = middle;
  }
  return side > 0 ? Math.ceil(good / GRID_MM) * GRID_MM : Math.floor(good / GRID_MM) * GRID_MM;
}

function exactStarts(site: LaneSite, { side }: StartQuery): number[] {
  const { rings, sheet, frame } = site.space;
  const { edge, gap } = site.distances;
  const starts = [side > 0 ? rings.minY + edge : rings.maxY - edge];
  for (const { soup } of site.occupied) starts.push(side > 0 ? soup.maxY + gap : soup.minY - gap);
  const axis = sheet.direction?.axis;
  if (axis !== undefined) {
    const lines = axis.map(({ x, y }) => toV(frame, x, y));
    starts.push(side > 0 ? Math.max(...lines) : Math.min(...lines));
  }
  const inward = (v: number): number =>
    side > 0 ? Math.ceil(v / GRID_MM - 1e-6) : Math.floor(v / GRID_MM + 1e-6);
  return [...new Set(starts.map(inward))].map((steps) => steps * GRID_MM);
}
