import { curveFromPolyline } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { Hide } from '../model/hide.js';
import type { Order, OrderArticle, OrderPiece } from '../model/order.js';
import type { Piece } from '../model/piece.js';

/** Plain things for tests: everything that the caller does not give is absent or empty. */
export function plainHide(id: string, outline: Curve, more: Partial<Hide> = {}): Hide {
  return {
    id,
    cut: 'side',
    outline,
    openings: [],
    tightness: [],
    zones: [],
    flaws: [],
    candidates: [],
    unsureEdges: [],
    leather: { readings: [] },
    area: {},
    state: 'on hand',
    ...more,
  };
}

export function plainPiece(name: string, cut: Curve, more: Partial<Piece> = {}): Piece {
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
    ...more,
  };
}

/** A rectangle of 60 x 100 mm of the leather "body", a lining, unless told otherwise. */
export function plainOrderPiece(name: string, more: Partial<OrderPiece> = {}): OrderPiece {
  return {
    name,
    leather: 'body',
    part: 'stiffener',
    from: { kind: 'rectangle', widthMm: 60, lengthMm: 100, cornerRadiusMm: 0 },
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

export function plainArticle(
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

/** Gap 3, edge 5, void 4 mm; one leather "body" from `hide.json`. */
export function plainOrder(articles: readonly OrderArticle[], more: Partial<Order> = {}): Order {
  return {
    name: 'test',
    version: '1',
    date: '2026-01-05',
    articles,
    leathers: [{ name: 'body', hides: ['hide.json'] }],
    patterns: [],
    useFrom: 'head',
    mode: 'place all',
    cutting: { method: 'hand knife', gapMm: 3, edgeMm: 5, voidMm: 4, kerfMm: 0 },
    keepMm: [80, 80],
    threads: [],
    hardware: [],
    ...more,
  };
}

export function rectangleCorners(minX: number, minY: number, maxX: number, maxY: number): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

export function rectangleCurve(minX: number, minY: number, maxX: number, maxY: number): Curve {
  return curveFromPolyline(rectangleCorners(minX, minY, maxX, maxY), true);
}

export function polygonCurve(points: readonly (readonly [number, number])[]): Curve {
  return curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    true,
  );
}
