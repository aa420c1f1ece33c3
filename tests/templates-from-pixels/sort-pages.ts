import { STEP, gridPlaces, placeName } from './grid-places.js';
import type { GridPlace } from './grid-places.js';
import { matchRows, rowKey } from './match-rows.js';
import type { Join } from './match-rows.js';
import { SIDES } from './read-page.js';
import type { PageReading } from './read-page.js';

/** A bar may miss 100 mm by half a millimetre (docs/templates.md, "Print and check"). */
const SCALE_OFF = 0.005;

/** The heap of pictures put in order by their rows, and what is wrong with it. */
export interface SortedPages {
  readonly joins: readonly Join[];
  /** Place of each page that belongs to the whole, by its number in the list of readings. */
  readonly places: ReadonlyMap<number, GridPlace>;
  /** Pages whose bars are not 100 mm. */
  readonly wrongScale: readonly number[];
  /** Second and further pictures of the same page, each with the first one. */
  readonly copies: readonly { readonly page: number; readonly of: number }[];
  /** Pages whose rows fit to nothing, or to less than half of what lies around them. */
  readonly strangers: readonly number[];
  /** Places that rows point to, and no page is there. */
  readonly missing: readonly string[];
  /** Neighbouring places between whose pages no row was read. */
  readonly unjoined: readonly string[];
}

export function sortPages(readings: readonly PageReading[]): SortedPages {
  const copies = findCopies(readings);
  let pages = readings.map((_, i) => i).filter((i) => !copies.some(({ page }) => page === i));
  const strangers: number[] = [];
  for (;;) {
    const { joins, lone } = matchRows(readings, pages);
    const places = gridPlaces(pages, joins);
    const odd = pages.filter((page) => !places.has(page) || fitsBadly(page, joins, lone));
    if (odd.length > 0) {
      strangers.push(...odd);
      pages = pages.filter((page) => !odd.includes(page));
      continue;
    }
    const missing = lone.map(({ page, side }) => {
      const [place, step] = [places.get(page)!, STEP[side]];
      return placeName({ column: place.column + step.column, row: place.row + step.row });
    });
    return {
      joins,
      places,
      wrongScale: pages.filter((page) => isOffScale(readings[page]!)),
      copies,
      strangers,
      missing: [...new Set(missing)].sort(),
      unjoined: unjoinedNeighbours(places, joins),
    };
  }
}

function isOffScale({ scale }: PageReading): boolean {
  return Math.abs(scale.level - 1) > SCALE_OFF || Math.abs(scale.upright - 1) > SCALE_OFF;
}

/** More of its sides are without a partner than with one. */
function fitsBadly(
  page: number,
  joins: readonly Join[],
  lone: readonly { readonly page: number }[],
): boolean {
  const joined = joins.filter(({ first, second }) => first === page || second === page).length;
  return lone.filter((side) => side.page === page).length > joined;
}

function findCopies(readings: readonly PageReading[]): { page: number; of: number }[] {
  const firsts = new Map<string, number>();
  const copies: { page: number; of: number }[] = [];
  readings.forEach((reading, page) => {
    const rows = SIDES.map((side) => rowKey(reading, side) ?? '-').join(', ');
    const of = firsts.get(rows);
    if (of === undefined) firsts.set(rows, page);
    else copies.push({ page, of });
  });
  return copies;
}

function unjoinedNeighbours(places: ReadonlyMap<number, GridPlace>, joins: readonly Join[]): string[] {
  const joined = new Set(joins.map(({ first, second }) => `${first} ${second}`));
  const at = new Map([...places].map(([page, { column, row }]) => [`${column} ${row}`, page]));
  return [...places].flatMap(([page, { column, row }]) =>
    [`${column + 1} ${row}`, `${column} ${row + 1}`].flatMap((place) => {
      const other = at.get(place);
      if (other === undefined || joined.has(`${page} ${other}`)) return [];
      return [`${placeName({ column, row })} and ${placeName(places.get(other)!)}`];
    }),
  );
}
