import type { G } from '@svgdotjs/svg.js';
import { applyAffine, boxUnion, curveBox, ringBox } from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import type { App } from '../../../app/app.js';
import { curvePath, linePath, ringPath } from '../../../drawing/path-data.js';
import type { PatternShown, ShownPage } from '../../../work/patterns-tasks.js';
import type { Stage } from '../../../drawing/stage.js';
import { words } from '../board/draw-board.js';
import { benchOf, shownPattern } from '../bench.js';

/** A pattern file on the stage: where its own frame lies there. */
export interface LaidFile {
  readonly path: string;
  readonly shift: Point;
  readonly box: Box;
}

const EMPTY_FILE: Box = { minX: 0, minY: 0, maxX: 200, maxY: 120 };

/** Each file as it is drawn, side by side, so that everything in it lies as its maker laid it. */
export function drawPatterns(
  app: App,
  stage: Stage,
  layer: G,
  paths: readonly string[],
): { readonly files: readonly LaidFile[]; readonly box: Box } {
  const files = laidFiles(app, paths);
  const box = files.map((file) => file.box).reduce(boxUnion);
  const { width, height } = stage.size.get();
  const scale = Math.min(width / (box.maxX - box.minX), height / (box.maxY - box.minY));
  const textMm = 14 / Math.max(scale, 1e-3);
  for (const file of files) drawFile(app, layer, file, textMm);
  drawMeasure(app, layer, files, textMm);
  return { files, box };
}

function laidFiles(app: App, paths: readonly string[]): LaidFile[] {
  let x = 0;
  return paths.map((path) => {
    const box = boxOfFile(shownPattern(app, path));
    const shift = { x: x - box.minX, y: -box.minY };
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    const laid = { path, shift, box: { minX: x, minY: 0, maxX: x + width, maxY: height } };
    x += width * 1.06 + 10;
    return laid;
  });
}

/** Around its pieces and its pages; without either, around what is drawn at all. */
function boxOfFile(shown: PatternShown | undefined): Box {
  if (shown?.read === undefined) return EMPTY_FILE;
  const { box, pages = [], strays } = shown.read;
  const known = [
    ...(box === undefined ? [] : [box]),
    ...sheetsOf(pages).map(({ corners }) => ringBox(corners)),
  ];
  const boxes = known.length > 0 ? known : strays.map(({ curve }) => curveBox(curve));
  return boxes.length === 0 ? EMPTY_FILE : boxes.reduce(boxUnion);
}

function drawFile(app: App, layer: G, { path, shift }: LaidFile, textMm: number): void {
  const shown = shownPattern(app, path);
  const group = layer.group().attr({ transform: `translate(${shift.x} ${shift.y})` });
  if (shown?.read === undefined) {
    group.rect(200, 120).attr({ class: 'board-unknown' });
    words(group, shown === undefined ? '…' : '?', { x: 100, y: 60 }, textMm, 'board-name');
    return;
  }
  const { left } = benchOf(app);
  for (const { piece } of shown.read.pieces) {
    const one = group.group().attr({
      class: left.has(`${path}#${piece.name}`) ? 'pattern-piece is-left' : 'pattern-piece',
      'data-kind': 'pattern',
      'data-id': `${path}#${piece.name}`,
    });
    one
      .path([piece.cut, ...piece.cutOuts].map(curvePath).join(' '))
      .attr({ class: 'piece-cut', 'fill-rule': 'evenodd' });
    for (const { at, diameterMm } of piece.punches)
      one.circle(diameterMm).center(at.x, at.y).attr({ class: 'piece-punch' });
    const lines = [
      ['piece-stitch', piece.stitchLines],
      ['piece-fold', piece.foldLines],
      ['piece-skive', piece.skiveLines],
      ['piece-cement', piece.cementLines],
    ] as const;
    for (const [style, marks] of lines)
      for (const { curve } of marks) one.path(curvePath(curve)).attr({ class: style });
    for (const face of piece.face) one.path(curvePath(face)).attr({ class: 'large-face' });
    if (piece.direction !== undefined)
      one.path(linePath([piece.direction.from, piece.direction.to])).attr({ class: 'piece-direction' });
    const { minX, maxX, minY, maxY } = curveBox(piece.cut);
    words(one, piece.name, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, textMm, 'board-name');
  }
  for (const { curve } of shown.read.strays) group.path(curvePath(curve)).attr({ class: 'pattern-stray' });
  drawPages(group, shown.read.pages ?? [], textMm);
}

/** The sheets of paper that a pattern was put together from, in the file's frame; a single one needs no word. */
function sheetsOf(
  pages: readonly ShownPage[],
): readonly { readonly number: number; readonly corners: readonly Point[] }[] {
  if (pages.length < 2) return [];
  return pages.flatMap(({ number, widthMm, heightMm, toWhole }) => {
    if (toWhole === undefined) return [];
    const corners = [
      { x: 0, y: 0 },
      { x: widthMm, y: 0 },
      { x: widthMm, y: heightMm },
      { x: 0, y: heightMm },
    ];
    return [{ number, corners: corners.map((at) => applyAffine(toWhole, at)) }];
  });
}

/** Each with its number in its corner. */
function drawPages(group: G, pages: readonly ShownPage[], textMm: number): void {
  for (const { number, corners } of sheetsOf(pages)) {
    group.path(ringPath(corners)).attr({ class: 'pattern-page' });
    const { x, y } = corners[0]!;
    words(group, String(number), { x: x + textMm, y: y + 1.2 * textMm }, textMm, 'pattern-page-number');
  }
}

function drawMeasure(app: App, layer: G, files: readonly LaidFile[], textMm: number): void {
  const { measured } = benchOf(app);
  const file = files.find(({ path }) => path === measured?.path);
  if (measured === undefined || file === undefined) return;
  const group = layer
    .group()
    .attr({ class: 'measure', transform: `translate(${file.shift.x} ${file.shift.y})` });
  const ends = measured.to === undefined ? [measured.from] : [measured.from, measured.to];
  if (ends.length > 1) group.path(linePath(ends)).attr({ class: 'measure-line' });
  for (const { x, y } of ends)
    group
      .circle(textMm * 0.7)
      .center(x, y)
      .attr({ class: 'measure-end' });
}
