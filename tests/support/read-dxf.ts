/**
 * What a DXF file holds, read by dxf-parser (1.1.2, MIT), which shares no code with our writer. Areas, boxes and corners
 * are worked out here from its entities, with the bulge as the format defines it: the tangent of a quarter of the turn.
 */
import { createRequire } from 'node:module';

/** Its own types name files without extensions, which this project's compiler does not find. */
const DxfParser = createRequire(import.meta.url)('dxf-parser') as new () => {
  parseSync(text: string): unknown;
};

export interface DxfShape {
  readonly layer: string;
  readonly type: string;
  readonly closed: boolean;
  /** Corners close enough for any check here, y up. */
  readonly points: readonly (readonly [number, number])[];
  /** Of a closed shape, mm², without regard to its sense. */
  readonly area: number;
  readonly box: DxfBox;
}

export interface DxfBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface DxfContent {
  readonly version: unknown;
  readonly units: unknown;
  readonly layers: Readonly<Record<string, { readonly colorIndex: number }>>;
  readonly shapes: readonly DxfShape[];
}

interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

interface ParsedEntity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly vertices?: readonly Vertex[];
  readonly center?: Vertex;
  readonly radius?: number;
  /** In radians, as the parser gives them. */
  readonly startAngle?: number;
  readonly endAngle?: number;
}

export function readDxf(text: string): DxfContent {
  const parsed = new DxfParser().parseSync(text) as {
    readonly header: Readonly<Record<string, unknown>>;
    readonly tables: { readonly layer: { readonly layers: DxfContent['layers'] } };
    readonly entities: readonly ParsedEntity[];
  };
  return {
    version: parsed.header['$ACADVER'],
    units: parsed.header['$INSUNITS'],
    layers: parsed.tables.layer.layers,
    shapes: parsed.entities.map(toShape),
  };
}

/** Chords to a whole turn: of a circle of 50 mm they lie within 0.001 mm. */
const CHORDS = 720;

function toShape(entity: ParsedEntity): DxfShape {
  const { points, closed, area } = outlineOf(entity);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const box = {
    minX: Math.min(...xs),
    minY: Math.min(...ys),
    maxX: Math.max(...xs),
    maxY: Math.max(...ys),
  };
  return { layer: entity.layer, type: entity.type, closed, points, area, box };
}

interface Outline {
  readonly points: [number, number][];
  readonly closed: boolean;
  readonly area: number;
}

function outlineOf(entity: ParsedEntity): Outline {
  const { center, radius = 0, vertices = [] } = entity;
  if (entity.type === 'CIRCLE') {
    const points = arcPoints(center!, radius, 0, 2 * Math.PI);
    return { points, closed: true, area: Math.PI * radius * radius };
  }
  if (entity.type === 'ARC') {
    let turn = entity.endAngle! - entity.startAngle!;
    if (turn <= 0) turn += 2 * Math.PI;
    return { points: arcPoints(center!, radius, entity.startAngle!, turn), closed: false, area: 0 };
  }
  const closed = entity.shape === true;
  const points: [number, number][] = [];
  let twice = 0;
  vertices.forEach((from, i) => {
    const to = vertices[(i + 1) % vertices.length]!;
    points.push([from.x, from.y]);
    if (!closed && i === vertices.length - 1) return;
    twice += from.x * to.y - to.x * from.y;
    const bulge = from.bulge ?? 0;
    if (bulge === 0) return;
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const turn = 4 * Math.atan(bulge);
    const r = chord / 2 / Math.sin(Math.abs(turn) / 2);
    twice += Math.sign(bulge) * r * r * (Math.abs(turn) - Math.sin(Math.abs(turn)));
    // The centre lies to the left of the chord for a positive bulge of less than a half turn.
    const apothem = (chord / 2) * ((1 - bulge * bulge) / (2 * bulge));
    const centre = {
      x: (from.x + to.x) / 2 - ((to.y - from.y) / chord) * apothem,
      y: (from.y + to.y) / 2 + ((to.x - from.x) / chord) * apothem,
    };
    const start = Math.atan2(from.y - centre.y, from.x - centre.x);
    points.push(...arcPoints(centre, r, start, turn).slice(1, -1));
  });
  return { points, closed, area: closed ? Math.abs(twice) / 2 : 0 };
}

function arcPoints(center: Vertex, radius: number, start: number, turn: number): [number, number][] {
  const steps = Math.max(2, Math.ceil((Math.abs(turn) / (2 * Math.PI)) * CHORDS));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = start + (turn * i) / steps;
    return [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)];
  });
}
