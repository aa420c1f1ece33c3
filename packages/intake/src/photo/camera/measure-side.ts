import type { Point } from '@hidebound/geometry';
import type { Photo } from '../photo.js';
import { lightAt } from './light.js';
import { fitLine } from './line-fit.js';
import type { SeenSide } from './seen-references.js';

/** Corners are rounded by blur, so a side is measured between these shares of its length. */
const FROM_SHARE = 0.1;
const TO_SHARE = 0.9;
/** Profiles across a side: one a pixel, but not more than a line needs. */
const MOST_PROFILES = 96;
const FEWEST_PROFILES = 8;
/** How far a profile reaches each way, in fields: paper and ink alike are one field wide there. */
const REACH_FIELDS = 0.75;
const LEAST_REACH_PX = 2;
/** Steps along a profile, px. */
const STEP_PX = 0.5;
/** Paper must be this much brighter than ink, as a share of the brightest light. */
const LEAST_CONTRAST = 0.03;

/** One side of a marker as measured. */
export interface MeasuredSide extends SeenSide {
  readonly blurPx: number;
  readonly white: number;
  readonly black: number;
}

/**
 * Finds the edge between ink and paper along one side of a marker: profiles across it, each with the place where the
 * light is half way between its own ink and paper.
 * @param fieldPx how wide a field of the marker is there
 */
export function measureSide(
  photo: Photo,
  from: Point,
  to: Point,
  outward: Point,
  fieldPx: number,
): MeasuredSide | undefined {
  const length = Math.hypot(to.x - from.x, to.y - from.y) * (TO_SHARE - FROM_SHARE);
  const count = Math.max(FEWEST_PROFILES, Math.min(MOST_PROFILES, Math.round(length)));
  const reach = Math.max(LEAST_REACH_PX, REACH_FIELDS * fieldPx);
  const edges: Edge[] = [];
  for (let i = 0; i < count; i++) {
    const share = FROM_SHARE + ((TO_SHARE - FROM_SHARE) * (i + 0.5)) / count;
    const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
    const edge = edgeOnProfile(photo, at, outward, reach);
    if (edge !== undefined) edges.push(edge);
  }
  if (edges.length < count / 2) return undefined;
  const line = fitLine(edges.map(({ at }) => at));
  if (line === undefined) return undefined;
  return {
    points: edges.map(({ at }) => at),
    scatterPx: line.scatter,
    blurPx: median(edges.map(({ blurPx }) => blurPx)),
    white: median(edges.map(({ white }) => white)),
    black: median(edges.map(({ black }) => black)),
  };
}

interface Edge {
  readonly at: Point;
  readonly blurPx: number;
  readonly white: number;
  readonly black: number;
}

function edgeOnProfile(photo: Photo, at: Point, outward: Point, reach: number): Edge | undefined {
  const half = Math.round(reach / STEP_PX);
  const light: number[] = [];
  for (let i = -half; i <= half; i++) {
    light.push(lightAt(photo, at.x + outward.x * i * STEP_PX, at.y + outward.y * i * STEP_PX));
  }
  const plateau = Math.max(2, Math.round(light.length / 4));
  const black = median(light.slice(0, plateau));
  const white = median(light.slice(-plateau));
  if (!(white - black > LEAST_CONTRAST)) return undefined;
  const middle = crossing(light, black + (white - black) / 2);
  const low = crossing(light, black + (white - black) * LOW_SHARE);
  const high = crossing(light, black + (white - black) * (1 - LOW_SHARE));
  if (middle === undefined || low === undefined || high === undefined) return undefined;
  const move = (middle - half) * STEP_PX;
  return {
    at: { x: at.x + outward.x * move, y: at.y + outward.y * move },
    blurPx: Math.max(0, ((high - low) * STEP_PX) / LOW_TO_HIGH_DEVIATIONS),
    white,
    black,
  };
}

/** The width of an edge is taken between 16 % and 84 % of its height: two deviations of a bell curve. */
const LOW_SHARE = 0.1587;
const LOW_TO_HIGH_DEVIATIONS = 2;

/** Where the profile first rises through a level and stays above it for a step, in steps from its start. */
function crossing(light: readonly number[], level: number): number | undefined {
  for (let i = 1; i < light.length; i++) {
    const before = light[i - 1]!;
    const after = light[i]!;
    if (before < level && after >= level) return i - 1 + (level - before) / (after - before);
  }
  return undefined;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
