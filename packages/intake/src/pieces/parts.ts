import type { Curve } from '@hidebound/geometry';
import type { DirectionArrow, MarkLine, Notch, Punch } from '@hidebound/leather';
import type { RoleLine } from '../lines/role-line.js';
import type { Outline } from './outline.js';

/** A piece while its lines are being gathered. */
export interface PieceParts {
  readonly outline: Outline;
  readonly cutOuts: Curve[];
  readonly punches: Punch[];
  readonly notches: Notch[];
  readonly stitchLines: MarkLine[];
  readonly foldLines: MarkLine[];
  readonly skiveLines: MarkLine[];
  readonly cementLines: MarkLine[];
  readonly directions: {
    readonly line: RoleLine;
    readonly arrow: DirectionArrow;
    readonly lengthMm: number;
  }[];
  readonly face: Curve[];
  readonly texts: string[];
}

export function emptyParts(outline: Outline): PieceParts {
  return {
    outline,
    cutOuts: [],
    punches: [],
    notches: [],
    stitchLines: [],
    foldLines: [],
    skiveLines: [],
    cementLines: [],
    directions: [],
    face: [],
    texts: [],
  };
}
