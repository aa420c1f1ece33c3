import type { Point, Polyline, Ring } from '@hidebound/geometry';

/**
 * A simulated photo of a hide on a floor, as plain data: the same scene gives the same picture. Everything shown is
 * invented. Floor coordinates: mm, x right, y down as seen from above.
 */
export interface Scene {
  readonly name: string;
  /** Which row of the benchmark's table it belongs to. */
  readonly kind: string;
  readonly seed: number;
  readonly picture: { readonly width: number; readonly height: number };
  readonly view: View;
  readonly lens: Lens;
  readonly hides: readonly HideLook[];
  readonly floor: FloorLook;
  readonly sheets: SheetsLook;
  readonly light: Light;
  readonly sensor: Sensor;
  readonly jpegQuality: number;
}

export interface View {
  /** Between the axis and the plumb line. */
  readonly tiltDeg: number;
  /** Which way on the floor the camera looks when it is tilted; 0 is to the right, 90 down. */
  readonly towardsDeg: number;
  readonly rollDeg: number;
  /** Which part of the picture the hide and its sheets may fill, 0 to 1. Above 1 they leave it. */
  readonly fill: number;
}

/**
 * The lens. With u the place on the picture plane before distortion, in halves of the picture's diagonal from the axis,
 * the light falls on u · (1 + k1 ρ² + k2 ρ⁴ + k3 ρ⁶) and the two tangential terms after it (Brown, Decentering Distortion of
 * Lenses, 1966, in the form and order of terms that is usual since).
 */
export interface Lens {
  /** Focal length over half of the picture's diagonal. */
  readonly focal: number;
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
  readonly p1: number;
  readonly p2: number;
  /** The axis from the picture's middle, in halves of the diagonal. */
  readonly axisX: number;
  readonly axisY: number;
}

export type HideForm = 'whole' | 'side' | 'skin' | 'scrap';
export type LeatherColour = 'veg tan' | 'tan' | 'chestnut' | 'dark brown' | 'black' | 'natural';

export interface HideLook {
  readonly form: HideForm;
  /** From head to tail. */
  readonly lengthMm: number;
  /** Of the line from head to tail; 0 is to the right. */
  readonly turnDeg: number;
  readonly at: Point;
  readonly colour: LeatherColour;
  /** How high its grain lies over the floor. */
  readonly heightMm: number;
  readonly openings: number;
  readonly marks: MarkCounts;
}

export interface MarkCounts {
  readonly scars: number;
  readonly brands: number;
  readonly stains: number;
  readonly bites: number;
  readonly veins: number;
  readonly chalkRings: number;
  readonly chalkLines: number;
  readonly chalkCrosses: number;
}

export type FloorKind = 'plain' | 'planks' | 'tiles' | 'cloth' | 'concrete';

export interface FloorLook {
  readonly kind: FloorKind;
  /** sRGB, 0 to 255. */
  readonly colour: readonly [number, number, number];
}

export interface SheetsLook {
  /** Laid around the hides, numbered from 1. */
  readonly count: number;
  /** How high the corner that lifts most stands over the floor. */
  readonly curlMm: number;
  /** Printed size over drawn size. */
  readonly stretch: { readonly x: number; readonly y: number };
  /** What a person with a rule reads off the printed bars; nobody measured them where it is absent. */
  readonly readings?: { readonly acrossMm: number; readonly downMm: number };
}

export interface Light {
  /** How much darker the far side is, as a share. */
  readonly fall: number;
  readonly fallTowardsDeg: number;
  /** Where shadows fall. */
  readonly shadowTowardsDeg: number;
  /** A person's or a table's soft shadow over a part of the floor: how dark, 0 for none. */
  readonly wideShadow: number;
  /** A shine of the light on the leather: how bright, 0 for none. */
  readonly shine: number;
  /** Red and blue over green. */
  readonly warmth: number;
  /** Light from low at one side, towards `shadowTowardsDeg`: how much relief shows, 0 or absent for none, 1 for much. */
  readonly raking?: number;
}

export interface Sensor {
  readonly blurPx: number;
  readonly motionPx: number;
  readonly motionDeg: number;
  /** 1 is a phone indoors. */
  readonly noise: number;
  /** Loss of light in the picture's corners, as a share. */
  readonly vignetting: number;
}

/** What is true of a scene, to judge a result by. */
export interface SceneTruth {
  readonly hides: readonly HideTruth[];
  readonly sheets: readonly SheetTruth[];
  readonly camera: PinholeCamera;
}

export interface HideTruth {
  readonly outline: Ring;
  readonly openings: readonly Ring[];
  /** From head to tail. */
  readonly backbone: Polyline;
  readonly marks: readonly MarkTruth[];
  readonly heightMm: number;
}

/** A ridge has the leather's own colour: only light from low at one side shows it. */
export type MarkKind =
  'scar' | 'brand' | 'stain' | 'bite' | 'vein' | 'ridge' | 'chalk ring' | 'chalk line' | 'chalk cross';

export interface MarkTruth {
  readonly kind: MarkKind;
  /** Lines that it is drawn with; a stain's and a bite's is its edge. */
  readonly lines: readonly Polyline[];
  readonly widthMm: number;
  readonly middle: Point;
  /** How far its lines reach from its middle. */
  readonly reachMm: number;
}

export interface SheetTruth {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
  /** Of each corner of its paper: top left, top right, bottom right, bottom left. */
  readonly liftsMm: readonly number[];
  readonly paper: Ring;
  /** Each marker's corners in the photo, px, in the order of the sheet plan. */
  readonly cornersPx: readonly { readonly place: number; readonly corners: readonly Point[] }[];
}

/** A camera over the floor: all that is needed to tell where a place comes to lie in its photo. */
export interface PinholeCamera {
  readonly width: number;
  readonly height: number;
  /** Of the lens; z is the height over the floor. */
  readonly position: { readonly x: number; readonly y: number; readonly z: number };
  /** Rows: the picture's right, the picture's down, and forward, in x right, y down, z into the floor. */
  readonly axes: readonly (readonly [number, number, number])[];
  readonly lens: Lens;
}
