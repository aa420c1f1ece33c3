import type { Point } from '../types/shape.js';
import { OVERLAP_MM, TIGHTEN_FIRST_SHARE, TIGHTEN_LAST_SHARE, TIGHTEN_STEPS } from './constants.js';
import { separate } from './forbidden.js';
import type { ForbiddenParts, Separation } from './forbidden.js';
import { latticeShortfall, reachOf, visitMoved, visitPlaces } from './lattice.js';
import type { Lattice, LatticeRules } from './lattice.js';
import { cross, reduceBasis, reducePlace } from './repeat.js';
import { solveLinearProgram } from './simplex.js';

/** A lattice is blown up by at most this to make it keep its rules; beyond, another start is better. */
const MOST_BLOW_UP = 1.6;
const BLOW_UP_HALVINGS = 50;

/** A step must gain this share of the cell's area, or it is the end. */
const LEAST_GAIN_SHARE = 1e-13;

/**
 * The lattice with its cell made as small as it goes by small steps, everything touching exactly (to 1e-7 mm) in the
 * end. Each step is a linear program: every two pieces that could meet are kept apart by a line that keeps them apart
 * now (so no step can make them overlap), and of the cell's area, which is not linear, the slope is taken. A lattice
 * that breaks its rules is blown up first; `undefined` if that takes too much.
 */
export function tightenLattice(rules: LatticeRules, start: Lattice): Lattice | undefined {
  let lattice = blownUp(rules, reduced(start));
  if (lattice === undefined) return undefined;
  let reach = TIGHTEN_FIRST_SHARE * rules.sizeMm;
  let later = false;
  let stalled = 0;
  for (let step = 0; step < TIGHTEN_STEPS && reach > TIGHTEN_LAST_SHARE * rules.sizeMm; step++) {
    const { next, promised } = bestStep(rules, lattice, {
      reach,
      later,
      wide: rules.corners === 'round' && rules.gap > 0,
    });
    const area = cross(lattice.u, lattice.v);
    if (promised <= LEAST_GAIN_SHARE * area) {
      // Nothing to gain between these lines. At corners there is another choice of lines; after that it is the end.
      if (++stalled > 1) break;
      later = !later;
      continue;
    }
    const gain = area - cross(next.u, next.v);
    if (gain > 0 && latticeShortfall(rules, next, -OVERLAP_MM) >= -OVERLAP_MM) {
      lattice = reduced(next);
      stalled = 0;
      reach = Math.min(gain > promised / 2 ? 2 * reach : reach, TIGHTEN_FIRST_SHARE * rules.sizeMm);
    } else {
      reach /= 4;
    }
  }
  return lattice;
}

function reduced(lattice: Lattice): Lattice {
  const [u, v] = reduceBasis(lattice.u, lattice.v);
  return lattice.turned === undefined ? { u, v } : { u, v, turned: reducePlace(lattice.turned, u, v) };
}

/** The lattice, scaled by the least factor found that makes it keep its rules. */
function blownUp(rules: LatticeRules, lattice: Lattice): Lattice | undefined {
  const keeps = (factor: number): boolean =>
    latticeShortfall(rules, scaled(lattice, factor), -OVERLAP_MM) >= -OVERLAP_MM;
  if (keeps(1)) return lattice;
  let low = 1;
  let high = 1.01;
  while (!keeps(high)) {
    low = high;
    high = 1 + 2 * (high - 1);
    if (high > MOST_BLOW_UP) return undefined;
  }
  for (let i = 0; i < BLOW_UP_HALVINGS && high - low > 1e-9; i++) {
    const middle = (low + high) / 2;
    if (keeps(middle)) high = middle;
    else low = middle;
  }
  return scaled(lattice, high);
}

function scaled({ u, v, turned }: Lattice, factor: number): Lattice {
  const by = (p: Point): Point => ({ x: factor * p.x, y: factor * p.y });
  return turned === undefined ? { u: by(u), v: by(v) } : { u: by(u), v: by(v), turned: by(turned) };
}

interface Step {
  readonly next: Lattice;
  /** What the slope says that the cell's area shrinks by. */
  readonly promised: number;
}

function bestStep(rules: LatticeRules, lattice: Lattice, options: Omit<BoundOptions, 'variables'>): Step {
  const { u, v, turned } = lattice;
  const variables = turned === undefined ? 4 : 6;
  const rows: number[] = [];
  const bounds: number[] = [];
  collectBounds(rules, lattice, { ...options, variables }, rows, bounds);
  // The area is u × v: its slope, the other way round because the program seeks the greatest.
  const objective = new Float64Array(variables);
  objective[0] = -v.y;
  objective[1] = v.x;
  objective[2] = u.y;
  objective[3] = -u.x;
  const x = solveLinearProgram({
    variables,
    objective,
    rows: Float64Array.from(rows),
    bounds: Float64Array.from(bounds),
    rowCount: bounds.length,
    reach: options.reach,
  });
  let promised = 0;
  for (let k = 0; k < 4; k++) promised += objective[k]! * x[k]!;
  const moved = (p: Point, k: number): Point => ({ x: p.x + x[k]!, y: p.y + x[k + 1]! });
  const next: Lattice =
    turned === undefined
      ? { u: moved(u, 0), v: moved(v, 2) }
      : { u: moved(u, 0), v: moved(v, 2), turned: moved(turned, 4) };
  return { next, promised };
}

interface BoundOptions {
  readonly reach: number;
  readonly later: boolean;
  readonly wide: boolean;
  readonly variables: number;
}

/** One row for each part that a place could run into within this step: -(n · move) <= how far it is kept off. */
function collectBounds(
  rules: LatticeRules,
  lattice: Lattice,
  options: BoundOptions,
  rows: number[],
  bounds: number[],
): void {
  const { moved, turned, gap } = rules;
  const { reach, variables } = options;
  const found: Separation = { nx: 0, ny: 0, offset: 0, distance: 0 };
  const add = (parts: ForbiddenParts, i: number, j: number, own: number, x: number, y: number): void => {
    const move = 1.5 * reach * (Math.abs(i) + Math.abs(j) + own);
    for (let k = 0; k < parts.count; k++) {
      const far = gap + move;
      if (x <= parts.minX[k]! - far || x >= parts.maxX[k]! + far) continue;
      if (y <= parts.minY[k]! - far || y >= parts.maxY[k]! + far) continue;
      separate(parts, k, x, y, found, options);
      if (found.distance - gap > move) continue;
      rows.push(-i * found.nx, -i * found.ny, -j * found.nx, -j * found.ny);
      if (variables === 6) rows.push(-own * found.nx, -own * found.ny);
      bounds.push(Math.max(0, found.distance - gap));
    }
  };
  visitMoved(lattice, reachOf(moved, rules) + 4 * reach, (i, j, x, y) => {
    add(moved, i, j, 0, x, y);
  });
  if (lattice.turned === undefined) return;
  visitPlaces(lattice, lattice.turned, reachOf(turned, rules) + 4 * reach, (i, j, x, y) => {
    add(turned, i, j, 1, x, y);
  });
}
