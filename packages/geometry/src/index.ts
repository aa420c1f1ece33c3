export type {
  Affine,
  ArcSegment,
  Box,
  CubicSegment,
  Curve,
  CurveSegment,
  LineSegment,
  Point,
  Polyline,
  Region,
  Ring,
} from './types/shape.js';
export type {
  AngleRule,
  Budget,
  CopyRef,
  DirectionField,
  Distances,
  FixedPlacement,
  Item,
  ItemPart,
  Lane,
  LaneNeed,
  LaneRow,
  Need,
  NestAnswer,
  NestProblem,
  Objective,
  PairRule,
  Placement,
  QualityRegion,
  RoughCut,
  RuleName,
  SetKind,
  SetMember,
  Sheet,
  ThicknessField,
  ThicknessNeed,
  Unplaced,
  UnplacedReason,
  Violation,
} from './types/problem.js';
export {
  CHECK_FORGIVES_DEG,
  CHECK_FORGIVES_MM,
  CURVE_TOLERANCE_MM,
  DIRECTION_UNKNOWN_BELOW,
  FIELD_GRID_MM,
  FIELD_NEAREST_MM,
  GRID_MM,
  ROTATION_DECIMALS,
} from './tolerance.js';
export { GeometryError } from './error.js';
export type { GeometryErrorCode } from './error.js';
export { distanceBetween, distanceSq, roundCoordinate, roundPoint } from './point.js';
export { angleBetweenDeg, atan2Deg, normalizeDeg, sinCosDeg } from './number/trigonometry.js';
export { createRandom } from './number/random.js';
export type { Random } from './number/random.js';
export {
  IDENTITY,
  MIRROR_X,
  affineDeterminant,
  applyAffine,
  composeAffine,
  invertAffine,
  rotationDeg,
  scaling,
  transformRegion,
  transformRing,
  translation,
} from './shape/affine.js';
export {
  boxUnion,
  boxesTouch,
  growBox,
  orientRegion,
  orientRing,
  regionArea,
  regionBox,
  regionCentroid,
  regionsArea,
  reverseRing,
  ringArea,
  ringBox,
  ringCentroid,
  ringPerimeter,
} from './shape/ring.js';
export { intersectRegions, offsetRegions, subtractRegions, unionRegions } from './shape/clipper.js';
export type { OffsetOptions } from './shape/clipper.js';
export { arcsToCubics, transformCurve, transformCurveToGrid } from './curve/transform.js';
export {
  circleCurve,
  curveCorners,
  curveEndPoints,
  curveFromPolyline,
  curveSteps,
  reverseCurve,
  roundCurve,
} from './curve/path.js';
export { arcCentre, pointOnArc } from './curve/arc.js';
export type { ArcCircle } from './curve/arc.js';
export { cubicDerivative, cubicInflections, cubicPoint, splitCubic } from './curve/cubic.js';
export type { Cubic } from './curve/cubic.js';
export { curveArea, curveBox, curveLength } from './curve/measure.js';
export { ellipticalArcToCubics, ellipticalArcToSegments } from './curve/ellipse.js';
export type { EllipticalArc } from './curve/ellipse.js';
export { flattenCubic, flattenCurve, flattenSegment } from './curve/flatten.js';
export { containedRegion, containedRing, containingRegion, containingRing } from './curve/contour.js';
export { endDirection, startDirection } from './curve/direction.js';
export { offsetCurve } from './curve/offset-curve.js';
export type { OffsetCurve } from './curve/offset-curve.js';
export { curveStretch, startedAt } from './curve/stretch.js';
export { curveToArcs } from './curve/to-arcs.js';
export {
  isBetween,
  isOnSegment,
  lineMeeting,
  segmentsCross,
  segmentsTouch,
  turnOf,
} from './shape/orientation.js';
export { lineInRegion } from './shape/line-in-region.js';
export { createSpatialIndex } from './shape/spatial-index.js';
export type { SpatialIndex } from './shape/spatial-index.js';
export { findSelfContacts, findSelfCrossing } from './shape/self-contact.js';
export type { SelfContact, SelfContactKind } from './shape/self-contact.js';
export { pointInRegion, pointInRing, pointInside, regionInRegion, ringInRing } from './shape/contain.js';
export type { Place } from './shape/contain.js';
export {
  outlineDistance,
  pointToRing,
  pointToSegment,
  polylineNearest,
  regionDistance,
  ringDistance,
  segmentDistance,
} from './shape/distance.js';
export type { NearestOnPolyline } from './shape/distance.js';
export { convexHull } from './shape/hull.js';
export { minimumWidthBox } from './shape/minimum-box.js';
export type { TurnedBox } from './shape/minimum-box.js';
export { enclosingCircle } from './shape/enclosing-circle.js';
export type { Circle } from './shape/enclosing-circle.js';
export { signedDistance, widestInscribedCircle } from './shape/inscribed-circle.js';
export { directionAt, gridPointsIn, thicknessAt } from './direction-field.js';
export type { LocalDirection } from './direction-field.js';
export { largestRectangle } from './shape/inscribed-rectangle.js';
export type { InnerRectangle } from './shape/inscribed-rectangle.js';
export { simpleLine } from './shape/simple-line.js';
export { simplifyGrowing, simplifyShrinking } from './shape/simplify.js';
export { convexParts } from './shape/convex-parts.js';
export { convexSum, noFitPolygon, noFitRegions } from './shape/no-fit.js';
export { freeingCutMm, placedRings, usedUpArea } from './leftover/used-up.js';
export type { UsedUp } from './leftover/used-up.js';
export { densestDoubleLattice } from './lattice/double-lattice.js';
export type { Repeat, RepeatMember } from './lattice/repeat.js';
export { repeatsOf } from './lattice/repeats-of.js';
export type { RepeatOptions } from './lattice/repeats-of.js';
export { layLanes } from './lane/lay-lanes.js';
export type { LaneCopy, LaneLayout, LaneOptions } from './lane/lay-lanes.js';
export { laneRegion } from './lane/lane-region.js';
export { roughCutsFor } from './rough/rough-cuts.js';
export { drawRoughCuts } from './rough/drawn-rough-cuts.js';
export type { DrawnRoughCuts } from './rough/drawn-rough-cuts.js';
export { roomAround } from './rough/kept-apart.js';
export type { RoughCutDrawing } from './rough/rough-cuts.js';
export type { RoughCutConflict, RoughCutConflictCode } from './rough/conflicts.js';
export { refuseUnsupported } from './nest/refuse.js';
export type { NestRefusal, NestRefusalCode } from './nest/refuse.js';
export { runNest, runNestAsync, startNest } from './nest/run.js';
export type { AsyncRunOptions, NestProgress, NestRun, RunOptions } from './nest/run.js';
export { compareAnswers, compareScores, scoreAnswer } from './nest/score.js';
export type { AnswerScore } from './nest/score.js';
export { sampleHide } from './sample/sample-hide.js';
export type { SampleHideOptions } from './sample/sample-hide.js';
export type { SampleCut } from './sample/sample-outline.js';
export { samplePieces } from './sample/sample-pieces.js';
export type { SampleKind, SamplePiece } from './sample/sample-pieces.js';
export { sampleProblem } from './sample/sample-problem.js';
export type { SampleProblemOptions } from './sample/sample-problem.js';
