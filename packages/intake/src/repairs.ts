import type { Point } from '@hidebound/geometry';

export const REPAIR_KINDS = ['gap joined', 'double dropped', 'loop removed', 'curve fitted'] as const;
export type RepairKind = (typeof REPAIR_KINDS)[number];

/** One change that was made to what is drawn, so that nothing is done in silence. */
export interface Repair {
  readonly kind: RepairKind;
  /** As messages call it: "#flap", "path 12 on page 3". */
  readonly element: string;
  /** Where, mm in the frame of the pieces. */
  readonly at: Point;
  /** The width of the gap, the extent of the loop, the farthest that a fitted curve lies from what was drawn; of a double, how far it lies from its twin. mm. */
  readonly sizeMm: number;
}
