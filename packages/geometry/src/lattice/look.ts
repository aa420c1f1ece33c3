import type { Point, Ring } from '../types/shape.js';
import {
  LEAST_ROW_VECTORS,
  LEAST_TURNED_PLACES,
  LOOK_WORK,
  MOST_ROW_VECTORS,
  MOST_TURNED_PLACES,
  OVERLAP_MM,
  ROW_SHIFTS,
  STARTS_TIGHTENED,
} from './constants.js';
import { cornerContacts, isFree, rayContacts } from './contacts.js';
import type { MovedParts } from './contacts.js';
import { negatedParts } from './forbidden.js';
import type { ForbiddenParts } from './forbidden.js';
import type { LatticeRules } from './lattice.js';
import { rowDistances, rowFrame } from './rows.js';
import { createStartList } from './start-list.js';
import type { Start, StartList } from './start-list.js';

/** Distances that are looked at for one shift: the lowest may fail against the row after next. */
const DISTANCES_TRIED = 3;

/** Corner contacts that tell shifts of their own, so that rows which only fit exactly are found. */
const SHIFTS_FROM_CORNERS = 8;

const ORIGIN: Point = { x: 0, y: 0 };

/** Good starts among all lattices of moved copies, best first. */
export function lookForSingle(rules: LatticeRules, ring: Ring): Start[] {
  const starts = createStartList(rules, STARTS_TIGHTENED);
  const layers = [{ parts: rules.moved, dx: 0, dy: 0 }];
  const corners = movedCorners(rules, ring);
  const vectors = rowVectors(layers, rules.gap, corners, 2 * MOST_ROW_VECTORS);
  lookAlong({ rules, layers, vectors, corners, turned: undefined }, starts);
  return starts.kept();
}

/** Good starts among all lattices of a piece and its half turn, best first. */
export function lookForDouble(rules: LatticeRules, ring: Ring): Start[] {
  const starts = createStartList(rules, STARTS_TIGHTENED);
  const { moved, turned, gap } = rules;
  const back = negatedParts(turned);
  const corners = movedCorners(rules, ring);
  const shifts = ROW_SHIFTS + 2 * Math.min(SHIFTS_FROM_CORNERS, corners.length);
  const lines = MOST_TURNED_PLACES * MOST_ROW_VECTORS * shifts;
  // Twice: a line meets the parts of about two pieces of a row.
  const share = Math.min(1, Math.sqrt(LOOK_WORK / (2 * lines * (edgeCount(moved) + 2 * edgeCount(turned)))));
  const places = Math.max(LEAST_TURNED_PLACES, Math.round(MOST_TURNED_PLACES * share));
  const vectorCount = Math.max(LEAST_ROW_VECTORS, Math.round(MOST_ROW_VECTORS * share));
  for (const place of turnedPlaces(rules, ring, places)) {
    const layers: MovedParts[] = [
      { parts: moved, dx: 0, dy: 0 },
      { parts: turned, dx: -place.x, dy: -place.y },
      { parts: back, dx: place.x, dy: place.y },
    ];
    const own = corners.filter((u) => isFree(layers, u, rules));
    lookAlong(
      { rules, layers, vectors: rowVectors(layers, gap, own, vectorCount), corners: own, turned: place },
      starts,
    );
  }
  return starts.kept();
}

function edgeCount({ firstEdge, count }: ForbiddenParts): number {
  return firstEdge[count]!;
}

/** Places of the half-turned copy at which it touches the piece, half of them corner on corner if there are so many. */
function turnedPlaces({ turned, gap }: LatticeRules, ring: Ring, most: number): Point[] {
  const opposite = ring.map((p) => ({ x: -p.x, y: -p.y }));
  const corners = gap > 0 ? [] : cornerContacts(turned, ring, opposite, ORIGIN, Math.round(most / 2));
  const rays = most - corners.length;
  const layers = [{ parts: turned, dx: 0, dy: 0 }];
  return [...corners, ...rayContacts(layers, ORIGIN, { gap, turnDeg: 360, rays }).slice(0, 2 * rays)];
}

/** Places of a moved copy, corner on corner, one of every two opposite ones. With a gap there are none. */
function movedCorners({ moved, gap }: LatticeRules, ring: Ring): Point[] {
  if (gap > 0) return [];
  return cornerContacts(moved, ring, ring, ORIGIN, 4 * MOST_ROW_VECTORS).filter(
    ({ x, y }) => y > OVERLAP_MM || (y >= -OVERLAP_MM && x > 0),
  );
}

/** Lattice vectors along which the pieces of a row touch. */
function rowVectors(
  layers: readonly MovedParts[],
  gap: number,
  corners: readonly Point[],
  most: number,
): Point[] {
  const chosen = corners.slice(0, Math.round(most / 2));
  const rays = Math.max(4, most - chosen.length);
  return [...chosen, ...rayContacts(layers, ORIGIN, { gap, turnDeg: 180, rays }).slice(0, 2 * rays)];
}

interface Look {
  readonly rules: LatticeRules;
  readonly layers: readonly MovedParts[];
  readonly vectors: readonly Point[];
  readonly corners: readonly Point[];
  readonly turned: Point | undefined;
}

function lookAlong(look: Look, starts: StartList): void {
  const { rules, layers, vectors, turned } = look;
  const pieces = turned === undefined ? 1 : 2;
  for (const u of vectors) {
    const frame = rowFrame(layers, u, rules.gap);
    const least = (pieces * rules.areaMm2 * (1 - 1e-9)) / frame.lengthMm;
    for (const shift of shiftsOf(look, frame.along, frame.lengthMm)) {
      const limit = (pieces * starts.worstAreaMm2()) / frame.lengthMm;
      for (const h of rowDistances(frame, shift, { least, limit, most: DISTANCES_TRIED })) {
        const v = {
          x: shift * frame.along.x + h * frame.across.x,
          y: shift * frame.along.y + h * frame.across.y,
        };
        if (starts.offer(turned === undefined ? { u, v } : { u, v, turned })) break;
      }
    }
  }
}

function shiftsOf({ corners }: Look, along: Point, lengthMm: number): number[] {
  const even = Array.from({ length: ROW_SHIFTS }, (_, i) => (lengthMm * i) / ROW_SHIFTS);
  const own = corners.slice(0, SHIFTS_FROM_CORNERS).flatMap(({ x, y }) => {
    const s = x * along.x + y * along.y;
    // Either of the two opposite places may be the one on the next row's side.
    return [s, -s].map((one) => one - lengthMm * Math.floor(one / lengthMm));
  });
  return [...even, ...own];
}
