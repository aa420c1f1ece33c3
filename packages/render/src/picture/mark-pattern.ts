import { sinCosDeg } from '@hidebound/geometry';
import type { Curve, Point, Region } from '@hidebound/geometry';
import { path } from '../drawing/build.js';
import { hatchLines } from '../drawing/hatch.js';
import type { DrawingElement } from '../drawing/model.js';
import { BRASS, FINE_LINE_MM, INDIGO, MARK_LINE_MM, OXBLOOD, SLATE } from '../sheet/palette.js';
import type { MarkMeaning } from './hide-marks.js';

/**
 * A marked place in its pattern, with `grow` for larger pictures. Told apart without colour: never here is
 * cross-hatched within a whole line; only where hidden is hatched one way within dashes, not on the best faces the same
 * but sparsely and upright; weak is hatched with short level dashes within dots. A place that is weak and ugly has both.
 */
export function markPattern(
  meaning: MarkMeaning,
  regions: readonly Region[],
  curves: readonly Curve[],
  grow = 1,
): DrawingElement[] {
  const elements: DrawingElement[] = [];
  const fine = FINE_LINE_MM * grow;
  const edge = MARK_LINE_MM * grow;
  if (meaning.never) {
    for (const angleDeg of [45, 135]) {
      elements.push(hatch(regions, OXBLOOD, fine, { spacingMm: 0.9 * grow, angleDeg }));
    }
    elements.push(path(curves, { stroke: { colour: OXBLOOD, widthMm: edge } }));
  }
  if (meaning.second) {
    elements.push(hatch(regions, BRASS, fine, { spacingMm: 2 * grow, angleDeg: 90 }));
    elements.push(path(curves, dashedEdge(BRASS, edge, [0.6 * grow, 0.6 * grow])));
  }
  if (meaning.hidden) {
    elements.push(hatch(regions, BRASS, fine, { spacingMm: 1.1 * grow, angleDeg: 45 }));
    elements.push(path(curves, dashedEdge(BRASS, edge, [1.2 * grow, 0.6 * grow])));
  }
  if (meaning.weak) {
    elements.push(
      hatch(regions, INDIGO, fine, { spacingMm: 0.9 * grow, angleDeg: 0, dashMm: [0.9 * grow, 0.9 * grow] }),
    );
    if (!meaning.hidden && !meaning.second)
      elements.push(path(curves, dashedEdge(INDIGO, edge, [0.25 * grow, 0.6 * grow])));
  }
  return elements;
}

/** An offcut that is worth keeping: wide, thin hatching within a thin line. */
export function offcutPattern(
  regions: readonly Region[],
  curves: readonly Curve[],
  grow = 1,
): DrawingElement[] {
  return [
    hatch(regions, SLATE, FINE_LINE_MM * grow, { spacingMm: 3 * grow, angleDeg: 135 }),
    path(curves, { stroke: { colour: SLATE, widthMm: MARK_LINE_MM * grow } }),
  ];
}

/** The sign that goes with a meaning: a saltire, a stroke, a half-closed ring, a wave. Drawn, so that every font shows it. */
export function markSign(meaning: MarkMeaning, at: Point, sizeMm: number): DrawingElement[] {
  const r = sizeMm / 2;
  const pen = { widthMm: sizeMm * 0.14, cap: 'round' } as const;
  if (meaning.never) {
    const stroke = { ...pen, colour: OXBLOOD };
    return [path([straight(at, -r, -r, r, r), straight(at, -r, r, r, -r)], { stroke })];
  }
  const elements: DrawingElement[] = [];
  const brass = { stroke: { ...pen, colour: BRASS } };
  if (meaning.second) elements.push(path([straight(at, 0, -r, 0, r)], brass));
  if (meaning.hidden) elements.push(path([hoop(at, r)], brass));
  if (meaning.weak) elements.push(path([wave(at, r)], { stroke: { ...pen, colour: INDIGO } }));
  return elements;
}

function hatch(
  regions: readonly Region[],
  colour: string,
  widthMm: number,
  options: Parameters<typeof hatchLines>[1],
): DrawingElement {
  return path(hatchLines(regions, options), { stroke: { colour, widthMm } });
}

function dashedEdge(colour: string, widthMm: number, dashMm: readonly number[]) {
  return { stroke: { colour, widthMm, dashMm } };
}

function straight(at: Point, x1: number, y1: number, x2: number, y2: number): Curve {
  return {
    start: { x: at.x + x1, y: at.y + y1 },
    segments: [{ kind: 'line', to: { x: at.x + x2, y: at.y + y2 } }],
    closed: false,
  };
}

/** Three quarters of a ring, open below. */
function hoop(at: Point, r: number): Curve {
  const { sin, cos } = sinCosDeg(135);
  return {
    start: { x: at.x + r * cos, y: at.y + r * sin },
    segments: [{ kind: 'arc', via: { x: at.x, y: at.y - r }, to: { x: at.x - r * cos, y: at.y + r * sin } }],
    closed: false,
  };
}

function wave(at: Point, r: number): Curve {
  return {
    start: { x: at.x - r, y: at.y },
    segments: [
      {
        kind: 'cubic',
        handle1: { x: at.x - r / 2, y: at.y - r },
        handle2: { x: at.x - r / 2, y: at.y - r },
        to: at,
      },
      {
        kind: 'cubic',
        handle1: { x: at.x + r / 2, y: at.y + r },
        handle2: { x: at.x + r / 2, y: at.y + r },
        to: { x: at.x + r, y: at.y },
      },
    ],
    closed: false,
  };
}
