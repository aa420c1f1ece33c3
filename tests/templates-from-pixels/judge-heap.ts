import { compareWithLayout } from './compare-with-layout.js';
import type { Comparison, LayoutOfHide } from './compare-with-layout.js';
import { placeName } from './grid-places.js';
import { putTogether } from './put-together.js';
import type { JoinedPages } from './put-together.js';
import type { PageReading } from './read-page.js';
import { sortPages } from './sort-pages.js';
import type { SortedPages } from './sort-pages.js';

/** What is to be said of a heap of pictures. */
export interface HeapVerdict {
  readonly sorted: SortedPages;
  /** Name of the place of each picture that belongs to the whole. */
  readonly placeOf: ReadonlyMap<string, string>;
  readonly faults: readonly string[];
}

/** Puts a heap in order, and says of every picture that does not belong why. */
export function judgeHeap(readings: readonly PageReading[]): HeapVerdict {
  const sorted = sortPages(readings);
  const name = (page: number): string => readings[page]!.picture;
  const placeOf = new Map([...sorted.places].map(([page, place]) => [name(page), placeName(place)]));
  const faults = [
    ...sorted.wrongScale.map((page) => {
      const { level, upright } = readings[page]!.scale;
      return `${name(page)} (${placeOf.get(name(page))!}) is printed at ${perCent(level)} across and ${perCent(upright)} down`;
    }),
    ...sorted.copies.map(({ page, of }) => `${name(page)} shows the same page as ${name(of)}`),
    ...sorted.strangers.map((page) => `${name(page)} belongs to none of the others`),
    ...sorted.missing.map((place) => `nothing lies at ${place}, where its neighbours have marks`),
    ...sorted.unjoined.map((pair) => `no common row is read between ${pair}`),
  ];
  return { sorted, placeOf, faults };
}

/** Puts the pages of true scale together and compares the whole with the layout. */
export function joinAndCompare(
  readings: readonly PageReading[],
  { joins, places, wrongScale }: SortedPages,
  layout: LayoutOfHide,
  fileOf: (reading: PageReading) => string,
): { readonly joined: JoinedPages; readonly comparison: Comparison } {
  const pages = [...places.keys()].filter((page) => !wrongScale.includes(page));
  const among = joins.filter(({ first, second }) => pages.includes(first) && pages.includes(second));
  const joined = putTogether(readings, pages, among);
  return { joined, comparison: compareWithLayout(readings, joined.poses, layout, fileOf) };
}

function perCent(scale: number): string {
  return `${(100 * scale).toFixed(2)} %`;
}
