import {
  boxUnion,
  curveBox,
  curveEndPoints,
  curveFromPolyline,
  curveLength,
  distanceBetween,
  pointInRing,
  ringBox,
  transformRing,
} from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import { hideRegion } from '../hide/hide-region.js';
import { withoutSpoiledSeats } from '../layout/seats.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { leatherError } from '../words/refuse.js';
import { roughCutContours, swatchContours } from './block-outlines.js';
import { compensate, refuseNarrowGaps } from './kerf.js';
import { SAME_LINE_MM } from './contour.js';
import type { Contour } from './contour.js';
import { frameOfSide, marksOf, openingsOf, outlineOf, workOfHide } from './gather.js';
import type { PieceToCut, WorkOfHide } from './gather.js';
import { labelsOf } from './labels.js';
import { laneCuts } from './lanes.js';
import { obstaclesOf } from './obstacles.js';
import { orderCuts } from './order.js';
import type { OrderedCut } from './order.js';
import { ownerWords } from './owner-words.js';
import { roundMm } from './round-mm.js';
import { withoutSharedLines } from './shared-lines.js';
import { CUT_KINDS, MARK_KINDS } from './types.js';
import type { CutFile, CutFileOptions, CutFileResult, CutKind, CutPath } from './types.js';

/**
 * The cut paths of one hide of a layout, in the order of cutting. Throws `cut-nothing`, `kerf-wider-than-punch`,
 * `kerf-wider-than-opening`, `kerf-wider-than-gap` or `bridges-longer-than-path`.
 */
export function cutFileOf(layout: Layout, hide: Hide, options: CutFileOptions): CutFileResult {
  const work = workOfHide(layout, hide.id, options);
  const { contours, diagnostics } = contoursOf(layout, hide.id, work, options);
  if (contours.length === 0) throw leatherError('cut-nothing', { hide: hide.id });
  const zero = zeroOf(frameAround(hide, contours, options.side));
  const ordered = inOrder(contours, zero, options);
  // Lead-ins may reach further.
  const frame = frameAround(
    hide,
    ordered.map(({ strokes }) => ({ curves: strokes })),
    options.side,
  );
  const all = options.frame ? [frameCut(hide.id, frame), ...ordered] : ordered;
  const paths = all.map(pathOf);
  const file: CutFile = {
    hide: hide.id,
    side: options.side,
    kerfMm: options.kerfMm,
    frame,
    paths,
    labels: options.labels ? labelsOf(work.pieces, options.side) : [],
    ...lengths(paths, zeroOf(frame)),
  };
  return {
    file,
    diagnostics: [
      ...diagnostics,
      ...leadInWarnings(ordered, options),
      ...leftOut(layout, hide.id, work, options),
    ],
  };
}

function pathOf({ contour: { kind, of }, strokes, hasLeadIn }: OrderedCut, index: number): CutPath {
  const lengthMm = strokes.reduce((sum, stroke) => sum + curveLength(stroke), 0);
  return { number: index + 1, kind, of, strokes, lengthMm, bridges: strokes.length - 1, hasLeadIn };
}

interface Gathered {
  readonly contours: readonly Contour[];
  readonly diagnostics: readonly Diagnostic[];
}

function contoursOf(layout: Layout, hideId: string, work: WorkOfHide, options: CutFileOptions): Gathered {
  const lanes = withoutSpoiledSeats(layout).lanes.filter(({ hide }) => hide === hideId);
  const laneOfCopy = new Map(
    lanes.flatMap((lane) =>
      lane.rows.flatMap(({ straps }) => straps.map((copy) => [pieceCopyKey(copy), lane] as const)),
    ),
  );
  const laneOf = (one: PieceToCut) => laneOfCopy.get(pieceCopyKey(one.placement));
  refuseNarrowGaps(work.pieces, options.kerfMm, (one) => laneOf(one)?.id);
  const diagnostics: Diagnostic[] = [];
  const cut = (contour: Contour, kerfMm = options.kerfMm): Contour => {
    const compensated = compensate(contour, kerfMm);
    diagnostics.push(...compensated.diagnostics);
    return compensated.contour;
  };
  const laneContours = lanes.flatMap((lane) => {
    const straps = work.pieces.filter((one) => laneOf(one) === lane);
    if (straps.length === 0) return [];
    const kerfMm = Math.min(options.kerfMm, lane.kerfMm);
    const isNarrower = lane.rows.length > 1 && options.kerfMm > lane.kerfMm + SAME_LINE_MM;
    if (isNarrower) diagnostics.push(laneWarning(lane.id, lane.kerfMm, options.kerfMm));
    const outlines = straps.map((one) => cut(outlineOf(one), isNarrower ? kerfMm : options.kerfMm));
    const { ends, lines } = laneCuts(lane, outlines, frameOfSide(options.side), options.bridges?.count ?? 0);
    return [...lines, ...ends];
  });
  const free = work.pieces.filter((one) => laneOf(one) === undefined);
  const outlines = [
    ...laneContours,
    ...[...free.map(outlineOf), ...swatchContours(work, options)].map((contour) => cut(contour)),
    ...roughCutContours(work, options).map((contour) => cut(contour, 0)),
  ];
  const openings = work.pieces.flatMap(openingsOf).map((contour) => holdsPiece(cut(contour), outlines));
  const marks = options.marks ? work.pieces.flatMap(marksOf) : [];
  const contours = [...marks, ...withoutSharedLines([...outlines, ...openings]).flatMap(oneByOne)];
  return { contours, diagnostics };
}

function laneWarning(lane: string, laidMm: number, kerfMm: number): Diagnostic {
  const params = { lane, laidMm, kerfMm, lessMm: roundMm(kerfMm - laidMm) };
  return { code: 'lane-laid-for-less-kerf', severity: 'warning', params };
}

/** An opening in which another piece lies is cut with the outlines, after that piece. */
function holdsPiece(opening: Contour, outlines: readonly Contour[]): Contour {
  const { ring } = opening;
  if (opening.kind !== 'opening' || ring === undefined) return opening;
  const box = ringBox(ring);
  const holds = outlines.some(({ curves }) => {
    const { x, y } = curves[0]!.start;
    const isNear = x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
    return isNear && pointInRing({ x, y }, ring) === 'inside';
  });
  return holds ? { ...opening, kind: 'cut' } : opening;
}

/** A contour of several parts as that many of one part. */
function oneByOne(contour: Contour): Contour[] {
  return contour.curves.length === 1
    ? [contour]
    : contour.curves.map((curve) => ({ ...contour, curves: [curve] }));
}

function inOrder(contours: readonly Contour[], zero: Point, options: CutFileOptions): OrderedCut[] {
  const cuts = contours.filter(({ kind }) => !MARK_KINDS.includes(kind));
  const obstacles = obstaclesOf(cuts.flatMap(({ curves }) => curves));
  const ordered: OrderedCut[] = [];
  let at = zero;
  for (const kind of kindsInOrder(options)) {
    const part = orderCuts(
      contours.filter((contour) => contour.kind === kind),
      at,
      options,
      obstacles,
    );
    ordered.push(...part);
    const last = part[part.length - 1];
    if (last !== undefined) at = curveEndPoints(last.strokes[last.strokes.length - 1]!).end;
  }
  return ordered;
}

/** Where rough cuts come first, they do so in the file, too. */
export function kindsInOrder({ choice }: Pick<CutFileOptions, 'choice'>): readonly CutKind[] {
  if (choice !== 'rough-cuts-first') return CUT_KINDS;
  const others = CUT_KINDS.filter((kind) => kind !== 'cut' && kind !== 'rough cut');
  return [...others, 'rough cut', 'cut'];
}

/** Around the hide and all lines, on whole mm. */
function frameAround(
  hide: Hide,
  lines: readonly Pick<Contour, 'curves'>[],
  side: CutFileOptions['side'],
): Box {
  const outer = ringBox(transformRing(frameOfSide(side), hideRegion(hide).outer));
  const box = lines.flatMap(({ curves }) => curves.map(curveBox)).reduce(boxUnion, outer);
  return {
    minX: Math.floor(box.minX),
    minY: Math.floor(box.minY),
    maxX: Math.ceil(box.maxX),
    maxY: Math.ceil(box.maxY),
  };
}

/** Lower left corner, where the machine starts. */
function zeroOf({ minX, maxY }: Box): Point {
  return { x: minX, y: maxY };
}

function frameCut(hideId: string, { minX, minY, maxX, maxY }: Box): OrderedCut {
  const corners = [
    { x: minX, y: maxY },
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
  ];
  const curve = curveFromPolyline(corners, true);
  const contour: Contour = {
    kind: 'frame',
    of: { kind: 'hide', id: hideId },
    curves: [curve],
    waste: 'none',
  };
  return { contour, strokes: [curve], hasLeadIn: false };
}

function lengths(
  paths: readonly CutPath[],
  zero: Point,
): { readonly cutMm: number; readonly moveMm: number } {
  let cutMm = 0;
  let moveMm = 0;
  let at = zero;
  for (const { kind, strokes, lengthMm } of paths) {
    if (kind !== 'frame' && !MARK_KINDS.includes(kind)) cutMm += lengthMm;
    for (const stroke of strokes) {
      const { start, end } = curveEndPoints(stroke);
      moveMm += distanceBetween(at, start);
      at = end;
    }
  }
  return { cutMm, moveMm };
}

function leadInWarnings(ordered: readonly OrderedCut[], { leadIn }: CutFileOptions): Diagnostic[] {
  if (leadIn === undefined) return [];
  const without = ordered.filter(({ contour, hasLeadIn }) => contour.waste !== 'none' && !hasLeadIn);
  const [first] = without;
  if (first === undefined) return [];
  const params = { what: ownerWords(first.contour.of), count: without.length };
  return [{ code: 'lead-in-no-room', severity: 'warning', params }];
}

function leftOut(layout: Layout, hide: string, work: WorkOfHide, { choice }: CutFileOptions): Diagnostic[] {
  const notes: Diagnostic[] = [];
  const blocks = layout.roughCuts.filter((block) => block.hide === hide).length;
  if (choice === 'pieces' && blocks > 0) {
    notes.push({ code: 'rough-cuts-left-out', severity: 'note', params: { hide, count: blocks } });
  }
  if (work.doneCount > 0) {
    notes.push({ code: 'already-cut-left-out', severity: 'note', params: { hide, count: work.doneCount } });
  }
  return notes;
}
