import { LINE_ROLES } from '@hidebound/leather';
import type { LineRole } from '@hidebound/leather';
import type { Labels } from '../drawing/drawn-line.js';

/** What a layer of a piece holds; `point` layers say where the boundary turns or bends, `internal` may be any mark. */
export type PieceLayer = LineRole | 'point' | 'internal';

/** Layers of a piece by number. ASTM D6673 (formerly AAMA-292-B), from memory. */
const PIECE_LAYERS: Readonly<Record<string, PieceLayer>> = {
  1: 'cut', // piece boundary
  2: 'point', // turn points
  3: 'point', // curve points
  4: 'notch',
  5: 'ignore', // grade reference
  6: 'mirror',
  7: 'direction', // grain line
  8: 'internal',
  9: 'ignore', // stripe reference
  10: 'ignore', // plaid reference
  11: 'cut-out',
  13: 'punch', // drill holes
  14: 'stitch', // sew line
  15: 'text', // annotation
  80: 'notch', // T
  81: 'notch', // castle
  82: 'notch', // check
  83: 'notch', // U
  84: 'ignore', // quality validation curves
  85: 'ignore',
  86: 'ignore',
  87: 'ignore',
};

/** The boundary's layer, which also bears the texts about the piece. */
export const BOUNDARY_LAYER = '1';

export function pieceLayer(name: string): PieceLayer | undefined {
  return Object.hasOwn(PIECE_LAYERS, name) ? PIECE_LAYERS[name] : undefined;
}

/** Depth of a notch that is a point without one. Of common cutters' notches, 3 to 6 mm deep (common practice, no source), one that still lies within a seam's allowance. */
export const NOTCH_DEPTH_MM = 5;

/** Diameter of a hole that is a point: an awl's or the smallest punch's, which marks a place without weakening it (common practice, no source). */
export const DRILL_DIAMETER_MM = 2;

export const NO_LABELS: Labels = { given: [], classes: [], data: {} };

/** One for each role, shared by all lines. */
const LABELS = new Map(
  LINE_ROLES.map((role): [LineRole, Labels] => [role, { ...NO_LABELS, data: { role } }]),
);

/**
 * Labels of a line of a piece, so that the order's own rules still come first. An internal line's role is guessed
 * unless it is closed: it is then no opening, since those have a layer of their own.
 */
export function pieceLabels(layer: PieceLayer | undefined, isClosed: boolean): Labels {
  if (layer === undefined || (layer === 'internal' && !isClosed)) return NO_LABELS;
  const role = layer === 'internal' ? 'stitch' : layer === 'point' ? 'ignore' : layer;
  return LABELS.get(role)!;
}
