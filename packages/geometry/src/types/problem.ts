import type { Polyline, Region, Ring, Point } from './shape.js';

/**
 * The nesting problem: items to be laid on sheets, as plain data. Lengths in mm, angles in degrees,
 * clockwise as seen (y grows downwards). Items are never mirrored here: a mirrored copy is an item of its own.
 * An engine that can't honour a field refuses the problem by code; it never ignores one.
 */
export interface NestProblem {
  readonly items: readonly Item[];
  readonly setKinds: readonly SetKind[];
  /** In the order in which they are to be used. */
  readonly sheets: readonly Sheet[];
  /** Placements that stay where they are (locked by hand, or already cut). */
  readonly fixed: readonly FixedPlacement[];
  readonly distances: Distances;
  readonly objective: Objective;
  readonly budget: Budget;
}

/** One kind of thing to lay; its demand is told by its set kind. */
export interface Item {
  readonly id: string;
  /** In the item's own frame; a placement turns it clockwise about (0, 0), then moves it. */
  readonly region: Region;
  /** What leather it needs, everywhere within its region. */
  readonly need: Need;
  /** Parts of the item that need more (its face, say). Where needs meet, the strictest of all holds. */
  readonly parts: readonly ItemPart[];
  readonly angleRule: AngleRule;
  /** Thickness that the leather must have under it; absent: any. */
  readonly thickness?: ThicknessNeed;
  /** The item of which this one is the mirror image: copy k of both, in one set, form pair k. */
  readonly mirrorOf?: string;
  /** Set on the mirrored item: the two of a pair must lie where they stretch alike. */
  readonly pair?: PairRule;
  readonly value: number;
  /** Higher is laid first and missed last. */
  readonly priority: number;
  /** Ids of the sheets that it may lie on. */
  readonly sheets: readonly string[];
  /** Items of one group share leather, colour and preparation; lots are compared within a group. */
  readonly group?: string;
  /** Set for an item that is to be cut in a lane of parallel straps. */
  readonly lane?: LaneNeed;
  /** Room for its rough cut around it, in mm; absent: no rough cut. */
  readonly roughMargin?: number;
  /** Its seen side counts for keeping a set's faces on one lot. */
  readonly isFace: boolean;
}

/** What the leather under an item, or under a part of it, must be. */
export interface Need {
  /** The worst grade that it bears: 0 is the best leather. */
  readonly maxGrade: number;
  /** It bears load: never on a weak region. */
  readonly strong: boolean;
  /** Names of the zones within whose union it must lie; absent: anywhere. */
  readonly zones?: readonly string[];
}

export interface ItemPart {
  /** For diagnostics: "face". */
  readonly name: string;
  readonly areas: readonly Region[];
  readonly need: Need;
}

export interface AngleRule {
  /** `free`: any angle, anywhere. `sheet`: against the sheet's x axis. `local`: against the direction at the place. */
  readonly frame: 'free' | 'sheet' | 'local';
  /** Direction of the item's arrow in its own frame, degrees clockwise from its x axis. */
  readonly arrowDeg: number;
  /** Angles, from the frame's direction, at which the arrow may point. Empty for `free`. */
  readonly targetsDeg: readonly number[];
  readonly toleranceDeg: number;
  /** 180: the half-turned item is as good; 360: it is not. */
  readonly modulo: 180 | 360;
}

export interface ThicknessNeed {
  readonly minMm: number;
  readonly maxMm: number;
  /** `skive`: leather that is too thick will do. Leather that is too thin never does. */
  readonly tooThick: 'refuse' | 'skive';
}

export interface PairRule {
  /** Angles to the local direction are opposite within this. */
  readonly toleranceDeg: number;
  /** The two distances to the axis line differ by no more than this. */
  readonly distanceMm: number;
}

/** The straight sides of a strap, in its own frame: it runs along x, from y = -width/2 to y = width/2. */
export interface LaneNeed {
  readonly widthMm: number;
  /** Its hole end: +1 at the end of greater x, -1 at the other, 0 no preference. */
  readonly firmEnd: -1 | 0 | 1;
}

/** One kind of finished thing, and how many sets of it are wanted. Every item belongs to exactly one set kind. */
export interface SetKind {
  readonly id: string;
  /** How many sets; `many`: as many as fit. */
  readonly sets: number | 'many';
  readonly members: readonly SetMember[];
  readonly value: number;
  readonly priority: number;
  /** What one set's items must share: `lot` within each group, `faceLot` the same for items that are a face. */
  readonly keep: 'sheet' | 'lot' | 'faceLot' | 'nothing';
  /** Pairs of items whose faces end up side by side: laid near each other where that costs nothing. */
  readonly beside: readonly (readonly [string, string])[];
}

export interface SetMember {
  readonly item: string;
  /** Copies per set. */
  readonly count: number;
}

export interface Sheet {
  readonly id: string;
  readonly region: Region;
  readonly qualities: readonly QualityRegion[];
  readonly direction?: DirectionField;
  readonly thickness?: ThicknessField;
  /** Sheets of one lot match in shade. */
  readonly lot: string;
  /** The end from which the sheet is used up: a unit vector that points from that end into the sheet. */
  readonly useFrom: Point;
  /** For a strip: the open end may move; its region is the longest that is allowed. */
  readonly openLength?: boolean;
}

/** A region of a sheet with marks of its own. A place has the worst marks of all regions over it. */
export interface QualityRegion {
  readonly id: string;
  readonly areas: readonly Region[];
  /** 0 is the best leather; unmarked leather has grade 0. */
  readonly grade: number;
  readonly weak: boolean;
  /** Never to be touched, and kept clear of by the void distance. */
  readonly isVoid: boolean;
  /** Added to the void distance: how far off this region's own place may be. */
  readonly uncertaintyMm: number;
  /** Zone name, for needs that name zones. */
  readonly zone?: string;
}

/**
 * The local direction: mean of axis and strokes as axes (doubled angles), each counted by its nearest point
 * with weight 1/max(d, 5 mm)². A mean shorter than 0.2 is unknown; there only free items lie.
 */
export interface DirectionField {
  /** Directed: it tells a direction from its opposite, everywhere on the sheet. */
  readonly axis?: Polyline;
  readonly strokes: readonly Polyline[];
}

/** Thickness at a place: mean of the readings with weight 1/max(d, 5 mm)²; without readings, the whole range counts. */
export interface ThicknessField {
  readonly rangeMm: readonly [number, number];
  readonly readings: readonly { readonly at: Point; readonly mm: number }[];
}

/** What identifies one copy: its item, the set (from 1) of the item's set kind, and the copy (from 1) within the set. */
export interface CopyRef {
  readonly item: string;
  readonly set: number;
  readonly copy: number;
}

export interface Placement extends CopyRef {
  readonly sheet: string;
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
}

export interface FixedPlacement extends Placement {
  /** Rules that it may break because someone accepted that by hand. The check lists them, it does not fail on them. */
  readonly accepted: readonly RuleName[];
}

export interface Distances {
  /** Between the outlines of two items. */
  readonly gap: number;
  /** Between an item and the sheet's outline or an opening. */
  readonly edge: number;
  /** Between an item and a void region, on top of that region's uncertainty. */
  readonly void: number;
  /** Between items of different groups, where it is more than the gap. */
  readonly betweenGroups?: number;
  /** Width of what the cut takes away between neighbours in a lane; absent or 0: a knife, and they share their line. */
  readonly kerf?: number;
}

export interface Objective {
  readonly mode: 'placeAll' | 'sets' | 'fill' | 'strip';
  /** A leftover smaller than this rectangle, either way round, is not worth keeping. */
  readonly keepMm: readonly [number, number];
}

export interface Budget {
  readonly seed: number;
  readonly streams: number;
  /** Joins to do; absent: until stopped. */
  readonly joins?: number;
}

/** A set of straps side by side: parallel, sharing lines, open at the sheet's edge at one end at least. */
export interface Lane {
  readonly id: string;
  readonly sheet: string;
  /** The straight first cut. The straps lie on its right, seen from `from` to `to` (clockwise as seen, y down). */
  readonly from: Point;
  readonly to: Point;
  readonly openAt: 'from' | 'to' | 'both';
  /** 0: neighbours share one line; more: each keeps its own line, this far apart. */
  readonly kerfMm: number;
  /** From the first cut on, across the lane. Straps in one row lie end to end along the lane. */
  readonly rows: readonly LaneRow[];
}

export interface LaneRow {
  readonly widthMm: number;
  readonly straps: readonly CopyRef[];
}

/** A block that is cut out first, around the pieces of one group. */
export interface RoughCut {
  readonly id: string;
  readonly sheet: string;
  readonly group: string;
  readonly outline: Ring;
  readonly marginMm: number;
  readonly members: readonly CopyRef[];
}

/** The answer to a problem. */
export interface NestAnswer {
  readonly placements: readonly Placement[];
  readonly lanes: readonly Lane[];
  readonly roughCuts: readonly RoughCut[];
  readonly unplaced: readonly Unplaced[];
  /** Joins that were completed; seed and joins give the same answer again. */
  readonly joins: number;
}

export interface Unplaced extends CopyRef {
  readonly reason: UnplacedReason;
}

export type UnplacedReason =
  | 'larger-than-every-sheet'
  | 'no-sheet-allowed'
  | 'no-room'
  | 'no-leather-good-enough'
  | 'direction-unknown'
  | 'thickness'
  | 'set-incomplete'
  | 'not-tried';

/** Every rule that the exact check proves. */
export type RuleName =
  | 'gap'
  | 'edge'
  | 'void'
  | 'looks'
  | 'strength'
  | 'zone'
  | 'angle'
  | 'thickness'
  | 'mirrored'
  | 'pair'
  | 'count'
  | 'set'
  | 'lot'
  | 'sheet'
  | 'locked'
  | 'lane'
  | 'rough-cut'
  | 'finite';

/** One broken rule. */
export interface Violation {
  readonly rule: RuleName;
  /** The offending copy; absent for a rule about a whole set or lane. */
  readonly at?: CopyRef;
  /** The other party: another copy, a region's id, a lane's or rough cut's id, a part's name. */
  readonly other?: CopyRef | string;
  readonly sheet?: string;
  /** Where on the sheet, in mm. */
  readonly place?: Point;
  /** What was measured and what was required, in mm or degrees. */
  readonly measured?: number;
  readonly required?: number;
  /** Its placement lists this rule as accepted by hand. */
  readonly accepted: boolean;
}
