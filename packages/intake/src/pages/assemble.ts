import type { Point } from '@hidebound/geometry';
import { agreementOf, linkOf } from './agreement.js';
import type { PageLink, Wanted } from './agreement.js';
import { scoreOf } from './arrangement.js';
import type { Arrangement } from './arrangement.js';
import { MAX_MISS_MM, SEEK_MM } from './limits.js';
import { haveOneLabel } from './mark-labels.js';
import type { PageFacts } from './page-facts.js';
import { landmarks } from './overlaps.js';
import type { Pairs } from './overlaps.js';
import type { LinkBook } from './grid-guess.js';
import { heightOf, minus, moveBox, plus, sharedBox, widthOf } from './vectors.js';

/** Of two pages that share marks, so many shifts are tested. */
const SHIFTS_PER_PAIR = 4;

/** Windows of two pages share less than this part of either, or they lie on one place. */
const SAME_PLACE_SHARE = 0.5;

/** What was tried, and pages that marks put on one place. */
export interface Assembly extends Arrangement {
  readonly clash?: readonly [number, number];
}

/**
 * Pages put together pair by pair, the best link first, whatever their order: a link is taken if no two pages come to
 * lie on one place and the neighbours that it brings together do not contradict each other.
 */
export function assemble(
  facts: readonly PageFacts[],
  pairs: Pairs,
  overlaps: { readonly x: readonly number[]; readonly y: readonly number[] },
  links: LinkBook,
  wanted: Wanted,
): Assembly {
  const candidates = candidateLinks(facts, pairs, overlaps, links, wanted);
  const groupOf = facts.map((_, i) => new Map([[i, { x: 0, y: 0 }]]));
  const taken: PageLink[] = [];
  let clash: readonly [number, number] | undefined;
  for (const link of candidates) {
    const to = groupOf[link.a]!;
    const from = groupOf[link.b]!;
    const by = minus(plus(to.get(link.a)!, link.shift), from.get(link.b)!);
    if (to === from) {
      const isOff = Math.abs(by.x) > MAX_MISS_MM || Math.abs(by.y) > MAX_MISS_MM;
      const now = minus(to.get(link.b)!, to.get(link.a)!);
      if (isOff && isSure(link, facts) && !agrees(facts, link, now, wanted)) clash ??= [link.a, link.b];
      continue;
    }
    const joined = judgeMerge(facts, to, from, by, wanted);
    if (joined.onOnePlace !== undefined && isSure(link, facts)) clash ??= joined.onOnePlace;
    if (joined.onOnePlace !== undefined || joined.score <= 0) continue;
    for (const [page, place] of from) {
      to.set(page, plus(place, by));
      groupOf[page] = to;
    }
    taken.push(link);
  }
  const groups = [...new Set(groupOf)].filter((group) => group.size > 1);
  const score = groups.reduce((sum, group) => sum + scoreOfGroup(facts, group, wanted), 0);
  return { groups, links: taken, score, ...(clash === undefined ? {} : { clash }) };
}

/** As much speaks for where two pages lie now as for another place. */
function agrees(facts: readonly PageFacts[], link: PageLink, shift: Point, wanted: Wanted): boolean {
  const { ties, contradictions, clashes } = agreementOf(facts[link.a]!, facts[link.b]!, shift, wanted);
  return scoreOf({ fits: ties.length, contradictions, clashes }) >= scoreOf(link);
}

/** Marks with labels of their own can't be mistaken. */
function isSure(
  { a, b, shift, fits, contradictions, clashes }: PageLink,
  facts: readonly PageFacts[],
): boolean {
  if (fits < 2 || contradictions > 0 || clashes > 0) return false;
  return facts[a]!.figures.some(
    ({ label, at, shape }) =>
      label !== undefined &&
      facts[b]!.figures.some(
        (other) =>
          other.label === label &&
          other.shape === shape &&
          Math.abs(other.at.x + shift.x - at.x) <= SEEK_MM &&
          Math.abs(other.at.y + shift.y - at.y) <= SEEK_MM,
      ),
  );
}

/** The whole of what the pages of both groups say of lying so. */
function judgeMerge(
  facts: readonly PageFacts[],
  to: ReadonlyMap<number, Point>,
  from: ReadonlyMap<number, Point>,
  by: Point,
  wanted: Wanted,
): { readonly score: number; readonly onOnePlace?: readonly [number, number] } {
  let score = 0;
  for (const [a, placeA] of to) {
    for (const [b, placeB] of from) {
      const shift = minus(plus(placeB, by), placeA);
      const shared = sharedBox(facts[a]!.window, moveBox(facts[b]!.window, shift));
      if (widthOf(shared) < -SEEK_MM || heightOf(shared) < -SEEK_MM) continue;
      if (isOnePlace(facts[a]!, facts[b]!, shift)) return { score: 0, onOnePlace: [a, b] };
      const { ties, contradictions, clashes } = agreementOf(facts[a]!, facts[b]!, shift, wanted);
      score += scoreOf({ fits: ties.length, contradictions, clashes });
    }
  }
  return { score };
}

export function isOnePlace(a: PageFacts, b: PageFacts, shift: Point): boolean {
  const shared = sharedBox(a.window, moveBox(b.window, shift));
  const area = Math.max(0, widthOf(shared)) * Math.max(0, heightOf(shared));
  const least = Math.min(...[a.window, b.window].map((box) => widthOf(box) * heightOf(box)));
  return area > SAME_PLACE_SHARE * least;
}

function scoreOfGroup(
  facts: readonly PageFacts[],
  group: ReadonlyMap<number, Point>,
  wanted: Wanted,
): number {
  const pages = [...group];
  let score = 0;
  pages.forEach(([a, placeA], i) => {
    for (const [b, placeB] of pages.slice(i + 1)) {
      const { ties, contradictions, clashes } = agreementOf(
        facts[a]!,
        facts[b]!,
        minus(placeB, placeA),
        wanted,
      );
      score += scoreOf({ fits: ties.length, contradictions, clashes });
    }
  });
  return score;
}

/** Links for which more speaks than against them, the best first; pages that follow each other before others. */
function candidateLinks(
  facts: readonly PageFacts[],
  pairs: Pairs,
  overlaps: { readonly x: readonly number[]; readonly y: readonly number[] },
  links: LinkBook,
  wanted: Wanted,
): PageLink[] {
  const found: PageLink[] = [];
  for (const [a, b] of pairs) {
    for (const overlap of overlaps.x.slice(0, 2)) found.push(links(a, b, 'x', overlap));
    for (const overlap of overlaps.y.slice(0, 2)) found.push(links(a, b, 'y', overlap));
    if (!wanted.marks || a > b) continue;
    for (const shift of shiftsByMarks(facts[a]!, facts[b]!)) found.push(linkOf(facts, a, b, shift, wanted));
  }
  return found
    .filter((link) => scoreOf(link) > 0)
    .sort((p, q) => scoreOf(q) - scoreOf(p) || stepOf(p) - stepOf(q) || p.a - q.a || p.b - q.b);
}

/** Pages mostly follow each other from left to right and from top to bottom. */
function stepOf({ a, b }: PageLink): number {
  return b > a ? b - a : 1000 + a - b;
}

/** Shifts at which figures of one shape and label coincide, those of the most figures first. */
function shiftsByMarks(a: PageFacts, b: PageFacts): Point[] {
  const shifts: { shift: Point; count: number }[] = [];
  const others = landmarks(b);
  for (const one of landmarks(a)) {
    for (const other of others) {
      if (one.shape !== other.shape || !haveOneLabel(one, other)) continue;
      const shift = minus(one.at, other.at);
      if (isOnePlace(a, b, shift)) continue;
      const same = shifts.find(
        (known) =>
          Math.abs(known.shift.x - shift.x) <= SEEK_MM && Math.abs(known.shift.y - shift.y) <= SEEK_MM,
      );
      const weight = one.label === undefined ? 1 : 4;
      if (same === undefined) shifts.push({ shift, count: weight });
      else same.count += weight;
    }
  }
  shifts.sort((p, q) => q.count - p.count);
  return shifts.slice(0, SHIFTS_PER_PAIR).map(({ shift }) => shift);
}
