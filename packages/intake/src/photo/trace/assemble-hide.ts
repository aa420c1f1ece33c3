import { curveFromPolyline, growBox, ringBox, roundCurve, roundPoint } from '@hidebound/geometry';
import type { Affine, Polyline, Ring } from '@hidebound/geometry';
import type {
  EdgeHints,
  Flaw,
  FlawCandidate,
  Hide,
  HideCut,
  HideGuess,
  HidePhoto,
  UnsureEdge,
} from '@hidebound/leather';
import { moveFlaw } from '../marks/register/move-flaw.js';
import type { Photo } from '../photo.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { hideFrame, lineInFrame, pointInFrame, ringInFrame } from './hide-frame.js';
import type { HideErrors } from './known-errors.js';
import { pictureInFrame } from './place-picture.js';
import type { TraceOptions } from './trace-options.js';

/** All that was found out of one hide, in the frame of the floor. */
export interface TracedHide {
  readonly outline: Ring;
  readonly openings: readonly Ring[];
  /** Within the outline as it was traced, before it lost points. */
  readonly areaMm2: number;
  readonly unsure: readonly UnsureEdge[];
  readonly flaws: readonly Flaw[];
  readonly candidates: readonly FlawCandidate[];
  readonly backbone?: Polyline;
  readonly cut: HideCut;
  readonly guessed: readonly HideGuess[];
  readonly errors: HideErrors;
  readonly hints: EdgeHints;
  readonly scaledBy: string;
  readonly takenFrom: readonly string[];
  readonly picture: StraightPicture;
}

/** Floor that stays around the hide in its picture, mm: enough to see where the edge is. */
const PICTURE_MARGIN_MM = 30;

/** The hide and its picture, both in the hide's own frame. */
export function assembleHide(
  traced: TracedHide,
  options: TraceOptions,
): { readonly hide: Hide; readonly picture: StraightPicture } {
  const box = ringBox(traced.outline);
  const frame = hideFrame(box, options.sideUp);
  const picture = pictureInFrame(traced.picture, growBox(box, PICTURE_MARGIN_MM), frame, options.sideUp);
  return { hide: hideOf(traced, { frame, picture, options }), picture };
}

interface Framed {
  readonly frame: Affine;
  readonly picture: StraightPicture;
  readonly options: TraceOptions;
}

function hideOf(traced: TracedHide, framed: Framed): Hide {
  const { frame, options } = framed;
  const closed = (ring: Ring, role: 'outer' | 'opening') =>
    curveFromPolyline(ringInFrame(frame, ring, role), true);
  return {
    id: options.id,
    cut: traced.cut,
    outline: closed(traced.outline, 'outer'),
    openings: traced.openings.map((ring) => closed(ring, 'opening')),
    ...(traced.backbone === undefined ? {} : { backbone: lineInFrame(frame, traced.backbone) }),
    tightness: [],
    zones: [],
    flaws: traced.flaws.map((flaw) => onGrid(moveFlaw(flaw, frame))),
    candidates: traced.candidates.map((flaw) => onGrid(moveFlaw(flaw, frame))),
    unsureEdges: traced.unsure.map(({ line, offByMm }) => ({ line: lineInFrame(frame, line), offByMm })),
    leather: { readings: [], ...options.leather },
    area: {
      measuredMm2: Math.round(traced.areaMm2),
      ...(options.invoicedMm2 === undefined ? {} : { invoicedMm2: options.invoicedMm2 }),
    },
    ...(options.lot === undefined ? {} : { lot: options.lot }),
    state: 'on hand',
    photo: photoOf(traced, framed),
    ...(traced.guessed.length === 0 ? {} : { guessed: traced.guessed }),
  };
}

/** Moved coordinates on the grid of the files. */
function onGrid<F extends Flaw>(flaw: F): F {
  const { shape } = flaw;
  if (shape.kind !== 'area') return flaw;
  return { ...flaw, shape: { ...shape, outline: roundCurve(shape.outline) } };
}

function photoOf(traced: TracedHide, { frame, picture, options }: Framed): HidePhoto {
  const { errors, hints } = traced;
  const lines = (all: readonly Polyline[]) => all.map((line) => lineInFrame(frame, line));
  return {
    file: options.pictureFile,
    pxPerMm: picture.pxPerMm,
    origin: roundPoint(picture.origin),
    scaledBy: traced.scaledBy,
    errorMm: hundredths(errors.leastMm),
    errorsAt: errors.at.map(({ at, mm }) => ({ at: pointInFrame(frame, at), mm: hundredths(mm) })),
    scaleErrorShare: errors.scaleShare,
    areaErrorShare: errors.areaShare,
    sideUp: options.sideUp,
    takenFrom: traced.takenFrom,
    ...namesOf('raking', options.raking),
    ...namesOf('otherSide', options.otherSide),
    ...(options.isMoved === true ? { isMoved: true } : {}),
    ...(options.hintsFile === undefined ? {} : { hints: options.hintsFile }),
    hideStrokes: lines(hints.hideStrokes),
    floorStrokes: lines(hints.floorStrokes),
  };
}

function namesOf<K extends 'raking' | 'otherSide'>(
  key: K,
  photos: readonly Photo[] = [],
): Pick<HidePhoto, K> | object {
  return photos.length === 0 ? {} : { [key]: photos.map(({ file }) => file) };
}

/** Errors are told no finer than anybody knows them. */
function hundredths(mm: number): number {
  return Math.ceil(mm * 100) / 100;
}
