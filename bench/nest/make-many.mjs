// Many equal pieces, made at run time: regular pentagons, heptagons and octagons, and random convex polygons.
import { createRandom, sinCosDeg } from '@hidebound/geometry';
import { doubleLatticeDensity } from './double-lattice.mjs';
import { cleanRing, ringArea, ringDiameter } from './rings.mjs';
import { makeItem, makeProblem, makeSheet, rectangle, setsOfOne } from './problem-parts.mjs';

const REGULAR = { pentagons: 5, heptagons: 7, octagons: 8 };
const RANDOM_CONVEX = 3;

/** About so many pieces would lie on the sheet at full density: at least 200 do in any fair layout. */
const ROOM_FOR = 280;

/** Longest diameter of a piece, mm. */
const DIAMETER_MM = 100;

/** A random convex polygon is the hull of points in an ellipse of random slimness. */
const HULL_POINTS = 9;
const SLIMMEST = 0.4;

/** [name, maker] of each instance; the seed makes the random ones. */
export function manyInstances(seed) {
  const regular = Object.entries(REGULAR).map(([name, corners]) => {
    return [name, () => manyOf(name, regularRing(corners))];
  });
  const random = Array.from({ length: RANDOM_CONVEX }, (_, i) => {
    const name = `convex-${seed}-${i + 1}`;
    return [name, () => manyOf(name, randomConvexRing(createRandom(1000 * seed + i)))];
  });
  return [...regular, ...random];
}

function manyOf(name, raw) {
  const scale = DIAMETER_MM / ringDiameter(raw);
  const ring = cleanRing(raw.map(({ x, y }) => [roundMm(scale * x), roundMm(scale * y)]));
  const lattice = doubleLatticeDensity(ring);
  const side = Math.ceil(Math.sqrt((ROOM_FOR * ringArea(ring)) / lattice));
  const sheets = [makeSheet('sheet', rectangle(side, side))];
  const problem = makeProblem({
    items: [makeItem(name, ring, sheets, { value: ringArea(ring) })],
    setKinds: setsOfOne([[name, 'many', ringArea(ring)]]),
    sheets,
    // Each set is one piece, so this asks for as many pieces as fit.
    objective: { mode: 'sets', keepMm: [1, 1] },
  });
  return { name, problem, notes: [], lattice };
}

function roundMm(value) {
  return Math.round(1000 * value) / 1000;
}

function regularRing(corners) {
  return Array.from({ length: corners }, (_, i) => {
    const { sin, cos } = sinCosDeg((360 * i) / corners);
    return { x: cos, y: sin };
  });
}

function randomConvexRing(random) {
  const slim = SLIMMEST + (1 - SLIMMEST) * random.next();
  const points = Array.from({ length: HULL_POINTS }, () => {
    const { sin, cos } = sinCosDeg(360 * random.next());
    const radius = Math.sqrt(0.3 + 0.7 * random.next());
    return { x: radius * cos, y: radius * sin * slim };
  });
  return hull(points);
}

/** Monotone chain (Andrew 1979). */
function hull(points) {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  return [...chain(sorted), ...chain([...sorted].reverse())];
}

function chain(points) {
  const kept = [];
  for (const p of points) {
    while (kept.length >= 2 && turn(kept.at(-2), kept.at(-1), p) <= 0) kept.pop();
    kept.push(p);
  }
  return kept.slice(0, -1);
}

function turn(a, b, c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
