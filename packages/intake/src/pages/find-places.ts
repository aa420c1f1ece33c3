import type { PageJoint, PagesReading } from '@hidebound/leather';
import { IntakeError } from '../error.js';
import type { Wanted } from './agreement.js';
import type { Arrangement, Places } from './arrangement.js';
import { assemble } from './assemble.js';
import { bestGrid, linkBook } from './grid-guess.js';
import { ALL_PAIRS_PAGES, NEAR_PAGES } from './limits.js';
import type { PageFacts } from './page-facts.js';
import { likelyOverlaps, meetingOverlap } from './overlaps.js';
import type { Pairs } from './overlaps.js';

/** A search that found at least so much of what it should is not tried in another way. */
const SURE_SHARE = 0.9;

/** A grid in the order of pages is taken if as much speaks for it as for the best heap, but for this share. */
const GRID_SHARE = 0.95;

/** The groups of pages that lie together, found from what pages share; none if nothing links any two. */
export function findPlaces(
  facts: readonly PageFacts[],
  join: PageJoint | undefined,
  reading: PagesReading | undefined,
  file: string,
): readonly Places[] {
  const wanted: Wanted = { marks: join !== 'lines', lines: true };
  const pairs = pairsOf(facts);
  const overlaps = {
    x: [meetingOverlap(facts, 'x'), ...likelyOverlaps(facts, pairs, 'x', wanted)],
    y: [meetingOverlap(facts, 'y'), ...likelyOverlaps(facts, pairs, 'y', wanted)],
  };
  const links = linkBook(facts, wanted);
  const grid = bestGrid(facts, sequencesOf(facts), overlapPairs(overlaps), links, wanted, reading?.order);
  if (grid !== undefined && isSure(facts, grid)) return grid.groups;
  const heap = assemble(facts, pairs, overlaps, links, wanted);
  if (heap.clash !== undefined) {
    const pages = heap.clash.map((page) => facts[page]!.page.number).sort((a, b) => a - b);
    throw new IntakeError('pages-on-one-place', { pages: pages.join(' and ') }, { file });
  }
  if (grid !== undefined && grid.score >= GRID_SHARE * heap.score) return grid.groups;
  return heap.score > 0 ? heap.groups : [];
}

/** Every end of a cut line found its other half, and no mark is alone. */
function isSure(facts: readonly PageFacts[], { links }: Arrangement): boolean {
  const ends = facts.reduce((sum, one) => sum + one.ends.length, 0);
  const fits = links.reduce((sum, link) => sum + link.fits, 0);
  const isLinked = (i: number) => links.some(({ a, b, fits: own }) => own > 0 && (a === i || b === i));
  // A labelled mark is on a neighbour too, so a page whose marks fit nowhere lies wrong.
  const isStranded = facts.some(
    ({ figures }, i) => figures.some(({ label }) => label !== undefined) && !isLinked(i),
  );
  const isContradicted = links.some(({ contradictions }) => contradictions > 0);
  return !isStranded && !isContradicted && fits >= SURE_SHARE * ends;
}

/** Both orders of every two pages; of many pages, of those near each other. */
function pairsOf(facts: readonly PageFacts[]): Pairs {
  const numbers = facts.flatMap(({ isBlank }, i) => (isBlank ? [] : [i]));
  const reach = numbers.length <= ALL_PAIRS_PAGES ? numbers.length : NEAR_PAGES;
  return numbers.flatMap((a, k) =>
    numbers
      .slice(Math.max(0, k - reach), k + reach + 1)
      .filter((b) => b !== a)
      .map((b): [number, number] => [a, b]),
  );
}

/** All pages in order; without blank ones; without those that have nothing to link them. */
function sequencesOf(facts: readonly PageFacts[]): number[][] {
  const all = facts.map((_, i) => i);
  const drawn = all.filter((i) => !facts[i]!.isBlank);
  const linked = drawn.filter((i) => facts[i]!.ends.length > 0);
  const sequences = [
    all,
    drawn,
    all.slice(linked[0] ?? 0),
    drawn.slice(drawn.indexOf(linked[0] ?? 0)),
    linked,
  ];
  const seen = new Set<string>();
  return sequences.filter((sequence) => {
    const key = sequence.join();
    if (sequence.length < 2 || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Edges that just meet come first, since where lines say nothing else that is likeliest; then what most votes are for. */
function overlapPairs({ x, y }: { readonly x: readonly number[]; readonly y: readonly number[] }) {
  const likeliest = { x: x[1] ?? y[1] ?? x[0]!, y: y[1] ?? x[1] ?? y[0]! };
  return [
    [x[0]!, y[0]!] as const,
    [likeliest.x, likeliest.y] as const,
    [likeliest.x, y[0]!] as const,
    [x[0]!, likeliest.y] as const,
    ...x.slice(2).map((other) => [other, likeliest.y] as const),
    ...y.slice(2).map((other) => [likeliest.x, other] as const),
  ];
}
