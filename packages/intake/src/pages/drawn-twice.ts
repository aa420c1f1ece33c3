import {
  createSpatialIndex,
  curveEndPoints,
  curveSteps,
  distanceBetween,
  growBox,
} from '@hidebound/geometry';
import type { Box, Curve, Point } from '@hidebound/geometry';
import type { Seam } from './cells.js';
import type { PagePart } from './cut-to-cells.js';
import { SNAP_MM } from './limits.js';
import { lookOf } from './look.js';
import { isInBox } from './vectors.js';

/** Shorter pieces of a line may only cross the seam at a flat angle, mm. */
const RUNS_ALONG_MM = 10 * SNAP_MM;

/** A straight step of a part that lies along a seam. */
interface SeamStep {
  readonly part: number;
  readonly step: number;
  readonly from: Point;
  readonly to: Point;
  readonly box: Box;
}

/**
 * The parts without what two pages both draw along the seam between them: a line that lies just there is seen by both. It is
 * kept where it is within a line that goes on, else with the left or upper page; the other's end is taken off.
 */
export function withoutDrawnTwice(parts: readonly PagePart[], seams: readonly Seam[]): PagePart[] {
  const steps = parts.flatMap(({ line }, part) => seamSteps(line.curve, part, seams));
  const coverOf = coversAmong(steps, parts);
  const byPart = new Map<number, Map<number, SeamStep>>();
  for (const step of steps) {
    const own = byPart.get(step.part) ?? new Map<number, SeamStep>();
    byPart.set(step.part, own.set(step.step, step));
  }
  const gone = new Set<SeamStep>();
  const kept: (PagePart | undefined)[] = [...parts];
  for (const [part, own] of [...byPart].reverse()) {
    const { curve } = parts[part]!.line;
    if (curve.closed) continue;
    const covers: SeamStep[] = [];
    const takesOff = (number: number): boolean => {
      const step = own.get(number);
      const cover = step === undefined ? undefined : coverOf(step, gone);
      if (step === undefined || cover === undefined) return false;
      gone.add(step);
      covers.push(cover);
      return true;
    };
    let first = 0;
    let last = curve.segments.length - 1;
    while (first <= last && takesOff(first)) first++;
    while (last >= first && takesOff(last)) last--;
    kept[part] = stretchOf(kept[part]!, first, last);
    // What is left of the line goes on at the end of the other page's.
    if (kept[part] !== undefined)
      for (const cover of covers) kept[cover.part] = withCutAt(kept[cover.part]!, cover);
  }
  return kept.filter((part) => part !== undefined);
}

function seamSteps(curve: Curve, part: number, seams: readonly Seam[]): SeamStep[] {
  return curveSteps(curve).flatMap(({ from, segment: { kind, to } }, step) => {
    const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
    if (kind !== 'line' || Math.min(dx, dy) > SNAP_MM || Math.max(dx, dy) < RUNS_ALONG_MM) return [];
    const axis = dx < dy ? 'x' : 'y';
    const isOn = seams.some(
      (seam) =>
        seam.axis === axis &&
        Math.abs(from[axis] - seam.at) <= SNAP_MM &&
        Math.abs(to[axis] - seam.at) <= SNAP_MM,
    );
    return isOn ? [{ part, step, from, to, box: growBox(boxBetween(from, to), SNAP_MM) }] : [];
  });
}

function boxBetween(a: Point, b: Point): Box {
  return {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

/** To be asked for the step of another page's line of the same look that lies all along a step, but for those that are gone. */
function coversAmong(steps: readonly SeamStep[], parts: readonly PagePart[]) {
  const index = createSpatialIndex(steps.map(({ box }) => box));
  const looks = new Map(steps.map(({ part }) => [part, lookOf(parts[part]!.line)]));
  return (step: SeamStep, gone: ReadonlySet<SeamStep>): SeamStep | undefined => {
    let found: SeamStep | undefined;
    index.query(step.box, (i) => {
      const other = steps[i]!;
      if (gone.has(other) || parts[other.part]!.page === parts[step.part]!.page) return;
      if (looks.get(other.part) !== looks.get(step.part)) return;
      if (isInBox(step.from, other.box) && isInBox(step.to, other.box)) found ??= other;
    });
    return found;
  };
}

/** The part open to be joined at the ends that the step has. */
function withCutAt(part: PagePart, { from, to }: SeamStep): PagePart {
  const { curve } = part.line;
  if (curve.closed) return part;
  const { start, end } = curveEndPoints(curve);
  const isCut = [
    part.isCut[0] || distanceBetween(from, start) === 0,
    part.isCut[1] || distanceBetween(to, end) === 0,
  ] as const;
  return { ...part, isCut };
}

/** The part from its first to its last step; what was taken off, goes on elsewhere. */
function stretchOf(part: PagePart, first: number, last: number): PagePart | undefined {
  const { curve } = part.line;
  if (first > last) return undefined;
  if (first === 0 && last === curve.segments.length - 1) return part;
  const start = first === 0 ? curve.start : curve.segments[first - 1]!.to;
  const segments = curve.segments.slice(first, last + 1);
  return {
    ...part,
    line: { ...part.line, curve: { start, segments, closed: false } },
    isCut: [part.isCut[0] || first > 0, part.isCut[1] || last < curve.segments.length - 1],
  };
}
