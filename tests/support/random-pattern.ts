import { circleCurve, createRandom, curveFromPolyline, roundCurve, roundPoint } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point, Random } from '@hidebound/geometry';
import type { MarkLine, PatternPiece, Piece } from '@hidebound/leather';

/** Invented pieces with everything that a piece can have, the same for the same seed, on the 1 µm grid. */
export function randomPattern(seed: number, apart = true): PatternPiece[] {
  const random = createRandom(seed);
  return Array.from({ length: 1 + random.integer(5) }, (_, i) => {
    const place = apart ? { x: 160 + 320 * i, y: 160 } : { x: 160 + 40 * i, y: 160 };
    return randomPiece(random, roundPoint({ x: place.x + random.next(), y: place.y + random.next() }), i);
  });
}

/** Names that a page of XML, a reader of trade words or a numbering could spoil. */
const NAMES = [
  'piece-7',
  'Cut line',
  'front "left" & <right>',
  'étui 漢字 🧵',
  'Window',
  "rider's  bag",
  'front size M',
];
const SIZES = [undefined, undefined, 'S', '38', '2XL'];
const MATERIALS = [undefined, 'veg tan 2.5 mm', 'lining & <felt>'];

function randomPiece(random: Random, center: Point, i: number): PatternPiece {
  const count = random.integer(3) === 0 ? undefined : 1 + random.integer(9);
  const mirrored = random.integer(2) === 0 ? undefined : random.integer(4);
  const material = MATERIALS[random.integer(MATERIALS.length)];
  const size = SIZES[random.integer(SIZES.length)];
  return {
    piece: shapeOf(random, center, `${NAMES[random.integer(NAMES.length)]!}${i === 0 ? '' : ` ${i}`}`),
    source: { file: 'made' },
    ...(count === undefined ? {} : { count }),
    ...(mirrored === undefined ? {} : { mirrored }),
    ...(material === undefined ? {} : { material }),
    ...(size === undefined ? {} : { size }),
  };
}

function shapeOf(random: Random, center: Point, name: string): Piece {
  const cut = blob(random, center, 120);
  const near = (reach: number) => roundPoint(polar(center, random.between(0, reach), random.between(0, 360)));
  const marks = (most: number): MarkLine[] =>
    several(random, most, () => {
      const curve = random.integer(3) === 0 ? blob(random, center, 60) : openLine(random, near(45), near(45));
      return random.integer(2) === 0 ? { curve } : { name: `line ${random.integer(1000)} "x"`, curve };
    });
  return {
    name,
    cut,
    cutOuts: several(random, 2, () =>
      random.integer(2) === 0 ? keyhole(near(35)) : blob(random, near(40), 15),
    ),
    punches: several(random, 5, () => ({ at: near(45), diameterMm: micrometres(random.between(0.8, 9)) })),
    notches: several(random, 6, () => {
      const corner = cut.segments[random.integer(cut.segments.length)]!.to;
      const inwards = (Math.atan2(center.y - corner.y, center.x - corner.x) * 180) / Math.PI;
      const angleDeg = (inwards + random.between(-40, 40) + 720) % 360;
      return { at: corner, angleDeg, depthMm: micrometres(random.between(2, 8)) };
    }),
    stitchLines: marks(4),
    foldLines: marks(3),
    skiveLines: marks(2),
    cementLines: marks(2),
    ...(random.integer(3) === 0
      ? {}
      : { direction: { from: near(20), to: roundPoint(polar(center, 60, random.between(0, 360))) } }),
    face: several(random, 2, () => blob(random, center, 70)),
  };
}

function several<T>(random: Random, most: number, make: () => T): T[] {
  return Array.from({ length: random.integer(most + 1) }, make);
}

function polar(center: Point, radius: number, deg: number): Point {
  const angle = (deg * Math.PI) / 180;
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

function micrometres(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}

/** A closed line around a place, of straight runs, arcs and cubics, either way round. */
function blob(random: Random, center: Point, radius: number): Curve {
  if (random.integer(6) === 0)
    return roundCurve(circleCurve(center, micrometres(radius * random.between(0.7, 1))));
  const corners = 4 + random.integer(6);
  const sign = random.integer(2) === 0 ? 1 : -1;
  const points = Array.from({ length: corners }, (_, k) =>
    roundPoint(polar(center, radius * random.between(0.7, 1), (sign * 360 * k) / corners)),
  );
  const start = points[0]!;
  const segments = points.map((from, k) => segmentTo(random, from, points[(k + 1) % corners]!));
  return { start, segments, closed: true };
}

function openLine(random: Random, from: Point, to: Point): Curve {
  const middle = roundPoint({ x: (from.x + to.x) / 2 + 3, y: (from.y + to.y) / 2 - 5 });
  return {
    start: from,
    segments: [segmentTo(random, from, middle), segmentTo(random, middle, to)],
    closed: false,
  };
}

function segmentTo(random: Random, from: Point, to: Point): CurveSegment {
  const at = (along: number, bow: number): Point =>
    roundPoint({
      x: from.x + (to.x - from.x) * along - (to.y - from.y) * bow,
      y: from.y + (to.y - from.y) * along + (to.x - from.x) * bow,
    });
  const kind = random.integer(3);
  if (kind === 0) return { kind: 'line', to };
  if (kind === 1) return { kind: 'arc', via: at(random.between(0.3, 0.7), random.between(-0.1, 0.1)), to };
  return {
    kind: 'cubic',
    handle1: at(0.3, random.between(-0.1, 0.1)),
    handle2: at(0.7, random.between(-0.1, 0.1)),
    to,
  };
}

/** A slot with a round end that is far more than half a circle, its middle point off the middle. */
function keyhole(at: Point): Curve {
  const [left, right] = [roundPoint({ x: at.x - 1.5, y: at.y }), roundPoint({ x: at.x + 1.5, y: at.y })];
  const end = curveFromPolyline([right, roundPoint({ x: at.x, y: at.y + 9 }), left], false);
  const via = roundPoint({ x: at.x - 2.3, y: at.y - 2.1 });
  return { start: right, segments: [...end.segments, { kind: 'arc', via, to: right }], closed: true };
}
