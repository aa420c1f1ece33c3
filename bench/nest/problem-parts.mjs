// What all readers share: how an instance becomes a NestProblem (packages/geometry/src/types/problem.ts).
import { findSelfContacts } from '@hidebound/geometry';

export const ANY_LEATHER = { maxGrade: 9, strong: false };
export const FREE = { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 0, modulo: 360 };

/** Allowed turns against the sheet; `undefined`: any. */
export function angleRule(allowedDeg) {
  if (allowedDeg === undefined) return FREE;
  return { frame: 'sheet', arrowDeg: 0, targetsDeg: allowedDeg, toleranceDeg: 0, modulo: 360 };
}

/** `--turns` for files that tell no rule: as drawn, quarter turns, eighths, or any angle. */
export function turnsNamed(name) {
  const steps = { fixed: 360, quarter: 90, eighth: 45 };
  if (name === 'free') return undefined;
  const step = steps[name];
  if (step === undefined) throw new Error(`--turns is fixed, quarter, eighth or free, not "${name}"`);
  return Array.from({ length: 360 / step }, (_, i) => i * step);
}

export function makeItem(id, outer, sheets, more = {}) {
  return {
    id,
    region: { outer, openings: [] },
    need: ANY_LEATHER,
    parts: [],
    angleRule: FREE,
    value: 1,
    priority: 0,
    sheets: sheets.map((sheet) => sheet.id),
    isFace: false,
    ...more,
  };
}

export function makeSheet(id, region, more = {}) {
  return { id, region, qualities: [], lot: id, useFrom: { x: 1, y: 0 }, ...more };
}

export function rectangle(width, height) {
  const outer = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return { outer, openings: [] };
}

/** All copies in one set, as the literature asks for them. */
export function oneSet(demands) {
  const members = demands.map(([item, count]) => ({ item, count }));
  return [{ id: 'all', sets: 1, members, value: 1, priority: 0, keep: 'nothing', beside: [] }];
}

/** Each copy a set of its own, so that a choice can be made among them; `sets` may be `many`. */
export function setsOfOne(demands) {
  return demands.map(([item, sets, value]) => {
    return { id: item, sets, members: [{ item, count: 1 }], value, priority: 0, keep: 'nothing', beside: [] };
  });
}

export function makeProblem(parts) {
  return {
    fixed: [],
    distances: { gap: 0, edge: 0, void: 0 },
    budget: { seed: 1, streams: 1 },
    ...parts,
  };
}

/** Plain words on rings that touch or cross themselves: they are used as they are. */
export function selfContactNotes(named) {
  return named.flatMap(([name, ring]) => {
    const count = findSelfContacts(ring).length;
    return count === 0 ? [] : [`${name} touches or crosses itself at ${count} place${count > 1 ? 's' : ''}`];
  });
}
