import { CLOSE_DENSITY } from './constants.js';
import type { Layout } from './layout.js';
import type { Random } from '../number/random.js';
import type { NestAnswer } from '../types/problem.js';

/** Sheets to lay everything on, one fewer than before. */
export interface FewerSheets {
  /** Sheets that share pieces: only theirs are laid anew. */
  readonly together: ReadonlySet<number>;
  /** Those of them that are kept in use. */
  readonly kept: ReadonlySet<number>;
}

/**
 * The sheets that might hold everything that lies on one sheet more: the largest ones of those that share pieces, and
 * after the first tries now and then another. Undefined where no group of sheets could do with fewer, at the density that
 * is thought possible.
 */
export function fewerSheets(
  layout: Layout,
  answer: NestAnswer,
  random: Random,
  tries: number,
): FewerSheets | undefined {
  const areas = new Map<number, number>();
  const items = new Map(layout.prepared.items.map((prepared) => [prepared.item.id, prepared]));
  for (const { item, sheet } of answer.placements) {
    const s = layout.sheetIndex.get(sheet)!;
    areas.set(s, (areas.get(s) ?? 0) + items.get(item)!.areaMm2);
  }
  const ways = sheetsTogether(layout).flatMap((together) => {
    const way = fewerOf(layout, together, areas, tries === 0 ? undefined : random);
    return way === undefined ? [] : [way];
  });
  return ways.length === 0 ? undefined : ways[tries % ways.length]!;
}

/** Sheets that are linked by items which may lie on both. */
function sheetsTogether({ allowed, sheets }: Layout): number[][] {
  const group = sheets.map((_, s) => s);
  for (const own of allowed) {
    const joined = new Set(own.map((s) => group[s]!));
    if (joined.size < 2) continue;
    const to = Math.min(...joined);
    group.forEach((g, s) => (group[s] = joined.has(g) ? to : g));
  }
  return [...new Set(group)].map((g) => sheets.flatMap((_, s) => (group[s] === g ? [s] : [])));
}

function fewerOf(
  layout: Layout,
  together: readonly number[],
  areas: ReadonlyMap<number, number>,
  random: Random | undefined,
): FewerSheets | undefined {
  const open = together.filter((s) => areas.has(s));
  const demand = open.reduce((sum, s) => sum + areas.get(s)!, 0);
  const room = (s: number): number => layout.sheets[s]!.space.netAreaMm2;
  const bound = open.filter((s) => isNeeded(layout, s));
  const others = together.filter((s) => !bound.includes(s)).sort((a, b) => room(b) - room(a) || a - b);
  const wanted = open.length - 1;
  if (bound.length > wanted || open.length < 2) return undefined;
  const kept = [...bound, ...others.slice(0, wanted - bound.length)];
  const isEnough = (): boolean => demand <= CLOSE_DENSITY * kept.reduce((sum, s) => sum + room(s), 0);
  if (!isEnough()) return undefined;
  if (random !== undefined && kept.length > bound.length && others.length > wanted - bound.length) {
    const at = bound.length + random.integer(kept.length - bound.length);
    const before = kept[at]!;
    kept[at] = others[wanted - bound.length + random.integer(others.length - wanted + bound.length)]!;
    if (!isEnough()) kept[at] = before;
  }
  return { together: new Set(together), kept: new Set(kept) };
}

/** Something is held there by hand, or may lie nowhere else. */
function isNeeded({ demand, laid, allowed }: Layout, sheet: number): boolean {
  return demand.copies.some(({ index, isFixed, prepared }) => {
    const own = allowed[prepared.index]!;
    return isFixed ? laid[index]?.sheet === sheet : own.length === 1 && own[0] === sheet;
  });
}
