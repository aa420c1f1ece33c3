import type { PhotoView, TraceReport, TraceStage } from '@hidebound/intake/photo';
import type {
  Diagnostic,
  EdgeHints,
  Hide,
  HideCut,
  LeatherQualities,
  PhotoHints,
  Side,
} from '@hidebound/leather';
import type { Told } from '../words/told.js';

/** A photo as it was taken, by the name that it has in the job. */
export interface RawPhoto {
  readonly file: string;
  readonly bytes: Uint8Array;
}

export interface TraceAsked {
  readonly photos: readonly RawPhoto[];
  /** The same leather, not moved, with light from low at one side. */
  readonly raking?: readonly RawPhoto[];
  /** The hide turned over. */
  readonly otherSide?: readonly RawPhoto[];
  /** The leather was dragged along between the photos. */
  readonly isMoved?: boolean;
  readonly id: string;
  readonly sideUp: Side;
  /** As the hide file names the straightened picture. */
  readonly pictureFile: string;
  /** As the hide file names the hints, where there are any. */
  readonly hintsFile: string;
  readonly hints: PhotoHints | HintsText;
  /** Strokes and places on the hide as it was traced before, mm; they become hints of the photos that show them. */
  readonly marks?: EdgeHints;
  /** The hide as a person has changed it since it was traced: what she decided stays. */
  readonly changed?: Hide;
  /** How the photos saw that hide; without it, the photos are traced as they were before to find out. */
  readonly views?: readonly PhotoView[];
  /** What is known of the printed sheets (`reference-sheets.json`). */
  readonly sheets?: string;
  readonly cut?: HideCut;
  readonly leather?: Partial<LeatherQualities>;
  readonly lot?: string;
  readonly invoicedMm2?: number;
}

/** Hints as their file has them: the page loads nothing that reads such a file. */
export interface HintsText {
  readonly file: string;
  readonly text: string;
}

/** What is to be told of a photo, in the packages' own words too. */
export type PhotoFinding = Diagnostic & Told;

/** A hide from photos, with all that is kept of it and told about it. */
export interface TraceDone {
  readonly hide: Hide;
  /** The straightened picture, JPEG. */
  readonly picture: Uint8Array;
  /** All hints that were used, as their file has them. */
  readonly hintsText: string;
  readonly findings: readonly PhotoFinding[];
  readonly report: TraceReport;
  readonly views: readonly PhotoView[];
}

/** What goes on in a trace; the photos are opened and the vision library is loaded first. */
export type TraceStep = 'open' | 'load' | TraceStage;

/** All steps in their order; not all are taken for every hide. */
export const TRACE_STEPS: readonly TraceStep[] = [
  'open',
  'load',
  'references',
  'floor',
  'straighten',
  'outline',
  'chalk',
  'other side',
  'candidates',
  'backbone',
];

/** A picture for the screen. */
export interface LookedAt {
  /** Of the photo itself, upright. */
  readonly width: number;
  readonly height: number;
  /** JPEG, at most as large as was asked for. */
  readonly picture: Uint8Array;
}

export interface DrawnHide {
  readonly hide: Hide;
  readonly findings: readonly PhotoFinding[];
}

export type PhotoTasks = {
  /** Opens a photo: refused where it can't be traced, else small enough for the screen. */
  look: { input: RawPhoto & { readonly mostPx: number }; output: LookedAt };
  /** A hide that was traced in a drawing program. */
  drawn: { input: RawPhoto & { readonly id: string }; output: DrawnHide };
  trace: { input: TraceAsked; output: TraceDone; progress: TraceStep };
};
