/**
 * The outside judge of the check's tests: jsts (JTS Topology Suite in JavaScript) by deep imports. It ships no
 * types for these modules that agree with its code, so the few calls used here are typed by hand.
 */
import type { Placement } from '../types/problem.js';
import type { Region, Ring } from '../types/shape.js';

interface Geometry {
  isEmpty(): boolean;
  getArea(): number;
  getBoundary(): Geometry;
}

export type Shape = Geometry;

type Overlay = (one: Geometry, other: Geometry) => Geometry;

interface Factory {
  createPolygon(shell: unknown, holes: unknown[]): Geometry;
  createLinearRing(corners: unknown[]): unknown;
}

export interface Judge {
  shapeOf(region: Region, placement?: Placement): Shape;
  /** 0 where they touch, cross or contain each other. */
  distance(one: Shape, other: Shape): number;
  distanceToBoundary(one: Shape, other: Shape): number;
  intersectionArea(one: Shape, other: Shape): number;
  differenceArea(one: Shape, other: Shape): number;
  union(one: Shape, other: Shape): Shape;
  /** Grown by so much, or shrunk if negative (mm). */
  grow(shape: Shape, by: number): Shape;
}

async function load<T>(path: string): Promise<T> {
  const specifier = `jsts/org/locationtech/jts/${path}.js`;
  const module = (await import(/* @vite-ignore */ specifier)) as { readonly default: T };
  return module.default;
}

export async function loadJudge(): Promise<Judge> {
  const Coordinate = await load<new (x: number, y: number) => unknown>('geom/Coordinate');
  const GeometryFactory = await load<new () => Factory>('geom/GeometryFactory');
  const OverlayOp = await load<Record<'intersection' | 'difference' | 'union', Overlay>>(
    'operation/overlay/OverlayOp',
  );
  const DistanceOp = await load<{ distance(one: Geometry, other: Geometry): number }>(
    'operation/distance/DistanceOp',
  );
  const BufferOp = await load<{ bufferOp(shape: Geometry, distance: number, segments: number): Geometry }>(
    'operation/buffer/BufferOp',
  );
  const factory = new GeometryFactory();
  const toRing = (ring: Ring): unknown =>
    factory.createLinearRing([...ring, ring[0]!].map(({ x, y }) => new Coordinate(x, y)));
  return {
    shapeOf(region, placement) {
      const move = (ring: Ring): Ring => (placement === undefined ? ring : moveRing(ring, placement));
      return factory.createPolygon(
        toRing(move(region.outer)),
        region.openings.map((ring) => toRing(move(ring))),
      );
    },
    distance: (one, other) => DistanceOp.distance(one, other),
    distanceToBoundary: (one, other) => DistanceOp.distance(one, other.getBoundary()),
    intersectionArea: (one, other) => areaOf(OverlayOp.intersection, one, other),
    differenceArea: (one, other) => areaOf(OverlayOp.difference, one, other),
    union: (one, other) => OverlayOp.union(one, other),
    grow: (shape, by) => BufferOp.bufferOp(shape, by, 8),
  };
}

/** An empty shape has no area, and its overlay is not asked for. */
function areaOf(operation: Overlay, one: Geometry, other: Geometry): number {
  if (one.isEmpty()) return 0;
  return operation(one, other).getArea();
}

function moveRing(ring: Ring, { x, y, rotationDeg }: Placement): Ring {
  const radians = (rotationDeg * Math.PI) / 180;
  const cos = Math.cos(radians);
  const sin = Math.sin(radians);
  return ring.map((corner) => ({
    x: x + corner.x * cos - corner.y * sin,
    y: y + corner.x * sin + corner.y * cos,
  }));
}
