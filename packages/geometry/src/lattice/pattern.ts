import { sinCosDeg } from '../number/trigonometry.js';
import { roundCoordinate } from '../point.js';
import { rotationDeg as turning, transformRing } from '../shape/affine.js';
import { growBox, ringBox } from '../shape/ring.js';
import type { Box, Point } from '../types/shape.js';
import { cross, memberRotationDeg, reducePlace } from './repeat.js';
import type { Repeat } from './repeat.js';
import type { LaidPiece, TrimOptions } from './trim.js';

/** A repeat turned as a whole, and the sites of its pieces over the box, before the pattern is moved. */
export interface Pattern {
  readonly patternDeg: number;
  readonly u: Point;
  readonly v: Point;
  readonly members: readonly PatternMember[];
  /** Sorted by how far a piece there reaches along `useFrom`; moving the pattern keeps the order. */
  readonly sites: readonly Site[];
  readonly options: TrimOptions;
  /** Calls of `fits` so far. */
  readonly spent: { calls: number };
}

export interface PatternMember {
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
  /** Of the turned piece, from its origin. */
  readonly box: Box;
  /** How far it reaches along `useFrom` from its origin. */
  readonly reachMm: number;
}

export interface Site {
  readonly x: number;
  readonly y: number;
  readonly member: number;
  readonly reachMm: number;
}

/** A pattern moved by an offset, and the sites that hold a piece then. */
export interface Laid {
  readonly pattern: Pattern;
  readonly offset: Point;
  readonly places: readonly Site[];
  readonly reachMm: number;
}

export function createPattern(repeat: Repeat, patternDeg: number, options: TrimOptions): Pattern {
  const { sin, cos } = sinCosDeg(patternDeg);
  const turn = ({ x, y }: Point): Point => ({ x: cos * x - sin * y, y: sin * x + cos * y });
  const u = turn(repeat.u);
  const v = turn(repeat.v);
  const { useFrom } = options;
  const members = repeat.members.map((member): PatternMember => {
    const rotationDeg = memberRotationDeg(member, patternDeg);
    const ring = transformRing(turning(rotationDeg), options.ring);
    const place = turn(member);
    return {
      x: place.x,
      y: place.y,
      rotationDeg,
      box: ringBox(ring),
      reachMm: Math.max(...ring.map((p) => p.x * useFrom.x + p.y * useFrom.y)),
    };
  });
  const sites = sitesOver(options.box, u, v, members, useFrom);
  return { patternDeg, u, v, members, sites, options, spent: { calls: 0 } };
}

/** All sites at which a piece can lie in the box for some offset within the cell about the origin. */
function sitesOver(box: Box, u: Point, v: Point, members: readonly PatternMember[], useFrom: Point): Site[] {
  const area = cross(u, v);
  const cell = (Math.abs(u.x) + Math.abs(u.y) + Math.abs(v.x) + Math.abs(v.y)) / 2;
  const sites: Site[] = [];
  members.forEach(({ x, y, box: own, reachMm }, member) => {
    const origins = growBox(
      {
        minX: box.minX - own.minX,
        minY: box.minY - own.minY,
        maxX: box.maxX - own.maxX,
        maxY: box.maxY - own.maxY,
      },
      cell + 1,
    );
    const corners = [
      { x: origins.minX - x, y: origins.minY - y },
      { x: origins.maxX - x, y: origins.minY - y },
      { x: origins.maxX - x, y: origins.maxY - y },
      { x: origins.minX - x, y: origins.maxY - y },
    ];
    const is = corners.map((corner) => cross(corner, v) / area);
    const js = corners.map((corner) => cross(u, corner) / area);
    for (let i = Math.floor(Math.min(...is)); i <= Math.ceil(Math.max(...is)); i++) {
      for (let j = Math.floor(Math.min(...js)); j <= Math.ceil(Math.max(...js)); j++) {
        const site = { x: x + i * u.x + j * v.x, y: y + i * u.y + j * v.y };
        if (site.x < origins.minX || site.x > origins.maxX) continue;
        if (site.y < origins.minY || site.y > origins.maxY) continue;
        sites.push({ ...site, member, reachMm: site.x * useFrom.x + site.y * useFrom.y + reachMm });
      }
    }
  });
  // Rounded, so that a row of equal reach keeps an order that doesn't hang on last digits.
  const key = (site: Site): number => Math.round(site.reachMm * 1e6);
  return sites.sort((a, b) => key(a) - key(b) || a.x - b.x || a.y - b.y);
}

/** True if the piece of the site, moved by the offset and rounded as stored, may lie there. */
export function siteFits(pattern: Pattern, site: Site, offset: Point): boolean {
  const { options, members, spent } = pattern;
  const { rotationDeg, box: own } = members[site.member]!;
  const x = roundCoordinate(site.x + offset.x);
  const y = roundCoordinate(site.y + offset.y);
  const { box } = options;
  if (x + own.minX < box.minX - OUT_MM || x + own.maxX > box.maxX + OUT_MM) return false;
  if (y + own.minY < box.minY - OUT_MM || y + own.maxY > box.maxY + OUT_MM) return false;
  spent.calls++;
  return options.fits(x, y, rotationDeg);
}

/** What lies within the box but for rounding is left to `fits` to judge. */
const OUT_MM = 0.002;

/** The pattern moved by the offset; `undefined` as soon as it can't be better than `beat`. */
export function layAt(pattern: Pattern, offset: Point, beat?: Laid): Laid | undefined {
  const { sites, options } = pattern;
  const { count, useFrom } = options;
  const shift = offset.x * useFrom.x + offset.y * useFrom.y;
  const places: Site[] = [];
  for (let k = 0; k < sites.length && places.length < count; k++) {
    const site = sites[k]!;
    if (beat !== undefined) {
      if (places.length + sites.length - k < beat.places.length) return undefined;
      if (beat.places.length >= count && site.reachMm + shift >= beat.reachMm) return undefined;
    }
    if (siteFits(pattern, site, offset)) places.push(site);
  }
  const last = places[places.length - 1];
  return { pattern, offset, places, reachMm: (last?.reachMm ?? 0) + shift };
}

/** More pieces, or as many that reach less far; of equals the first. */
export function bestOf(a: Laid | undefined, b: Laid | undefined): Laid | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  if (a.places.length !== b.places.length) return b.places.length > a.places.length ? b : a;
  return b.reachMm < a.reachMm - LEAST_BETTER_MM ? b : a;
}

const LEAST_BETTER_MM = 1e-6;

/** The same offset modulo the pattern's vectors. */
export function reduceOffset({ u, v }: Pattern, offset: Point): Point {
  return reducePlace(offset, u, v);
}

/** The pieces, rounded as stored, in the order of the sites. */
export function placesOf({ pattern, offset, places }: Laid): LaidPiece[] {
  return places.map((site) => ({
    x: roundCoordinate(site.x + offset.x),
    y: roundCoordinate(site.y + offset.y),
    rotationDeg: pattern.members[site.member]!.rotationDeg,
  }));
}
