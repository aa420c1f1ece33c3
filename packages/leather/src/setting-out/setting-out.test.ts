import { createRandom, curveFromPolyline } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { layablePiece } from '../pieces/layable-piece.js';
import { drawDisc, drawRectangle, drawStrap } from '../pieces/draw.js';
import type { Layout, PiecePlacement } from '../model/layout.js';
import type { LayablePiece, Piece } from '../model/piece.js';
import type { PieceSource, ResolvedPiece } from '../model/order.js';
import { plainHide, plainOrderPiece, plainPiece, polygonCurve, rectangleCurve } from '../testing/plain.js';
import { cardPoints } from './card-points.js';
import type { ChalkMark, PieceSetting, SettingOut } from './model.js';
import { settingOut } from './setting-out.js';

const HIDE = plainHide(
  'side',
  polygonCurve([
    [0, 3],
    [700, 0],
    [2000, 5],
    [2060, 800],
    [1000, 960],
    [-20, 820],
  ]),
  {
    backbone: [
      { x: 5, y: 5 },
      { x: 1990, y: 8 },
    ],
    flaws: [
      {
        id: 'scar-1',
        kind: 'scar',
        side: 'grain',
        shape: { kind: 'point', at: { x: 500, y: 400 }, radiusMm: 5 },
      },
    ],
  },
);

function layable(shape: Piece): LayablePiece {
  const orderPiece = {
    ...plainOrderPiece(shape.name),
    side: 'grain',
    looks: { face: 'A', rest: 'C' },
    bearsLoad: false,
    direction: { kind: 'free' },
    tooThick: 'refuse',
  } as unknown as ResolvedPiece;
  return layablePiece({ article: 'bag', orderPiece, source: shape });
}

type Place = Pick<PiecePlacement, 'x' | 'y' | 'rotationDeg' | 'mirrored'>;

function layoutOf(
  pieces: readonly LayablePiece[],
  places: readonly Place[],
  more: Partial<Layout> = {},
): Layout {
  const placements = places.map((place, i): PiecePlacement => ({
    article: 'bag',
    piece: pieces[i]!.piece,
    set: 1,
    copy: i + 1,
    hide: HIDE.id,
    locked: false,
    accepted: [],
    state: 'planned',
    ...place,
  }));
  return {
    order: { useFrom: 'head', articles: [], leathers: [] },
    hides: [{ id: HIDE.id, hash: '', file: '' }],
    pieces,
    placements,
    lanes: [],
    roughCuts: [],
    swatches: [],
    cuttingOrder: placements.map((placement, i) => ({
      number: i + 1,
      kind: 'piece',
      hide: HIDE.id,
      pieces: [placement],
    })),
    unplaced: [],
    offcuts: [],
    ...more,
  } as unknown as Layout;
}

/** A polygon about its middle with corners at random distances: no two alike. */
function randomShape(random: ReturnType<typeof createRandom>, name: string): Piece {
  const corners = 3 + Math.floor(random.next() * 6);
  const size = 40 + random.next() * 200;
  const points = Array.from({ length: corners }, (_, i): Point => {
    const angle = ((i + 0.8 * random.next()) / corners) * 2 * Math.PI;
    const reach = size * (0.5 + random.next() * 0.5);
    return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
  });
  return plainPiece(name, curveFromPolyline(points, true));
}

/** Where a printed measure puts a mark: by the line's ends alone, as a person with chalk and square does. */
function chalked({ baseLine }: SettingOut, { measure }: ChalkMark): Point {
  const { start, end } = baseLine;
  const length = Math.sqrt((end.at.x - start.at.x) ** 2 + (end.at.y - start.at.y) ** 2);
  const [ux, uy] = [(end.at.x - start.at.x) / length, (end.at.y - start.at.y) / length];
  // This hide lies below its back edge, which runs from left to right: out is a quarter turn clockwise from along.
  return {
    x: start.at.x + ux * measure.alongMm - uy * measure.outMm,
    y: start.at.y + uy * measure.alongMm + ux * measure.outMm,
  };
}

/** Least-squares fit of a turn and a move to two points (Kabsch in the plane), apart from the code under test. */
function fitted(card: readonly Point[], marks: readonly Point[], mirrored: boolean): Place {
  const own = card.map((p) => ({ x: mirrored ? -p.x : p.x, y: p.y }));
  const mean = (points: readonly Point[]): Point => ({
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  });
  const [c, m] = [mean(own), mean(marks)];
  let [dots, crosses] = [0, 0];
  own.forEach((p, i) => {
    const [px, py] = [p.x - c.x, p.y - c.y];
    const [qx, qy] = [marks[i]!.x - m.x, marks[i]!.y - m.y];
    dots += px * qx + py * qy;
    crosses += px * qy - py * qx;
  });
  const turn = Math.atan2(crosses, dots);
  return {
    x: m.x - (c.x * Math.cos(turn) - c.y * Math.sin(turn)),
    y: m.y - (c.x * Math.sin(turn) + c.y * Math.cos(turn)),
    rotationDeg: (turn * 180) / Math.PI,
    mirrored,
  };
}

function placed({ x, y, rotationDeg, mirrored }: Place, p: Point): Point {
  const turn = (rotationDeg * Math.PI) / 180;
  const own = { x: mirrored ? -p.x : p.x, y: p.y };
  return {
    x: x + own.x * Math.cos(turn) - own.y * Math.sin(turn),
    y: y + own.x * Math.sin(turn) + own.y * Math.cos(turn),
  };
}

function apart(p: Point, q: Point): number {
  return Math.sqrt((p.x - q.x) ** 2 + (p.y - q.y) ** 2);
}

function settingsOf(out: SettingOut): PieceSetting[] {
  return out.steps.flatMap((step) => (step.kind === 'piece' ? [step.piece] : []));
}

describe('when pieces are laid by the rounded measures alone', () => {
  const random = createRandom(20260302);
  const pieces = Array.from({ length: 200 }, (_, i) => layable(randomShape(random, `piece ${i}`)));
  const places = pieces.map((): Place => ({
    x: 200 + random.next() * 1600,
    y: 150 + random.next() * 600,
    rotationDeg: random.next() * 360,
    mirrored: random.next() < 0.5,
  }));
  const out = settingOut(layoutOf(pieces, places), HIDE);

  test('every measure is a multiple of half a millimetre', () => {
    for (const { a, b } of settingsOf(out)) {
      for (const { measure } of [a, b!]) {
        expect(Number.isInteger(measure.alongMm * 2)).toBe(true);
        expect(Number.isInteger(measure.outMm * 2)).toBe(true);
      }
    }
  });

  test('every corner comes out within a millimetre of its place, and within what is stated', () => {
    let worst = 0;
    settingsOf(out).forEach((setting, i) => {
      const { a, b } = cardPoints(pieces[i]!);
      const back = fitted([a, b], [chalked(out, setting.a), chalked(out, setting.b!)], places[i]!.mirrored);
      for (const corner of pieces[i]!.region.outer) {
        worst = Math.max(worst, apart(placed(back, corner), placed(places[i]!, corner)));
      }
    });
    expect(worst).toBeLessThanOrEqual(1);
    expect(worst).toBeLessThanOrEqual(out.offByMm + 1e-6);
    // It is a figure of these pieces, not a bound that any would keep.
    expect(out.offByMm).toBeLessThan(worst + 0.01);
  });

  test('the points of each card are more than half its extent apart', () => {
    for (const piece of pieces) {
      const { a, b } = cardPoints(piece);
      const extent = 2 * Math.max(...piece.region.outer.map((p) => apart(p, { x: 0, y: 0 })));
      expect(apart(a, b)).toBeGreaterThan(extent / 2);
    }
  });
});

function setOne(piece: LayablePiece, place: Place, source?: PieceSource): PieceSetting {
  const layout = layoutOf([piece], [place]);
  const order =
    source === undefined
      ? layout.order
      : { ...layout.order, articles: [{ name: 'bag', pieces: [{ name: piece.piece, from: source }] }] };
  return settingsOf(settingOut({ ...layout, order } as Layout, HIDE))[0]!;
}

describe('when a piece needs no card', () => {
  const flat = { x: 600, y: 300, rotationDeg: 0, mirrored: false } as const;

  test('a rectangle is told by its size and the ends of its long side that is nearer to the line', () => {
    const numbers = { widthMm: 42, lengthMm: 1180, cornerRadiusMm: 2 };
    const setting = setOne(layable(drawRectangle('strip', numbers)), { ...flat, x: 900 });
    expect(setting.by).toEqual({ kind: 'rectangle', widthMm: 42, lengthMm: 1180 });
    expect(setting.a.at.x).toBeCloseTo(310, 6);
    expect(setting.b!.at.x).toBeCloseTo(1490, 6);
    for (const { at } of [setting.a, setting.b!]) expect(at.y).toBeCloseTo(279, 6);
  });

  test('a rectangle across the line is told by its side nearer to zero', () => {
    const numbers = { widthMm: 42, lengthMm: 300, cornerRadiusMm: 0 };
    const setting = setOne(layable(drawRectangle('strip', numbers)), { ...flat, rotationDeg: 90 });
    for (const { at } of [setting.a, setting.b!]) expect(at.x).toBeCloseTo(579, 6);
    expect(setting.a.at.y).toBeLessThan(setting.b!.at.y);
  });

  test('a strap is a rectangle over all, whatever its ends', () => {
    const strap = { widthMm: 25, lengthMm: 400, holeEnd: 'pointed', buckleEnd: 'round' } as const;
    const setting = setOne(layable(drawStrap('strap', strap)), flat, { kind: 'strap', strap });
    expect(setting.by).toEqual({ kind: 'rectangle', widthMm: 25, lengthMm: 400 });
    // The origin of a piece is on the grid of 0.001 mm.
    expect(setting.a.at.x).toBeCloseTo(400, 2);
    expect(setting.b!.at.x).toBeCloseTo(800, 2);
  });

  test('a disc is told by its centre alone', () => {
    const setting = setOne(layable(drawDisc('washer', { diameterMm: 28 })), flat);
    expect(setting.by).toEqual({ kind: 'disc', diameterMm: 28 });
    expect(setting.b).toBeUndefined();
    expect(setting.a.at).toEqual({ x: 600, y: 300 });
  });
});

test('when a piece has rounded corners, its points are the ends of its arrow line', () => {
  const rounded = drawRectangle('flap', { widthMm: 120, lengthMm: 200, cornerRadiusMm: 30 });
  const points = cardPoints(layable(rounded));
  expect(points).toEqual({ a: { x: -100, y: 0 }, b: { x: 100, y: 0 }, found: 'ends of the arrow line' });
});

test('when a piece is mirrored, its points lie where the turned card has them', () => {
  const piece = layable(
    plainPiece(
      'gusset',
      polygonCurve([
        [0, 0],
        [200, 0],
        [120, 90],
      ]),
    ),
  );
  const place = { x: 700, y: 400, rotationDeg: 25, mirrored: true };
  const { a, b } = cardPoints(piece);
  const setting = setOne(piece, place);
  expect(apart(setting.a.at, placed(place, a))).toBeLessThan(1e-6);
  expect(apart(setting.b!.at, placed(place, b))).toBeLessThan(1e-6);
});

test('when an arrow points along the line, against it or across it, the turn says so', () => {
  const turns = [0, 90, 180, 270].map((rotationDeg) => {
    const shape = drawRectangle('flap', { widthMm: 120, lengthMm: 200, cornerRadiusMm: 30 });
    return setOne(layable(shape), { x: 600, y: 300, rotationDeg, mirrored: false }).turnDeg;
  });
  expect(turns).toEqual([0, 90, 180, -90]);
});

test('when a flaw lies beside a piece, it is told how far and which way', () => {
  const shape = drawRectangle('flap', { widthMm: 100, lengthMm: 100, cornerRadiusMm: 30 });
  const beside = setOne(layable(shape), { x: 567, y: 400, rotationDeg: 0, mirrored: false });
  expect(beside.flaws).toMatchObject([{ id: 'scar-1', kind: 'scar', distanceMm: 12 }]);
  expect(beside.flaws[0]!.towards!.x).toBeCloseTo(-1, 3);
  const over = setOne(layable(shape), { x: 500, y: 400, rotationDeg: 0, mirrored: false });
  expect(over.flaws[0]).toMatchObject({ distanceMm: 0 });
  expect(over.flaws[0]!.towards).toBeUndefined();
  expect(setOne(layable(shape), { x: 900, y: 400, rotationDeg: 0, mirrored: false }).flaws).toEqual([]);
});

test('when a piece is cut already, it is not set out again', () => {
  const piece = layable(plainPiece('front', rectangleCurve(0, 0, 80, 50)));
  const layout = layoutOf([piece], [{ x: 600, y: 300, rotationDeg: 0, mirrored: false }]);
  const cut = layout.placements.map((placement) => ({ ...placement, state: 'cut' as const }));
  expect(settingOut({ ...layout, placements: cut }, HIDE).steps).toEqual([]);
});

test('when the order of cutting does not name a piece, it is set out all the same, last', () => {
  const pieces = ['front', 'back'].map((name) => layable(plainPiece(name, rectangleCurve(0, 0, 80, 50))));
  const layout = layoutOf(pieces, [
    { x: 600, y: 300, rotationDeg: 0, mirrored: false },
    { x: 900, y: 300, rotationDeg: 0, mirrored: false },
  ]);
  const out = settingOut({ ...layout, cuttingOrder: layout.cuttingOrder.slice(1) }, HIDE);
  expect(settingsOf(out).map(({ copy, number }) => [copy.piece, number])).toEqual([
    ['back', '2'],
    ['front', '3'],
  ]);
});

describe('when straps lie in a lane', () => {
  const strap = { widthMm: 20, lengthMm: 300, holeEnd: 'square', buckleEnd: 'square' } as const;
  const pieces = ['one', 'two'].map((name) => layable(drawStrap(name, strap)));
  // From (200, 100) at 5 degrees; the straps lie on its right, the second one pointing back.
  const [cos, sin] = [Math.cos((5 * Math.PI) / 180), Math.sin((5 * Math.PI) / 180)];
  const at = (along: number, across: number): Point => ({
    x: 200 + along * cos - across * sin,
    y: 100 + along * sin + across * cos,
  });
  const places = [
    { ...at(250, 10), rotationDeg: 5, mirrored: false },
    { ...at(350, 32), rotationDeg: 185, mirrored: false },
  ];
  const base = layoutOf(pieces, places);
  const [one, two] = base.placements;
  const lane = {
    id: 'L1',
    hide: HIDE.id,
    from: at(0, 0),
    to: at(800, 0),
    openAt: 'from' as const,
    kerfMm: 2,
    rows: [
      { widthMm: 20, straps: [one!] },
      { widthMm: 20, straps: [two!] },
    ],
  };
  const layout: Layout = {
    ...base,
    lanes: [lane],
    cuttingOrder: [
      { number: 1, kind: 'straight edge', hide: HIDE.id, of: 'L1', pieces: [] },
      { number: 2, kind: 'lane', hide: HIDE.id, of: 'L1', pieces: [one!, two!] },
    ],
  };
  const out = settingOut(layout, HIDE);
  const step = out.steps[0]!;

  test('its first cut is told by two marks on it', () => {
    expect(out.steps).toHaveLength(1);
    if (step.kind !== 'lane') throw new Error('The step is no lane.');
    for (const mark of [step.lane.p, step.lane.q]) {
      const p = chalked(out, mark);
      expect(Math.abs((p.y - 100) * cos - (p.x - 200) * sin)).toBeLessThan(0.3);
      expect(mark.measure.alongMm % 50).toBe(0);
    }
  });

  test('each strap is told along and across that cut, with the kerf', () => {
    if (step.kind !== 'lane') throw new Error('The step is no lane.');
    const p = (step.lane.p.at.x - 200) * cos + (step.lane.p.at.y - 100) * sin;
    const straps = step.lane.rows.map(({ acrossMm, straps: [first] }) => ({ acrossMm, ...first! }));
    expect(straps.map(({ acrossMm, number, isForward }) => [acrossMm, number, isForward])).toEqual([
      [0, '2.1', true],
      [22, '2.2', false],
    ]);
    expect(Math.abs(straps[0]!.startMm + p - 100)).toBeLessThanOrEqual(0.25);
    expect(Math.abs(straps[1]!.startMm + p - 200)).toBeLessThanOrEqual(0.25);
  });
});

test('when pieces lie in a rough cut, its corners are told, and its pieces from its own longest side', () => {
  const piece = layable(
    plainPiece(
      'front',
      polygonCurve([
        [0, 0],
        [80, 0],
        [80, 50],
        [20, 60],
      ]),
    ),
  );
  const base = layoutOf([piece], [{ x: 600, y: 300, rotationDeg: 0, mirrored: false }]);
  const [placement] = base.placements;
  const outline = [
    { x: 500, y: 200 },
    { x: 700, y: 200 },
    { x: 700, y: 350 },
    { x: 500, y: 350 },
  ];
  const block = {
    id: 'dyed 1',
    hide: HIDE.id,
    leather: 'body',
    outline,
    marginMm: 10,
    members: [placement!],
  };
  const out = settingOut(
    {
      ...base,
      roughCuts: [block],
      cuttingOrder: [
        { number: 1, kind: 'rough cut', hide: HIDE.id, of: 'dyed 1', pieces: [placement!] },
        { number: 2, kind: 'piece', hide: HIDE.id, pieces: [placement!] },
      ],
    },
    HIDE,
  );
  const [step] = out.steps;
  expect(out.steps).toHaveLength(1);
  if (step?.kind !== 'rough cut') throw new Error('The step is no rough cut.');
  expect(step.roughCut.corners.map(({ at }) => at)).toEqual(outline);
  expect(step.roughCut.baseSide).toEqual([0, 1]);
  const [set] = step.roughCut.pieces;
  const { a } = cardPoints(piece);
  const own = placed(placement!, a);
  expect(Math.abs(set!.a.measure.alongMm - (own.x - 500))).toBeLessThanOrEqual(0.25);
  expect(Math.abs(set!.a.measure.outMm - (own.y - 200))).toBeLessThanOrEqual(0.25);
});
