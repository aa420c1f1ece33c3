import type { Point } from '@hidebound/geometry';
import type { SourceMark } from './workshop.js';

/** A stitching iron (pricking iron, chisel): its pitch is what it does, its teeth to the inch are a name only. */
export interface Iron {
  readonly name: string;
  /** From tooth to tooth, mm; measured over ten teeth. */
  readonly pitchMm: number;
  /** What the trade calls it: so many teeth to the inch. Never computed with. */
  readonly teethPerInch?: number;
  readonly source: SourceMark;
}

/** With an iron the pitch stays; with an awl it may be adjusted, so that ends and corners get a hole. */
export const STITCH_TOOLS = ['iron', 'awl'] as const;
export type StitchTool = (typeof STITCH_TOOLS)[number];

/** What gives where a line is no whole number of an iron's pitches: the gap at an end of it, or its length. */
export const STITCH_GIVES = ['end', 'start', 'both ends', 'length'] as const;
export type StitchGives = (typeof STITCH_GIVES)[number];

/** What an article, a piece or a workshop says of its stitching; the piece wins, then the article, then the workshop. */
export interface StitchWish {
  /** From hole to hole, mm; overrules the table's figure for the iron. */
  readonly pitchMm?: number;
  /** An iron of the workshop's table, by name or by its pitch in mm: gives the pitch. */
  readonly iron?: string | number;
  readonly with?: StitchTool;
  readonly gives?: StitchGives;
  /** With an awl: share by which the pitch may be longer or shorter. */
  readonly adjustShare?: number;
  /** A turn sharper than this is a corner. */
  readonly cornerDeg?: number;
  /** Least distance of the outer holes from the ends of an open line, mm. */
  readonly endGapMm?: number;
  /** Share by which two lines sewn together may differ before it is a warning. */
  readonly gatherShare?: number;
  /** Thread beyond what the seam itself takes: tails and needles, mm a seam. */
  readonly tailsMm?: number;
  /** Name of the thread in the article or the order. */
  readonly thread?: string;
  /** All that the needle goes through, mm; else it follows from the thickness of the pieces. */
  readonly stackMm?: number;
  /** Stitch lines, by name, that get no holes. */
  readonly leaveOut?: readonly string[];
}

/** A wish with nothing left open. */
export interface StitchRule extends Required<Omit<StitchWish, 'iron' | 'thread' | 'stackMm'>> {
  readonly thread?: string;
  readonly stackMm?: number;
}

/** One hole of a stitch line. */
export interface StitchHole {
  readonly at: Point;
  /** Direction of the line there, clockwise from the x axis, 0 to 360; at a corner, midway through the turn. */
  readonly angleDeg: number;
  readonly isCorner: boolean;
}

/** What gave way so that the holes fit their line: how much longer (or shorter, below 0) it became, mm. */
export interface StitchGave {
  readonly what: 'nothing' | 'end gap' | 'length' | 'last stitch' | 'pitch' | 'gathering';
  readonly changeMm: number;
}

/** A stitch line with its holes, in the frame of its curve, in the order in which the line is drawn. */
export interface StitchMarks {
  readonly isClosed: boolean;
  /** Of the line as it is drawn, mm. */
  readonly lengthMm: number;
  /** From the first hole to the last one, along the line; all around a closed one. */
  readonly sewnMm: number;
  readonly holes: readonly StitchHole[];
  /** The pitch that was asked for, and the shortest, longest and mean one along the line, mm. */
  readonly pitchMm: number;
  readonly usedPitchMm: { readonly min: number; readonly max: number; readonly mean: number };
  readonly startGapMm: number;
  readonly endGapMm: number;
  readonly gave: StitchGave;
  /** Corners that an iron's pitch passes over. */
  readonly cornersMissed: number;
}

/** The marks of one stitch line of one piece, in the frame of the piece's shape. */
export interface StitchedLine {
  readonly article: string;
  readonly piece: string;
  /** Its name in the pattern, or "stitch line 2". */
  readonly line: string;
  /** Which of the shape's stitch lines it is. */
  readonly index: number;
  readonly with: StitchTool;
  readonly marks: StitchMarks;
}

/** Lines that are sewn in one go, with one needle through all of them; or one line alone. */
export interface StitchSeam {
  readonly article: string;
  /** "front/gusset-seam + gusset/front-seam". */
  readonly name: string;
  readonly lines: readonly StitchedLine[];
  /** The same on each of its lines. */
  readonly holes: number;
  readonly pitchMm: number;
  /** Of the line that the others are eased to, from its first hole to its last one. */
  readonly lengthMm: number;
  /** How much longer the longest of its lines is than the shortest, mm; 0 for a line alone. */
  readonly differenceMm: number;
  /** All that the needle goes through; absent where the thickness of a piece is not known. */
  readonly stackMm?: number;
  /** How often a set has it. */
  readonly perSet: number;
  /** Thread for sewing it once, tails included, mm. */
  readonly threadMm?: number;
  readonly tailsMm: number;
  readonly thread: string;
}

/** Thread of one name for the whole order, mm. */
export interface ThreadNeed {
  readonly thread: string;
  readonly seams: number;
  readonly lengthMm: number;
  /** What the order says it needs or has, where it says so. */
  readonly statedMm?: number;
}
