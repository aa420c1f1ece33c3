import type { Point, Ring } from '../types/shape.js';
import { visitNearEdges } from './near-edges.js';
import { isOnSegment, lineMeeting, segmentsCross, turnOf } from './orientation.js';

/**
 * How a ring meets itself. `crosses`: goes through itself. `overlaps`: runs along itself for a stretch, a spike that
 * folds back included. `touches`: comes up to itself at a point and turns away. `repeats`: one corner twice in a row.
 */
export type SelfContactKind = 'crosses' | 'overlaps' | 'touches' | 'repeats';

export interface SelfContact {
  readonly kind: SelfContactKind;
  readonly place: Point;
  /** Numbers of the two edges, the smaller first; edge i runs from corner i to the next one. */
  readonly edges: readonly [number, number];
}

/** The first place (by edge numbers) where a ring crosses or overlaps itself; touching and repeated corners may be. */
export function findSelfCrossing(
  ring: Ring,
): { readonly place: Point; readonly edges: readonly [number, number] } | undefined {
  const found = findSelfContacts(ring).find(({ kind }) => kind === 'crosses' || kind === 'overlaps');
  return found === undefined ? undefined : { place: found.place, edges: found.edges };
}

/** Every place where a ring meets itself, in the order of its edges; signs are exact. Takes about n log n. */
export function findSelfContacts(ring: Ring): SelfContact[] {
  const contacts: SelfContact[] = [];
  const edges = distinctEdges(ring, contacts);
  visitNearEdges(edges.corners, (i, j) => {
    const contact = contactOf(edges, i, j);
    if (contact !== undefined) contacts.push(contact);
  });
  return contacts.sort((a, b) => a.edges[0] - b.edges[0] || a.edges[1] - b.edges[1]);
}

interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly number: number;
}

/** Edges between corners that differ. */
interface Edges {
  readonly corners: Ring;
  /** Numbers of the corners in the ring; without, they are the same. */
  readonly numbers?: readonly number[];
}

/** Each repeated corner is told of, and left out. */
function distinctEdges(ring: Ring, contacts: SelfContact[]): Edges {
  const repeats = new Set<number>();
  for (let i = 0; i < ring.length; i++) {
    const next = i + 1 < ring.length ? i + 1 : 0;
    if (!samePlace(ring[i]!, ring[next]!)) continue;
    repeats.add(i);
    contacts.push({ kind: 'repeats', place: ring[i]!, edges: [i, next] });
  }
  if (repeats.size === 0) return { corners: ring };
  const numbers = ring.map((_, i) => i).filter((i) => !repeats.has(i));
  return { corners: numbers.map((i) => ring[i]!), numbers };
}

function edgeAt({ corners, numbers }: Edges, i: number): Edge {
  return { from: corners[i]!, to: corners[(i + 1) % corners.length]!, number: numbers?.[i] ?? i };
}

function contactOf(edges: Edges, i: number, j: number): SelfContact | undefined {
  const a = edgeAt(edges, i);
  const b = edgeAt(edges, j);
  const tell = (kind: SelfContactKind, place: Point): SelfContact => ({
    kind,
    place,
    edges: a.number < b.number ? [a.number, b.number] : [b.number, a.number],
  });
  const follows = j === i + 1;
  const closes = i === 0 && j === edges.corners.length - 1;
  if (follows || closes) {
    const [first, second] = follows ? [a, b] : [b, a];
    return foldsBack(first, second) ? tell('overlaps', first.to) : undefined;
  }
  if (segmentsCross(a.from, a.to, b.from, b.to)) {
    return tell('crosses', lineMeeting(a.from, a.to, b.from, b.to) ?? a.from);
  }
  if (runAlong(a, b)) return tell('overlaps', sharedPlace(a, b));
  return touchOf(edges, i, j, tell);
}

function foldsBack(first: Edge, second: Edge): boolean {
  if (turnOf(first.from, first.to, second.to) !== 0) return false;
  const dot =
    (first.to.x - first.from.x) * (second.to.x - second.from.x) +
    (first.to.y - first.from.y) * (second.to.y - second.from.y);
  return dot < 0;
}

function runAlong(a: Edge, b: Edge): boolean {
  if (turnOf(a.from, a.to, b.from) !== 0 || turnOf(a.from, a.to, b.to) !== 0) return false;
  const byX = Math.abs(a.to.x - a.from.x) >= Math.abs(a.to.y - a.from.y);
  const at = (p: Point) => (byX ? p.x : p.y);
  const from = Math.max(Math.min(at(a.from), at(a.to)), Math.min(at(b.from), at(b.to)));
  const to = Math.min(Math.max(at(a.from), at(a.to)), Math.max(at(b.from), at(b.to)));
  return to > from;
}

function sharedPlace(a: Edge, b: Edge): Point {
  if (isOnSegment(a.from, a.to, b.from)) return b.from;
  return isOnSegment(a.from, a.to, b.to) ? b.to : a.from;
}

/**
 * Two edges that meet at an end of one of them. Each end belongs to two edges, so only the edge that starts there
 * tells of it, and where both meet at their starts both strands are whole.
 */
function touchOf(
  edges: Edges,
  i: number,
  j: number,
  tell: (kind: SelfContactKind, place: Point) => SelfContact,
): SelfContact | undefined {
  const a = edgeAt(edges, i);
  const b = edgeAt(edges, j);
  if (isOnSegment(a.from, a.to, b.from) && !samePlace(a.to, b.from)) {
    const before = cornerBefore(edges, j);
    const through = samePlace(a.from, b.from) ? cornerBefore(edges, i) : a.from;
    return tell(passes(b.from, [through, a.to], [before, b.to]) ? 'crosses' : 'touches', b.from);
  }
  if (isOnSegment(b.from, b.to, a.from) && !samePlace(b.to, a.from) && !samePlace(b.from, a.from)) {
    const before = cornerBefore(edges, i);
    return tell(passes(a.from, [b.from, b.to], [before, a.to]) ? 'crosses' : 'touches', a.from);
  }
  return undefined;
}

function cornerBefore({ corners }: Edges, i: number): Point {
  return corners[(i + corners.length - 1) % corners.length]!;
}

function samePlace(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

type Strand = readonly [Point, Point];

/** True if, around `at`, the ends of one strand lie on different sides of the other. Shared directions don't count. */
function passes(at: Point, strand: Strand, other: Strand): boolean {
  const first = sectorSide(at, strand, other[0]);
  const second = sectorSide(at, strand, other[1]);
  return first * second < 0;
}

/** 1 if p lies within the clockwise turn about `at` from strand[0] to strand[1], -1 beyond, 0 on one of its rays. */
function sectorSide(at: Point, strand: Strand, p: Point): number {
  const [s, t] = strand;
  const fromStart = turnOf(at, s, p);
  const fromEnd = turnOf(at, t, p);
  if (fromStart === 0 && sameWay(at, s, p)) return 0;
  if (fromEnd === 0 && sameWay(at, t, p)) return 0;
  const wide = turnOf(at, s, t);
  if (wide > 0) return fromStart > 0 && fromEnd < 0 ? 1 : -1;
  if (wide < 0) return fromStart < 0 && fromEnd > 0 ? -1 : 1;
  // The strand runs straight through, or folds back on itself and has no inside.
  if (sameWay(at, s, t)) return -1;
  return fromStart > 0 ? 1 : -1;
}

function sameWay(at: Point, a: Point, b: Point): boolean {
  return (a.x - at.x) * (b.x - at.x) + (a.y - at.y) * (b.y - at.y) > 0;
}
