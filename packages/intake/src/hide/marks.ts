import { curveCorners, curveBox, flattenCurve, roundPoint } from '@hidebound/geometry';
import type { Polyline } from '@hidebound/geometry';
import { parseThickness } from '@hidebound/leather';
import type { Effect, Flaw, FlawShape, ThicknessReading, UnsureEdge, Zone } from '@hidebound/leather';
import { placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { FLATTEN_MM } from '../limits.js';
import { circleOfCurve } from '../lines/circles.js';
import { allLabels } from '../drawing/drawn-line.js';
import type { DrawnLine } from '../drawing/drawn-line.js';
import type { Mark } from './classify.js';

/** A scratch drawn with a hairline is still some mm wide on the hide (our own choice; `data-width` says otherwise). */
export const DEFAULT_FLAW_WIDTH_MM = 3;

/** How far an unsure stretch of the edge may be off unless `data-off` says otherwise (our own choice). */
export const DEFAULT_UNSURE_MM = 10;

/** The line as corners on the 1 µm grid: lines as they are, curves as chords. */
export function polylineOf({ curve }: DrawnLine): Polyline {
  const isStraight = curve.segments.every(({ kind }) => kind === 'line');
  return isStraight ? curveCorners(curve) : flattenCurve(curve, FLATTEN_MM).map(roundPoint);
}

/** Ids as drawn where a person gave them, else the kind and a number; no two are alike. */
export function newIds(): (line: DrawnLine, kind: string) => string {
  const taken = new Set<string>();
  return (line, kind) => {
    const { id } = line.source.labels;
    const isOwn =
      id !== undefined && !/^(path|rect|circle|ellipse|polygon|polyline|line|g|use)[-_]?\d*$/i.test(id);
    const base = isOwn ? id : kind.replace(/\s+/g, '-');
    let result = isOwn ? base : `${base}-1`;
    for (let n = 2; taken.has(result); n++) result = `${base}-${n}`;
    taken.add(result);
    return result;
  };
}

export function flawOf(mark: Mark, id: string, findings: Findings): Flaw {
  const { words, line } = mark;
  const depth = numberOf(mark, 'depth', findings, 1);
  const effect = flawEffect(mark, findings);
  return {
    id,
    ...(words.flawKind === undefined ? {} : { kind: words.flawKind }),
    side: words.side ?? 'grain',
    ...(depth === undefined ? {} : { depth }),
    shape: flawShape(mark, line, findings),
    ...(effect === undefined ? {} : { effect }),
  };
}

/** Without a kind there are no defaults: what is not said is then sound, and what says nothing at all is never used. */
function flawEffect({ words, line }: Mark, findings: Findings): Partial<Effect> | undefined {
  const isSaid = Object.keys(words.effect).length > 0;
  if (words.flawKind !== undefined) return isSaid ? words.effect : undefined;
  if (!isSaid) {
    tell(findings, 'warning', 'flaw-without-kind', {}, placeOf(line.source));
    return { looks: 'C', strength: 'weak', isVoid: true };
  }
  const isVoid = words.effect.isVoid ?? false;
  const looks = isVoid || words.effect.strength === undefined ? 'C' : 'A';
  return { looks, strength: isVoid ? 'weak' : 'sound', isVoid, ...words.effect };
}

function flawShape(mark: Mark, line: DrawnLine, findings: Findings): FlawShape {
  if (line.curve.closed) {
    const circle = circleOfCurve(line.curve);
    if (circle === undefined) return { kind: 'area', outline: line.curve };
    return { kind: 'point', at: roundPoint(circle.center), radiusMm: round3(circle.radius) };
  }
  const widthMm = numberOf(mark, 'width', findings) ?? Math.max(round3(line.widthMm), DEFAULT_FLAW_WIDTH_MM);
  return { kind: 'line', line: polylineOf(line), widthMm };
}

export function zoneOf(mark: Mark, id: string, findings: Findings): Zone | undefined {
  const { words, line } = mark;
  if (words.zoneKind === undefined) {
    tell(findings, 'warning', 'zone-without-kind', {}, placeOf(line.source));
    return undefined;
  }
  const effect = Object.keys(words.effect).length === 0 ? {} : { effect: words.effect };
  return { id, kind: words.zoneKind, outline: line.curve, ...effect };
}

export function unsureEdgeOf(mark: Mark, findings: Findings): UnsureEdge {
  return { line: polylineOf(mark.line), offByMm: numberOf(mark, 'off', findings) ?? DEFAULT_UNSURE_MM };
}

/** "thickness 2.4", or `data-thickness`: mm, or oz where it says so. Measured at the middle of the mark. */
export function readingOf({ line, data }: Mark, findings: Findings): ThicknessReading | undefined {
  const named = allLabels(line.source.labels)
    .map((label) => /(\d+(?:\.\d+)?\s*(?:mm|oz)?)\s*$/i.exec(label)?.[1])
    .find((text) => text !== undefined);
  const text = data['thickness'] ?? named;
  const box = curveBox(line.curve);
  const at = roundPoint({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
  const mm = text === undefined ? undefined : meanThickness(text);
  if (mm === undefined) {
    tell(findings, 'warning', 'reading-without-number', {}, { ...placeOf(line.source), point: at });
    return undefined;
  }
  return { at, mm };
}

function meanThickness(text: string): number | undefined {
  try {
    const { minMm, maxMm } = parseThickness(/[a-z]/i.test(text) ? text : `${text} mm`);
    return round3((minMm + maxMm) / 2);
  } catch {
    return undefined;
  }
}

function numberOf(
  { data, line }: Mark,
  key: string,
  findings: Findings,
  most = Infinity,
): number | undefined {
  const text = data[key];
  if (text === undefined) return undefined;
  const n = Number(text.replace(/mm$/, ''));
  if (text !== '' && Number.isFinite(n) && n > 0 && n <= most) return n;
  tell(findings, 'warning', 'bad-mark-number', { name: `data-${key}`, value: text }, placeOf(line.source));
  return undefined;
}

function round3(n: number): number {
  return Math.round(n * 1000) / 1000;
}
