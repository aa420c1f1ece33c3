import type { Affine, Point, Ring } from '@hidebound/geometry';
import type { Camera } from './camera.js';

/** What was found out about the floor from all photos together. Floor coordinates: mm, x right, y down as in the first photo. */
export interface SolvedFloor {
  /** One for each photo, in their order. */
  readonly cameras: readonly Camera[];
  readonly references: readonly SolvedReference[];
  /** In words, for the hide file: "4 reference sheets". */
  readonly scaledBy: string;
  readonly error: FloorError;
  /** From what errors at other places are told. */
  readonly unsureness: Unsureness;
}

/** A reference sheet, rectangle, pair of rules or card, and where it came to lie. */
export interface SolvedReference {
  /** "sheet 3", "rectangle". */
  readonly name: string;
  /** Its place on the floor, its paper included. */
  readonly ring: Ring;
  /** Whether it hides what lies below it: sheets and cards do; within a rectangle and between rules, the hide may lie. */
  readonly isOpaque: boolean;
  /** How far its points lie from where they should be, root mean square, on the floor. */
  readonly residualMm: number;
}

/** How far off things can be; each is meant to cover the truth in nine cases of ten. */
export interface FloorError {
  /** A length across the whole of what is seen, as a share. */
  readonly scaleShare: number;
  /** An area, as a share: twice that. */
  readonly areaShare: number;
  /** How far a place can lie from where it is said to be, on a grid over what is seen. */
  readonly at: readonly { readonly at: Point; readonly mm: number }[];
}

/** What is not known exactly about how the photos see the floor. */
export interface Unsureness {
  /** From floor coordinates (mm) to those in which the cameras' numbers hold: a turn, a shift and a division by 1000. */
  readonly inner: Affine;
  readonly cameras: readonly CameraNumbers[];
  /** How the numbers of all cameras, one after the other, vary together; row by row. */
  readonly covariance: readonly number[];
}

export interface CameraNumbers {
  /** Homography without its last number, k1, k2, p1, p2, axis: in half diagonals of the photo from its middle. */
  readonly values: readonly number[];
  /** Where the camera stands: the place of the floor right below it, and its height, mm. */
  readonly foot: Point;
  readonly heightMm: number;
  /** Between where it looks and the plumb line. */
  readonly tiltDeg: number;
}
