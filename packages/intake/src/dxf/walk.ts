import { composeAffine, translation } from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import type { Labels } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { ignore, longName, placeOf, tell } from '../findings.js';
import { MAX_DEPTH, MAX_INSERTED } from '../limits.js';
import { entitiesOf } from './blocks.js';
import type { Block } from './blocks.js';
import { drawLine, drawText, isLeftOut, lookOf } from './draw.js';
import type { Around, Walk } from './draw.js';
import type { Entity, EntityHead, InsertBody } from './entity.js';
import { isPieceText } from './piece-file.js';
import type { PieceBlock } from './piece-file.js';
import { pieceLabels, pieceLayer } from './piece-layers.js';
import { drillHole, notchLine } from './piece-points.js';
import { layerNamed } from './tables.js';
import type { Layer } from './tables.js';

/** Draws entities and the blocks that they insert. */
export function drawEntities(walk: Walk, entities: readonly Entity[], around: Around): void {
  for (const entity of entities) drawEntity(walk, entity, around);
}

function drawEntity(walk: Walk, entity: Entity, around: Around): void {
  const layer =
    entity.layer === '0' && around.layer !== undefined
      ? around.layer
      : layerNamed(walk.dxf.tables, entity.layer);
  if (isLeftOut(walk, entity, layer)) return;
  switch (entity.kind) {
    case 'left out':
      return ignore(walk.findings, longName(entity), entity.reason);
    case 'insert':
      return drawInsert(walk, entity, layer, around);
    case 'text':
      if (around.piece === undefined || !isPieceText(entity.text)) drawText(walk, entity, layer, around);
      return;
    case 'curve': {
      const isClosed = entity.shape.kind === 'plain' && entity.shape.curve.closed;
      const labels = around.piece && pieceLabels(pieceLayer(layer.name), isClosed);
      return drawLine(walk, entity, layer, around, labels);
    }
    case 'point':
      return drawPoint(walk, entity, layer, around);
    case 'silent':
  }
}

/** A point says something in a piece only: a notch or a hole; or a place of the boundary. */
function drawPoint(
  walk: Walk,
  entity: Entity & { readonly kind: 'point' },
  layer: Layer,
  around: Around,
): void {
  const role = around.piece && pieceLayer(layer.name);
  const draw = (curve: Curve) => {
    const body = { kind: 'curve', shape: { kind: 'plain', curve } } as const;
    drawLine(walk, { ...entity, ...body }, layer, around, pieceLabels(role, curve.closed));
  };
  if (role === 'punch') return draw(drillHole(entity.at, walk.mmPerUnit));
  if (role !== 'notch') {
    return ignore(walk.findings, longName(entity), role === 'point' ? 'point of a boundary' : 'point');
  }
  const curve = notchLine(entity.at, entity.thickness, around.piece!.boundary, walk.mmPerUnit);
  if (curve !== undefined) return draw(curve);
  tell(walk.findings, 'warning', 'dxf-point-off-boundary', {}, placeOf(entity));
}

type Insert = EntityHead & InsertBody;

/** Every row and column of a block. Throws `dxf-block-cycle`, `dxf-too-many-inserted`, `too-deep`. */
function drawInsert(walk: Walk, entity: Insert, layer: Layer, around: Around): void {
  const block = walk.dxf.blocks.get(entity.block.toLowerCase());
  if (block === undefined) return ignore(walk.findings, longName(entity), 'missing block');
  if (block.isElsewhere) return ignore(walk.findings, longName(entity), 'external reference');
  const place = { file: walk.findings.file, ...placeOf(entity) };
  if (around.within.includes(block)) throw new IntakeError('dxf-block-cycle', { block: block.name }, place);
  if (around.within.length >= MAX_DEPTH) throw new IntakeError('too-deep', { limit: MAX_DEPTH }, place);
  for (const attribute of entity.attributes) drawText(walk, attribute, layer, around);
  for (let row = 0; row < entity.rows; row++) {
    for (let column = 0; column < entity.columns; column++) {
      countInserted(walk, block, place);
      const dx = entity.columnStep.x * column + entity.rowStep.x * row;
      const dy = entity.columnStep.y * column + entity.rowStep.y * row;
      const frame = composeAffine(translation(dx, dy), entity.frame);
      drawBlock(walk, block, insertedAround(walk, { entity, block, layer, around, frame }));
    }
  }
}

function countInserted(walk: Walk, block: Block, place: { readonly file: string }): void {
  const isFirst = !walk.drawnBlocks.has(block);
  walk.drawnBlocks.add(block);
  walk.inserted += isFirst ? 1 : 1 + blockEntities(walk, block).length;
  if (walk.inserted > MAX_INSERTED) {
    throw new IntakeError('dxf-too-many-inserted', { limit: MAX_INSERTED }, place);
  }
}

function blockEntities({ dxf }: Walk, block: Block): readonly Entity[] {
  return entitiesOf(dxf.pairs, block, dxf.decode, dxf.knownEntities);
}

interface Inserting {
  readonly entity: Insert;
  readonly block: Block;
  readonly layer: Layer;
  readonly around: Around;
  readonly frame: Affine;
}

function insertedAround(walk: Walk, { entity, block, layer, around, frame }: Inserting): Around {
  const piece = walk.dxf.pieceFile?.pieces.get(block) ?? around.piece;
  const atBase = composeAffine(frame, translation(-block.base.x, -block.base.y));
  return {
    matrix: composeAffine(around.matrix, atBase),
    groups: [blockGroup(walk, block, attributeData(entity)), ...around.groups],
    groupsOn: new Map(),
    layer,
    look: lookOf(entity, layer, around, walk),
    within: [...around.within, block],
    ...(piece === undefined ? {} : { piece }),
  };
}

/** Keys of layers are 0 and above, of blocks put in place below -1. */
function blockGroup(walk: Walk, block: Block, attributes: Labels['data']): Around['groups'][number] {
  const data = { ...attributes, ...walk.dxf.pieceFile?.pieces.get(block)?.data };
  // Names that begin with a star are made up by programs.
  const given = block.name.startsWith('*') ? [] : [block.name];
  return { key: -1 - walk.inserted, labels: { given, classes: [], data }, isClone: true };
}

/** Attributes by whose names pieces of any format are asked. */
const ASKED_TAGS = new Set(['piece', 'name', 'count', 'mirrored', 'material', 'size', 'role']);

function attributeData({ attributes }: InsertBody): Record<string, string> {
  const data: Record<string, string> = {};
  for (const { tag, text } of attributes) {
    const key = tag?.toLowerCase() ?? '';
    if (ASKED_TAGS.has(key) && text !== '') data[key] = text;
  }
  return data;
}

/** A block in place; of a piece, its lines and texts are noted as one span. */
function drawBlock(walk: Walk, block: Block, inner: Around): void {
  const from = [walk.lines.length, walk.texts.length] as const;
  drawEntities(walk, blockEntities(walk, block), inner);
  const isPiece = walk.dxf.pieceFile?.pieces.has(block) === true;
  if (!isPiece || inner.within.length > 1) return;
  walk.spans.push({ lines: [from[0], walk.lines.length], texts: [from[1], walk.texts.length] });
}

/** A piece that nothing puts in place, where it is drawn. */
export function drawLoosePiece(walk: Walk, block: Block, piece: PieceBlock, around: Around): void {
  walk.inserted++;
  const groups = [blockGroup(walk, block, {})];
  drawBlock(walk, block, { ...around, groups, groupsOn: new Map(), within: [block], piece });
}
