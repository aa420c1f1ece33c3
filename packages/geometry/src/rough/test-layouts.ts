import { runNest } from '../nest/run.js';
import { sampleProblem } from '../sample/sample-problem.js';
import type { SampleProblemOptions } from '../sample/sample-problem.js';
import type { Item, NestAnswer, NestProblem } from '../types/problem.js';
import { ROUGH_ROOM_MM } from './constants.js';

export interface RoughLayout {
  readonly problem: NestProblem;
  /** Without its rough cuts. */
  readonly answer: NestAnswer;
}

export interface RoughLayoutOptions extends SampleProblemOptions {
  readonly marginMm: number;
  /** Groups to which items belong in turn; one turn more belongs to none. */
  readonly groups: number;
  /** Between pieces of one group while they are laid; default as the problem says. */
  readonly gapMm?: number;
  /** Further from the bare margin than rough cuts ask for; default 0. */
  readonly spareMm?: number;
}

/**
 * A random layout that is valid but for its rough cuts: laid by a search that knows no margins, with all groups as far
 * apart, and all pieces as far from the edge, as margins ask for.
 */
export function roughLayout(seed: number, options: RoughLayoutOptions): RoughLayout {
  const { marginMm, groups } = options;
  const plain = sampleProblem(seed, options);
  const kept = marginMm + ROUGH_ROOM_MM + (options.spareMm ?? 0);
  const items = plain.items.map((item, i): Item => {
    const { group: _, ...bare } = item;
    return i % (groups + 1) === groups ? bare : { ...bare, group: `group ${i % (groups + 1)}` };
  });
  const { distances } = plain;
  const wide: NestProblem = {
    ...plain,
    items,
    distances: {
      ...distances,
      gap: options.gapMm ?? distances.gap,
      edge: Math.max(distances.edge, kept),
      betweenGroups: Math.max(distances.betweenGroups ?? 0, 2 * kept),
    },
  };
  const problem: NestProblem = {
    ...plain,
    items: items.map((item) => (item.group === undefined ? item : { ...item, roughMargin: marginMm })),
  };
  return { problem, answer: runNest(wide) };
}
