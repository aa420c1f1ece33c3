/**
 * The outside judge of the shape tests: jsts 2.12.1 (the JTS Topology Suite in JavaScript) by deep imports. Its own
 * types don't agree with its code, so the few calls are typed here.
 */
import type { Point, Region, Ring } from '../src/types/shape.js';

export interface JudgeShape {
  getArea(): number;
  getBoundary(): JudgeShape;
}

export interface Judge {
  shapeOf(region: Region): JudgeShape;
  pointAt(p: Point): JudgeShape;
  /** 0 where they touch, cross or contain each other. */
  distance(one: JudgeShape, other: JudgeShape): number;
  covers(outer: JudgeShape, inner: JudgeShape): boolean;
  intersectionArea(one: JudgeShape, other: JudgeShape): number;
  unionArea(one: JudgeShape, other: JudgeShape): number;
  differenceArea(one: JudgeShape, other: JudgeShape): number;
  /** No ring crosses or overlaps itself or another one. */
  isValid(region: JudgeShape): boolean;
  /** Grown by so many mm, or shrunk, with round corners. */
  buffer(region: JudgeShape, distance: number): JudgeShape;
}

interface Factory {
  createPolygon(shell: unknown, holes: unknown[]): JudgeShape;
  createLinearRing(corners: unknown[]): unknown;
  createPoint(corner: unknown): JudgeShape;
}

type Overlay = (one: JudgeShape, other: JudgeShape) => JudgeShape;

async function load<T>(path: string): Promise<T> {
  const specifier = `jsts/org/locationtech/jts/${path}.js`;
  const module = (await import(/* @vite-ignore */ specifier)) as { readonly default: T };
  return module.default;
}

/** Round corners of the judge's buffers: within 0.001 mm up to a distance of 1 mm. */
const CHORDS_OF_A_QUARTER = 32;

export async function loadJudge(): Promise<Judge> {
  const Coordinate = await load<new (x: number, y: number) => unknown>('geom/Coordinate');
  const GeometryFactory = await load<new () => Factory>('geom/GeometryFactory');
  const OverlayOp = await load<Record<'intersection' | 'union' | 'difference', Overlay>>(
    'operation/overlay/OverlayOp',
  );
  const DistanceOp = await load<{ distance(a: JudgeShape, b: JudgeShape): number }>(
    'operation/distance/DistanceOp',
  );
  const RelateOp = await load<{ covers(a: JudgeShape, b: JudgeShape): boolean }>('operation/relate/RelateOp');
  const BufferOp = await load<{ bufferOp(a: JudgeShape, distance: number, quarter: number): JudgeShape }>(
    'operation/buffer/BufferOp',
  );
  const IsValidOp = await load<{ isValid(a: JudgeShape): boolean }>('operation/valid/IsValidOp');
  const factory = new GeometryFactory();
  const closed = (ring: Ring): unknown =>
    factory.createLinearRing([...ring, ring[0]!].map(({ x, y }) => new Coordinate(x, y)));
  return {
    shapeOf: ({ outer, openings }) => factory.createPolygon(closed(outer), openings.map(closed)),
    pointAt: ({ x, y }) => factory.createPoint(new Coordinate(x, y)),
    distance: (one, other) => DistanceOp.distance(one, other),
    covers: (outer, inner) => RelateOp.covers(outer, inner),
    intersectionArea: (one, other) => OverlayOp.intersection(one, other).getArea(),
    unionArea: (one, other) => OverlayOp.union(one, other).getArea(),
    differenceArea: (one, other) => OverlayOp.difference(one, other).getArea(),
    isValid: (region) => IsValidOp.isValid(region),
    buffer: (region, distance) => BufferOp.bufferOp(region, distance, CHORDS_OF_A_QUARTER),
  };
}
