import { applyAffine, atan2Deg, normalizeDeg, pointToRing, roundPoint, sinCosDeg } from '@hidebound/geometry';
import type { Curve, Ring } from '@hidebound/geometry';
import type { MarkLine, Notch, Piece, Punch } from '@hidebound/leather';
import { JOIN_MM, PUNCH_MAX_DIAMETER_MM } from '../limits.js';
import { mirrorAbout, offAxis } from '../lines/axis.js';
import type { Axis } from '../lines/axis.js';
import { circleOfCurve } from '../lines/circles.js';
import { flatRing } from '../lines/duplicates.js';
import { punchOf } from './place-lines.js';
import { isSymmetric, mirrorCurve, reachOff, unfoldClosed, unfoldOpen } from './unfold-curve.js';

export interface Unfolded {
  readonly piece: Piece;
  /** Lines that reach over the axis without being alike on both sides. */
  readonly uneven: number;
  /** The direction arrow is neither along nor across the axis. */
  readonly arrowIsAskew: boolean;
}

/** An arrow this near to the axis, or to its normal, is as good on the other half. */
const ARROW_ASKEW_SINE = 0.02;

/**
 * The whole piece of a half whose cut line lies on the axis: what lies within is doubled by its mirror image, what
 * ends on the axis joined with it, what lies on it kept once. Nothing if no straight part of the cut line lies there.
 */
export function unfoldPiece(half: Piece, axis: Axis): Unfolded | undefined {
  const whole = unfoldClosed(axis, half.cut);
  if (whole === undefined) return undefined;
  const [cut, ...gaps] = whole;
  const unfold = unfolding(axis, cut!);
  const areas = half.cutOuts.map(unfold.area);
  const isHole = (curve: Curve) => punchOfHalf(curve) !== undefined;
  const openings = [...gaps, ...areas.flatMap(({ joined }) => joined).filter((curve) => !isHole(curve))];
  const holes = areas.flatMap(({ joined }) => joined).flatMap((curve) => punchOfHalf(curve) ?? []);
  const piece: Piece = {
    ...half,
    cut: cut!,
    cutOuts: [...areas.flatMap(({ doubled }) => doubled), ...openings],
    punches: [...half.punches.flatMap(unfold.punch), ...holes],
    notches: half.notches.flatMap(unfold.notch),
    stitchLines: half.stitchLines.flatMap(unfold.mark),
    foldLines: half.foldLines.flatMap(unfold.mark),
    skiveLines: half.skiveLines.flatMap(unfold.mark),
    cementLines: half.cementLines.flatMap(unfold.mark),
    face: half.face.map(unfold.area).flatMap(({ doubled, joined }) => [...doubled, ...joined]),
  };
  return { piece, uneven: unfold.uneven(), arrowIsAskew: isAskew(half, axis) };
}

function punchOfHalf(curve: Curve): Punch | undefined {
  const circle = circleOfCurve(curve);
  const isPunch = circle !== undefined && 2 * circle.radius <= PUNCH_MAX_DIAMETER_MM;
  return isPunch ? punchOf(circle.center, circle.radius) : undefined;
}

/** The ways in which each kind of part is unfolded; counts what is uneven. */
function unfolding(axis: Axis, whole: Curve) {
  const image = mirrorAbout(axis);
  const ring = flatRing(whole);
  let uneven = 0;
  const doubled = (curve: Curve): Curve[] => {
    const { least, most } = reachOff(axis, curve);
    const reachesOver = least < -JOIN_MM && most > JOIN_MM;
    const isOnAxis = least >= -JOIN_MM && most <= JOIN_MM;
    if (isOnAxis || (reachesOver && isSymmetric(axis, curve))) return [curve];
    if (reachesOver) uneven++;
    return [curve, mirrorCurve(axis, curve)];
  };
  return {
    uneven: () => uneven,
    area: (curve: Curve): { readonly doubled: readonly Curve[]; readonly joined: readonly Curve[] } => {
      const joined = unfoldClosed(axis, curve);
      return joined === undefined ? { doubled: doubled(curve), joined: [] } : { doubled: [], joined };
    },
    mark: (mark: MarkLine): MarkLine[] => {
      const { least, most } = reachOff(axis, mark.curve);
      const isOnOneSide = least >= -JOIN_MM !== most <= JOIN_MM;
      const unfold = mark.curve.closed ? unfoldClosed : unfoldOpen;
      const joined = isOnOneSide ? unfold(axis, mark.curve) : undefined;
      const curves = joined === undefined ? doubled(mark.curve) : [joined].flat();
      return curves.map((curve, i) =>
        i === 0 || mark.name === undefined ? { ...mark, curve } : { name: `${mark.name} mirrored`, curve },
      );
    },
    punch: (punch: Punch): Punch[] => {
      if (Math.abs(offAxis(axis, punch.at)) <= JOIN_MM) return [punch];
      return [punch, { ...punch, at: roundPoint(applyAffine(image, punch.at)) }];
    },
    notch: (notch: Notch): Notch[] => {
      if (Math.abs(offAxis(axis, notch.at)) <= JOIN_MM) return [fromEdge(notch, ring)];
      const turn = 2 * atan2Deg(axis.along.y, axis.along.x);
      const at = roundPoint(applyAffine(image, notch.at));
      return [notch, { ...notch, at, angleDeg: normalizeDeg(turn - notch.angleDeg) }];
    },
  };
}

/** A notch along the fold edge starts where the whole's edge is: either of its ends was on the half's. */
function fromEdge(notch: Notch, ring: Ring): Notch {
  const { sin, cos } = sinCosDeg(notch.angleDeg);
  const tip = roundPoint({ x: notch.at.x + notch.depthMm * cos, y: notch.at.y + notch.depthMm * sin });
  if (pointToRing(notch.at, ring) <= pointToRing(tip, ring)) return notch;
  return { ...notch, at: tip, angleDeg: normalizeDeg(notch.angleDeg + 180) };
}

function isAskew({ direction }: Piece, { along }: Axis): boolean {
  if (direction === undefined) return false;
  const [x, y] = [direction.to.x - direction.from.x, direction.to.y - direction.from.y];
  const length = Math.hypot(x, y);
  const across = Math.abs(along.x * y - along.y * x) / length;
  const parallel = Math.abs(along.x * x + along.y * y) / length;
  return Math.min(across, parallel) > ARROW_ASKEW_SINE;
}
