import { SIDES } from './read-page.js';
import type { PageReading, Side } from './read-page.js';

/** One side of one page; pages are numbers in the list of readings. */
export interface PageSide {
  readonly page: number;
  readonly side: Side;
}

/** Two pages that print the same row: `first` lies left of `second` or above it. */
export interface Join {
  readonly first: number;
  readonly second: number;
  readonly isLevelNeighbour: boolean;
}

export interface Matches {
  readonly joins: readonly Join[];
  /** Sides whose row no other page prints, or too many do. */
  readonly lone: readonly PageSide[];
}

export const OPPOSITE: Readonly<Record<Side, Side>> = {
  left: 'right',
  right: 'left',
  top: 'bottom',
  bottom: 'top',
};

/** What two pages must have alike to belong together at a side: the word and where the row begins. */
export function rowKey(reading: PageReading, side: Side): string | undefined {
  const row = reading.rows[side];
  if (row === undefined) return undefined;
  const direction = side === 'left' || side === 'right' ? 'upright' : 'level';
  return `${direction} ${row.word} ${row.start}`;
}

/** Finds which sides of these pages belong together. */
export function matchRows(readings: readonly PageReading[], pages: readonly number[]): Matches {
  const byKey = new Map<string, PageSide[]>();
  for (const page of pages) {
    for (const side of SIDES) {
      const key = rowKey(readings[page]!, side);
      if (key !== undefined) byKey.set(key, [...(byKey.get(key) ?? []), { page, side }]);
    }
  }
  const joins: Join[] = [];
  const lone: PageSide[] = [];
  for (const sides of byKey.values()) {
    const first = sides.find(({ side }) => side === 'right' || side === 'bottom');
    const second = sides.find(({ side }) => side === 'left' || side === 'top');
    if (sides.length === 2 && first !== undefined && second !== undefined && first.page !== second.page)
      joins.push({ first: first.page, second: second.page, isLevelNeighbour: first.side === 'right' });
    else lone.push(...sides);
  }
  return { joins, lone };
}
