/** Closed stretches of one axis as flat numbers [lo, hi, lo, hi, …], ascending and apart. */
export type Spans = readonly number[];

/** What is left of the spans without the open intervals [lo, hi, …], which may come in any order and overlap. */
export function withoutIntervals(spans: Spans, intervals: readonly number[]): number[] {
  if (intervals.length === 0) return [...spans];
  const cuts = mergedIntervals(intervals);
  const left: number[] = [];
  let c = 0;
  for (let s = 0; s < spans.length; s += 2) {
    let from = spans[s]!;
    const to = spans[s + 1]!;
    while (c < cuts.length && cuts[c + 1]! <= from) c += 2;
    let k = c;
    while (k < cuts.length && cuts[k]! < to) {
      if (cuts[k]! >= from) left.push(from, cuts[k]!);
      from = Math.max(from, cuts[k + 1]!);
      k += 2;
    }
    if (from <= to) left.push(from, to);
  }
  return left;
}

/** Ascending intervals that are apart: those that overlap joined; those that only touch leave the place between. */
export function mergedIntervals(intervals: readonly number[]): number[] {
  const merged: number[] = [];
  for (const i of orderOf(intervals)) {
    const n = merged.length;
    if (n > 0 && intervals[i]! < merged[n - 1]!) {
      merged[n - 1] = Math.max(merged[n - 1]!, intervals[i + 1]!);
    } else merged.push(intervals[i]!, intervals[i + 1]!);
  }
  return merged;
}

function orderOf(intervals: readonly number[]): number[] {
  const order: number[] = [];
  for (let i = 0; i < intervals.length; i += 2) order.push(i);
  return order.sort((a, b) => intervals[a]! - intervals[b]!);
}

/** Seen from the other end of the axis. */
export function reversedSpans(spans: Spans): number[] {
  const turned: number[] = [];
  for (let s = spans.length - 2; s >= 0; s -= 2) turned.push(0 - spans[s + 1]!, 0 - spans[s]!);
  return turned;
}
