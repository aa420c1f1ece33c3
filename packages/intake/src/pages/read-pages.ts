import { translation } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { ReadPage } from '../pattern-read.js';
import { WARN_MISS_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import { listPages, roundMm } from './page-words.js';
import type { Settled } from './settle.js';
import { minus } from './vectors.js';

/** What is told of each page: its place, what that rests on, how well it meets its neighbours. */
export function readPages(
  facts: readonly PageFacts[],
  groups: readonly Settled[],
  isGrid: boolean,
  findings: Findings,
): ReadPage[] {
  const pages = facts.map(({ page }, i): ReadPage => {
    const { number, widthMm, heightMm, lines } = page;
    const bare = { number, widthMm, heightMm, lines };
    const group = groups.find(({ places }) => places.has(i));
    if (group === undefined) return { ...bare, joinedBy: 'left out', marks: [] };
    const { x, y } = group.places.get(i)!;
    const miss = group.misses.get(i);
    const marks = marksOf(group, i);
    return {
      ...bare,
      toWhole: translation(x, y),
      joinedBy: isGrid || miss === undefined ? 'grid' : marks.length > 0 ? 'marks' : 'lines',
      ...(miss === undefined ? {} : { missMm: miss }),
      marks,
    };
  });
  tellPages(pages, facts, groups.length, findings);
  if (!isGrid) for (const group of groups) tellUntied(group, facts, findings);
  return pages;
}

/** Pages that lie where their order puts them, since nothing is drawn over the edges to the others. */
function tellUntied({ places, meetings }: Settled, facts: readonly PageFacts[], findings: Findings): void {
  const root = new Map([...places.keys()].map((page) => [page, page]));
  const rootOf = (page: number): number => {
    const up = root.get(page)!;
    return up === page ? page : rootOf(up);
  };
  for (const { a, b, ties } of meetings) if (ties.length > 0) root.set(rootOf(b), rootOf(a));
  const first = rootOf([...places.keys()][0]!);
  const untied = [...places.keys()].filter((page) => rootOf(page) !== first).sort((a, b) => a - b);
  if (untied.length === 0) return;
  tell(findings, 'warning', 'pages-by-order', {
    count: untied.length,
    pages: listPages(untied.map((page) => facts[page]!.page.number)),
  });
}

/** Places of marks that the page shares with others, in its own frame. */
function marksOf({ meetings, places }: Settled, page: number): Point[] {
  const found = new Map<string, Point>();
  for (const { a, b, ties } of meetings) {
    if (a !== page && b !== page) continue;
    for (const { kind, at, normals } of ties) {
      if (kind !== 'mark') continue;
      const shift = a === page ? { x: 0, y: 0 } : minus(places.get(b)!, places.get(a)!);
      const own = minus(at, shift);
      const key = `${Math.round(own.x)},${Math.round(own.y)},${normals.length}`;
      if (!found.has(key)) found.set(key, own);
    }
  }
  return [...found.values()];
}

const WORDS = { marks: 'their marks', lines: 'lines that go on', grid: 'the grid' } as const;

function tellPages(
  pages: readonly ReadPage[],
  facts: readonly PageFacts[],
  groups: number,
  findings: Findings,
): void {
  const numbers = (keep: (page: ReadPage, i: number) => boolean) =>
    pages.filter(keep).map((page) => page.number);
  for (const how of ['marks', 'lines', 'grid'] as const) {
    const joined = numbers(({ joinedBy }) => joinedBy === how);
    if (joined.length > 0)
      tell(findings, 'note', 'pages-joined', {
        count: joined.length,
        how: WORDS[how],
        pages: listPages(joined),
      });
  }
  if (groups > 1) tell(findings, 'warning', 'pages-in-groups', { groups });
  for (const reason of ['blank', 'not linked'] as const) {
    const out = numbers(
      ({ joinedBy }, i) => joinedBy === 'left out' && facts[i]!.isBlank === (reason === 'blank'),
    );
    const severity = reason === 'blank' ? 'note' : 'warning';
    if (out.length > 0)
      tell(findings, severity, 'pages-left-out', { count: out.length, pages: listPages(out), reason });
  }
  const worst = pages.reduce<ReadPage | undefined>(
    (most, page) => ((page.missMm ?? 0) > (most?.missMm ?? WARN_MISS_MM) ? page : most),
    undefined,
  );
  if (worst !== undefined)
    tell(findings, 'warning', 'pages-miss', { page: worst.number, miss: roundMm(worst.missMm!) });
}
