import { ROUNDING_SLACK_MM, SKIN_MM } from '../nest/constants.js';
import { isNearer } from '../nest/distance.js';
import { intervalEnds } from '../nest/slide.js';
import type { SlideAxis } from '../nest/slide.js';
import type { Soup } from '../nest/soup.js';
import { isInSoup } from '../nest/soup.js';
import type { LaneSpace, Standing } from './lane-space.js';
import type { Spans } from './spans.js';
import { withoutIntervals } from './spans.js';
import type { StrapShape } from './strap-kind.js';

/** A moving shape and what it must keep off, or within. */
interface Contact {
  readonly moving: Soup;
  readonly standing: Standing;
  readonly isContainer: boolean;
}

/**
 * Where the origin of a strap may lie along u while it lies on the line v: places that keep the edge, every void and
 * every need of the strap and of its parts, by their true outlines.
 */
export function leatherSpans(space: LaneSpace, shape: StrapShape, v: number, edgeMm: number): Spans {
  const { body } = shape;
  const edge = { soup: space.rings, distance: edgeMm + SKIN_MM };
  const range = [space.rings.minX - body.minX, space.rings.maxX - body.maxX];
  if (range[0]! > range[1]!) return [];
  return freeSpans(range, contactsOf(space, shape, edge), v);
}

/** What is left of the spans beside what lies there already. */
export function spansBeside(
  spans: Spans,
  shape: StrapShape,
  v: number,
  obstacles: readonly Standing[],
): Spans {
  if (spans.length === 0) return spans;
  const contacts = obstacles.map((standing) => ({ moving: shape.body, standing, isContainer: false }));
  return freeSpans(spans, contacts, v);
}

/** The proof of the same at one place. */
export function isFreeAt(
  space: LaneSpace,
  shape: StrapShape,
  u: number,
  v: number,
  edgeMm: number,
  obstacles: readonly Standing[],
): boolean {
  const edge = { soup: space.rings, distance: edgeMm + SKIN_MM };
  const contacts = contactsOf(space, shape, edge);
  for (const standing of obstacles) contacts.push({ moving: shape.body, standing, isContainer: false });
  return contacts.every(
    (contact) =>
      !isNearer(contact.moving, u, v, contact.standing.soup, contact.standing.distance - ROUNDING_SLACK_MM) &&
      isOnRightSide(contact, u, v),
  );
}

function contactsOf(space: LaneSpace, shape: StrapShape, edge: Standing): Contact[] {
  const contacts: Contact[] = [{ moving: shape.body, standing: edge, isContainer: true }];
  for (const standing of space.voids) contacts.push({ moving: shape.body, standing, isContainer: false });
  for (const { needClass, soup } of shape.needs) {
    const { bad, zone } = space.needs[needClass]!;
    for (const standing of bad) contacts.push({ moving: soup, standing, isContainer: false });
    if (zone !== undefined) contacts.push({ moving: soup, standing: zone, isContainer: true });
  }
  return contacts;
}

function freeSpans(range: Spans, contacts: readonly Contact[], v: number): Spans {
  const intervals: number[] = [];
  const near: Contact[] = [];
  for (const contact of contacts) {
    if (isApartAcross(contact, v)) {
      if (contact.isContainer) return [];
      continue;
    }
    near.push(contact);
    collectIntervals(contact, v, intervals);
  }
  const spans = withoutIntervals(range, intervals);
  const free: number[] = [];
  for (let s = 0; s < spans.length; s += 2) {
    // Outlines that keep apart stay inside, or outside, along the whole span: one place tells for all.
    const middle = (spans[s]! + spans[s + 1]!) / 2;
    if (near.every((contact) => isOnRightSide(contact, middle, v))) free.push(spans[s]!, spans[s + 1]!);
  }
  return free;
}

function isApartAcross({ moving, standing: { soup, distance } }: Contact, v: number): boolean {
  return moving.minY + v - distance > soup.maxY || moving.maxY + v + distance < soup.minY;
}

const ALONG: SlideAxis = { alongX: true, sign: 1 };

/** A distance this much less counts as kept, lest an exact fit be lost in the arithmetic; the proof forgives more. */
const EASE_MM = 1e-5;

/** Room before and behind, so that the travel holds every interval whole. */
const ROOM_MM = 1;

/**
 * Appends [lo, hi, …], the places along u at which some pair of edges is too near. The travel starts and ends beyond
 * reach of the standing rings, so that each pair gives both its ends, one after the other.
 */
function collectIntervals({ moving, standing }: Contact, v: number, into: number[]): void {
  const { soup } = standing;
  const distance = standing.distance - EASE_MM;
  const start = soup.minX - moving.maxX - distance - ROOM_MM;
  const reach = soup.maxX - moving.minX + distance + ROOM_MM - start;
  const ends = intervalEnds(moving, start, v, soup, distance, ALONG, reach);
  let last = into.length;
  for (let i = 0; i < ends.length; i += 2) {
    const lo = start + ends[i]!;
    const hi = start + ends[i + 1]!;
    // Pairs of neighbouring edges overlap mostly: joined at once, they need no sorting.
    if (last + 1 < into.length && lo < into[last + 1]! && hi > into[last]!) {
      into[last] = Math.min(into[last]!, lo);
      into[last + 1] = Math.max(into[last + 1]!, hi);
    } else {
      last = into.length;
      into.push(lo, hi);
    }
  }
}

function isOnRightSide({ moving, standing: { soup }, isContainer }: Contact, u: number, v: number): boolean {
  if (!isContainer) return !hasCornerIn(moving, u, v, soup) && !hasCornerIn(soup, -u, -v, moving);
  for (let r = 0; r + 1 < moving.ringStart.length; r++) {
    const i = moving.ringStart[r]!;
    if (!isInSoup(soup, moving.ax[i]! + u, moving.ay[i]! + v)) return false;
  }
  return !hasCornerIn(soup, -u, -v, moving);
}

/** One corner of each ring tells for the whole ring. */
function hasCornerIn(rings: Soup, du: number, dv: number, within: Soup): boolean {
  for (let r = 0; r + 1 < rings.ringStart.length; r++) {
    const i = rings.ringStart[r]!;
    if (isInSoup(within, rings.ax[i]! + du, rings.ay[i]! + dv)) return true;
  }
  return false;
}
