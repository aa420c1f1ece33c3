import type { LineRole } from './piece.js';

/** Units that a drawing without its own may be made in. */
export const DRAWING_UNITS = ['mm', 'cm', 'm', 'in', 'ft'] as const;
export type DrawingUnit = (typeof DRAWING_UNITS)[number];

/**
 * How the pages of a pattern are put together: by marks that neighbours share, by lines that go on over an edge, in a
 * grid that is stated, or not at all (each page is a drawing of its own).
 */
export const PAGE_JOINTS = ['marks', 'lines', 'grid', 'apart'] as const;
export type PageJoint = (typeof PAGE_JOINTS)[number];

/** The way in which pages fill a grid: row by row, or column by column. */
export const PAGE_ORDERS = ['rows', 'columns'] as const;
export type PageOrder = (typeof PAGE_ORDERS)[number];

/** How one pattern file is to be read, where the reader's own judgement is to be overruled. */
export interface PatternReading {
  readonly file: string;
  readonly dpi?: number;
  readonly scale?: number;
  readonly knownLength?: { readonly element: string; readonly mm: number };
  /** Of a drawing that does not say its unit, or says a wrong one. */
  readonly units?: DrawingUnit;
  readonly pages?: PagesReading;
  /** False: halves drawn up to a fold are left as they are. */
  readonly unfold?: boolean;
  /** Which lines belong to which of several graded sizes; the first that fits decides. */
  readonly sizes?: readonly SizeRule[];
  readonly roles: readonly RoleRule[];
}

/** Which pages hold the pattern, and how they lie together. */
export interface PagesReading {
  /** Page numbers from 1; absent: all. */
  readonly take?: readonly number[];
  /** Absent: found out. */
  readonly join?: PageJoint;
  /** Of a grid: pages side by side. */
  readonly columns?: number;
  readonly order?: PageOrder;
  /** How far the paper of neighbours lies one over the other: across and down, mm. */
  readonly overlapMm?: readonly [number, number];
}

/** What a line looks like. All conditions that are given must hold. */
export interface LineLook {
  /** Layer name; `*` stands for any run of characters; letter case does not count. */
  readonly layer?: string;
  /** Label, id or class. */
  readonly label?: string;
  /** #rrggbb of the stroke. */
  readonly colour?: string;
  readonly dashed?: boolean;
  /** It is a filled area without a stroke. */
  readonly filled?: boolean;
  /** Stroke width in mm, from and to. */
  readonly widthMm?: readonly [number, number];
}

/** One line of the table of roles; the first line that fits decides. */
export interface RoleRule extends LineLook {
  readonly role: LineRole;
}

/** One line of the table of sizes. */
export interface SizeRule extends LineLook {
  readonly size: string;
}
