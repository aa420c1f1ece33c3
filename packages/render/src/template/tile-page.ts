import {
  boxesTouch,
  curveFromPolyline,
  flattenCurve,
  growBox,
  intersectRegions,
  regionArea,
  regionBox,
  ringBox,
  translation,
} from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import type { PageJoin, TilePage, TilePlan } from '@hidebound/leather';
import { boxCorners, circle, group, line, path } from '../drawing/build.js';
import type { DrawingElement, Layer } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { placeOutside, shapeOf } from '../label/place-outside.js';
import type { FreeSpace, Shape } from '../label/place-outside.js';
import { measureBlock, setBlock } from '../label/text-block.js';
import type { FontBook } from '../text/font-book.js';
import { CROSS_ARM_MM, cornerCrosses, joinRoom, joinSigns, markBoxes } from './join-signs.js';
import { drawInside, largestByBox, lineBoxes, wordsBeside, wordsInside } from './shape-labels.js';
import type { SceneLine, SceneShape, TemplateScene } from './template-scene.js';
import { BLACK, FACT_TEXT_MM, WHITE, lineStroke } from './template-style.js';
import type { TemplateLine } from './template-style.js';

/** A part of a shape on a page. */
interface ShapePart {
  readonly shape: SceneShape;
  readonly region: Region;
  readonly areaMm2: number;
}

/** The parts of every shape on every page, by the page's name; words stand on the largest part. */
export type PageParts = ReadonlyMap<string, readonly (ShapePart & { readonly isMain: boolean })[]>;

/** Words keep so far from where a page is trimmed. */
const CELL_AIR_MM = 1.5;

/** A part with less area needs no words: its larger ones have them. */
const LEAST_PART_MM2 = 100;

/** Divides every shape among the pages, once for all pages. */
export function partsOfPages(plan: TilePlan, scene: TemplateScene): PageParts {
  const parts = new Map<string, ShapePart[]>(plan.pages.map(({ name }) => [name, []]));
  const mains = new Set<ShapePart>();
  for (const shape of scene.shapes) {
    const own: ShapePart[] = [];
    for (const page of plan.pages) {
      const room = growBox(page.cell, -CELL_AIR_MM);
      if (!boxesTouch(shape.box, room)) continue;
      const cut = intersectRegions([shape.region], [{ outer: boxCorners(room), openings: [] }]);
      const region = largestByBox(cut);
      if (region === undefined) continue;
      const part = { shape, region, areaMm2: regionArea(region) };
      own.push(part);
      parts.get(page.name)!.push(part);
    }
    const [main] = [...own].sort((a, b) => b.areaMm2 - a.areaMm2);
    if (main !== undefined) mains.add(main);
  }
  return new Map(
    [...parts].map(([name, each]) => [name, each.map((part) => ({ ...part, isMain: mains.has(part) }))]),
  );
}

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
          clip,
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

function halos(join: PageJoin, lines: readonly SceneLine[]): DrawingElement[] {
  const boxes = markBoxes(join);
  const room = roomBox(joinRoom(join));
  const near = lines.filter(({ box }) => boxesTouch(box, room));
  return near.map(({ kind, curve }) =>
    group(
      'halo',
      [path([curve], { stroke: { colour: WHITE, widthMm: lineStroke(kind).widthMm + 2 * HALO_MM } })],
      {
        clip: boxes,
      },
    ),
  );
}

function roomBox({ center, widthMm, heightMm }: LabelBox): Box {
  return {
    minX: center.x - widthMm / 2,
    minY: center.y - heightMm / 2,
    maxX: center.x + widthMm / 2,
    maxY: center.y + heightMm / 2,
  };
}

const LINE_TOLERANCE_MM = 0.3;

function pageLabels(
  { fonts, page, scene, parts }: TilePageRequest,
  joins: readonly PageJoin[],
  lines: readonly SceneLine[],
): DrawingElement[] {
  const own = parts.get(page.name) ?? [];
  const signs = [...joins.map(joinRoom), ...crossRooms(page)];
  const elements: DrawingElement[] = [];
  const taken: LabelBox[] = [...signs];
  const homeless: (typeof own)[number][] = [];
  for (const part of own) {
    if (!part.isMain && part.areaMm2 < LEAST_PART_MM2) continue;
    const inner = lineBoxes(part.shape.inner).filter((box) => boxesTouch(aroundBox(box), page.cell));
    const inside = wordsInside(
      fonts,
      part.shape,
      { region: part.region, avoid: [...inner, ...taken] },
      part.isMain,
    );
    elements.push(...drawInside(fonts, part.shape, inside));
    if (inside.text !== undefined) taken.push(inside.text.box);
    if (inside.arrow !== undefined) taken.push(inside.arrow);
    if (inside.text === undefined && part.isMain) homeless.push(part);
  }
  const within = growBox(page.cell, -CELL_AIR_MM);
  const loose = lineShapes(segmentsWithin(lines, page.window, isLoose));
  const space: FreeSpace = {
    within,
    shapes: [...own.map(({ shape }) => shapeOf(shape.region)), ...loose],
    taken,
    leaders: [],
  };
  for (const part of homeless) {
    const block = wordsBeside(fonts, part.shape.words, false);
    elements.push(...besideAtLeader(fonts, space, block, middleOf(part.region)));
  }
  const notes = scene.notes.filter(({ at }) => holds(page.cell, at));
  if (notes.length === 0) return elements;
  // A note may stand on a piece, but on none of its lines.
  const noteSpace = { ...space, shapes: lineShapes(segmentsWithin(lines, page.window, () => true)) };
  for (const note of notes) {
    const block = measureBlock(fonts, [
      { text: note.text, face: 'narrow', sizeMm: FACT_TEXT_MM, colour: BLACK },
    ]);
    elements.push(...besideAtLeader(fonts, noteSpace, block, note.at));
  }
  return elements;
}

function middleOf(region: Region): Point {
  const box = regionBox(region);
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

/** Words farther off are not taken for what they name, mm with what a leader crosses. */
const MOST_LEADER_COST_MM = 120;

/** Straight bits of lines as shapes of which only the edge counts: there and back again. */
function lineShapes(segments: readonly (readonly Point[])[]): Shape[] {
  return segments.map(([from, to]) => shapeOf({ outer: [from!, to!, from!], openings: [] }, true));
}

/** Words in free space with a thin leader; over other shapes where nothing is free. */
function besideAtLeader(
  fonts: FontBook,
  space: FreeSpace,
  block: ReturnType<typeof measureBlock>,
  target: Point,
): DrawingElement[] {
  const size = { widthMm: block.widthMm + 1.6, heightMm: block.heightMm + 1.6 };
  const found =
    placeOutside(space, size, target, MOST_LEADER_COST_MM) ??
    placeOutside({ ...space, shapes: [] }, size, target);
  if (found === undefined) return [];
  space.taken.push(found.box);
  space.leaders.push(found.leader);
  return [
    line(found.leader.from, found.leader.to, { colour: BLACK, widthMm: 0.2 }),
    circle(found.leader.to, 0.5, { fill: BLACK }),
    ...setBlock(fonts, block, found.box),
  ];
}

/** Lines that belong to no piece, such as the hide's edge. */
function isLoose(kind: TemplateLine): boolean {
  return !PIECE_LINES.has(kind);
}

const PIECE_LINES: ReadonlySet<TemplateLine> = new Set([
  'cut',
  'hole',
  'stitch hole',
  'stitch',
  'fold',
  'skive',
  'cement',
  'face',
  'allowance',
]);

/** Straight bits of the lines of some kinds that come near the window. */
function segmentsWithin(
  lines: readonly SceneLine[],
  window: Box,
  isWanted: (kind: TemplateLine) => boolean,
): (readonly Point[])[] {
  return lines
    .filter(({ kind }) => isWanted(kind))
    .flatMap(({ curve }) => {
      const points = flattenCurve(curve, LINE_TOLERANCE_MM);
      return points.slice(1).flatMap((to, i) => {
        const from = points[i]!;
        return boxesTouch(ringBox([from, to]), window) ? [[from, to]] : [];
      });
    });
}

function crossRooms(page: TilePage): LabelBox[] {
  const side = 2 * CROSS_ARM_MM + 1;
  return boxCorners(page.cell).map((center) => ({ center, widthMm: side, heightMm: side, angleDeg: 0 }));
}

function aroundBox({ center, widthMm, heightMm }: LabelBox): Box {
  const reach = (widthMm + heightMm) / 2;
  return { minX: center.x - reach, minY: center.y - reach, maxX: center.x + reach, maxY: center.y + reach };
}

function holds(box: Box, p: Point): boolean {
  return p.x >= box.minX && p.x < box.maxX && p.y >= box.minY && p.y < box.maxY;
}
