import { composeAffine, rotationDeg, scaling, translation } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { atan2Deg, applyAffine } from '@hidebound/geometry';
import type { EntityBody, EntityHead, TextBody } from './entity.js';
import { fieldsOf, hasField, headOf, numberField, pointField, textField, wholeField } from './fields.js';
import type { Fields } from './fields.js';
import { planeOf } from './plane.js';
import { NO_SIZE, NOT_FLAT } from './read-shape.js';
import { nextEntity } from './sections.js';
import { plainParagraph, plainText, textAt } from './text.js';
import { isWord } from './values.js';

/** A block put in place, with the attributes that start at a pair; and the pair after them. */
export function readInsert(
  fields: Fields,
  next: number,
  to: number,
): { readonly body: EntityBody; readonly after: number } {
  const { pairs } = fields;
  const body = insertBody(fields);
  const attributes: (EntityHead & TextBody)[] = [];
  let at = next;
  if (wholeField(fields, 66) === 0) return { body, after: at };
  while (at < to && isWord(pairs, at, 'ATTRIB')) {
    const end = nextEntity(pairs, at, to);
    const attribute = fieldsOf(pairs, fields.decode, at, end);
    const text = readText(attribute);
    if (text.kind === 'text')
      attributes.push({ ...headOf(attribute), ...text, tag: textField(attribute, 2).trim() });
    at = end;
  }
  if (at < to && isWord(pairs, at, 'SEQEND')) at = nextEntity(pairs, at, to);
  return { body: body.kind === 'insert' ? { ...body, attributes } : body, after: at };
}

/** Scaled, turned and moved within the plane of the insert; rows and columns run along its turned axes, unscaled. */
function insertBody(fields: Fields): EntityBody {
  const plane = planeOf(fields);
  if (plane === undefined) return NOT_FLAT;
  const at = pointField(fields, 10);
  const turned = rotationDeg(numberField(fields, 50));
  const scale = scaling(numberField(fields, 41, 1), numberField(fields, 42, 1));
  if (scale.a === 0 || scale.d === 0) return NO_SIZE;
  const placed: Affine = composeAffine(plane, composeAffine(translation(at.x, at.y), turned));
  const step = (x: number, y: number): Point => {
    const [from, to] = [applyAffine(placed, { x: 0, y: 0 }), applyAffine(placed, { x, y })];
    return { x: to.x - from.x, y: to.y - from.y };
  };
  return {
    kind: 'insert',
    block: textField(fields, 2).trim(),
    frame: composeAffine(placed, scale),
    columns: Math.max(1, wholeField(fields, 70, 1)),
    rows: Math.max(1, wholeField(fields, 71, 1)),
    columnStep: step(numberField(fields, 44), 0),
    rowStep: step(0, numberField(fields, 45)),
    attributes: [],
  };
}

/** TEXT and ATTRIB: one line. Where it is aligned otherwise than by its left end, its place is the second point. */
export function readText(fields: Fields): EntityBody {
  const plane = planeOf(fields);
  if (plane === undefined) return NOT_FLAT;
  const isAligned =
    wholeField(fields, 72) !== 0 || wholeField(fields, 73) !== 0 || wholeField(fields, 74) !== 0;
  const at = pointField(fields, isAligned && hasField(fields, 11) ? 11 : 10);
  return {
    kind: 'text',
    text: plainText(textField(fields, 1)),
    at: applyAffine(plane, at),
    angleDeg: plane.a > 0 ? numberField(fields, 50) : 180 - numberField(fields, 50),
    size: numberField(fields, 40),
  };
}

/** MTEXT: long text comes in parts of 250 characters, the last one with group code 1. */
export function readParagraph(fields: Fields): EntityBody {
  const { pairs, decode, from, to } = fields;
  const parts: string[] = [];
  for (let i = from + 1; i < to; i++) {
    if (pairs.codes[i] === 3 || pairs.codes[i] === 1) parts.push(textAt(pairs, i, decode));
  }
  const way = pointField(fields, 11);
  return {
    kind: 'text',
    text: plainParagraph(parts.join('')),
    at: pointField(fields, 10),
    angleDeg: hasField(fields, 11) ? atan2Deg(way.y, way.x) : numberField(fields, 50),
    size: numberField(fields, 40),
  };
}
