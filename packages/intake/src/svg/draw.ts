import { composeAffine, curveCorners, scaling, transformCurveToGrid } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { normalizeColour } from '../css/colour.js';
import type { Style } from '../css/style.js';
import type { DrawnLine, DrawnSource } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { ignore, longName, tell } from '../findings.js';
import { MAX_COORDINATE_MM, MAX_PATH_SEGMENTS, MAX_SEGMENTS } from '../limits.js';
import { dropStandstill } from '../lines/tidy.js';
import { holesAmong } from '../lines/holes.js';
import type { XmlElement } from '../xml/node.js';
import { resolveLength } from './length.js';
import type { PathProblem } from './path-data.js';
import { evenScale } from './scale.js';
import { shapeLines, unreadableLengths } from './shapes.js';
import type { Surroundings, Walk } from './walk.js';

/** How an element is painted. */
interface Paint {
  readonly stroke?: string;
  readonly fill?: string;
  readonly widthMm: number;
  readonly isDashed: boolean;
}

/** Adds the lines of one shape, in mm on the 1 µm grid. */
export function drawShape(walk: Walk, element: XmlElement, around: Surroundings, source: DrawnSource): void {
  const place = { line: element.line, at: source.name };
  const [unreadable] = unreadableLengths({ element, ...around, unit: 1 });
  if (unreadable !== undefined) {
    throw new IntakeError('bad-number', { what: unreadable }, { file: walk.findings.file, ...place });
  }
  const visibility = around.style.get('visibility');
  if (visibility === 'hidden' || visibility === 'collapse') {
    ignore(walk.findings, longName(source), 'hidden');
    return;
  }
  const paint = paintOf(around);
  if (paint.stroke === undefined && paint.fill === undefined) {
    if (!isFrameOfShape(source)) ignore(walk.findings, longName(source), 'not painted');
    return;
  }
  const scale = evenScale(around.matrix);
  const unit = nearestPowerOfTwo(scale);
  const { subpaths, problem } = shapeLines({ element, style: around.style, frame: around.frame, unit });
  if (problem !== undefined) reportProblem(walk, element, source, problem);
  const matrix = composeAffine(around.matrix, scaling(1 / unit));
  const isFilledOnly = paint.stroke === undefined;
  const curves = subpaths
    .map((curve) => dropStandstill(transformCurveToGrid(matrix, isFilledOnly ? closed(curve) : curve)))
    .filter((curve): curve is Curve => curve !== undefined);
  for (const curve of curves) checkCurve(walk, curve, place);
  const holes =
    curves.length > 1 ? holesAmong(curves, around.style.get('fill-rule'), paint.fill !== undefined) : [];
  curves.forEach((curve, i) => {
    const line: DrawnLine = { curve, source, ...paint, isHole: holes[i] ?? false };
    walk.lines.push(line);
  });
  if (subpaths.length === 0 && problem === undefined) ignore(walk.findings, longName(source), 'no size');
}

/** Some programs write an unpainted rectangle around every shape; a note for each would hide the others. */
function isFrameOfShape(source: DrawnSource): boolean {
  return source.labels.classes.includes('BoundingBox');
}

/** A filled area without a stroke ends where its filling ends. */
function closed(curve: Curve): Curve {
  if (curve.closed || curve.segments.length < 2) return curve;
  return {
    start: curve.start,
    segments: [...curve.segments, { kind: 'line', to: curve.start }],
    closed: true,
  };
}

function nearestPowerOfTwo(scale: number): number {
  return scale > 0 && Number.isFinite(scale) ? Math.pow(2, Math.round(Math.log2(scale))) : 1;
}

function reportProblem(walk: Walk, element: XmlElement, source: DrawnSource, problem: PathProblem): void {
  const place = { line: element.line, at: source.name };
  if (problem.kind === 'not-finite') {
    const what = `${element.name} data, character ${problem.at + 1}`;
    throw new IntakeError('bad-number', { what }, { file: walk.findings.file, ...place });
  }
  if (problem.kind === 'too-long') {
    throw new IntakeError(
      'path-too-long',
      { limit: MAX_PATH_SEGMENTS },
      { file: walk.findings.file, ...place },
    );
  }
  tell(walk.findings, 'warning', 'broken-path', { character: problem.at + 1 }, place);
}

function checkCurve(walk: Walk, curve: Curve, place: { readonly line: number; readonly at: string }): void {
  walk.segments += curve.segments.length;
  if (walk.segments > MAX_SEGMENTS) {
    throw new IntakeError('path-too-long', { limit: MAX_SEGMENTS }, { file: walk.findings.file, ...place });
  }
  for (const { x, y } of curveCorners(curve)) {
    if (Math.abs(x) <= MAX_COORDINATE_MM && Math.abs(y) <= MAX_COORDINATE_MM) continue;
    const value = Math.abs(x) > Math.abs(y) ? x : y;
    const params = { metres: roundMetres(value), limit: MAX_COORDINATE_MM / 1000 };
    throw new IntakeError('absurd-coordinate', params, { file: walk.findings.file, ...place });
  }
}

function roundMetres(mm: number): number | string {
  return Number.isFinite(mm) ? Number((mm / 1000).toPrecision(3)) : 'infinitely many';
}

function paintOf({ style, frame, matrix }: Surroundings): Paint {
  const currentColour = normalizeColour(style.get('color') ?? '#000000', '#000000');
  const colourOf = (property: string, initial: string, opacity: string): string | undefined => {
    if (isZero(style, opacity) || isZero(style, 'opacity')) return undefined;
    const colour = normalizeColour(style.get(property) ?? initial, currentColour);
    return colour === 'none' ? undefined : colour;
  };
  const width = resolveLength(style.get('stroke-width') ?? '1', frame, 'other') ?? 1;
  const stroke = width > 0 ? colourOf('stroke', 'none', 'stroke-opacity') : undefined;
  const fill = colourOf('fill', '#000000', 'fill-opacity');
  return {
    ...(stroke === undefined ? {} : { stroke }),
    ...(fill === undefined ? {} : { fill }),
    widthMm: width * evenScale(matrix),
    isDashed: isDashed(style.get('stroke-dasharray')),
  };
}

function isZero(style: Style, property: string): boolean {
  const text = style.get(property);
  return text !== undefined && parseFloat(text) === 0;
}

function isDashed(text: string | undefined): boolean {
  if (text === undefined || text.trim() === 'none') return false;
  return text.split(/[\s,]+/).some((part) => parseFloat(part) > 0);
}
