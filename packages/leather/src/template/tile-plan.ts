import type { Box, Point, Polyline, Region, Ring } from '@hidebound/geometry';
import type { SheetFrame } from './sheet-frame.js';

/** What is to be on paper at full scale, in one frame; mm, y down. */
export interface TileContent {
  /** Pieces and rough cuts: all of their inside is needed, and each is better not cut apart. */
  readonly shapes: readonly Region[];
  /** Lines that are needed where they run: the hide's edge. */
  readonly edges: readonly Ring[];
  /** Further lines that matching marks had better not lie on: stitch lines, lanes. */
  readonly lines?: readonly Polyline[];
}

/** A place in the grid of pages, from 0. */
export interface GridPlace {
  readonly column: number;
  readonly row: number;
}

/** The pages on which some content is laid out, with all that two neighbours must show alike. */
export interface TilePlan {
  /** The same for every page. */
  readonly frame: SheetFrame;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top left; empty pages are left out. */
  readonly pages: readonly TilePage[];
  readonly joins: readonly PageJoin[];
  /** So many of the shapes lie on no page as a whole. */
  readonly shapesCutApart: number;
}

export interface TilePage extends GridPlace {
  /** Column letter and row number: "A1" is top left, "B1" the next to the right. */
  readonly name: string;
  /** In the content's frame: what the page shows, and what it adds to the whole once trimmed. */
  readonly window: Box;
  readonly cell: Box;
  /** A point of the content is printed at its own place plus this, in mm from the sheet's top left corner. */
  readonly toSheet: { readonly dx: number; readonly dy: number };
  readonly neighbours: Readonly<Partial<Record<PageSide, string>>>;
  /** Nothing to cut is on it; it holds its neighbours together. */
  readonly isBridge: boolean;
}

export type PageSide = 'left' | 'right' | 'above' | 'below';

/** Where two pages meet, in the content's frame: both print all of this. */
export interface PageJoin {
  /** From 1, a number of its own within the file. */
  readonly number: number;
  /** The left or upper page, and the right or lower one. */
  readonly pages: readonly [string, string];
  /** The join line from corner to corner, downwards or to the right. */
  readonly from: Point;
  readonly to: Point;
  readonly marks: JoinMarks;
}

/** A row of marks centred on the join line. */
export interface JoinMarks {
  /** Centre of the triangle that begins the row and points along it. */
  readonly start: Point;
  /** Centres of the sixteen squares, in the order of the code. */
  readonly squares: readonly Point[];
  /** True: filled. */
  readonly code: readonly boolean[];
  /** Where the two pages' names stand, one on each side of the join line. */
  readonly namesAt: Point;
}
