/** A strip with a few invented pieces, as the search by separation holds it, for the pictures of its steps. */
import { createRandom } from '@hidebound/geometry';
import { createLayout } from '../../../packages/geometry/dist/nest/layout.js';
import { intersectRegions } from '../../../packages/geometry/dist/shape/clipper.js';
import { buildScene, worldOf } from '../../../packages/geometry/dist/separate/world-of-layout.js';
import { put, refreshAll } from '../../../packages/geometry/dist/separate/world.js';
import { LOOK, line, region } from './drawing.mjs';

const SEED = 5;
export const WIDTH_MM = 400;
/** Room for the pieces at the start, as a share of what they need. */
const FIRST_DENSITY = 0.78;
const LONGEST_MM = 2000;

/** Corners in mm, and how many of each. */
const PIECES = [
  ['flap', 2, [0, 0, 150, 0, 150, 70, 120, 105, 75, 120, 30, 105, 0, 70]],
  ['gusset', 4, [0, 0, 45, 0, 70, 140, 52, 150, -7, 150, -25, 140]],
  ['yoke', 2, [0, 0, 130, 0, 130, 95, 85, 95, 85, 45, 45, 45, 45, 95, 0, 95]],
  ['tongue', 4, [0, 0, 38, 0, 38, 95, 19, 120, 0, 95]],
  ['corner', 4, [0, 0, 90, 0, 90, 30, 30, 90, 0, 90]],
];

function ringOf(flat) {
  return Array.from({ length: flat.length / 2 }, (_, i) => ({ x: flat[2 * i], y: flat[2 * i + 1] }));
}

function problem() {
  const anyLeather = { maxGrade: 0, strong: false };
  const angleRule = { frame: 'sheet', arrowDeg: 0, targetsDeg: [0, 90], toleranceDeg: 0, modulo: 180 };
  const outer = ringOf([0, 0, LONGEST_MM, 0, LONGEST_MM, WIDTH_MM, 0, WIDTH_MM]);
  const sheet = { id: 'strip', region: { outer, openings: [] }, qualities: [], lot: 'strip' };
  const set = { id: 'all', sets: 1, value: 1, priority: 0, keep: 'nothing', beside: [] };
  return {
    items: PIECES.map(([id, , corners]) => ({
      id,
      region: { outer: ringOf(corners), openings: [] },
      need: anyLeather,
      parts: [],
      angleRule,
      value: 1,
      priority: 0,
      sheets: ['strip'],
      isFace: false,
    })),
    setKinds: [{ ...set, members: PIECES.map(([item, count]) => ({ item, count })) }],
    sheets: [{ ...sheet, useFrom: { x: 1, y: 0 }, openLength: true }],
    fixed: [],
    distances: { gap: 0, edge: 0, void: 0 },
    objective: { mode: 'strip', keepMm: [0, 0] },
    budget: { seed: SEED, streams: 1 },
  };
}

/** Runs a generator to its end and returns what it returns. */
export function toEnd(work) {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** The strip with its pieces thrown on it. */
export function thrownStrip() {
  const layout = createLayout(problem());
  const scene = toEnd(buildScene(layout, layout.problem.distances));
  const random = createRandom(SEED);
  const { copies } = layout.demand;
  const world = worldOf(scene, copies, new Set(), random);
  world.mayLie.splice(0, world.count, ...copies.map(() => [0]));
  const areaMm2 = copies.reduce((sum, { prepared }) => sum + prepared.areaMm2, 0);
  const sheet = world.sheets[0];
  sheet.limit = areaMm2 / (WIDTH_MM * FIRST_DENSITY);
  for (let i = 0; i < world.count; i++) {
    const deg = 90 * random.integer(4);
    put(world, i, 0, deg, 0, 0);
    const { minX, maxX, minY, maxY } = world.turned[i].outline;
    const x = random.between(-minX, sheet.limit - maxX);
    const y = random.between(-minY, WIDTH_MM - maxY);
    put(world, i, 0, deg, x, y);
  }
  refreshAll(world);
  return { scene, world, areaMm2 };
}

/** The true outlines where the pieces lie now. */
export function outlines({ scene, world }) {
  return Array.from({ length: world.count }, (_, i) => {
    const kind = world.kindOf[i];
    const { outer } = scene.layout.prepared.items[kind].item.region;
    const { cos, sin, shape } = world.turned[i];
    return outer.map(({ x, y }) => {
      const [px, py] = [x - shape.centreX, y - shape.centreY];
      return { x: world.x[i] + px * cos - py * sin, y: world.y[i] + px * sin + py * cos };
    });
  });
}

const solid = (outer) => ({ outer, openings: [] });

/** Where outlines overlap. */
function overlaps(rings) {
  return rings.flatMap((one, i) =>
    rings.slice(i + 1).flatMap((other) => intersectRegions([solid(one)], [solid(other)])),
  );
}

/** Strip, pieces, overlaps in red, and the limit. */
export function drawStrip(view, rings, limitMm) {
  const strip = solid(ringOf([0, 0, limitMm, 0, limitMm, WIDTH_MM, 0, WIDTH_MM]));
  const fills = { fill: LOOK.piece, 'fill-opacity': 0.75, stroke: LOOK.pieceLine, 'stroke-width': 1 };
  return [
    region(view, strip, { fill: LOOK.leather }),
    ...rings.map((ring) => region(view, solid(ring), fills)),
    ...overlaps(rings).map((one) => region(view, one, { fill: LOOK.bad, 'fill-opacity': 0.75 })),
    line(view, { x: limitMm, y: 0 }, { x: limitMm, y: WIDTH_MM }, { stroke: LOOK.ink, 'stroke-width': 1.5 }),
  ].join('');
}
