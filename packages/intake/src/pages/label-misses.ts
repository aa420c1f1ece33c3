import { MAX_MISS_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import type { Settled } from './settle.js';
import { minus } from './vectors.js';

/** A mark of one label that lies farther off is another one, mm. */
const OTHER_MARK_MM = 25;

/** So many marks of two neighbours, all at other places, are no chance. */
const MARKS = 2;

/**
 * Numbers of pages that meet where the places of all put them, but whose labelled marks do not lie on each other, while
 * those of most others do: the way round the pages does not close.
 */
export function pagesWithLabelMisses(facts: readonly PageFacts[], groups: readonly Settled[]): number[] {
  const wrong = new Set<number>();
  let fitting = 0;
  let missing = 0;
  for (const { places, meetings } of groups) {
    for (const { a, b } of meetings) {
      const shift = minus(places.get(b)!, places.get(a)!);
      const offs = labelOffs(facts[a]!, facts[b]!, shift);
      const fits = offs.filter((off) => off <= MAX_MISS_MM).length;
      if (fits > 0) fitting++;
      else if (offs.length >= MARKS) {
        missing++;
        for (const page of [a, b]) wrong.add(facts[page]!.page.number);
      }
    }
  }
  return fitting > missing ? [...wrong].sort((p, q) => p - q) : [];
}

/** How far marks of one label and shape lie from each other, mm. */
function labelOffs(a: PageFacts, b: PageFacts, shift: { readonly x: number; readonly y: number }): number[] {
  return a.figures.flatMap(({ label, shape, at }) => {
    if (label === undefined) return [];
    const offs = (b.byShape.get(shape) ?? [])
      .filter((other) => other.label === label)
      .map((other) => Math.hypot(other.at.x + shift.x - at.x, other.at.y + shift.y - at.y));
    const least = Math.min(...offs);
    return least <= OTHER_MARK_MM ? [least] : [];
  });
}
