import { curveLength, curveStretch, startedAt } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { leatherError } from '../words/refuse.js';
import type { Contour } from './contour.js';
import type { ChosenStart } from './lead-in.js';
import { ownerWords } from './owner-words.js';
import { roundMm } from './round-mm.js';
import type { CutFileOptions } from './types.js';

type StrokeOptions = Pick<CutFileOptions, 'bridges' | 'overcutMm' | 'kerfMm'>;

/** A stretch along a line, in mm from its start. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** An open line takes a bridge of its own only if it is so many times as long. */
const ROOM_FOR_BRIDGE = 4;

/**
 * The tool's way along a closed line from its chosen start: lead-in, the line but for its bridges, and the overcut. A
 * line that has none of these stays closed.
 */
export function closedStrokes(
  contour: Contour,
  chosen: ChosenStart,
  options: StrokeOptions,
): readonly Curve[] {
  const curve = startedAt(contour.curves[0]!, chosen.start.alongMm);
  const whole = curveLength(curve);
  const bridges = isBridged(contour) ? evenBridges(contour, whole, options) : [];
  const overcut = isCut(contour) ? Math.min(options.overcutMm, bridges[0]?.from ?? whole) : 0;
  if (bridges.length === 0 && overcut === 0 && chosen.leadIn === undefined) return [curve];
  const strokes = between(bridges, whole).map(({ from, to }) => curveStretch(curve, from, to));
  if (overcut > 0) strokes.push(joined(strokes.pop()!, curveStretch(curve, 0, overcut)));
  if (chosen.leadIn !== undefined) strokes.unshift(joined(chosen.leadIn, strokes.shift()!));
  return strokes;
}

/** The tool's way along an open line. */
export function openStrokes(contour: Contour, curve: Curve, options: StrokeOptions): readonly Curve[] {
  const { bridges } = options;
  if (bridges === undefined || !isBridged(contour)) return [curve];
  const whole = curveLength(curve);
  const gap = bridges.widthMm + options.kerfMm;
  const places = contour.bridgesAtMm ?? placesOnRest(whole, gap, bridges.count);
  if (places.length === 0) return [curve];
  const spans = united(places.map((at) => ({ from: at - gap / 2, to: at + gap / 2 })));
  const rest = between(spans, whole);
  if (rest.length === 0) throw tooLong(contour, whole, bridges);
  return rest.map(({ from, to }) => curveStretch(curve, from, to));
}

function placesOnRest(whole: number, gap: number, count: number): number[] {
  const fitting = Math.min(count, Math.floor(whole / (ROOM_FOR_BRIDGE * gap)));
  return Array.from({ length: fitting }, (_, i) => (whole * (i + 0.5)) / fitting);
}

/** Only what falls out of the hide is held; the waste of holes and openings may fall. */
function isBridged({ kind }: Contour): boolean {
  return kind === 'cut' || kind === 'rough cut';
}

function isCut({ waste }: Contour): boolean {
  return waste !== 'none';
}

/** Evenly along the line, none at its start. The path is interrupted by the kerf more, which the cut takes at both ends. */
function evenBridges(contour: Contour, whole: number, { bridges, kerfMm }: StrokeOptions): Span[] {
  if (bridges === undefined || bridges.count === 0) return [];
  const gap = bridges.widthMm + kerfMm;
  if (bridges.count * gap >= whole) throw tooLong(contour, whole, bridges);
  return Array.from({ length: bridges.count }, (_, i) => {
    const middle = ((i + 0.5) * whole) / bridges.count;
    return { from: middle - gap / 2, to: middle + gap / 2 };
  });
}

function tooLong(
  contour: Contour,
  whole: number,
  { count, widthMm }: NonNullable<CutFileOptions['bridges']>,
): Error {
  const lengthMm = Math.round(whole * 10) / 10;
  return leatherError('bridges-longer-than-path', {
    what: ownerWords(contour.of),
    count,
    widthMm: roundMm(widthMm),
    lengthMm,
  });
}

function united(spans: readonly Span[]): Span[] {
  const result: Span[] = [];
  for (const span of spans) {
    const last = result[result.length - 1];
    if (last === undefined || span.from > last.to) result.push(span);
    else result[result.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
  }
  return result;
}

function between(gaps: readonly Span[], whole: number): Span[] {
  const spans: Span[] = [];
  let from = 0;
  for (const gap of gaps) {
    if (gap.from > from) spans.push({ from, to: gap.from });
    from = gap.to;
  }
  if (whole > from) spans.push({ from, to: whole });
  return spans;
}

function joined(first: Curve, second: Curve): Curve {
  return { start: first.start, segments: [...first.segments, ...second.segments], closed: false };
}
