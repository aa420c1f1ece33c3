import { GRID_MM } from '../tolerance.js';
import { ROUNDING_SLACK_MM } from './constants.js';
import { boxesNear, isNearer } from './distance.js';
import { roundedPlace, toU, toV } from './frame.js';
import type { Obstacle } from './sheet-space.js';
import type { Place, SheetState } from './sheet-state.js';
import { gapBetween } from './sheet-state.js';
import type { SlideAxis, SlideState } from './slide.js';
import { extendEscape, intervalEnds, limitSlide } from './slide.js';
import type { Soup } from './soup.js';
import { isInSoup } from './soup.js';
import type { Variant } from './variant.js';

/** How far along and across a piece slides to touch something, in mm. */
const SLIDE_REACH_MM = 30;

/** How far a piece may be pushed to get free of what the lattice missed, in pitches. */
const ESCAPE_PITCHES = 2;

/** A slide after another one takes a distance this much less as kept, lest it be stuck by its own arithmetic. */
const SLIDE_EASE_MM = 1e-5;

const SLIDE_ROUNDS = 3;

const BACK_U: SlideAxis = { alongX: true, sign: -1 };
const ON_U: SlideAxis = { alongX: true, sign: 1 };
const BACK_V: SlideAxis = { alongX: false, sign: -1 };
const ON_V: SlideAxis = { alongX: false, sign: 1 };

/** `thorough` also looks for places that are exact fits both ways. */
export type PlaceEffort = 'quick' | 'thorough';

/** Rings that move, rings that stand, and the distance between them. */
interface Contact {
  readonly moving: Soup;
  readonly standing: Soup;
  readonly distance: number;
}

/**
 * Makes a lattice place exact: pushes the piece free, slides it towards small u and across until it touches,
 * rounds the place and proves it. Undefined if no valid place is near.
 */
export function exactPlace(
  state: SheetState,
  variant: Variant,
  u0: number,
  v0: number,
  effort: PlaceEffort = 'quick',
): Place | undefined {
  const contacts = contactsNear(state, variant, u0, v0);
  const start = freePlace(contacts, u0, v0, state.space.lattice.pitch, effort);
  if (start === undefined) return undefined;
  const { u, v } = settle(contacts, start.u, start.v);
  return provenPlace(state, variant, u, v);
}

/** The same without the slide: where the piece lies free, as near as may be to the place that was looked at. */
export function unsettledPlace(
  state: SheetState,
  variant: Variant,
  u0: number,
  v0: number,
): Place | undefined {
  const contacts = contactsNear(state, variant, u0, v0);
  const start = freePlace(contacts, u0, v0, state.space.lattice.pitch, 'quick');
  return start === undefined ? undefined : provenPlace(state, variant, start.u, start.v);
}

function freePlace(
  contacts: readonly Contact[],
  u: number,
  v: number,
  pitch: number,
  effort: PlaceEffort,
): { u: number; v: number } | undefined {
  const most = ESCAPE_PITCHES * pitch;
  const onU = escape(contacts, u, v, ON_U, most);
  if (onU === 0) return { u, v };
  const onV = escape(contacts, u, v, ON_V, most);
  const backV = escape(contacts, u, v, BACK_V, most);
  const least = Math.min(onU, onV, backV);
  if (least > most) return effort === 'thorough' ? shiftedFree(contacts, u, v, most) : undefined;
  if (least === onU) return { u: u + onU, v };
  return { u, v: least === onV ? v + onV : v - backV };
}

/** Places across that are tried, the nearest first, when no single push frees a piece. */
const MOST_SHIFTS = 12;

/** Shifts that differ by less are one. */
const SAME_SHIFT_MM = 1e-4;

/**
 * Shifted across to where some edge would just touch another one, then pushed along: finds places that are exact
 * fits both ways.
 */
function shiftedFree(
  contacts: readonly Contact[],
  u: number,
  v: number,
  most: number,
): { u: number; v: number } | undefined {
  for (const shift of touchingShifts(contacts, u, v, most)) {
    const onU = escape(contacts, u, v + shift, ON_U, most, 2 * SLIDE_EASE_MM);
    const backU = escape(contacts, u, v + shift, BACK_U, most, 2 * SLIDE_EASE_MM);
    if (Math.min(onU, backU) > most) continue;
    return { u: backU <= onU ? u - backU : u + onU, v: v + shift };
  }
  return undefined;
}

function touchingShifts(contacts: readonly Contact[], u: number, v: number, most: number): number[] {
  const shifts: number[] = [];
  for (const { moving, standing, distance } of contacts) {
    for (const end of intervalEnds(moving, u, v - most, standing, distance - SLIDE_EASE_MM, ON_V, 2 * most)) {
      const shift = end - most;
      if (!shifts.some((other) => Math.abs(other - shift) < SAME_SHIFT_MM)) shifts.push(shift);
    }
  }
  shifts.sort((a, b) => Math.abs(a) - Math.abs(b) || a - b);
  return shifts.slice(0, MOST_SHIFTS);
}

/** Travel after which nothing is too near; more than `most` if there is none within it. */
function escape(
  contacts: readonly Contact[],
  u: number,
  v: number,
  axis: SlideAxis,
  most: number,
  ease = SLIDE_EASE_MM,
): number {
  const state: SlideState = { travel: 0, blocked: false };
  let again = true;
  while (again && state.travel <= most) {
    again = false;
    for (const { moving, standing, distance } of contacts) {
      if (extendEscape(moving, u, v, standing, distance - ease, axis, most, state)) again = true;
      if (state.travel > most) break;
    }
  }
  return state.travel;
}

function settle(contacts: readonly Contact[], u0: number, v0: number): { u: number; v: number } {
  let u = u0;
  let v = v0;
  let ease = 3 * SLIDE_EASE_MM;
  u -= slide(contacts, u, v, BACK_U, ease) ?? 0;
  for (let round = 0; round < SLIDE_ROUNDS; round++) {
    ease += SLIDE_EASE_MM;
    const on = slide(contacts, u, v, ON_V, ease) ?? SLIDE_REACH_MM;
    const back = slide(contacts, u, v, BACK_V, ease) ?? SLIDE_REACH_MM;
    const least = Math.min(on, back);
    if (least < SLIDE_REACH_MM) v += on <= back ? on : -back;
    ease += SLIDE_EASE_MM;
    const moved = slide(contacts, u, v, BACK_U, ease) ?? 0;
    u -= moved;
    if (moved < GRID_MM) break;
  }
  return { u, v };
}

/** Travel until something is touched, at most the reach; undefined if something is too near at the start. */
function slide(
  contacts: readonly Contact[],
  u: number,
  v: number,
  axis: SlideAxis,
  ease: number,
): number | undefined {
  const state: SlideState = { travel: SLIDE_REACH_MM, blocked: false };
  for (const { moving, standing, distance } of contacts) {
    limitSlide(moving, u, v, standing, distance - ease, axis, state);
    if (state.blocked) return undefined;
  }
  return state.travel;
}

/** All that a variant near a place could touch while it slides. */
function contactsNear(state: SheetState, variant: Variant, u: number, v: number): Contact[] {
  const contacts: Contact[] = [];
  const push = (moving: Soup, { soup, distance }: Obstacle): void => {
    if (boxesNear(moving, u, v, soup, distance + 2 * SLIDE_REACH_MM)) {
      contacts.push({ moving, standing: soup, distance });
    }
  };
  const { space } = state;
  push(variant.body, space.edge);
  for (const obstacle of space.voids) push(variant.body, obstacle);
  for (const other of state.laid) {
    push(variant.body, { soup: other.standing, distance: gapBetween(state, variant, other.variant) });
  }
  for (const { needClass, soup } of variant.needs) {
    const need = space.needs[needClass]!;
    for (const obstacle of need.bad) push(soup, obstacle);
    if (need.zone !== undefined) push(soup, need.zone);
  }
  return contacts;
}

/** Neighbours on the 0.001 mm grid, the rounded place itself first. */
const NUDGES: readonly (readonly [number, number])[] = [
  [0, 0],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
];

function provenPlace(state: SheetState, variant: Variant, u: number, v: number): Place | undefined {
  const { frame, index } = state.space;
  for (const [du, dv] of NUDGES) {
    const { x, y } = roundedPlace(frame, u + du * GRID_MM, v + dv * GRID_MM);
    if (isFreeAt(state, variant, x, y)) return { variant, sheet: index, x, y };
  }
  return undefined;
}

/** True if the piece keeps every distance and lies on leather that is good enough. Rules about angles are apart. */
export function isFreeAt(state: SheetState, variant: Variant, x: number, y: number): boolean {
  const { space } = state;
  const u = toU(space.frame, x, y);
  const v = toV(space.frame, x, y);
  const { body } = variant;
  if (!staysInside(body, u, v, space.edge) || !needsHold(state, variant, u, v)) return false;
  for (const obstacle of space.voids) if (!keepsOff(body, u, v, obstacle)) return false;
  for (const other of state.laid) {
    const distance = gapBetween(state, variant, other.variant);
    if (!keepsOff(body, u, v, { soup: other.standing, distance })) return false;
  }
  return true;
}

function needsHold(state: SheetState, variant: Variant, u: number, v: number): boolean {
  for (const { needClass, soup } of variant.needs) {
    const need = state.space.needs[needClass]!;
    for (const obstacle of need.bad) if (!keepsOff(soup, u, v, obstacle)) return false;
    if (need.zone !== undefined && !staysInside(soup, u, v, need.zone)) return false;
  }
  return true;
}

/** No edges too near, and neither within the other. Edges that keep apart leave each ring on one side. */
function keepsOff(moving: Soup, u: number, v: number, { soup, distance }: Obstacle): boolean {
  if (!boxesNear(moving, u, v, soup, distance)) return true;
  if (isNearer(moving, u, v, soup, distance - ROUNDING_SLACK_MM)) return false;
  return !hasCornerIn(moving, u, v, soup) && !hasCornerIn(soup, -u, -v, moving);
}

function staysInside(moving: Soup, u: number, v: number, { soup, distance }: Obstacle): boolean {
  if (moving.minX + u < soup.minX || moving.maxX + u > soup.maxX) return false;
  if (moving.minY + v < soup.minY || moving.maxY + v > soup.maxY) return false;
  if (isNearer(moving, u, v, soup, distance - ROUNDING_SLACK_MM)) return false;
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
