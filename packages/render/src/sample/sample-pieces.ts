import { containedRegion, curveFromPolyline } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { LayablePiece, Piece } from '@hidebound/leather';
import { smoothCurve } from './sample-hide.js';

/** Invented bicycle goods for tests: outlines about the origin, the arrow along x. */
export interface SampleKind {
  readonly article: string;
  readonly name: string;
  readonly cut: Curve;
  readonly count: number;
  readonly mirrored: number;
  readonly faceInset?: boolean;
  readonly anyAngle?: boolean;
  readonly cutOut?: Curve;
}

function box(length: number, width: number, corner = 0): Curve {
  const l = length / 2;
  const w = width / 2;
  if (corner === 0) {
    return curveFromPolyline(
      [
        { x: -l, y: -w },
        { x: l, y: -w },
        { x: l, y: w },
        { x: -l, y: w },
      ],
      true,
    );
  }
  const c = corner;
  const k = c * (1 - Math.SQRT1_2);
  const p = (x: number, y: number): Point => ({ x, y });
  return {
    start: p(-l + c, -w),
    segments: [
      { kind: 'line', to: p(l - c, -w) },
      { kind: 'arc', via: p(l - k, -w + k), to: p(l, -w + c) },
      { kind: 'line', to: p(l, w - c) },
      { kind: 'arc', via: p(l - k, w - k), to: p(l - c, w) },
      { kind: 'line', to: p(-l + c, w) },
      { kind: 'arc', via: p(-l + k, w - k), to: p(-l, w - c) },
      { kind: 'line', to: p(-l, -w + c) },
      { kind: 'arc', via: p(-l + k, -w + k), to: p(-l + c, -w) },
    ],
    closed: true,
  };
}

function disc(diameter: number): Curve {
  const r = diameter / 2;
  return {
    start: { x: r, y: 0 },
    segments: [
      { kind: 'arc', via: { x: 0, y: r }, to: { x: -r, y: 0 } },
      { kind: 'arc', via: { x: 0, y: -r }, to: { x: r, y: 0 } },
    ],
    closed: true,
  };
}

const GUSSET = smoothCurve([
  { x: -170, y: -30 },
  { x: 0, y: -48 },
  { x: 170, y: -28 },
  { x: 175, y: 25 },
  { x: 0, y: 8 },
  { x: -175, y: 25 },
]);

const FLAP = smoothCurve([
  { x: -150, y: -90 },
  { x: 150, y: -90 },
  { x: 165, y: 0 },
  { x: 90, y: 95 },
  { x: 0, y: 110 },
  { x: -90, y: 95 },
  { x: -165, y: 0 },
]);

export const SAMPLE_KINDS: readonly SampleKind[] = [
  { article: 'Saddlebag', name: 'Flap', cut: FLAP, count: 1, mirrored: 0, faceInset: true },
  { article: 'Saddlebag', name: 'Front', cut: box(300, 190, 30), count: 1, mirrored: 0, faceInset: true },
  { article: 'Saddlebag', name: 'Back', cut: box(300, 230, 12), count: 1, mirrored: 0 },
  { article: 'Saddlebag', name: 'Gusset', cut: GUSSET, count: 2, mirrored: 1 },
  { article: 'Saddlebag', name: 'Closing strap', cut: box(420, 25), count: 2, mirrored: 0 },
  { article: 'Saddlebag', name: 'Keeper', cut: box(88, 13), count: 3, mirrored: 0, anyAngle: true },
  {
    article: 'Tool roll',
    name: 'Body',
    cut: box(460, 250, 20),
    count: 1,
    mirrored: 0,
    cutOut: box(120, 40, 10),
  },
  { article: 'Tool roll', name: 'Pocket, wide', cut: box(210, 120, 8), count: 2, mirrored: 0 },
  { article: 'Tool roll', name: 'Tie strap', cut: box(700, 20), count: 1, mirrored: 0 },
  { article: 'Tool roll', name: 'Tab', cut: box(60, 32, 10), count: 2, mirrored: 1, anyAngle: true },
  { article: 'Grip wrap', name: 'Wrap', cut: box(380, 32), count: 2, mirrored: 1 },
  { article: 'Grip wrap', name: 'End disc', cut: disc(30), count: 2, mirrored: 0, anyAngle: true },
  { article: 'Frame strap', name: 'Toe strap', cut: box(440, 18), count: 2, mirrored: 0 },
];

/** The kind as a piece that is ready to be laid. */
export function samplePiece(kind: SampleKind): LayablePiece {
  const shape: Piece = {
    name: kind.name,
    cut: kind.cut,
    cutOuts: kind.cutOut === undefined ? [] : [kind.cutOut],
    punches: [],
    notches: [],
    stitchLines: [],
    foldLines: [],
    skiveLines: [],
    cementLines: [],
    face: kind.faceInset === true ? [box(260, 130, 20)] : [],
  };
  const region = containedRegion(shape.cut, shape.cutOuts);
  return {
    article: kind.article,
    piece: kind.name,
    hash: '0'.repeat(64),
    shape,
    region,
    face: kind.faceInset === true ? [containedRegion(shape.face[0]!, [])] : [region],
    arrowDeg: 0,
    arrowIsGuessed: true,
  };
}
