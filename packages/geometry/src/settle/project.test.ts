import { describe, expect, it } from 'vitest';
import { createRandom } from '../number/random.js';
import { createActiveSet } from './active-set.js';
import { PLAIN_LIMITS, project } from './project.js';
import { addRow, createRows, ROW_WIDTH, setEntry, slackOf } from './rows.js';
import type { Rows } from './rows.js';

/** Rows of chance between bodies, all of which hold at `inside`; some of them twice, and in pairs that leave no room. */
function randomRows(seed: number, bodies: number, count: number): { rows: Rows; start: Float64Array } {
  const random = createRandom(seed);
  const inside = Float64Array.from({ length: 2 * bodies }, () => random.between(-50, 50));
  const rows = createRows(4);
  while (rows.count < count) {
    const i = random.integer(bodies);
    const j = random.integer(bodies);
    const x = random.between(-1, 1);
    const y = random.integer(4) === 0 ? 0 : random.between(-1, 1);
    const slack = random.integer(3) === 0 ? 0 : random.between(0, 20);
    const signs = random.integer(5) === 0 ? [1, -1] : [1];
    for (const sign of signs) {
      const row = addRow(rows, 0);
      const length = Math.sqrt(x * x + y * y);
      const entries = i === j ? [2 * i, 2 * i + 1] : [2 * i, 2 * i + 1, 2 * j, 2 * j + 1];
      entries.forEach((column, e) => {
        const value = ((e % 2 === 0 ? x : y) * (e < 2 ? sign : -sign)) / length;
        setEntry(rows, row, e, column, value);
      });
      rows.bound[row] = slackOf(rows, inside, row) - (signs.length > 1 ? 0 : slack);
    }
  }
  return { rows, start: Float64Array.from(inside, (at) => at + random.between(-30, 30)) };
}

/** Judge: Dykstra's alternating projections (Dykstra 1983), slow and simple: it closes in on the nearest point. */
function nearestBySweeps(rows: Rows, start: Float64Array, sweeps: number): Float64Array {
  const place = start.slice();
  const pushed = new Float64Array(rows.count);
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (let k = 0; k < rows.count; k++) {
      let lengthSq = 0;
      for (let e = k * ROW_WIDTH; e < (k + 1) * ROW_WIDTH; e++) lengthSq += rows.value[e]! ** 2;
      const push = Math.max(-pushed[k]!, -slackOf(rows, place, k) / lengthSq);
      pushed[k] = pushed[k]! + push;
      for (let e = k * ROW_WIDTH; e < (k + 1) * ROW_WIDTH; e++) {
        const column = rows.column[e]!;
        place[column] = place[column]! + push * rows.value[e]!;
      }
    }
  }
  return place;
}

function distance(a: Float64Array, b: Float64Array): number {
  return Math.sqrt(a.reduce((sum, at, i) => sum + (at - b[i]!) ** 2, 0));
}

describe('projection on rows', () => {
  it('when rows hold together, all of them hold, at a place that multipliers of theirs prove to be the nearest', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { rows, start } = randomRows(seed, 6, 20);
      const place = start.slice();
      const set = createActiveSet(12);
      const { broken, isFinished } = project(set, rows, place, PLAIN_LIMITS);
      expect([broken, isFinished]).toEqual([0, true]);
      for (let k = 0; k < rows.count; k++) expect(slackOf(rows, place, k)).toBeGreaterThan(-1e-6);
      // Convex duality: the move is a sum of held rows' normals, none of them counted less than 0 times.
      const move = start.slice();
      for (let at = 0; at < set.count; at++) {
        const k = set.row[at]!;
        expect(set.multiplier[at]).toBeGreaterThan(-1e-6);
        expect(Math.abs(slackOf(rows, place, k))).toBeLessThan(1e-6);
        for (let e = k * ROW_WIDTH; e < (k + 1) * ROW_WIDTH; e++) {
          const column = rows.column[e]!;
          move[column] = move[column]! + set.multiplier[at]! * rows.value[e]!;
        }
      }
      expect(distance(move, place), `seed ${seed}`).toBeLessThan(1e-5);
    }
  });

  it('when there is some room, it is the point that slow sweeps come to', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { rows, start } = randomRows(seed, 6, 9);
      const place = start.slice();
      project(createActiveSet(12), rows, place, PLAIN_LIMITS);
      expect(distance(place, nearestBySweeps(rows, start, 20_000)), `seed ${seed}`).toBeLessThan(1e-3);
    }
  });

  it('when two rows contradict each other, one is left broken and the rest hold', () => {
    const rows = createRows(4);
    setEntry(rows, addRow(rows, 5), 0, 0, 1);
    setEntry(rows, addRow(rows, -4), 0, 0, -1);
    setEntry(rows, addRow(rows, 7), 0, 1, 1);
    const place = Float64Array.of(0, 0);
    const { broken } = project(createActiveSet(2), rows, place, PLAIN_LIMITS);
    expect(broken).toBe(1);
    expect([...place]).toEqual([5, 7]);
  });

  it('when they contradict each other by less than half a micrometre, both are loosened alike', () => {
    const rows = createRows(4);
    setEntry(rows, addRow(rows, 5), 0, 0, 1);
    setEntry(rows, addRow(rows, -4.9996), 0, 0, -1);
    const place = Float64Array.of(0, 0);
    expect(project(createActiveSet(2), rows, place, PLAIN_LIMITS).broken).toBe(0);
    expect(place[0]).toBeCloseTo(4.9998, 6);
  });

  it('when two rows all but parallel would throw a body far away, it stays where it was', () => {
    const rows = createRows(4);
    const tilt = 1e-4;
    const steep = addRow(rows, 1);
    setEntry(rows, steep, 0, 0, 1);
    const other = addRow(rows, 0);
    setEntry(rows, other, 0, 0, -1);
    setEntry(rows, other, 1, 1, tilt);
    const place = Float64Array.of(0, 0);
    const { isFinished } = project(createActiveSet(2), rows, place, { ...PLAIN_LIMITS, farthest: 100 });
    expect(isFinished).toBe(false);
    expect([...place]).toEqual([0, 0]);
    expect(project(createActiveSet(2), rows, place, PLAIN_LIMITS).isFinished).toBe(true);
    expect(place[1]).toBeCloseTo(1 / tilt, 3);
  });
});
