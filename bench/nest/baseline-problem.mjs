// What both baselines read of a problem: turned shapes with their needs, leather with its obstacles, copies.
// They know gap 0, no direction field, no fixed placements, and turns that the rule lists or multiples of 5 degrees.
import { growRing } from './grow-ring.mjs';
import { makeCrossShape, makeShape } from './line-search.mjs';

const TURN_STEP_DEG = 5;

/** Rings of more corners are laid as simpler ones that contain them, within this many mm: a minute must do. */
const MOST_CORNERS = 24;
const SIMPLER_MM = 2;

/** Angles at which an item is tried, degrees clockwise. */
export function turnsOf({ angleRule }) {
  if (angleRule.frame !== 'free') return angleRule.targetsDeg.map((target) => target - angleRule.arrowDeg);
  return Array.from({ length: 360 / TURN_STEP_DEG }, (_, i) => i * TURN_STEP_DEG);
}

/** An item with few corners. */
export function simplerItem(item) {
  const parts = item.parts.map((part) => ({ ...part, areas: part.areas.map(simplerRegion) }));
  return { ...item, region: simplerRegion(item.region), parts };
}

/** Contains the region: the outer ring grows, openings shrink. */
function simplerRegion({ outer, openings }) {
  return {
    outer: growRing(outer, SIMPLER_MM, MOST_CORNERS),
    openings: openings.map((ring) => growRing(ring, SIMPLER_MM, MOST_CORNERS)),
  };
}

/** The item's body, and each area with a need of its own, turned about (0, 0). */
export function turnItem(item, turnDeg) {
  const { sin, cos } = sinCos(turnDeg);
  const turn = (ring) => ring.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
  const ringsOf = ({ outer, openings }) => [outer, ...openings].map(turn);
  const parts = item.parts.flatMap(({ areas, need }) =>
    areas.map((area) => ({ need, rings: ringsOf(area) })),
  );
  return shapesOf(ringsOf(item.region), item.need, parts, turnDeg);
}

/** `body` lies against everything, `needs` (the body among them) against leather that is not good enough. */
export function shapesOf(rings, need, parts, turnDeg) {
  const needs = [{ rings, need }, ...parts].map(({ rings: own, need: { maxGrade } }) => ({
    maxGrade,
    shape: makeShape(own),
    cross: makeCrossShape(own),
  }));
  return { turnDeg, rings, body: needs[0].shape, cross: needs[0].cross, needs };
}

/** Shapes of a sheet. Every zone stands for itself: which item minds it, its needs tell. */
export function readLand(sheet) {
  const solid = (rings) => ({ shape: makeShape(rings), cross: makeCrossShape(rings) });
  const zones = sheet.qualities.flatMap(({ areas, grade }) =>
    areas.map(simplerRegion).map(({ outer, openings }) => ({ grade, ...solid([outer, ...openings]) })),
  );
  const reversed = (ring) => [...ring].reverse();
  // Seen from outside, the outline is an opening: it shrinks.
  const outer = reversed(growRing(reversed(sheet.region.outer), SIMPLER_MM, MOST_CORNERS));
  const openings = sheet.region.openings.map((ring) => growRing(reversed(ring), SIMPLER_MM, MOST_CORNERS));
  return {
    id: sheet.id,
    outer: solid([outer]),
    openings: openings.map((ring) => solid([ring])),
    zones,
  };
}

/** All copies, as the problem counts them. */
export function copiesOf({ setKinds }) {
  return setKinds.flatMap(({ sets, members }) =>
    Array.from({ length: sets }, (_, s) =>
      members.flatMap(({ item, count }) =>
        Array.from({ length: count }, (__, c) => ({ item, set: s + 1, copy: c + 1 })),
      ),
    ).flat(),
  );
}

/** Copies by falling size, copies of one item together; ties in the order of the problem. */
export function bySize(problem, sizeOf) {
  const rank = new Map(problem.items.map((item, i) => [item.id, { size: sizeOf(item), i }]));
  return copiesOf(problem).sort((a, b) => {
    const [one, other] = [rank.get(a.item), rank.get(b.item)];
    return other.size - one.size || one.i - other.i || a.set - b.set || a.copy - b.copy;
  });
}

/** Stored numbers: 0.001 mm. */
export function roundMm(value) {
  return Math.round(value * 1000) / 1000;
}

/** Where a turned shape's ring lies after its placement was rounded. */
export function moveRings(rings, x, y) {
  return rings.map((ring) => ring.map((p) => ({ x: p.x + x, y: p.y + y })));
}

const TERMS = 14;

/** Sine and cosine by their series within an eighth turn, the same bits everywhere; exact at quarter turns. */
export function sinCos(deg) {
  const turned = ((deg % 360) + 360) % 360;
  const quarter = Math.round(turned / 90);
  const angle = ((turned - 90 * quarter) * Math.PI) / 180;
  let [sin, cos, term] = [0, 0, 1];
  for (let k = 0; k < TERMS; k++) {
    if (k % 2 === 0) cos += k % 4 === 0 ? term : -term;
    else sin += k % 4 === 1 ? term : -term;
    term = (term * angle) / (k + 1);
  }
  const turns = [
    { sin, cos },
    { sin: cos, cos: -sin },
    { sin: -sin, cos: -cos },
    { sin: -cos, cos: sin },
  ];
  return turns[quarter % 4];
}
