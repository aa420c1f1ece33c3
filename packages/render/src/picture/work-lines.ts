import { atan2Deg, curveFromPolyline, lineInRegion, sinCosDeg } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import type { HideYield, Layout, StrapLane } from '@hidebound/leather';
import { chain, line, path } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { CUT_LINE_MM, FREEING_CUT_MM, INK, INK_SOFT, ROUGH_CUT_MM } from '../sheet/palette.js';
import { movePoints } from './hide-layers.js';
import type { HideView } from './hide-view.js';
import { ringOnDrawing } from './hide-view.js';
import type { PictureStyle } from './picture-style.js';

/** Straight first cuts of lanes, with the lines that the straps of a lane share. */
export function laneLines(
  layout: Layout,
  hideId: string,
  view: HideView,
  style: PictureStyle,
): DrawingElement[] {
  return layout.lanes
    .filter((lane) => lane.hide === hideId)
    .flatMap((lane) => {
      const rows = laneRowLines(lane);
      return rows.map((points, i) => {
        const [from, to] = movePoints(view.toDrawing, points);
        const widthMm = (i === 0 ? FREEING_CUT_MM : CUT_LINE_MM) * style.pen;
        return line(from!, to!, { colour: INK, widthMm });
      });
    });
}

/** The lane's lines across it, the first cut first, in the hide's frame. The straps lie on its right. */
function laneRowLines(lane: StrapLane): (readonly Point[])[] {
  const { sin, cos } = sinCosDeg(atan2Deg(lane.to.y - lane.from.y, lane.to.x - lane.from.x));
  const across = { x: -sin, y: cos };
  const lines: (readonly Point[])[] = [[lane.from, lane.to]];
  let offset = 0;
  for (const row of lane.rows) {
    offset += row.widthMm;
    lines.push([shift(lane.from, across, offset), shift(lane.to, across, offset)]);
    offset += lane.kerfMm;
  }
  return lines;
}

function shift(p: Point, along: Point, by: number): Point {
  return { x: p.x + along.x * by, y: p.y + along.y * by };
}

/** Rough cuts in long dashes, swatches in a plain line. */
export function roughCutLines(
  layout: Layout,
  hideId: string,
  view: HideView,
  style: PictureStyle,
): DrawingElement[] {
  const { grow } = style;
  const stroke = { colour: INK, widthMm: ROUGH_CUT_MM * style.pen, dashMm: [4 * grow, 1.2 * grow] };
  return [
    ...layout.roughCuts
      .filter((block) => block.hide === hideId)
      .map((block) => chain(ringOnDrawing(view.toDrawing, block.outline), true, { stroke })),
    ...layout.swatches
      .filter((swatch) => swatch.hide === hideId)
      .map((swatch) =>
        chain(ringOnDrawing(view.toDrawing, swatch.outline), true, {
          stroke: { colour: INK_SOFT, widthMm: CUT_LINE_MM * style.pen },
        }),
      ),
  ];
}

/** The stretches of the freeing cut that run through leather, on the drawing. */
export function freeingCutStretches(
  yields: HideYield | undefined,
  view: HideView,
  hide: Region,
): (readonly [Point, Point])[] {
  if (yields?.freeingCut === undefined) return [];
  const [from, to] = movePoints(view.toDrawing, [yields.freeingCut.from, yields.freeingCut.to]);
  return lineInRegion(from!, to!, hide);
}

/** The freeing cut in bold long dashes with a short one between. */
export function freeingCutLines(
  stretches: readonly (readonly [Point, Point])[],
  style: PictureStyle,
): DrawingElement[] {
  if (stretches.length === 0) return [];
  const { grow } = style;
  return [
    path(
      stretches.map(([from, to]) => curveFromPolyline([from, to], false)),
      {
        stroke: {
          colour: INK,
          widthMm: FREEING_CUT_MM * style.pen,
          dashMm: [5 * grow, 1.2 * grow, 1.2 * grow, 1.2 * grow],
        },
      },
    ),
  ];
}
