import { curveArea, flattenCurve } from '@hidebound/geometry';
import type { Curve, Ring } from '@hidebound/geometry';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { Block } from './blocks.js';
import type { Entity } from './entity.js';
import { BOUNDARY_LAYER } from './piece-layers.js';

/** What a file with one block a piece says, as ASTM D6673 describes it (its texts and layers here from memory). */
export interface PieceFile {
  readonly units?: 'metric' | 'english';
  readonly pieces: ReadonlyMap<Block, PieceBlock>;
}

/** A block that is a piece. */
export interface PieceBlock {
  /** By the names under which pieces of any format are asked: piece, count, mirrored, material, size. */
  readonly data: Readonly<Record<string, string>>;
  /** The boundary as chords, in the block's own units; needed where notches are points. */
  readonly boundary: Ring;
}

/** "Piece Name: FRONT" as name in small letters and value; nothing for any other text. */
export function annotationOf(text: string): { readonly key: string; readonly value: string } | undefined {
  const match = /^\s*([A-Za-z][A-Za-z /]{0,40}?)\s*:\s*(.*?)\s*$/.exec(text);
  return match === null ? undefined : { key: match[1]!.toLowerCase(), value: match[2]! };
}

/** Texts that say something of a piece rather than standing on it. */
const PIECE_KEYS = new Set(['piece name', 'size', 'quantity', 'material', 'category', 'annotation']);

/** True for a text that `readPieceFile` has taken in. */
export function isPieceText(text: string): boolean {
  const found = annotationOf(text);
  return found !== undefined && PIECE_KEYS.has(found.key) && found.key !== 'annotation';
}

/**
 * The pieces of a file in which blocks have a closed boundary on layer 1 and a text that gives the piece's name;
 * nothing for any other file, whose layers called 1 or 2 mean nothing.
 */
export function readPieceFile(
  blocks: Iterable<Block>,
  entitiesOf: (block: Block) => readonly Entity[],
  top: readonly Entity[],
  findings: Findings,
): PieceFile | undefined {
  const pieces = new Map<Block, PieceBlock>();
  for (const block of blocks) {
    if (block.name.startsWith('*') || block.isElsewhere) continue;
    const entities = entitiesOf(block);
    const boundary = boundaryOf(entities);
    const said = annotations(entities);
    if (boundary === undefined || !said.has('piece name')) continue;
    pieces.set(block, { data: pieceData(said, findings), boundary: ringOf(boundary) });
  }
  if (pieces.size === 0) return undefined;
  const units = annotations(top).get('units')?.toLowerCase();
  return { pieces, ...(units === 'metric' || units === 'english' ? { units } : {}) };
}

/** Of several closed lines on the boundary's layer the one around most. */
function boundaryOf(entities: readonly Entity[]): Curve | undefined {
  let best: Curve | undefined;
  for (const entity of entities) {
    if (entity.kind !== 'curve' || entity.layer !== BOUNDARY_LAYER || entity.shape.kind !== 'plain') continue;
    const { curve } = entity.shape;
    if (!curve.closed) continue;
    if (best === undefined || Math.abs(curveArea(curve)) > Math.abs(curveArea(best))) best = curve;
  }
  return best;
}

/** Chords this far from an arc as a share of the unit; boundaries are polylines of points as a rule. */
const RING_TOLERANCE = 0.01;

function ringOf(curve: Curve): Ring {
  return flattenCurve(curve, RING_TOLERANCE).slice(0, -1);
}

function annotations(entities: readonly Entity[]): Map<string, string> {
  const said = new Map<string, string>();
  for (const entity of entities) {
    const found = entity.kind === 'text' ? annotationOf(entity.text) : undefined;
    if (found !== undefined && found.value !== '' && !said.has(found.key)) said.set(found.key, found.value);
  }
  return said;
}

function pieceData(said: ReadonlyMap<string, string>, findings: Findings): Record<string, string> {
  const data: Record<string, string> = { piece: said.get('piece name')! };
  const size = said.get('size');
  const material = said.get('material');
  if (size !== undefined) data['size'] = size;
  if (material !== undefined) data['material'] = material;
  const quantity = said.get('quantity');
  const counts = quantity === undefined ? undefined : readQuantity(quantity);
  if (counts !== undefined) Object.assign(data, counts);
  else if (quantity !== undefined) {
    tell(findings, 'warning', 'dxf-quantity', { value: quantity }, { at: `piece "${data['piece']}"` });
  }
  return data;
}

/** "2"; or "1,1" for left and right, of which the right one is mirrored. */
function readQuantity(text: string): Record<string, string> | undefined {
  const match = /^(\d{1,4})(?:\s*,\s*(\d{1,4}))?$/.exec(text);
  if (match === null) return undefined;
  const [left, right] = [Number(match[1]), match[2] === undefined ? 0 : Number(match[2])];
  if (left + right === 0) return undefined;
  return { count: String(left + right), ...(right > 0 ? { mirrored: String(right) } : {}) };
}
