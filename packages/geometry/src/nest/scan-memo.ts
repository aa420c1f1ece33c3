import type { ScanRuns } from './variant.js';

/** What a look for places found, and which pieces lay at that time. */
interface ScanMemo {
  /** How many pieces lay on the sheet, and the mark of the last one. */
  readonly depth: number;
  readonly mark: number;
  readonly firstFree: Int32Array | typeof NOWHERE;
}

/**
 * The last look for each set of runs on one sheet. While all pieces lie that lay at that time, a place that was not
 * free then is not free now, so the next look goes on from there.
 */
export interface ScanMemos {
  readonly byRuns: WeakMap<ScanRuns, ScanMemo>;
  lastMark: number;
}

/** Instead of columns: there is no place in any row. */
export const NOWHERE = 'nowhere';

export function createMemos(): ScanMemos {
  return { byRuns: new WeakMap(), lastMark: 0 };
}

/** A mark that no piece had before. */
export function nextMark(memos: ScanMemos): number {
  return ++memos.lastMark;
}

/**
 * First free columns that are still lower bounds; undefined if a piece was lifted since. Marks stand in the order of
 * laying and move up when one is lifted: the last one at its old place says that all before it stayed too.
 */
export function recall(
  memos: ScanMemos,
  marks: readonly number[],
  runs: ScanRuns,
): Int32Array | typeof NOWHERE | undefined {
  const memo = memos.byRuns.get(runs);
  if (memo === undefined) return undefined;
  const isHeld = memo.depth === 0 || marks[memo.depth - 1] === memo.mark;
  return isHeld ? memo.firstFree : undefined;
}

export function remember(
  memos: ScanMemos,
  marks: readonly number[],
  runs: ScanRuns,
  firstFree: Int32Array | typeof NOWHERE,
): void {
  const depth = marks.length;
  memos.byRuns.set(runs, { depth, mark: depth === 0 ? 0 : marks[depth - 1]!, firstFree });
}
