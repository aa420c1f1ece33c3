import { curveArea, roundCurve, roundPoint, sinCosDeg } from '@hidebound/geometry';
import type { Curve, Point, Random } from '@hidebound/geometry';
import type { FlawShape } from '../../model/hide.js';
import { smoothSegments } from './draw-outline.js';
import type { ChanceMark } from './mark-kinds.js';

/** A mark's shape about a place. `size` as the mark's `sizeMm` says. */
export function shapeOfMark(random: Random, mark: ChanceMark, at: Point, size: number): FlawShape {
  switch (mark.shape) {
    case 'spot':
      return { kind: 'point', at: roundPoint(at), radiusMm: Math.round(size * 1000) / 1000 };
    case 'line':
      return scratch(random, mark, at, size);
    case 'patch':
      return { kind: 'area', outline: patch(random, at, (Math.PI / 4) * size * size) };
  }
}

const CORNERS = 9;

/** A rounded patch of some area, mm². */
function patch(random: Random, at: Point, areaMm2: number): Curve {
  const slim = random.between(0.55, 0.95);
  const turn = sinCosDeg(random.between(0, 360));
  const start = random.between(0, 360);
  const corners = Array.from({ length: CORNERS }, (_, i): Point => {
    const { sin, cos } = sinCosDeg(start + (360 * i) / CORNERS);
    const reach = random.between(0.75, 1.2);
    const x = reach * cos;
    const y = reach * slim * sin;
    return { x: x * turn.cos - y * turn.sin, y: x * turn.sin + y * turn.cos };
  });
  const grow = Math.sqrt(areaMm2 / Math.abs(curveArea(smooth(corners))));
  return roundCurve(smooth(corners.map(({ x, y }) => ({ x: at.x + grow * x, y: at.y + grow * y }))));
}

function smooth(corners: readonly Point[]): Curve {
  return { start: corners[0]!, segments: smoothSegments([...corners, corners[0]!], true), closed: true };
}

/** A line that bends a little at each of three joints. */
function scratch(random: Random, mark: ChanceMark, at: Point, lengthMm: number): FlawShape {
  const { min, max } = mark.widthMm ?? { min: 1, max: 1 };
  const base = mark.isAcross === true ? 90 + random.between(-15, 15) : random.between(0, 180);
  const bend = random.between(-14, 14);
  const steps = 4;
  const line: Point[] = [{ x: 0, y: 0 }];
  for (let i = 0; i < steps; i++) {
    const { sin, cos } = sinCosDeg(base + bend * (i - 1.5) + random.between(-6, 6));
    const last = line[i]!;
    line.push({ x: last.x + (cos * lengthMm) / steps, y: last.y + (sin * lengthMm) / steps });
  }
  const middle = line[2]!;
  return {
    kind: 'line',
    line: line.map(({ x, y }) => roundPoint({ x: at.x + x - middle.x, y: at.y + y - middle.y })),
    widthMm: Math.round(random.between(min, max) * 10) / 10,
  };
}
