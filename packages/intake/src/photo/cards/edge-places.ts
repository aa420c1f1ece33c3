import type { Point, Ring } from '@hidebound/geometry';
import { toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Colour } from './colour.js';
import { lengthOf, median } from './colour.js';
import { lightAt } from './find-cards.js';
import { groundAt } from './ground.js';
import type { Ground } from './ground.js';
import { contrastOf, edgeAxis, isOfShadowsHue, scaled } from './light.js';
import {
  EDGE_REACH_MM,
  FALL_SHARE,
  FALL_SIGMAS,
  LEAST_FALL,
  LEAST_SHADOW_FALL,
  NEIGHBOURS_MM,
  SHADOW_REACH_MM,
  STRAY_PLACE_MM,
} from './limits.js';
import { sampleAlong } from './pixel-sampler.js';
import type { EdgePlace } from './runs/edge-place.js';
import { stationsAlong } from './smooth-ring.js';
import type { RingStation } from './smooth-ring.js';

/** What an edge is measured on: the fine picture, its ground, and the card's colour in even light. */
export interface EdgeScene {
  readonly picture: StraightPicture;
  readonly ground: Ground;
  readonly colour: Colour;
}

export interface FoundEdge {
  readonly places: readonly EdgePlace[];
  /** How much of it shows no clear edge in long stretches and is taken as it was seen roughly. */
  readonly unclearMm: number;
  readonly unclearAt?: Point;
}

/** Places along a ring are this far apart, mm, or a pixel. */
const STATION_MM = 0.1;
/** Stairs of the coarse edge are smoothed over this, and directions across it over more, mm. */
const PLACE_SMOOTH_MM = 0.5;
const NORMAL_SMOOTH_MM = 1.2;

/**
 * The fine edge near a coarse ring, in its order: where the picture falls half way from the card to what lies beside it,
 * be it ground or shadow. Short stretches without a clear fall are left out.
 */
export function edgePlaces(ring: Ring, isHole: boolean, scene: EdgeScene): FoundEdge {
  const { pxPerMm } = scene.picture;
  const step = Math.max(STATION_MM, 1 / pxPerMm);
  const stations = stationsAlong(ring, step, PLACE_SMOOTH_MM, NORMAL_SMOOTH_MM);
  // To the right of a ring with positive area (y down) lies its inside.
  const isClockwise = signedArea(ring) > 0;
  const out = isClockwise === isHole ? 1 : -1;
  const offs = stations.map((station) => edgeOff(station, out, scene));
  const kept = withoutStrays(offs, Math.round(NEIGHBOURS_MM / step));
  const filled = withGapsFilled(kept, Math.round(LONGEST_GAP_MM / step));
  const places = stations.flatMap(({ x, y, normal }, i) => {
    const off = filled[i];
    if (off === undefined) return [];
    return [{ x: x + normal.x * out * off, y: y + normal.y * out * off, weightMm: step }];
  });
  const unclear = stations.filter((_, i) => kept[i] === undefined && filled[i] !== undefined);
  return {
    places,
    unclearMm: unclear.length * step,
    ...(unclear[0] === undefined ? {} : { unclearAt: unclear[0] }),
  };
}

function signedArea(ring: Ring): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + (p.x * q.y - p.y * q.x) / 2;
  }, 0);
}

/** Steps of a profile, in pixels, and the width over which a fall is measured. */
const PROFILE_STEP_PX = 0.5;
const FALL_PX = 2;
const FALL_MM = 0.2;
/** Neighbours along the edge that are looked at together, px. */
const BESIDE_PX = [-0.8, 0, 0.8] as const;

/** How far outwards of a station the edge lies, mm; nothing where no fall is clear. */
function edgeOff(
  station: RingStation,
  out: number,
  { picture, ground, colour }: EdgeScene,
): number | undefined {
  const { pxPerMm } = picture;
  const at = toPicture(picture, station);
  const light = lightAt(ground, at.x, at.y);
  const contrast = contrastOf(scaled(colour, 1 / light), groundAt(ground, at.x, at.y));
  const { axis, start } = edgeAxis(contrast);
  const fallPx = Math.max(FALL_PX, FALL_MM * pxPerMm);
  const mayBeShadow = isOfShadowsHue(contrast);
  const reachMm = mayBeShadow ? SHADOW_REACH_MM : EDGE_REACH_MM;
  const half = Math.ceil((reachMm * pxPerMm + 2 * fallPx) / PROFILE_STEP_PX);
  const way = { x: station.normal.x * out, y: station.normal.y * out };
  const profile = new Float64Array(2 * half + 1);
  for (let k = -half; k <= half; k++) {
    const t = k * PROFILE_STEP_PX;
    let sum = 0;
    for (const beside of BESIDE_PX) {
      sum += sampleAlong(picture, at.x + way.x * t - way.y * beside, at.y + way.y * t + way.x * beside, axis);
    }
    profile[k + half] = sum / BESIDE_PX.length - start;
  }
  const least = mayBeShadow
    ? Math.max(LEAST_SHADOW_FALL, FALL_SIGMAS * ground.sigma * lengthOf(axis))
    : LEAST_FALL;
  const share = mayBeShadow ? 0 : FALL_SHARE;
  const k = firstFall(profile, Math.round(fallPx / PROFILE_STEP_PX), { least, share });
  return k === undefined ? undefined : ((k - half) * PROFILE_STEP_PX) / pxPerMm;
}

/** Where the first clear fall from the card's side is half way, in steps of the profile. */
function firstFall(
  profile: Float64Array,
  width: number,
  { least: lowest, share }: { readonly least: number; readonly share: number },
): number | undefined {
  const sums = new Float64Array(profile.length + 1);
  profile.forEach((value, i) => (sums[i + 1] = sums[i]! + value));
  const mean = (from: number, to: number) => (sums[to]! - sums[from]!) / (to - from);
  const fallAt = (k: number) => mean(k - width, k) - mean(k + 1, k + 1 + width);
  const [first, last] = [2 * width, profile.length - 1 - 2 * width];
  let most = 0;
  for (let k = first; k <= last; k++) most = Math.max(most, fallAt(k));
  const least = Math.max(lowest, share * most);
  for (let k = first; k <= last; k++) {
    const fall = fallAt(k);
    if (fall < least || fall < fallAt(k + 1) || fall < fallAt(k - 1)) continue;
    const near = Math.max(1, width >> 1);
    const level = (mean(k - 2 * width, k - near) + mean(k + 1 + near, k + 1 + 2 * width)) / 2;
    return crossingNear(profile, k, width, level);
  }
  return undefined;
}

function crossingNear(profile: Float64Array, k: number, width: number, level: number): number | undefined {
  for (let d = 0; d <= width; d++) {
    for (const i of [k + d, k - d - 1]) {
      const [a, b] = [profile[i]!, profile[i + 1]!];
      if (a >= level && b < level) return i + (a - level) / (a - b);
    }
  }
  return undefined;
}

/** A stretch without a clear edge that is longer than this, mm, is drawn as it is seen roughly. */
const LONGEST_GAP_MM = 2.5;

function withGapsFilled(offs: readonly (number | undefined)[], longest: number): (number | undefined)[] {
  const n = offs.length;
  const start = offs.findIndex((off) => off !== undefined);
  if (start < 0) return [...offs];
  const filled = [...offs];
  for (let k = 1, gap = 0; k <= n; k++) {
    const i = (start + k) % n;
    if (offs[i] === undefined) {
      gap++;
      continue;
    }
    if (gap > longest) for (let d = 1; d <= gap; d++) filled[(i - d + n) % n] = 0;
    gap = 0;
  }
  return filled;
}

/** Without places that lie off their neighbours: ink that runs over the edge, dirt, a thread. */
function withoutStrays(offs: readonly (number | undefined)[], reach: number): (number | undefined)[] {
  const n = offs.length;
  return offs.map((off, i) => {
    if (off === undefined) return undefined;
    const near: number[] = [];
    for (let k = -reach; k <= reach; k++) {
      const other = offs[(((i + k) % n) + n) % n];
      if (other !== undefined) near.push(other);
    }
    return Math.abs(off - median(near)) > STRAY_PLACE_MM ? undefined : off;
  });
}
