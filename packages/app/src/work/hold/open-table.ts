import type { NestAnswer, NestProblem } from '@hidebound/geometry';
import { openBench } from '@hidebound/geometry/live';
import type { Bench } from '@hidebound/geometry/live';
import { answerOfLayout, copyRefOf, problemAgain } from '@hidebound/leather';
import type { AgainProblem, ItemMeaning, Layout, NamedHide, PieceCopy } from '@hidebound/leather';

/** A layout laid open for moves by hand. */
export interface OpenTable {
  readonly layout: Layout;
  readonly hides: readonly NamedHide[];
  readonly again: AgainProblem;
  /** With the layout's test pieces in it. */
  readonly problem: NestProblem;
  readonly items: ReadonlyMap<string, ItemMeaning>;
  readonly answer: NestAnswer;
}

export function openTable(layout: Layout, hides: readonly NamedHide[]): OpenTable {
  const { seed, streams } = layout.origin;
  const again = problemAgain({ layout, hides, anew: true, budget: { seed, streams } });
  const { problem, items, answer } = answerOfLayout(layout, again.own);
  return { layout, hides, again, problem, items, answer };
}

/**
 * The bench while one copy is in hand: it is bound to its place no more, has left its lane, and the rough cuts of its
 * leather are drawn anew where it is let go.
 */
export function benchFor({ problem, answer }: OpenTable, copy: PieceCopy): Bench {
  const ref = copyRefOf(copy);
  const isOther = (one: { readonly item: string; readonly set: number; readonly copy: number }): boolean =>
    one.item !== ref.item || one.set !== ref.set || one.copy !== ref.copy;
  const item = problem.items.find(({ id }) => id === ref.item);
  const hasRoughCut = item?.roughMargin !== undefined;
  const open = { ...problem, fixed: problem.fixed.filter(isOther) };
  const lanes = answer.lanes.map((lane) => ({
    ...lane,
    rows: lane.rows.map((row) => ({ ...row, straps: row.straps.filter(isOther) })),
  }));
  const roughCuts = answer.roughCuts.filter(({ group }) => !hasRoughCut || group !== item.group);
  return openBench(open, answer.placements, { lanes, roughCuts });
}
