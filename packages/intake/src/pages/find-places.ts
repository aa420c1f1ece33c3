import type { PageJoint, PagesReading } from '@hidebound/leather';
import { IntakeError } from '../error.js';
import type { Wanted } from './agreement.js';
import type { Arrangement, Places } from './arrangement.js';
import { assemble } from './assemble.js';
import { FLIPS, bestGrid, linkBook } from './grid-guess.js';
import { ALL_PAIRS_PAGES, NEAR_PAGES } from './limits.js';
import type { PageFacts } from './page-facts.js';
import { likelyOverlaps, meetingOverlap, overlapByCorners } from './overlaps.js';
import type { Axis, Pairs } from './overlaps.js';

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
  const overlapsAlong = (axis: Axis) => [
    meetingOverlap(facts, axis),
    ...likelyOverlaps(facts, pairs, axis, wanted),
    ...overlapByCorners(facts, pairs, axis),
  ];
  // Edges that just meet come first: where lines say nothing else that is likeliest.
  const overlaps = {
    x: overlapsAlong('x'),
    y: overlapsAlong('y'),
  };
  const links = linkBook(facts, wanted);
  const grid = bestGrid(facts, sequencesOf(facts), overlaps, links, wanted, reading?.order);
  if (grid !== undefined && isSure(facts, grid)) return grid.groups;
  const flipped =
    facts.length > ALL_PAIRS_PAGES
      ? undefined
      : bestGrid(facts, sequencesOf(facts), overlaps, links, wanted, reading?.order, FLIPS);
  if (flipped !== undefined && isSure(facts, flipped)) return flipped.groups;
  const heap = assemble(facts, pairs, overlaps, links, wanted);
  if (grid !== undefined && grid.score >= GRID_SHARE * heap.score && isHardlyContradicted(facts, grid))
    return grid.groups;
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
  const isContradicted = links.some(({ contradictions, clashes }) => contradictions + clashes > 0);
  return !isStranding(facts, links) && !isContradicted && fits >= SURE_SHARE * ends;
}

/** A labelled mark is on a neighbour too, so a page whose marks fit nowhere lies wrong. */
function isStranding(facts: readonly PageFacts[], links: Arrangement['links']): boolean {
  const linked = new Set(links.flatMap(({ a, b, fits }) => (fits > 0 ? [a, b] : [])));
  return facts.some(({ figures }, i) => figures.some(({ label }) => label !== undefined) && !linked.has(i));
}

/** Where a mark touches a line of the pattern on one page only, it looks like another figure there. */
const CONTRADICTED_SHARE = 0.05;

function isHardlyContradicted(facts: readonly PageFacts[], { links }: Arrangement): boolean {
  const fits = links.reduce((sum, link) => sum + link.fits, 0);
  const contradictions = links.reduce((sum, link) => sum + link.contradictions, 0);
  return contradictions <= CONTRADICTED_SHARE * fits && !isStranding(facts, links);
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
