import type {
  Diagnostic,
  Hide,
  HideCut,
  LeatherQualities,
  MeasuredBars,
  PhotoHints,
  Side,
} from '@hidebound/leather';
import type { Photo } from '../photo.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { PhotoView } from './photo-view.js';

/** What is to be known of photos of one hide before it is traced. */
export interface TraceOptions {
  readonly id: string;
  /** Which side of the leather the camera saw; nothing in a photo tells it. */
  readonly sideUp: Side;
  /** What the straightened picture will be called, beside the hide's file. */
  readonly pictureFile: string;
  /** What the file of hints is called, beside the hide's file. */
  readonly hintsFile?: string;
  /** Guessed where nobody says it. */
  readonly cut?: HideCut;
  readonly hints?: PhotoHints;
  /** Bars of the printed sheets as measured; undefined for a sheet that nobody measured. */
  readonly barsOf?: (sheet: number) => MeasuredBars | undefined;
  /** Photos of the same leather, not moved, with light from low at one side, so that relief casts shadows. */
  readonly raking?: readonly Photo[];
  /** Photos of the other side of the hide, turned over. */
  readonly otherSide?: readonly Photo[];
  /** The leather was dragged along between the photos while the sheets stayed where they were. */
  readonly isMoved?: boolean;
  /** As written on the hide or the invoice. */
  readonly invoicedMm2?: number;
  readonly leather?: Partial<LeatherQualities>;
  readonly lot?: string;
  /** Possible flaws are looked for unless this is false. */
  readonly findCandidates?: boolean;
  /** Called before each stage. */
  readonly onStage?: (stage: TraceStage) => void;
  /** Asked between stages; `trace-stopped` is thrown where it says yes. */
  readonly isStopped?: () => boolean;
}

/** Steps of tracing in their order; not all are taken for every hide. */
export const TRACE_STAGES = [
  'references',
  'floor',
  'straighten',
  'outline',
  'chalk',
  'other side',
  'candidates',
  'backbone',
] as const;
export type TraceStage = (typeof TRACE_STAGES)[number];

/** A hide from photos, with what can be said of how well it is known. */
export interface TraceRead {
  readonly hide: Hide;
  /** The hide from straight above, in its own frame: mm from `origin`, seen from the grain side. */
  readonly picture: StraightPicture;
  readonly diagnostics: readonly Diagnostic[];
  readonly report: TraceReport;
  /** How each photo of the hide sees it; none where the hide was dragged along between them. */
  readonly views: readonly PhotoView[];
}

/** Figures that are shown but stand in no file. */
export interface TraceReport {
  readonly references: readonly { readonly name: string; readonly residualMm: number }[];
  readonly areaMm2: number;
  /** Nine true values in ten lie within this of what is said. */
  readonly areaErrorShare: number;
  readonly scaleErrorShare: number;
  /** Least and largest error of a place on the hide. */
  readonly placeErrorMm: { readonly least: number; readonly most: number };
  readonly chalkFlaws: number;
  readonly crosses: number;
  readonly unsureLengthMm: number;
  /** 0 to 1; absent where no backbone was guessed. */
  readonly backboneConfidence?: number;
  /** How badly the other side's outline fits, mm. */
  readonly otherSideMisfitMm?: number;
  /** How badly the photos of a hide that was dragged along fit together, mm. */
  readonly movedMisfitMm?: number;
}
