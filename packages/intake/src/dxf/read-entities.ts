import { IntakeError } from '../error.js';
import type { IgnoredReason } from '../findings.js';
import { MAX_ELEMENTS } from '../limits.js';
import type { Entity, EntityBody } from './entity.js';
import { fieldsOf, headOf, newScratch, numberField, pointField } from './fields.js';
import type { Fields } from './fields.js';
import { lineOf } from './pairs.js';
import type { Pairs } from './pairs.js';
import { readInsert, readParagraph, readText } from './read-insert.js';
import { readLightPolyline, readPolyline } from './read-polyline.js';
import { readEllipse, readLine, readRound, readSpline } from './read-shape.js';
import { nextEntity } from './sections.js';
import type { Range } from './sections.js';
import type { Decode } from './text.js';

/** Entities that are a line, text or point by themselves. */
const SIMPLE: ReadonlyMap<string, (fields: Fields) => EntityBody> = new Map<
  string,
  (fields: Fields) => EntityBody
>([
  ['LINE', readLine],
  ['CIRCLE', readRound],
  ['ARC', readRound],
  ['ELLIPSE', readEllipse],
  ['LWPOLYLINE', readLightPolyline],
  ['SPLINE', readSpline],
  ['TEXT', readText],
  ['ATTRIB', readText],
  ['MTEXT', readParagraph],
  [
    'POINT',
    (fields: Fields): EntityBody => ({
      kind: 'point',
      at: pointField(fields, 10),
      thickness: numberField(fields, 39),
    }),
  ],
]);

/** Entities that are no line of a pattern, by why. */
const LEFT_OUT: readonly (readonly [IgnoredReason, string])[] = [
  ['filled area', 'SOLID TRACE HATCH MPOLYGON WIPEOUT'],
  [
    'measure or pointer',
    'DIMENSION ARC_DIMENSION LARGE_RADIAL_DIMENSION LEADER MULTILEADER MLEADER TOLERANCE ACAD_TABLE',
  ],
  ['image', 'IMAGE PDFUNDERLAY DWFUNDERLAY DGNUNDERLAY OLEFRAME OLE2FRAME'],
  ['endless line', 'RAY XLINE'],
  [
    'not flat',
    '3DFACE 3DSOLID BODY REGION MESH SURFACE PLANESURFACE EXTRUDEDSURFACE LOFTEDSURFACE REVOLVEDSURFACE SWEPTSURFACE HELIX',
  ],
];
const REASON_BY_TYPE = new Map(
  LEFT_OUT.flatMap(([reason, types]) => types.split(' ').map((type) => [type, reason] as const)),
);

/** Entities of which nobody would miss anything: definitions of attributes, windows of a page, ends. */
const SILENT = new Set(['ATTDEF', 'VIEWPORT', 'SEQEND', 'ENDBLK']);

/** The entities of a section or block. Throws `too-many-elements`, `bad-number`. */
export function readEntities(pairs: Pairs, { from, to }: Range, decode: Decode): Entity[] {
  const entities: Entity[] = [];
  const scratch = newScratch();
  const inner = newScratch();
  let layer = '0';
  let at = pairs.codes[from] === 0 ? from : nextEntity(pairs, from, to);
  while (at < to) {
    const next = nextEntity(pairs, at, to);
    const fields = fieldsOf(pairs, decode, at, next, scratch);
    const { body, after } = readBody(fields, next, to, inner);
    if (body.kind !== 'silent') {
      entities.push({ ...headOf(fields, layer), ...body });
      ({ layer } = entities[entities.length - 1]!);
    }
    if (entities.length > MAX_ELEMENTS) {
      const place = { file: pairs.file, line: lineOf(at) };
      throw new IntakeError('too-many-elements', { limit: MAX_ELEMENTS }, place);
    }
    at = after;
  }
  return entities;
}

function readBody(
  fields: Fields,
  next: number,
  to: number,
  scratch: Int32Array,
): { readonly body: EntityBody; readonly after: number } {
  const { type } = fields;
  if (type === 'POLYLINE') return readPolyline(fields, next, to, scratch);
  if (type === 'INSERT') return readInsert(fields, next, to);
  const read = SIMPLE.get(type);
  if (read !== undefined) return { body: read(fields), after: next };
  if (SILENT.has(type)) return { body: { kind: 'silent' }, after: next };
  return { body: { kind: 'left out', reason: REASON_BY_TYPE.get(type) ?? 'kind not read' }, after: next };
}
