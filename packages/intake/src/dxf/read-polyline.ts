import { IDENTITY } from '@hidebound/geometry';
import { bulgedCurve } from './arcs.js';
import type { Vertex } from './arcs.js';
import type { EntityBody } from './entity.js';
import { fieldsOf, numberField, wholeField } from './fields.js';
import type { Fields } from './fields.js';
import { planeOf } from './plane.js';
import { NO_SIZE, NOT_FLAT } from './read-shape.js';
import { nextEntity } from './sections.js';
import { isWord, numberAt } from './values.js';

/** Flags of POLYLINE and LWPOLYLINE. */
const CLOSED = 1;
const IS_3D = 8;
const MESHES = 16 | 64;
/** Flag of VERTEX: a corner of the frame by which a fitted curve was drawn, not a place on it. */
const OF_FRAME = 16;

export function readLightPolyline(fields: Fields): EntityBody {
  const { pairs, from, to } = fields;
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (let i = from + 1; i < to; i++) {
    const code = pairs.codes[i];
    if (code === 10) vertices.push({ x: numberAt(pairs, i), y: 0, bulge: 0 });
    else if (vertices.length === 0) continue;
    else if (code === 20) vertices[vertices.length - 1]!.y = numberAt(pairs, i);
    else if (code === 42) vertices[vertices.length - 1]!.bulge = numberAt(pairs, i);
  }
  return polylineBody(fields, vertices, numberField(fields, 43));
}

/** The polyline whose VERTEX entities start at a pair, and the pair after them (and after their SEQEND). */
export function readPolyline(
  fields: Fields,
  next: number,
  to: number,
  scratch: Int32Array,
): { readonly body: EntityBody; readonly after: number } {
  const { pairs, decode } = fields;
  const corners: Vertex[] = [];
  const framed: Vertex[] = [];
  let at = next;
  while (at < to && isWord(pairs, at, 'VERTEX')) {
    const end = nextEntity(pairs, at, to);
    const vertex = fieldsOf(pairs, decode, at, end, scratch);
    const corner = { x: numberField(vertex, 10), y: numberField(vertex, 20), bulge: numberField(vertex, 42) };
    if ((wholeField(vertex, 70) & OF_FRAME) !== 0) framed.push(corner);
    else corners.push(corner);
    at = end;
  }
  if (at < to && isWord(pairs, at, 'SEQEND')) at = nextEntity(pairs, at, to);
  const width = Math.min(numberField(fields, 40), numberField(fields, 41));
  return { body: polylineBody(fields, corners.length > 0 ? corners : framed, width), after: at };
}

function polylineBody(fields: Fields, vertices: readonly Vertex[], width: number): EntityBody {
  const flags = wholeField(fields, 70);
  if ((flags & MESHES) !== 0) return NOT_FLAT;
  const plane = (flags & IS_3D) !== 0 ? IDENTITY : planeOf(fields);
  if (plane === undefined) return NOT_FLAT;
  const curve = bulgedCurve(vertices, (flags & CLOSED) !== 0, plane);
  if (curve === undefined || curve.segments.length === 0) return NO_SIZE;
  return { kind: 'curve', shape: { kind: 'plain', curve }, ...(width > 0 ? { width } : {}) };
}
