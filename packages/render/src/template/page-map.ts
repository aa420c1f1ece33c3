import { boxUnion, curveFromPolyline, ringBox } from '@hidebound/geometry';
import type { Box, Point, Ring } from '@hidebound/geometry';
import type { TilePage, TilePlan } from '@hidebound/leather';
import { chain, path, rectangle } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { BLACK } from './template-style.js';

const LINE_MM = 0.13;
/** Points nearer than this on the map are one. */
const SAME_POINT_MM = 0.25;

/** All pages as they lie, the hide's edge over them, and this page black. */
export function pageMap(
  plan: TilePlan,
  page: TilePage,
  outlines: readonly Ring[],
  place: Box,
): DrawingElement[] {
  const whole = plan.pages.map(({ cell }) => cell).reduce(boxUnion);
  const scale = Math.min(
    (place.maxX - place.minX) / (whole.maxX - whole.minX),
    (place.maxY - place.minY) / (whole.maxY - whole.minY),
  );
  const right = place.maxX - (whole.maxX - whole.minX) * scale;
  const top = place.minY + (place.maxY - place.minY - (whole.maxY - whole.minY) * scale) / 2;
  const at = (p: Point): Point => ({
    x: right + (p.x - whole.minX) * scale,
    y: top + (p.y - whole.minY) * scale,
  });
  const onMap = (box: Box): Box => {
    const min = at({ x: box.minX, y: box.minY });
    const max = at({ x: box.maxX, y: box.maxY });
    return { minX: min.x, minY: min.y, maxX: max.x, maxY: max.y };
  };
  const cells = plan.pages.map(({ cell }) => boxRing(onMap(cell)));
  return [
    path(
      cells.map((ring) => curveFromPolyline(ring, true)),
      { stroke: { colour: BLACK, widthMm: LINE_MM } },
    ),
    rectangle(onMap(page.cell), { fill: BLACK }),
    ...outlines
      .map((ring) => thinned(ring.map(at)))
      .filter((ring) => ring.length >= 3 && isLarge(ring))
      .map((ring) => chain(ring, true, { stroke: { colour: BLACK, widthMm: 2 * LINE_MM } })),
  ];
}

function boxRing(box: Box): Point[] {
  return [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
}

function thinned(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of points) {
    const last = kept[kept.length - 1];
    if (last === undefined || Math.abs(p.x - last.x) + Math.abs(p.y - last.y) >= SAME_POINT_MM) kept.push(p);
  }
  return kept;
}

const LEAST_OUTLINE_MM = 1;

function isLarge(ring: Ring): boolean {
  const box = ringBox(ring);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY) >= LEAST_OUTLINE_MM;
}
