import { applyAffine, atan2Deg, curveCorners, sinCosDeg } from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import type { DrawnGroup, DrawnLine, DrawnSource, DrawnText, Labels } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { ignore, longName, noteRepair } from '../findings.js';
import type { Findings } from '../findings.js';
import { MAX_COORDINATE_MM, MAX_PATH_SEGMENTS, MAX_SEGMENTS } from '../limits.js';
import { dropStandstill } from '../lines/tidy.js';
import type { Block } from './blocks.js';
import { drawnCurve, evenScale } from './draw-shape.js';
import type { CurveBody, Entity, EntityHead, TextBody } from './entity.js';
import type { OpenDxf } from './open.js';
import type { PieceBlock } from './piece-file.js';
import { NO_LABELS } from './piece-layers.js';
import type { PieceSpan } from './set-apart.js';
import { isDashedType } from './tables.js';
import type { Layer } from './tables.js';

/** What drawing gathers, and what stays the same during it. */
export interface Walk {
  readonly dxf: OpenDxf;
  readonly mmPerUnit: number;
  readonly findings: Findings;
  readonly lines: DrawnLine[];
  readonly texts: DrawnText[];
  readonly spans: PieceSpan[];
  readonly drawnBlocks: Set<Block>;
  /** Blocks put in place so far, and elements drawn by all but their first copies. */
  inserted: number;
  segments: number;
  /** Numbers of the lines that the file gives by points on them alone. */
  readonly throughPoints: number[];
}

/** What changes from block to block. */
export interface Around {
  /** To mm, y down. */
  readonly matrix: Affine;
  /** Inserts, innermost first. */
  readonly groups: readonly DrawnGroup[];
  /** `groups` with the group of a layer before them. */
  readonly groupsOn: Map<Layer, readonly DrawnGroup[]>;
  /** Of the insert: for what lies on layer 0 of the block, and for looks taken from it. */
  readonly layer?: Layer;
  readonly look: Look;
  /** Blocks that are being drawn. */
  readonly within: readonly Block[];
  readonly piece?: PieceBlock;
}

/** How a line is drawn. */
export interface Look {
  readonly stroke: string;
  readonly isDashed: boolean;
  readonly widthMm: number;
}

/** Width of a line that gives none: 0.25 mm (DXF reference: the default of $LWDEFAULT is 25). */
const DEFAULT_WIDTH_MM = 0.25;
const WEIGHTS_PER_MM = 100;
const WEIGHT_BY_BLOCK = -2;
const WEIGHT_BY_LAYER = -1;

/** Looks by the entity, by its layer or by the insert that draws it. */
export function lookOf({ look }: EntityHead, layer: Layer, { look: outer }: Around, { dxf }: Walk): Look {
  const { colour, lineType, lineWeight } = look;
  const weight = lineWeight === WEIGHT_BY_LAYER ? layer.lineWeight : lineWeight;
  return {
    stroke: colour === 'by block' ? outer.stroke : (colour ?? layer.colour),
    isDashed: lineType === 'byblock' ? outer.isDashed : isDashedType(dxf.tables, lineType ?? layer.lineType),
    widthMm:
      weight === WEIGHT_BY_BLOCK ? outer.widthMm : weight < 0 ? DEFAULT_WIDTH_MM : weight / WEIGHTS_PER_MM,
  };
}

/** What is by block outside of any block. */
export const PLAIN_LOOK: Look = { stroke: '#000000', isDashed: false, widthMm: DEFAULT_WIDTH_MM };

export function sourceOf(
  { name, line }: EntityHead,
  layer: Layer,
  around: Around,
  labels: Labels = NO_LABELS,
): DrawnSource {
  let groups = around.groupsOn.get(layer);
  if (groups === undefined) around.groupsOn.set(layer, (groups = [layer.group, ...around.groups]));
  return { name, line, labels, groups };
}

/** Adds a line. Throws `path-too-long`, `absurd-coordinate`. */
export function drawLine(
  walk: Walk,
  entity: EntityHead & CurveBody,
  layer: Layer,
  around: Around,
  labels: Labels = NO_LABELS,
): void {
  const source = sourceOf(entity, layer, around, labels);
  const curve = dropStandstill(drawnCurve(entity.shape, around.matrix));
  if (curve === undefined) {
    ignore(walk.findings, longName(source), 'no size');
    return;
  }
  checkCurve(walk, curve, entity);
  const look = lookOf(entity, layer, around, walk);
  const band = (entity.width ?? 0) * evenScale(around.matrix);
  walk.lines.push({ curve, source, ...look, ...(band > 0 ? { widthMm: band } : {}), isHole: false });
  if (entity.isInterpolated !== true) return;
  walk.throughPoints.push(walk.lines.length - 1);
  // It goes through every point that is drawn.
  noteRepair(walk.findings, { kind: 'curve fitted', element: longName(source), at: curve.start, sizeMm: 0 });
}

function checkCurve(walk: Walk, curve: Curve, { name, line }: EntityHead): void {
  const place = { file: walk.findings.file, line, at: name };
  walk.segments += curve.segments.length;
  const limit = curve.segments.length > MAX_PATH_SEGMENTS ? MAX_PATH_SEGMENTS : MAX_SEGMENTS;
  if (curve.segments.length > MAX_PATH_SEGMENTS || walk.segments > MAX_SEGMENTS) {
    throw new IntakeError('path-too-long', { limit }, place);
  }
  for (const { x, y } of curveCorners(curve)) {
    if (Math.abs(x) <= MAX_COORDINATE_MM && Math.abs(y) <= MAX_COORDINATE_MM) continue;
    const metres = Number((Math.max(Math.abs(x), Math.abs(y)) / 1000).toPrecision(3));
    const params = {
      metres: Number.isFinite(metres) ? metres : 'infinitely many',
      limit: MAX_COORDINATE_MM / 1000,
    };
    throw new IntakeError('absurd-coordinate', params, place);
  }
}

/** Text is no line; what it says may name the piece that it lies in. */
export function drawText(walk: Walk, entity: EntityHead & TextBody, layer: Layer, around: Around): void {
  const source = sourceOf(entity, layer, around);
  ignore(walk.findings, longName(source), 'text');
  if (entity.text === '') return;
  const { a, b, c, d } = around.matrix;
  const { sin, cos } = sinCosDeg(entity.angleDeg);
  walk.texts.push({
    text: entity.text,
    at: applyAffine(around.matrix, entity.at),
    angleDeg: atan2Deg(b * cos + d * sin, a * cos + c * sin),
    sizeMm: entity.size * evenScale(around.matrix),
    source,
  });
}

/** True for an entity that is not to be seen; told of. */
export function isLeftOut(walk: Walk, entity: Entity, layer: Layer): boolean {
  const isSeenThrough = entity.kind === 'insert' && !layer.isFrozen;
  const reason = entity.isInPaperSpace
    ? 'paper space'
    : entity.isInvisible
      ? 'hidden'
      : layer.isHidden && !isSeenThrough
        ? 'layer off'
        : undefined;
  if (reason === undefined) return false;
  ignore(walk.findings, longName(entity), reason);
  return true;
}
