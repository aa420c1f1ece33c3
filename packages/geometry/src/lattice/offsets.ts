import type { Point } from '../types/shape.js';
import {
  CLIMB_HALVINGS,
  LEAST_OFFSETS,
  MOST_OFFSETS,
  OFFSETS_CLIMBED,
  SLIDE_FINEST_MM,
  SLID_PIECES,
  TRIM_LOOK_SHARE,
} from './constants.js';
import { bestOf, layAt, reduceOffset, siteFits } from './pattern.js';
import type { Laid, Pattern, Site } from './pattern.js';

/** The best offset of a pattern that was found within about `work` calls of `fits`; at least as good as `beat` if any. */
export function bestOffset(pattern: Pattern, work: number, beat: Laid | undefined): Laid | undefined {
  const best = createBestFew();
  const perLay = Math.max(1, Math.min(pattern.sites.length, 2 * pattern.options.count));
  const most = Math.floor(Math.sqrt((TRIM_LOOK_SHARE * work) / perLay));
  const side = Math.min(MOST_OFFSETS, Math.max(LEAST_OFFSETS, most));
  for (let a = 0; a < side; a++) {
    for (let b = 0; b < side; b++)
      best.offer(layAt(pattern, inCell(pattern, (a + 0.5) / side, (b + 0.5) / side)));
  }
  for (const laid of best.kept().slice(0, 1)) {
    for (const offset of sideContacts(laid)) best.offer(layAt(pattern, offset));
  }
  let found = beat;
  for (const laid of best.kept()) {
    if (pattern.spent.calls > work) {
      found = bestOf(found, laid);
      continue;
    }
    found = bestOf(found, climbed(laid, side));
  }
  return found;
}

/** The few best that differ. */
function createBestFew(): { offer(laid: Laid | undefined): void; kept(): Laid[] } {
  let kept: Laid[] = [];
  return {
    offer: (laid) => {
      if (laid === undefined) return;
      const at = kept.findIndex((other) => bestOf(other, laid) === laid);
      kept.splice(at < 0 ? kept.length : at, 0, laid);
      kept = kept.slice(0, OFFSETS_CLIMBED);
    },
    kept: () => kept,
  };
}

function inCell({ u, v }: Pattern, s: number, t: number): Point {
  return { x: (s - 0.5) * u.x + (t - 0.5) * v.x, y: (s - 0.5) * u.y + (t - 0.5) * v.y };
}

/**
 * Offsets at which some piece touches the sheet's sides: pieces of every member are slid to the end that is used up
 * first and to either side, until they are stopped.
 */
function sideContacts({ pattern, offset, places }: Laid): Point[] {
  const { useFrom } = pattern.options;
  const toEnd = { x: -useFrom.x + 0, y: -useFrom.y + 0 };
  const offsets: Point[] = [];
  pattern.members.forEach((_, member) => {
    const own = places.filter((site) => site.member === member);
    for (const site of spreadOut(own)) {
      for (const sign of [-1, 1]) {
        const toSide = { x: sign * toEnd.y, y: -sign * toEnd.x };
        const atSide = slid(pattern, site, slid(pattern, site, offset, toEnd), toSide);
        offsets.push(atSide, slid(pattern, site, atSide, toEnd));
        offsets.push(slid(pattern, site, slid(pattern, site, offset, toSide), toEnd));
      }
    }
  });
  return offsets.map((one) => reduceOffset(pattern, one));
}

function spreadOut(sites: readonly Site[]): Site[] {
  if (sites.length <= SLID_PIECES) return [...sites];
  return Array.from(
    { length: SLID_PIECES },
    (_, i) => sites[Math.round((i * (sites.length - 1)) / (SLID_PIECES - 1))]!,
  );
}

/** The offset after sliding until the piece of the site is stopped; steps are shorter than a piece, so none is jumped. */
function slid(pattern: Pattern, site: Site, offset: Point, direction: Point): Point {
  const { box } = pattern.members[site.member]!;
  const at = (way: number): Point => ({ x: offset.x + way * direction.x, y: offset.y + way * direction.y });
  let step = Math.min(box.maxX - box.minX, box.maxY - box.minY) / 2;
  let way = 0;
  while (siteFits(pattern, site, at(way + step))) way += step;
  for (; step > SLIDE_FINEST_MM; step /= 2) if (siteFits(pattern, site, at(way + step))) way += step;
  return at(way);
}

/** Better offsets nearby, along the sheet's use and across, by steps that are halved. */
function climbed(start: Laid, side: number): Laid {
  const { pattern } = start;
  const { useFrom } = pattern.options;
  const { u, v } = pattern;
  let step = Math.sqrt(u.x * u.x + u.y * u.y + v.x * v.x + v.y * v.y) / (2 * side);
  let best = start;
  for (let halving = 0; halving < CLIMB_HALVINGS; halving++, step /= 2) {
    for (const [along, across] of [
      [-1, 0],
      [0, -1],
      [0, 1],
      [1, 0],
    ] as const) {
      const offset = {
        x: best.offset.x + step * (along * useFrom.x - across * useFrom.y),
        y: best.offset.y + step * (along * useFrom.y + across * useFrom.x),
      };
      best = bestOf(best, layAt(pattern, reduceOffset(pattern, offset), best))!;
    }
  }
  return best;
}

/** The whole layout pulled to the end that is used up first, as far as all its pieces fit; then what else fits. */
export function pulledToEnd(laid: Laid): Laid {
  const { pattern, places } = laid;
  const { useFrom } = pattern.options;
  const at = (way: number): Point => ({
    x: laid.offset.x - way * useFrom.x,
    y: laid.offset.y - way * useFrom.y,
  });
  let way = 0;
  const { u, v } = pattern;
  let step = (Math.abs(u.x) + Math.abs(u.y) + Math.abs(v.x) + Math.abs(v.y)) / 2;
  for (; step > SLIDE_FINEST_MM; step /= 2) {
    while (way < LONGEST_PULL_STEPS * step && places.every((site) => siteFits(pattern, site, at(way + step))))
      way += step;
  }
  const offset = at(way);
  const pulled: Laid = {
    ...laid,
    offset,
    reachMm: laid.reachMm - way * (useFrom.x * useFrom.x + useFrom.y * useFrom.y),
  };
  return bestOf(pulled, layAt(pattern, reduceOffset(pattern, offset), pulled))!;
}

/** A pull is some cells long at most, or a step is taken once. */
const LONGEST_PULL_STEPS = 1000;
