import { curveBox, scaling } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import type { Drawing } from '../drawing/drawn-line.js';
import { scaleDrawing } from '../drawing/scale-drawing.js';
import { newFindings, placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { DrawingRead, FileScale } from '../pattern-read.js';
import { PLAIN_LOOK } from './draw.js';
import type { Around, Walk } from './draw.js';
import { openDxf } from './open.js';
import type { OpenDxf } from './open.js';
import { setApart } from './set-apart.js';
import { refuseWithoutUnit, unitScale } from './units.js';
import { drawEntities, drawLoosePiece } from './walk.js';

/** A DXF in text form as lines and texts in mm. Throws `IntakeError` for what can't be read at all. */
export function readDxfDrawing(
  bytes: Uint8Array,
  reading: PatternReading | undefined,
  findings: Findings,
): DrawingRead {
  const dxf = openDxf(bytes, findings);
  if (reading?.dpi !== undefined) tell(findings, 'warning', 'dpi-without-effect');
  const unit =
    unitScale(dxf.header, dxf.pieceFile, reading, findings) ?? unitOfLength(dxf, reading, findings);
  const scale = askedScale(dxf, unit, reading, findings.file);
  return { format: 'DXF', drawing: drawAll(dxf, scale.mmPerUnit, findings), scale };
}

/** With a known length no unit is needed: any will do in which the drawing is large enough for the 1 µm grid. */
function unitOfLength(dxf: OpenDxf, reading: PatternReading | undefined, { file }: Findings): FileScale {
  const drawing = drawAll(dxf, 1, newFindings(file));
  if (reading?.knownLength === undefined) return refuseWithoutUnit(drawing, dxf.header, file);
  const farthest = drawing.lines.reduce(
    (most, { curve }) => Math.max(most, ...Object.values(curveBox(curve)).map(Math.abs)),
    0,
  );
  return { mmPerUnit: farthest > 0 ? FAR_MM / farthest : 1, source: 'units' };
}

/** As far from the origin as a drawing is put to be measured. */
const FAR_MM = 10_000;

/** The reading's scale and known length, found on a trial, so that what is drawn is rounded once. */
function askedScale(
  dxf: OpenDxf,
  unit: FileScale,
  reading: PatternReading | undefined,
  file: string,
): FileScale {
  if (reading?.scale === undefined && reading?.knownLength === undefined) return unit;
  const trial = drawAll(dxf, unit.mmPerUnit, newFindings(file));
  return scaleDrawing(trial, unit, reading, file).scale;
}

function drawAll(dxf: OpenDxf, mmPerUnit: number, findings: Findings): Drawing {
  const walk: Walk = {
    dxf,
    mmPerUnit,
    findings,
    lines: [],
    texts: [],
    spans: [],
    drawnBlocks: new Set(),
    inserted: 0,
    segments: 0,
    throughPoints: [],
  };
  const around: Around = {
    matrix: scaling(mmPerUnit, -mmPerUnit),
    groups: [],
    groupsOn: new Map(),
    look: PLAIN_LOOK,
    within: [],
  };
  drawEntities(walk, dxf.entities, around);
  drawLoosePieces(walk, around);
  const { lines, texts } = walk;
  if (setApart(lines, texts, walk.spans)) {
    tell(findings, 'note', 'dxf-pieces-apart', { count: walk.spans.length });
  }
  tellThroughPoints(walk);
  return { lines, texts };
}

/** Programs lead curves through points in ways of their own, so what lies between them is a guess. */
function tellThroughPoints({ findings, lines, throughPoints }: Walk): void {
  if (throughPoints.length === 0) return;
  const { source, curve } = lines[throughPoints[0]!]!;
  const place = { ...placeOf(source), point: curve.start };
  tell(findings, 'note', 'dxf-curves-through-points', { count: throughPoints.length }, place);
}

/** Some files define their pieces and put none in place. */
function drawLoosePieces(walk: Walk, around: Around): void {
  if (walk.spans.length > 0) return;
  for (const [block, piece] of walk.dxf.pieceFile?.pieces ?? []) drawLoosePiece(walk, block, piece, around);
}
