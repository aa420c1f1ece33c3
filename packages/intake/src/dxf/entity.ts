import type { Affine, Curve, Point } from '@hidebound/geometry';
import type { IgnoredReason } from '../findings.js';
import type { Spline } from './spline.js';

/** What an entity of a section or block says, in units of the drawing, y up; places of blocks in the block's frame. */
export type Entity = EntityHead & EntityBody;

/** What every entity has. */
export interface EntityHead {
  /** As messages call it: "LINE 1A2". */
  readonly name: string;
  readonly line: number;
  readonly layer: string;
  readonly look: EntityLook;
  readonly isInPaperSpace: boolean;
  readonly isInvisible: boolean;
}

/** Absent: as the layer says. Colour is `#rrggbb`, or `by block`. */
export interface EntityLook {
  readonly colour?: string;
  /** In small letters; `byblock` stands for that of the insert. */
  readonly lineType?: string;
  /** 1/100 mm; -1 by layer, -2 by block, -3 the default. */
  readonly lineWeight: number;
}

export type EntityBody =
  | CurveBody
  | TextBody
  | InsertBody
  | { readonly kind: 'point'; readonly at: Point; readonly thickness: number }
  | { readonly kind: 'left out'; readonly reason: IgnoredReason }
  | { readonly kind: 'silent' };

export interface CurveBody {
  readonly kind: 'curve';
  readonly shape: Shape;
  /** Of a polyline that is drawn as a band. */
  readonly width?: number;
  /** The file gives points on it only. */
  readonly isInterpolated?: boolean;
}

/** A line as the format has it: how finely it must be fitted is known only where it is drawn. */
export type Shape =
  | { readonly kind: 'plain'; readonly curve: Curve }
  /** A circle, or part of one, that the frame flattens. */
  | { readonly kind: 'ellipse'; readonly circle: Curve; readonly frame: Affine }
  | { readonly kind: 'spline'; readonly spline: Spline };

export interface TextBody {
  readonly kind: 'text';
  readonly text: string;
  readonly at: Point;
  /** Anticlockwise from the x axis. */
  readonly angleDeg: number;
  readonly size: number;
  /** Of an attribute: what it is called. */
  readonly tag?: string;
}

export interface InsertBody {
  readonly kind: 'insert';
  readonly block: string;
  /** One for each of its rows and columns, from the frame of the block less its base point. */
  readonly frame: Affine;
  readonly columns: number;
  readonly rows: number;
  readonly columnStep: Point;
  readonly rowStep: Point;
  readonly attributes: readonly (EntityHead & TextBody)[];
}
