import { applyAffine, flattenCurve, ringCentroid } from '@hidebound/geometry';
import type { Affine, Point, Polyline, Ring } from '@hidebound/geometry';
import type { FlawShape, Hide } from '@hidebound/leather';
import type { HideTruth, MarkKind, MarkTruth } from '../scene.js';
import { areaError, fitOutline } from './fit-outline.js';
import { nearestOnRings, nearestOnSide, pointsEvery } from './nearest-on-rings.js';

/** How a traced hide differs from the true one. Lengths in mm, errors of size as shares (0.01 is 1 %). */
export interface Judgement {
  readonly medianMm: number;
  readonly worstMm: number;
  readonly worstAt: Point;
  readonly areaError: number;
  readonly scaleError: number;
  readonly openings: Found;
  /** Openings where there is none. */
  readonly falseOpenings: number;
  /** Chalked rings and lines that became flaws. */
  readonly chalk: Found;
  /** Flaws that became candidates. */
  readonly marks: Found;
  readonly byKind: Readonly<Partial<Record<MarkKind, Found>>>;
  /** Candidates of at least even odds that lie where no mark is. */
  readonly falseMarks: number;
  readonly covered: Covered;
  /** The motion from the traced hide's frame to the floor. */
  readonly motion: Affine;
}

export interface Found {
  readonly asked: number;
  readonly found: number;
  /** How far off the found ones lie, mm. */
  readonly offMm: readonly number[];
}

/** Whether the truth lies within what the trace itself says. */
export interface Covered {
  readonly scale: boolean;
  readonly area: boolean;
  /** The outline's worst place. */
  readonly worst: boolean;
  /** Which part of the outline lies within what is said of its places. */
  readonly placesShare: number;
  readonly saidScale: number;
  readonly saidArea: number;
  readonly saidWorstMm: number;
}

const SAMPLE_MM = 2;
const FLATTEN_MM = 0.05;
/** A found mark may lie so far from the true one. */
const MATCH_MM = 12;
/** An unsure stretch speaks for the places this near to it. */
const UNSURE_NEAR_MM = 6;

export function judgeTrace(hide: Hide, truth: HideTruth): Judgement {
  const outline = flattenCurve(hide.outline, FLATTEN_MM).slice(0, -1);
  const { motion, scaleError } = fitOutline(outline, truth.outline);
  const laid = outline.map((point) => applyAffine(motion, point));
  const places = outlineErrors(laid, truth.outline);
  const sorted = places.map(({ error }) => error).sort((a, b) => a - b);
  const worst = places.reduce((a, b) => (b.error > a.error ? b : a));
  const area = areaError(outline, truth.outline);
  return {
    medianMm: sorted[sorted.length >> 1]!,
    worstMm: worst.error,
    worstAt: worst.at,
    areaError: area,
    scaleError,
    ...judgeMarks(hide, truth, motion),
    covered: judgeEstimates(hide, motion, places, worst, area, scaleError),
    motion,
  };
}

interface PlaceError {
  readonly at: Point;
  readonly error: number;
}

/** Both ways, so that what was missed counts as well as what was added. */
function outlineErrors(laid: Ring, truth: Ring): readonly PlaceError[] {
  const toTruth = nearestOnRings([truth]);
  const toLaid = nearestOnRings([laid]);
  return [
    ...pointsEvery(laid, SAMPLE_MM).map((at) => ({ at, error: toTruth(at).distance })),
    ...pointsEvery(truth, SAMPLE_MM).map((at) => ({ at, error: toLaid(at).distance })),
  ];
}

function judgeEstimates(
  hide: Hide,
  motion: Affine,
  places: readonly PlaceError[],
  worst: PlaceError,
  area: number,
  scale: number,
): Covered {
  const { photo } = hide;
  const saidScale = photo?.scaleErrorShare ?? 0;
  const saidArea = photo?.areaErrorShare ?? 0;
  const errorsAt = (photo?.errorsAt ?? []).map(({ at, mm }) => ({ at: applyAffine(motion, at), mm }));
  const unsure = hide.unsureEdges.map(({ line, offByMm }) => ({
    line: line.map((point) => applyAffine(motion, point)),
    offByMm,
  }));
  const said = (at: Point): number => {
    const near = errorsAt.reduce<{ mm: number; d: number }>(
      (best, error) => {
        const d = apart(error.at, at);
        return d < best.d ? { mm: error.mm, d } : best;
      },
      { mm: photo?.errorMm ?? 0, d: Infinity },
    );
    const edge = unsure.filter(({ line, offByMm }) => fromLine(at, line) <= UNSURE_NEAR_MM + offByMm);
    return Math.max(photo?.errorMm ?? 0, near.mm, ...edge.map(({ offByMm }) => offByMm));
  };
  const thinned = places.filter((_, i) => i % 5 === 0);
  return {
    scale: Math.abs(scale) <= saidScale,
    area: Math.abs(area) <= saidArea,
    worst: worst.error <= said(worst.at),
    placesShare: thinned.filter(({ at, error }) => error <= said(at)).length / thinned.length,
    saidScale,
    saidArea,
    saidWorstMm: said(worst.at),
  };
}

function judgeMarks(
  hide: Hide,
  truth: HideTruth,
  motion: Affine,
): Pick<Judgement, 'openings' | 'falseOpenings' | 'chalk' | 'marks' | 'byKind' | 'falseMarks'> {
  const flaws = hide.flaws.map(({ shape }) => linesOf(shape, motion));
  const candidates = hide.candidates.map(({ shape, kind, confidence }) => ({
    lines: linesOf(shape, motion),
    kind,
    confidence,
  }));
  const openings = hide.openings.map((curve) =>
    flattenCurve(curve, FLATTEN_MM)
      .slice(0, -1)
      .map((point) => applyAffine(motion, point)),
  );
  const isChalk = ({ kind }: MarkTruth) => kind === 'chalk ring' || kind === 'chalk line';
  const chalk = truth.marks.filter(isChalk);
  const marks = truth.marks.filter(({ kind }) => !kind.startsWith('chalk'));
  const shown = candidates.map(({ lines }) => lines);
  const falsely = candidates.filter(
    ({ lines, kind, confidence }) =>
      confidence >= 0.5 &&
      // The lines of growth are wrinkles too; nobody wrote down where they are.
      kind !== 'wrinkle' &&
      !truth.marks.some((mark) => marksMeet(mark, lines)) &&
      !isNearOpening(lines, truth),
  );
  const kinds = [...new Set(truth.marks.map(({ kind }) => kind))];
  return {
    falseOpenings: openings.filter((ring) => !isNearOpening([ring], truth)).length,
    openings: matchPoints(truth.openings.map(ringCentroid), openings.map(ringCentroid)),
    chalk: matchMarks(chalk, flaws),
    marks: matchMarks(marks, shown),
    byKind: Object.fromEntries(
      kinds.map((kind) => {
        const own = truth.marks.filter((mark) => mark.kind === kind);
        return [kind, matchMarks(own, kind.startsWith('chalk') ? flaws : shown)];
      }),
    ),
    falseMarks: falsely.length,
  };
}

function matchPoints(truths: readonly Point[], founds: readonly Point[]): Found {
  const offMm = truths
    .map((point) => Math.min(Infinity, ...founds.map((found) => apart(found, point))))
    .filter((off) => off <= MATCH_MM);
  return { asked: truths.length, found: offMm.length, offMm };
}

/** Of each true mark: how far the found one lies from its lines, on average over the found one's points near it. */
function matchMarks(truths: readonly MarkTruth[], founds: readonly (readonly Polyline[])[]): Found {
  const offMm = truths.flatMap((mark) => {
    const meeting = founds.filter((lines) => marksMeet(mark, lines));
    if (meeting.length === 0) return [];
    const offs = meeting.flat(2).map((point) => Math.min(...mark.lines.map((line) => fromLine(point, line))));
    const near = offs.filter((off) => off <= MATCH_MM + mark.widthMm);
    return [near.reduce((a, b) => a + b, 0) / Math.max(1, near.length)];
  });
  return { asked: truths.length, found: offMm.length, offMm };
}

/** Whether some of the found lines' points lie on or beside the mark. */
function marksMeet(mark: MarkTruth, lines: readonly Polyline[]): boolean {
  return lines.flat().some((point) => {
    if (apart(point, mark.middle) > mark.reachMm + MATCH_MM) return false;
    return mark.lines.some((line) => fromLine(point, line) <= MATCH_MM + mark.widthMm / 2);
  });
}

function isNearOpening(lines: readonly Polyline[], truth: HideTruth): boolean {
  return lines.flat().some((point) => truth.openings.some((ring) => fromLine(point, ring) < MATCH_MM));
}

/** A shape as lines, a point every few mm. */
function linesOf(shape: FlawShape, motion: Affine): readonly Polyline[] {
  switch (shape.kind) {
    case 'point':
      return [[applyAffine(motion, shape.at)]];
    case 'line':
      return [dense(shape.line.map((point) => applyAffine(motion, point)))];
    case 'area':
      return [dense(flattenCurve(shape.outline, FLATTEN_MM).map((point) => applyAffine(motion, point)))];
  }
}

function dense(line: Polyline): Polyline {
  return line.slice(1).flatMap((to, i) => {
    const from = line[i]!;
    const steps = Math.max(1, Math.ceil(apart(from, to) / 4));
    return Array.from({ length: steps + 1 }, (_, k) => ({
      x: from.x + (k / steps) * (to.x - from.x),
      y: from.y + (k / steps) * (to.y - from.y),
    }));
  });
}

function fromLine(point: Point, line: Polyline): number {
  let best = line.length === 1 ? apart(point, line[0]!) : Infinity;
  for (let i = 0; i + 1 < line.length; i++)
    best = Math.min(best, apart(point, nearestOnSide(point, line[i]!, line[i + 1]!)));
  return best;
}

function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
