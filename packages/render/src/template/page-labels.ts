import { boxesTouch, flattenCurve, growBox, regionBox, ringBox } from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import type { PageJoin, TilePage } from '@hidebound/leather';
import { boxCorners, circle, line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { labelBoxInRegion } from '../label/label-box.js';
import type { LabelBox } from '../label/label-box.js';
import { placeOutside, shapeOf } from '../label/place-outside.js';
import type { FreeSpace, Shape } from '../label/place-outside.js';
import { measureBlock, setBlock } from '../label/text-block.js';
import type { FontBook } from '../text/font-book.js';
import { CROSS_ARM_MM, joinRoom } from './join-signs.js';
import { CELL_AIR_MM } from './page-parts.js';
import type { MarkedPart, PageParts } from './page-parts.js';
import { drawInside, lineBoxes, wordsBeside, wordsInside } from './shape-labels.js';
import type { SceneLine, SceneNote, TemplateScene } from './template-scene.js';
import { BLACK, FACT_TEXT_MM } from './template-style.js';
import type { TemplateLine } from './template-style.js';

/** A page and all that may be named on it. */
export interface PageToLabel {
  readonly fonts: FontBook;
  readonly page: TilePage;
  readonly scene: TemplateScene;
  readonly parts: PageParts;
}

const LINE_TOLERANCE_MM = 0.3;

/** A part with less area needs no words: its larger ones have them. */
const LEAST_PART_MM2 = 100;

/**
 * The words of a page: in every part of a shape, beside those that are too small, and what the scene notes. They keep
 * clear of the marks of the joins and of where the page is trimmed.
 */
export function pageLabels(
  { fonts, page, scene, parts }: PageToLabel,
  joins: readonly PageJoin[],
  lines: readonly SceneLine[],
): DrawingElement[] {
  const own = parts.get(page.name) ?? [];
  const signs = [...joins.map(joinRoom), ...crossRooms(page)];
  const elements: DrawingElement[] = [];
  const taken: LabelBox[] = [...signs];
  const homeless: MarkedPart[] = [];
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
    elements.push(...besideAtLeader(fonts, space, block, { at: middleOf(part.region) }));
  }
  const notes = scene.notes.filter(({ at }) => holds(page.cell, at));
  if (notes.length === 0) return elements;
  // A note may stand on a piece, but on none of its lines.
  const noteSpace = { ...space, shapes: lineShapes(segmentsWithin(lines, page.window, () => true)) };
  for (const note of notes) {
    const block = measureBlock(fonts, [
      { text: note.text, face: 'narrow', sizeMm: FACT_TEXT_MM, colour: BLACK },
    ]);
    elements.push(...besideAtLeader(fonts, noteSpace, block, note));
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
  { at: target, home }: Pick<SceneNote, 'at' | 'home'>,
): DrawingElement[] {
  const size = { widthMm: block.widthMm + 1.6, heightMm: block.heightMm + 1.6 };
  const found =
    placeOutside(space, size, target, MOST_LEADER_COST_MM) ??
    placeOutside({ ...space, shapes: [] }, size, target);
  if (found === undefined) return [];
  space.taken.push(found.box);
  if (home !== undefined && labelBoxInRegion(found.box, home)) return setBlock(fonts, block, found.box);
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
