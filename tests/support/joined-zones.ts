import type { Sheet } from '@hidebound/geometry';
import type { Judge, Shape } from '../../packages/geometry/src/check/test-judge.js';

const joined = new WeakMap<Sheet, Map<string, Shape | undefined>>();

/**
 * The zones of these names on a sheet as one shape of the judge, `undefined` if there are none. Made once for each
 * sheet, because every piece asks for them, and joining them takes longer than all other looks at the piece.
 */
export function joinedZones(judge: Judge, sheet: Sheet, names: readonly string[]): Shape | undefined {
  const ofSheet = joined.get(sheet) ?? new Map<string, Shape | undefined>();
  joined.set(sheet, ofSheet);
  const key = JSON.stringify(names);
  if (!ofSheet.has(key)) ofSheet.set(key, join(judge, sheet, names));
  return ofSheet.get(key);
}

function join(judge: Judge, sheet: Sheet, names: readonly string[]): Shape | undefined {
  const [first, ...rest] = sheet.qualities
    .filter(({ zone }) => zone !== undefined && names.includes(zone))
    .flatMap(({ areas }) => areas.map((area) => judge.shapeOf(area)));
  return first === undefined ? undefined : rest.reduce((sum, zone) => judge.union(sum, zone), first);
}
