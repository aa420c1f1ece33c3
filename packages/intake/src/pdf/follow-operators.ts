import type { Curve } from '@hidebound/geometry';
import { transformCurve } from '@hidebound/geometry';
import { IntakeError } from '../error.js';
import { ignore } from '../findings.js';
import { spendForm } from './budget.js';
import { narrowClip } from './clip-shape.js';
import { openMark } from './layers.js';
import { MAX_STATE_DEPTH } from './limits.js';
import { OP } from './operators.js';
import { isUnseen } from './page-walk.js';
import type { PageWalk } from './page-walk.js';
import { paintPath } from './paint-path.js';
import type { PathOperands } from './paint-path.js';
import type { OperatorChunk, PdfPicture } from './pdfjs.js';
import { hasGaps, transformed, withExtended } from './state.js';
import { followText } from './text-operators.js';

type Operands = readonly unknown[];

/** Follows some operators of a page in their order. */
export function followOperators(walk: PageWalk, { fnArray, argsArray, length }: OperatorChunk): void {
  for (let i = 0; i < length; i++) {
    const op = fnArray[i]!;
    const operands = (argsArray[i] ?? []) as Operands;
    if (op === OP.constructPath) paintPath(walk, operands as unknown as PathOperands);
    else if (op >= OP.beginText && op <= OP.showText) followText(walk, op, operands);
    else followOther(walk, op, operands);
  }
}

function followOther(walk: PageWalk, op: number, operands: Operands): void {
  switch (op) {
    case OP.save:
      return save(walk);
    case OP.restore:
      return restore(walk);
    case OP.transform:
      walk.state = transformed(walk.state, operands as number[]);
      return;
    case OP.clip:
      walk.pendingClip = 'nonzero';
      return;
    case OP.eoClip:
      walk.pendingClip = 'evenodd';
      return;
    case OP.beginMarkedContent:
    case OP.beginMarkedContentProps:
      return openMark(walk, operands);
    case OP.endMarkedContent:
      walk.marks.pop();
      return;
    case OP.paintFormXObjectBegin:
      return beginForm(walk, operands[0], operands[1], false);
    case OP.beginGroup:
      return beginGroup(walk, operands[0]);
    case OP.paintImageXObject:
    case OP.paintInlineImageXObject:
    case OP.paintImageMaskXObject:
      return placePicture(walk, operands[0]);
    case OP.paintFormXObjectEnd:
    case OP.endGroup:
      return endForm(walk);
    default:
      return followStyle(walk, op, operands);
  }
}

/** pdf.js gives a picture's id, its pixels, or those of a mask with an id in the place of data. */
function placePicture(walk: PageWalk, given: unknown): void {
  if (isUnseen(walk)) return;
  const data = (given as { readonly data?: unknown } | undefined)?.data;
  const picture = typeof given === 'string' ? given : typeof data === 'string' ? data : (given as PdfPicture);
  walk.pictures.push({ picture, toMm: walk.state.toMm });
}

function followStyle(walk: PageWalk, op: number, operands: Operands): void {
  const { state } = walk;
  switch (op) {
    case OP.setLineWidth:
      walk.state = { ...state, lineWidth: Number(operands[0]) };
      return;
    case OP.setDash:
      walk.state = { ...state, isDashed: hasGaps(operands[0]) };
      return;
    case OP.setGState:
      return setExtended(walk, operands[0] as readonly (readonly [string, unknown])[]);
    case OP.setStrokeRGBColor:
      walk.state = { ...state, stroke: String(operands[0]) };
      return;
    case OP.setFillRGBColor:
      walk.state = { ...state, fill: String(operands[0]) };
      return;
    case OP.setStrokeColorN:
      walk.state = { ...state, stroke: 'other' };
      return;
    case OP.setFillColorN:
      walk.state = { ...state, fill: 'other' };
      return;
    case OP.setStrokeTransparent:
      walk.state = { ...state, stroke: undefined };
      return;
    case OP.setFillTransparent:
      walk.state = { ...state, fill: undefined };
      return;
  }
}

function setExtended(walk: PageWalk, entries: readonly (readonly [string, unknown])[]): void {
  for (const [name, value] of entries) {
    walk.state = withExtended(walk.state, name, value);
    if (name === 'SMask' && value !== false)
      ignore(walk.findings, `soft mask on page ${walk.number}`, 'mask');
  }
}

function save(walk: PageWalk): void {
  if (walk.saved.length >= MAX_STATE_DEPTH) {
    const place = { file: walk.budget.file, at: `page ${walk.number}` };
    throw new IntakeError('pdf-too-deep', { limit: MAX_STATE_DEPTH }, place);
  }
  walk.saved.push(walk.state);
}

/** A form can't restore what was saved around it. */
function restore(walk: PageWalk): void {
  const floor = walk.forms.at(-1)?.saved ?? 0;
  if (walk.saved.length > floor) walk.state = walk.saved.pop()!;
}

/** A form is drawn by its matrix and clipped by its box (ISO 32000-1, section 8.10.1). */
function beginForm(walk: PageWalk, matrix: unknown, box: unknown, isMask: boolean): void {
  spendForm(walk.budget);
  save(walk);
  walk.forms.push({ saved: walk.saved.length, isMask });
  walk.pendingClip = undefined;
  if (isNumbers(matrix, 6)) walk.state = transformed(walk.state, matrix);
  if (isNumbers(box, 4)) walk.state = clippedByBox(walk.state, box);
}

interface Group {
  readonly matrix?: unknown;
  readonly bbox?: unknown;
  readonly smask?: unknown;
}

/** pdf.js gives the box of a form that is a transparency group with the group, and its matrix once more with the form. */
function beginGroup(walk: PageWalk, group: unknown): void {
  const { matrix, bbox, smask } = (group ?? {}) as Group;
  beginForm(walk, undefined, undefined, smask !== undefined && smask !== null);
  if (!isNumbers(bbox, 4)) return;
  const inner = isNumbers(matrix, 6) ? transformed(walk.state, matrix) : walk.state;
  walk.state = { ...walk.state, clip: clippedByBox(inner, bbox).clip };
}

function endForm(walk: PageWalk): void {
  const form = walk.forms.pop();
  if (form === undefined) return;
  walk.state = walk.saved[form.saved - 1] ?? walk.state;
  walk.saved.length = form.saved - 1;
}

function clippedByBox(state: PageWalk['state'], [x0, y0, x1, y1]: ArrayLike<number> & Iterable<number>) {
  const corners = [
    { x: x0!, y: y0! },
    { x: x1!, y: y0! },
    { x: x1!, y: y1! },
    { x: x0!, y: y1! },
  ];
  const box: Curve = {
    start: corners[0]!,
    segments: [...corners.slice(1), corners[0]!].map((to) => ({ kind: 'line', to })),
    closed: true,
  };
  return { ...state, clip: narrowClip(state.clip, [transformCurve(state.toMm, box)], false) };
}

function isNumbers(value: unknown, count: number): value is ArrayLike<number> & Iterable<number> {
  return (Array.isArray(value) || value instanceof Float32Array) && value.length === count;
}
