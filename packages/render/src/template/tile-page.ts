import { boxesTouch, curveFromPolyline, flattenCurve, translation } from '@hidebound/geometry';
import type { Box, Curve } from '@hidebound/geometry';
import type { PageJoin, TilePage, TilePlan } from '@hidebound/leather';
import { boxCorners, group, path } from '../drawing/build.js';
import type { DrawingElement, Layer } from '../drawing/model.js';
import { growLabelBox, labelBoxCorners, segmentMeetsLabelBox } from '../label/label-box.js';
import type { LabelBox } from '../label/label-box.js';
import type { FontBook } from '../text/font-book.js';
import { cornerCrosses, joinRoom, joinSigns, markBoxes } from './join-signs.js';
import { pageLabels } from './page-labels.js';
import type { PageParts } from './page-parts.js';
import type { SceneLine, TemplateScene } from './template-scene.js';
import { WHITE, lineStroke } from './template-style.js';

export interface TilePageRequest {
  readonly fonts: FontBook;
  readonly plan: TilePlan;
  readonly page: TilePage;
  readonly scene: TemplateScene;
  readonly parts: PageParts;
}

/** What a page shows of the whole, at its place on the sheet, and which lines that are. */
export function tilePageLayers(request: TilePageRequest): {
  readonly layers: readonly Layer[];
  readonly lines: readonly SceneLine[];
} {
  const { fonts, plan, page, scene } = request;
  const lines = scene.lines.filter(({ box }) => boxesTouch(box, page.window));
  const joins = plan.joins.filter(({ pages }) => pages.includes(page.name));
  const move = { transform: translation(page.toSheet.dx, page.toSheet.dy) };
  const clip = { ...move, clip: [curveFromPolyline(boxCorners(page.window), true)] };
  const layers = [
    {
      name: 'joins',
      elements: [
        group(
          'joins',
          joins.map((join) => joinSigns(fonts, join)),
          clip,
        ),
      ],
    },
    {
      name: 'halos',
      elements: [
        group(
          'halos',
          joins.flatMap((join) => halos(join, lines)),
          move,
        ),
      ],
    },
    { name: 'lines', elements: [group('lines', drawLines(lines), clip)] },
    { name: 'corner crosses', elements: [group('crosses', cornerCrosses(page), move)] },
    { name: 'words', elements: [group('words', pageLabels(request, joins, lines), move)] },
  ];
  return { layers, lines };
}

/** Lines of one kind as one path. */
export function drawLines(lines: readonly SceneLine[]): DrawingElement[] {
  const kinds = [...new Set(lines.map(({ kind }) => kind))];
  return kinds.map((kind) =>
    path(
      lines.filter((each) => each.kind === kind).map(({ curve }) => curve),
      { stroke: lineStroke(kind) },
    ),
  );
}

/** White on either side of a line where it runs over a mark, so that no mark hides it. */
const HALO_MM = 0.45;

/** How closely curves are followed in looking for the marks that they run over. */
const HALO_TOLERANCE_MM = 0.1;

/** The halos of all lines that run over the marks of a join; nothing if none does. */
function halos(join: PageJoin, lines: readonly SceneLine[]): DrawingElement[] {
  const marks = markBoxes(join);
  const room = boxOf(joinRoom(join));
  const over = lines.filter(({ box, curve }) => boxesTouch(box, room) && runsOver(curve, marks));
  if (over.length === 0) return [];
  const white = over.map(({ kind, curve }) =>
    path([curve], { stroke: { colour: WHITE, widthMm: lineStroke(kind).widthMm + 2 * HALO_MM } }),
  );
  const clip = marks.map((mark) => curveFromPolyline(labelBoxCorners(mark), true));
  return [group('halo', white, { clip })];
}

function runsOver(curve: Curve, marks: readonly LabelBox[]): boolean {
  const points = flattenCurve(curve, HALO_TOLERANCE_MM);
  return marks.some((mark) => {
    const near = growLabelBox(mark, HALO_MM);
    return points.some((to, i) => i > 0 && segmentMeetsLabelBox(points[i - 1]!, to, near));
  });
}

function boxOf({ center, widthMm, heightMm }: LabelBox): Box {
  return {
    minX: center.x - widthMm / 2,
    minY: center.y - heightMm / 2,
    maxX: center.x + widthMm / 2,
    maxY: center.y + heightMm / 2,
  };
}
