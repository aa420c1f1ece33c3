import { curveFromPolyline } from '@hidebound/geometry';
import type { Curve, NestAnswer, Placement, Point, RoughCut, Lane } from '@hidebound/geometry';
import { copyRefOf, layoutFrom, nestProblemFor, resolveOrder, resolvePieces } from '@hidebound/leather';
import type {
  Hide,
  Layout,
  NamedHide,
  Order,
  OrderArticle,
  OrderPiece,
  PatternPieces,
  Piece,
  PieceCopy,
  PiecePlacement,
} from '@hidebound/leather';

/**
 * A layout worked out by hand in round numbers. Every piece that a rule binds lies exactly at the limit of that rule:
 * gap 3 mm, edge 5 mm, void 4 mm, faces and borders along the edge of a mark, angles at their tolerance. It has a
 * locked piece, a pair, a lane, a rough cut with a swatch, and two lots.
 */
export const HAND_WRITTEN_HIDES: readonly NamedHide[] = [
  { file: 'side-one.hide.json', hide: sideOne() },
  { file: 'shoulder-two.hide.json', hide: shoulderTwo() },
];

/** 1200 x 800 mm, the backbone along its upper edge, the tail at the right; bend above y = 500, belly below. */
function sideOne(): Hide {
  return {
    ...bareHide('side-one', 'side', rectangle(0, 0, 1200, 800), 'lot 1'),
    backbone: [
      { x: 0, y: 0 },
      { x: 1200, y: 0 },
    ],
    zones: [
      { id: 'bend', kind: 'bend', outline: rectangle(0, 0, 1200, 500) },
      { id: 'belly', kind: 'belly', outline: rectangle(0, 500, 1200, 800) },
    ],
    flaws: [
      { id: 'hole', kind: 'hole', side: 'grain', shape: area(1000, 40, 1020, 60) },
      { id: 'scar', kind: 'scar', side: 'grain', shape: area(840, 40, 870, 60) },
      { id: 'brand', kind: 'brand', side: 'grain', shape: area(720, 40, 750, 60) },
      { id: 'loose', kind: 'loose grain', side: 'grain', shape: area(100, 150, 300, 180) },
    ],
    leather: { tannage: 'vegetable', thickness: { minMm: 2.8, maxMm: 3.2 }, readings: [] },
  };
}

/** 600 x 500 mm, the backbone down its middle. It is all shoulder, as its cut says. */
function shoulderTwo(): Hide {
  return {
    ...bareHide('shoulder-two', 'shoulder', rectangle(0, 0, 600, 500), 'lot 2'),
    backbone: [
      { x: 300, y: 0 },
      { x: 300, y: 500 },
    ],
    leather: { tannage: 'vegetable', thickness: { minMm: 2.8, maxMm: 3.2 }, readings: [] },
  };
}

function bareHide(id: string, cut: Hide['cut'], outline: Curve, lot: string): Hide {
  return {
    id,
    cut,
    outline,
    openings: [],
    tightness: [],
    zones: [],
    flaws: [],
    candidates: [],
    unsureEdges: [],
    leather: { readings: [] },
    area: {},
    lot,
    state: 'on hand',
    notes: 'Invented for a test.',
  };
}

const BOX = (widthMm: number, lengthMm: number): OrderPiece['from'] => ({
  kind: 'rectangle',
  widthMm,
  lengthMm,
  cornerRadiusMm: 0,
});

function orderPiece(
  name: string,
  part: OrderPiece['part'],
  from: OrderPiece['from'],
  more: Partial<OrderPiece> = {},
): OrderPiece {
  return {
    name,
    leather: 'body',
    part,
    from,
    count: 1,
    mirrored: 0,
    layers: 1,
    allowanceMm: 0,
    seams: [],
    priority: 0,
    inLane: false,
    ...more,
  };
}

function article(
  name: string,
  pieces: readonly OrderPiece[],
  more: Partial<OrderArticle> = {},
): OrderArticle {
  return {
    name,
    goods: name,
    pieces,
    beside: [],
    hardware: [],
    threads: [],
    sets: 1,
    value: 1,
    priority: 0,
    keepTogether: 'nothing',
    ...more,
  };
}

/** The order in full, as it was thought of. */
export const HAND_WRITTEN_ORDER: Order = {
  name: 'hand-written',
  version: '1',
  date: '2026-01-05',
  articles: [
    article('pouch', [orderPiece('front', 'front', BOX(80, 100)), orderPiece('back', 'back', BOX(80, 100))], {
      sets: 2,
      keepTogether: 'lot',
    }),
    article('case', [
      orderPiece('flap', 'flap', { kind: 'pattern', file: 'case.svg', piece: 'flap' }),
      orderPiece('pocket', 'pocket', BOX(40, 60)),
      orderPiece('handle', 'strap', BOX(30, 120), { looks: { face: 'C', rest: 'C' } }),
      orderPiece('base', 'front', BOX(60, 100), { zones: ['bend'] }),
      orderPiece('end', 'front', BOX(40, 60)),
      orderPiece('tilted', 'front', BOX(40, 80)),
      orderPiece(
        'wing',
        'pocket',
        { kind: 'pattern', file: 'case.svg', piece: 'wing' },
        {
          count: 2,
          mirrored: 1,
          pair: { toleranceDeg: 5, distanceMm: 150 },
          arrowDeg: 0,
        },
      ),
    ]),
    article('belt', [
      orderPiece(
        'strap',
        'strap',
        {
          kind: 'strap',
          strap: {
            widthMm: 30,
            lengthMm: 400,
            holeEnd: 'pointed',
            buckleEnd: 'square',
            holes: { count: 5, spacingMm: 25, diameterMm: 4, fromEndMm: 75 },
          },
        },
        { leather: 'strap', count: 2, inLane: true },
      ),
    ]),
    article('tag', [orderPiece('tag', 'tab', BOX(40, 60), { leather: 'dyed', count: 2, marginMm: 10 })]),
  ],
  leathers: [
    { name: 'body', hides: ['side-one.hide.json', 'shoulder-two.hide.json'] },
    { name: 'strap', hides: ['side-one.hide.json'], thickness: { minMm: 2.8, maxMm: 3.4 } },
    {
      name: 'dyed',
      hides: ['side-one.hide.json'],
      preparation: { name: 'brown', dye: 'walnut', dyeBase: 'water', coats: 2, bothSides: false },
    },
  ],
  patterns: [],
  useFrom: 'backbone',
  mode: 'place all',
  cutting: { method: 'hand knife', gapMm: 3, edgeMm: 5, voidMm: 4, kerfMm: 0 },
  keepMm: [80, 80],
  threads: [],
  hardware: [],
};

/** Patterns that the order draws from: a flap whose face leaves 10 mm all round, a wing that has a left and a right. */
function handWrittenPatterns(): PatternPieces {
  const flap = { ...barePiece('flap', rectangle(-50, -40, 50, 40)), face: [rectangle(-40, -30, 40, 30)] };
  const wing = barePiece(
    'wing',
    polygon([
      [0, 0],
      [80, 0],
      [0, 60],
    ]),
  );
  const direction = { from: { x: -20, y: 0 }, to: { x: 20, y: 0 } };
  return {
    pieces: [{ ...flap, direction }, wing].map((piece) => ({ piece, source: { file: 'case.svg' } })),
  };
}

function barePiece(name: string, cut: Curve): Piece {
  const none = { punches: [], notches: [], stitchLines: [], foldLines: [], skiveLines: [], cementLines: [] };
  return { name, cut, cutOuts: [], face: [], ...none };
}

type Row = readonly [
  article: string,
  piece: string,
  set: number,
  copy: number,
  x: number,
  y: number,
  deg?: number,
];

/** On the side; each comment says what the piece is at the limit of. */
const ON_SIDE: readonly Row[] = [
  ['pouch', 'front', 1, 1, 560, 60],
  // Gap: 610 + 3 = 613.
  ['pouch', 'back', 1, 1, 663, 60],
  // Looks: its border touches the brand at x = 750, its face the scar at x = 840.
  ['case', 'flap', 1, 1, 800, 60],
  // Void: 996 + 4 = 1000.
  ['case', 'pocket', 1, 1, 966, 50],
  // Strength: it ends at y = 150, where the grain is loose.
  ['case', 'handle', 1, 1, 200, 135],
  // Zone: it ends at y = 500, where the bend does.
  ['case', 'base', 1, 1, 200, 470],
  // Edge: 1195 + 5 = 1200.
  ['case', 'end', 1, 1, 1165, 300],
  // Angle: 10 degrees off.
  ['case', 'tilted', 1, 1, 500, 300, 10],
  // Pair: 5 degrees off the opposite of its mirror image.
  ['case', 'wing', 1, 1, 400, 400, 5],
  // Lane: y = 10 to 40 and 40 to 70.
  ['belt', 'strap', 1, 1, 220, 25],
  ['belt', 'strap', 1, 2, 220, 55],
  // Rough cut: 670 - 10 = 660, 280 - 10 = 270.
  ['tag', 'tag', 1, 1, 700, 300],
  ['tag', 'tag', 1, 2, 763, 300],
];

const ON_SHOULDER: readonly Row[] = [
  ['pouch', 'front', 2, 1, 100, 100, 90],
  ['pouch', 'back', 2, 1, 200, 100, 90],
];

function copyOf([name, piece, set, copy]: Row, mirrored = false): PieceCopy {
  return { article: name, piece, set, copy, mirrored };
}

function placementOf(row: Row, sheet: string, mirrored = false): Placement {
  const [, , , , x, y, rotationDeg = 0] = row;
  return { ...copyRefOf(copyOf(row, mirrored)), sheet, x, y, rotationDeg };
}

/** The layout, with its cutting order, yield and offcuts computed. */
export function handWrittenLayout(): Layout {
  const order = resolveOrder(HAND_WRITTEN_ORDER);
  const { pieces } = resolvePieces(order, handWrittenPatterns);
  const budget = { seed: 1, streams: 4 };
  const problem = nestProblemFor({ order, pieces, hides: HAND_WRITTEN_HIDES, budget });
  const keep = { placements: [lockedFront()] };
  const answer: NestAnswer = {
    placements: [
      ...ON_SIDE.map((row) => placementOf(row, 'side-one')),
      placementOf(['case', 'wing', 1, 1, 520, 400], 'side-one', true),
      ...ON_SHOULDER.map((row) => placementOf(row, 'shoulder-two')),
    ],
    lanes: [lane()],
    roughCuts: [roughCut()],
    unplaced: [],
    joins: 0,
  };
  const origin = { version: '0.1.0', seed: 1, effort: 0, streams: 4 };
  const layout = layoutFrom({ order, pieces, hides: HAND_WRITTEN_HIDES, problem, answer, keep, origin });
  const swatch = corners(796, 290, 816, 310);
  return {
    ...layout,
    swatches: [{ id: 'test piece', hide: 'side-one', roughCut: 'brown block', outline: swatch }],
  };
}

function lockedFront(): PiecePlacement {
  const copy = copyOf(['pouch', 'front', 1, 1, 0, 0]);
  return {
    ...copy,
    hide: 'side-one',
    x: 560,
    y: 60,
    rotationDeg: 0,
    locked: true,
    accepted: [],
    state: 'planned',
  };
}

/** Open at the left edge of the side. */
function lane(): Lane {
  const strap = (copy: number) => copyRefOf(copyOf(['belt', 'strap', 1, copy, 0, 0]));
  return {
    id: 'straps',
    sheet: 'side-one',
    from: { x: -5, y: 10 },
    to: { x: 450, y: 10 },
    openAt: 'from',
    kerfMm: 0,
    rows: [
      { widthMm: 30, straps: [strap(1)] },
      { widthMm: 30, straps: [strap(2)] },
    ],
  };
}

function roughCut(): RoughCut {
  return {
    id: 'brown block',
    sheet: 'side-one',
    group: 'dyed',
    outline: corners(660, 270, 826, 330),
    marginMm: 10,
    members: [1, 2].map((copy) => copyRefOf(copyOf(['tag', 'tag', 1, copy, 0, 0]))),
  };
}

function corners(minX: number, minY: number, maxX: number, maxY: number): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

function rectangle(minX: number, minY: number, maxX: number, maxY: number): Curve {
  return curveFromPolyline(corners(minX, minY, maxX, maxY), true);
}

function polygon(points: readonly (readonly [number, number])[]): Curve {
  return curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    true,
  );
}

function area(minX: number, minY: number, maxX: number, maxY: number) {
  return { kind: 'area', outline: rectangle(minX, minY, maxX, maxY) } as const;
}
