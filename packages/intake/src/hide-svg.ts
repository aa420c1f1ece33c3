import {
  curveArea,
  curveLength,
  findSelfCrossing,
  flattenCurve,
  pointInRing,
  polylineNearest,
} from '@hidebound/geometry';
import type { Curve, Polyline, Ring } from '@hidebound/geometry';
import type { Diagnostic, Flaw, Hide, HideCut, PatternReading, Zone } from '@hidebound/leather';
import type { DrawnLine } from './drawing/drawn-line.js';
import { IntakeError } from './error.js';
import { ignore, longName, newFindings, placeOf, summarizeIgnored, tell } from './findings.js';
import type { Findings, IgnoredElement } from './findings.js';
import { classifyMark } from './hide/classify.js';
import type { Mark } from './hide/classify.js';
import { readHideData } from './hide/leather-data.js';
import type { HideData } from './hide/leather-data.js';
import { flawOf, newIds, polylineOf, readingOf, unsureEdgeOf, zoneOf } from './hide/marks.js';
import type { MarkKind } from './hide/read-name.js';
import { FLATTEN_MM, MIN_PIECE_MM2 } from './limits.js';
import { dropDuplicates, flatRing } from './lines/duplicates.js';
import { joinLines } from './lines/join.js';
import { labelsOf } from './svg/labels.js';
import { readSvgDrawing } from './svg/read-drawing.js';
import type { FileScale } from './pattern-read.js';
import { warnOfResolution } from './svg/guess-resolution.js';

export interface HideSvgOptions {
  readonly file: string;
  /** Without one: `data-id` of the root, else the file's name without its ending. */
  readonly id?: string;
  readonly reading?: PatternReading;
}

export interface HideRead {
  readonly hide: Hide;
  readonly diagnostics: readonly Diagnostic[];
  readonly ignored: readonly IgnoredElement[];
  readonly scale: FileScale;
}

/** The backbone lies on the edge if this share of it is within `EDGE_MM` of the outline. */
const EDGE_SHARE = 0.8;
const EDGE_MM = 15;

/**
 * Reads a hide from a traced SVG: lines are told apart by the names of their layers, groups and elements
 * (docs/parts/hide-svg.md). Lengths in mm in the file's own frame, seen from the grain side. Throws `IntakeError`:
 * `no-outline`, or `bad-hide` for an outline that crosses itself or has no area and for marks outside it.
 */
export function readHideSvg(input: Uint8Array | string, options: HideSvgOptions): HideRead {
  const findings = newFindings(options.file);
  const drawing = readSvgDrawing(input, options.reading, findings);
  warnOfResolution(drawing, findings);
  const { lines, dropped } = dropDuplicates(drawing.lines);
  for (const { line } of dropped) ignore(findings, longName(line.source), 'drawn twice');
  const marks = joinAlike(lines).map(classifyMark);
  const data = readHideData(labelsOf(drawing.root).data, findings);
  const hide = assembleHide(marks, data, options, findings);
  summarizeIgnored(findings);
  return { hide, diagnostics: findings.diagnostics, ignored: findings.ignored, scale: drawing.scale };
}

/** Open lines of the same name whose ends meet are one line: an outline may be traced in several strokes. */
function joinAlike(lines: readonly DrawnLine[]): DrawnLine[] {
  const byName = new Map<string, DrawnLine[]>();
  for (const line of lines) {
    const { words } = classifyMark(line);
    const key = words.mark === undefined || words.mark === 'outline' ? 'outline' : JSON.stringify(words);
    byName.set(key, [...(byName.get(key) ?? []), line]);
  }
  const order = new Map(lines.map((line, i) => [line.source, i]));
  const joined = [...byName.values()].flatMap((group) => joinLines(group) as DrawnLine[]);
  return joined.sort((a, b) => order.get(a.source)! - order.get(b.source)!);
}

function assembleHide(
  marks: readonly Mark[],
  data: HideData,
  options: HideSvgOptions,
  findings: Findings,
): Hide {
  const outline = findOutline(marks, findings);
  const ring = soundRing(outline.line, 'outline', findings);
  const rest = marks.filter((mark) => mark !== outline);
  const of = (kind: MarkKind) => rest.filter(({ words }) => words.mark === kind);
  for (const { line } of of('ignore')) ignore(findings, longName(line.source), 'marked to be ignored');
  tellUnnamed(rest, findings);
  const nextId = newIds();
  const openings = of('opening').filter((mark) => isClosed(mark, 'opening', findings));
  const zones = of('zone').filter((mark) => isClosed(mark, 'zone', findings));
  for (const { line } of [...openings, ...zones, ...of('flaw')]) refuseOutside(line, ring, findings);
  for (const { line } of openings) soundRing(line, 'opening', findings);
  const backbone = findBackbone(of('backbone'), findings);
  const price = data.price === undefined ? {} : { price: data.price };
  return {
    id: options.id ?? data.id ?? options.file.replace(/^.*[\\/]/, '').replace(/\.svg$/i, ''),
    ...(data.parent === undefined ? {} : { parent: data.parent }),
    cut: data.cut ?? guessCut(outline.line.curve, backbone, ring, findings),
    outline: outline.line.curve,
    openings: openings.map(({ line }) => line.curve),
    ...(backbone === undefined ? {} : { backbone }),
    tightness: of('tightness').map(({ line }) => polylineOf(line)),
    zones: zones
      .map((mark) => zoneOf(mark, nextId(mark.line, mark.words.zoneKind ?? 'zone'), findings))
      .filter((zone): zone is Zone => zone !== undefined),
    flaws: of('flaw').map((mark): Flaw =>
      flawOf(mark, nextId(mark.line, mark.words.flawKind ?? 'flaw'), findings),
    ),
    candidates: [],
    unsureEdges: of('unsure').map((mark) => unsureEdgeOf(mark, findings)),
    leather: leatherOf(data, of('reading'), findings),
    area: {
      measuredMm2: Math.round(Math.abs(curveArea(outline.line.curve)) * 1000) / 1000,
      ...(data.invoicedMm2 === undefined ? {} : { invoicedMm2: data.invoicedMm2 }),
    },
    ...price,
    ...(data.lot === undefined ? {} : { lot: data.lot }),
    state: data.state ?? 'on hand',
    ...(data.storedAt === undefined ? {} : { storedAt: data.storedAt }),
    ...(data.notes === undefined ? {} : { notes: data.notes }),
  };
}

function leatherOf(data: HideData, readings: readonly Mark[], findings: Findings): Hide['leather'] {
  const { tannage, temper, finish, colour, thickness } = data;
  return {
    ...(tannage === undefined ? {} : { tannage }),
    ...(temper === undefined ? {} : { temper }),
    ...(finish === undefined ? {} : { finish }),
    ...(colour === undefined ? {} : { colour }),
    ...(thickness === undefined ? {} : { thickness }),
    readings: readings.map((mark) => readingOf(mark, findings)).filter((reading) => reading !== undefined),
  };
}

/** The closed line named as outline, the largest of several; without a name, the largest closed line without any. */
function findOutline(marks: readonly Mark[], findings: Findings): Mark {
  const bySize = (a: Mark, b: Mark) => Math.abs(curveArea(b.line.curve)) - Math.abs(curveArea(a.line.curve));
  const closed = marks.filter(({ line }) => line.curve.closed).sort(bySize);
  const named = closed.filter(({ words }) => words.mark === 'outline');
  const outline = named[0] ?? closed.find(({ words }) => words.mark === undefined);
  if (outline === undefined) throw new IntakeError('no-outline', {}, { file: findings.file });
  if (named.length === 0) tell(findings, 'note', 'outline-guessed', {}, placeOf(outline.line.source));
  if (named.length > 1) tell(findings, 'warning', 'several-outlines', {}, placeOf(named[1]!.line.source));
  return outline;
}

function soundRing(line: DrawnLine, what: string, findings: Findings): Ring {
  const ring = flatRing(line.curve);
  const place = { file: findings.file, ...placeOf(line.source) };
  if (Math.abs(curveArea(line.curve)) < MIN_PIECE_MM2) {
    const params = { what: `The ${what} has no area`, remedy: 'draw it as a closed line around the leather' };
    throw new IntakeError('bad-hide', params, place);
  }
  const crossing = findSelfCrossing(ring);
  if (crossing !== undefined) {
    const params = { what: `The ${what} crosses itself here`, remedy: 'pull the line apart in the drawing' };
    throw new IntakeError('bad-hide', params, { ...place, point: crossing.place });
  }
  return ring;
}

function isClosed({ line }: Mark, what: string, findings: Findings): boolean {
  if (!line.curve.closed) tell(findings, 'warning', 'open-area-line', { what }, placeOf(line.source));
  return line.curve.closed;
}

function refuseOutside(line: DrawnLine, ring: Ring, findings: Findings): void {
  const points = flattenCurve(line.curve, FLATTEN_MM);
  if (points.some((p) => pointInRing(p, ring) !== 'outside')) return;
  if (line.curve.closed && ring.some((p) => pointInRing(p, points) === 'inside')) return;
  throw new IntakeError(
    'bad-hide',
    { what: 'This mark lies outside the outline', remedy: 'move it onto the hide, or name it "ignore"' },
    { file: findings.file, ...placeOf(line.source), point: line.curve.start },
  );
}

function tellUnnamed(marks: readonly Mark[], findings: Findings): void {
  const unnamed = marks.filter(({ words }) => words.mark === undefined || words.mark === 'outline');
  if (unnamed.length === 0) return;
  const shown = unnamed.slice(0, 4).map(({ line }) => longName(line.source));
  const more = unnamed.length - shown.length;
  const elements = more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
  tell(
    findings,
    'warning',
    'unnamed-marks',
    { count: unnamed.length, elements },
    placeOf(unnamed[0]!.line.source),
  );
}

function findBackbone(marks: readonly Mark[], findings: Findings): Polyline | undefined {
  const open = marks.filter(({ line }) => !line.curve.closed);
  const [longest, second] = [...open].sort((a, b) => curveLength(b.line.curve) - curveLength(a.line.curve));
  if (longest === undefined) return undefined;
  if (second !== undefined) tell(findings, 'warning', 'several-backbones', {}, placeOf(second.line.source));
  return polylineOf(longest.line);
}

/** A backbone along the edge makes a side, one within a whole hide; a plain rectangle without one is a panel. */
function guessCut(outline: Curve, backbone: Polyline | undefined, ring: Ring, findings: Findings): HideCut {
  const cut =
    backbone === undefined ? (isRectangle(outline) ? 'panel' : 'whole hide') : cutByBackbone(backbone, ring);
  tell(findings, 'note', 'hide-cut-guessed', { cut }, { at: '<svg>' });
  return cut;
}

function cutByBackbone(backbone: Polyline, ring: Ring): HideCut {
  const edge = [...ring, ring[0]!];
  const middles = backbone
    .slice(1)
    .map((p, i) => ({ x: (p.x + backbone[i]!.x) / 2, y: (p.y + backbone[i]!.y) / 2 }));
  const near = middles.filter((p) => polylineNearest(edge, p).distance <= EDGE_MM).length;
  return near >= EDGE_SHARE * middles.length ? 'side' : 'whole hide';
}

function isRectangle(outline: Curve): boolean {
  if (outline.segments.length !== 4 || outline.segments.some(({ kind }) => kind !== 'line')) return false;
  const points = outline.segments.map(({ to }) => to);
  return points.every((p, i) => {
    const before = points[(i + 3) % 4]!;
    const after = points[(i + 1) % 4]!;
    const dot = (before.x - p.x) * (after.x - p.x) + (before.y - p.y) * (after.y - p.y);
    const sizes = Math.hypot(before.x - p.x, before.y - p.y) * Math.hypot(after.x - p.x, after.y - p.y);
    return Math.abs(dot) <= 0.001 * sizes;
  });
}
