import { circleCurve } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import type { LeatherError } from '../leather-error.js';
import type { StrapNumbers } from '../model/order.js';
import type { Piece, Punch } from '../model/piece.js';
import { bareEndLength, endSegments } from './strap-end.js';
import type { DrawnMeasure, ORDER_SENTENCES } from '../words/order.js';
import { leatherErrorAs } from '../words/refuse.js';
import type { ParamsOf } from '../words/sentence.js';

const line = (x: number, y: number): CurveSegment => ({ kind: 'line', to: { x, y } });

/** A disc about the origin. Its arrow points along x, because a disc has no long axis. */
export function drawDisc(name: string, numbers: { readonly diameterMm: number }): Piece {
  needPositive(name, 'diameter', numbers.diameterMm);
  const r = numbers.diameterMm / 2;
  return {
    ...plainPiece(name, circleCurve({ x: 0, y: 0 }, r)),
    direction: { from: { x: -r / 2, y: 0 }, to: { x: r / 2, y: 0 } },
  };
}

/** A rectangle about the origin, its length along x, which is also where its arrow points. */
export function drawRectangle(
  name: string,
  numbers: { readonly widthMm: number; readonly lengthMm: number; readonly cornerRadiusMm: number },
): Piece {
  const { widthMm, lengthMm, cornerRadiusMm: r } = numbers;
  needPositive(name, 'width', widthMm);
  needPositive(name, 'length', lengthMm);
  if (!(r >= 0) || 2 * r > Math.min(widthMm, lengthMm)) {
    throw impossible('drawn-corners-too-large', { piece: name, radiusMm: r, widthMm, lengthMm });
  }
  const x = lengthMm / 2;
  const y = widthMm / 2;
  const cut: Curve = {
    start: { x: -x + r, y: -y },
    segments: [
      ...run({ x: x - r, y: -y }, -x + r !== x - r),
      ...roundCorner({ x: x - r, y: -y + r }, r, { x: 1, y: -1 }, { x, y: -y + r }),
      ...run({ x, y: y - r }, -y + r !== y - r),
      ...roundCorner({ x: x - r, y: y - r }, r, { x: 1, y: 1 }, { x: x - r, y }),
      ...run({ x: -x + r, y }, -x + r !== x - r),
      ...roundCorner({ x: -x + r, y: y - r }, r, { x: -1, y: 1 }, { x: -x, y: y - r }),
      ...run({ x: -x, y: -y + r }, -y + r !== y - r),
      ...roundCorner({ x: -x + r, y: -y + r }, r, { x: -1, y: -1 }, { x: -x + r, y: -y }),
    ],
    closed: true,
  };
  return { ...plainPiece(name, cut), direction: { from: { x: -x / 2, y: 0 }, to: { x: x / 2, y: 0 } } };
}

/**
 * A strap about the origin: it runs along x, its hole end at greater x, where its arrow points. Its length is
 * measured over all, tips included. Holes are punches on the axis, the slot is a cut-out with round ends whose
 * centre lies `fromEndMm` from the tip of the buckle end.
 */
export function drawStrap(name: string, strap: StrapNumbers): Piece {
  const { widthMm, lengthMm } = strap;
  needPositive(name, 'width', widthMm);
  needPositive(name, 'length', lengthMm);
  const x = lengthMm / 2;
  const y = widthMm / 2;
  const holeBase = x - bareEndLength(strap.holeEnd, widthMm);
  const buckleBase = -x + bareEndLength(strap.buckleEnd, widthMm);
  if (buckleBase > holeBase) {
    throw impossible('drawn-ends-too-long', { piece: name, lengthMm });
  }
  const cut: Curve = {
    start: { x: buckleBase, y: -y },
    segments: [
      ...run({ x: holeBase, y: -y }, buckleBase !== holeBase),
      ...endSegments(strap.holeEnd, widthMm, { base: holeBase, tip: x, sign: 1 }),
      ...run({ x: buckleBase, y }, buckleBase !== holeBase),
      ...endSegments(strap.buckleEnd, widthMm, { base: buckleBase, tip: -x, sign: -1 }),
    ],
    closed: true,
  };
  return {
    ...plainPiece(name, cut),
    cutOuts: slotOf(name, strap),
    punches: holesOf(name, strap),
    direction: { from: { x: -x / 2, y: 0 }, to: { x: x / 2, y: 0 } },
  };
}

function holesOf(name: string, strap: StrapNumbers): Punch[] {
  const { holes } = strap;
  if (holes === undefined || holes.count === 0) return [];
  needPositive(name, 'diameter of the holes', holes.diameterMm);
  const first = strap.lengthMm / 2 - holes.fromEndMm;
  const last = first - (holes.count - 1) * holes.spacingMm;
  const reach = strap.lengthMm / 2 - holes.diameterMm / 2;
  if (first > reach || last < -reach || holes.diameterMm >= strap.widthMm) {
    throw impossible('drawn-holes-outside', { piece: name, holes: holes.count });
  }
  return Array.from({ length: holes.count }, (_, i) => ({
    at: { x: first - i * holes.spacingMm, y: 0 },
    diameterMm: holes.diameterMm,
  }));
}

function slotOf(name: string, strap: StrapNumbers): Curve[] {
  const { slot } = strap;
  if (slot === undefined) return [];
  needPositive(name, 'width of the slot', slot.widthMm);
  const r = slot.widthMm / 2;
  const half = slot.lengthMm / 2 - r;
  const centre = -strap.lengthMm / 2 + slot.fromEndMm;
  if (half < 0) throw impossible('drawn-slot-short', { piece: name });
  const end = strap.lengthMm / 2;
  if (slot.widthMm >= strap.widthMm || centre - half - r <= -end || centre + half + r >= end) {
    throw impossible('drawn-slot-outside', { piece: name });
  }
  if (half === 0) return [circleCurve({ x: centre, y: 0 }, r)];
  return [
    {
      start: { x: centre - half, y: -r },
      segments: [
        line(centre + half, -r),
        { kind: 'arc', via: { x: centre + half + r, y: 0 }, to: { x: centre + half, y: r } },
        line(centre - half, r),
        { kind: 'arc', via: { x: centre - half - r, y: 0 }, to: { x: centre - half, y: -r } },
      ],
      closed: true,
    },
  ];
}

function run(to: Point, hasLength: boolean): CurveSegment[] {
  return hasLength ? [{ kind: 'line', to }] : [];
}

function roundCorner(centre: Point, r: number, outwards: Point, to: Point): CurveSegment[] {
  if (r === 0) return [];
  const reach = r * Math.SQRT1_2;
  return [{ kind: 'arc', via: { x: centre.x + outwards.x * reach, y: centre.y + outwards.y * reach }, to }];
}

function plainPiece(name: string, cut: Curve): Piece {
  return {
    name,
    cut,
    cutOuts: [],
    punches: [],
    notches: [],
    stitchLines: [],
    foldLines: [],
    skiveLines: [],
    cementLines: [],
    face: [],
  };
}

function needPositive(name: string, what: DrawnMeasure, mm: number): void {
  if (!(mm > 0) || !Number.isFinite(mm)) throw impossible('drawn-not-positive', { piece: name, what });
}

function impossible<Said extends Extract<keyof typeof ORDER_SENTENCES, `drawn-${string}`>>(
  said: Said,
  params: ParamsOf<typeof ORDER_SENTENCES, Said>,
): LeatherError {
  return leatherErrorAs('impossible-piece', said, params);
}
