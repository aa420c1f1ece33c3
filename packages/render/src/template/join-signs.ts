import { curveFromPolyline, circleCurve } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { JOIN_NAMES_MM, JOIN_SQUARE_MM } from '@hidebound/leather';
import type { PageJoin, TilePage } from '@hidebound/leather';
import { boxCorners, group, path } from '../drawing/build.js';
import type { DrawingElement, GroupElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import type { FontBook } from '../text/font-book.js';
import { capitalHeightMm, textLine } from '../text/measure-text.js';
import { BLACK } from './template-style.js';

/** Corner crosses: half an arm's length, the ring around the middle, and the width of their lines. */
export const CROSS_ARM_MM = 4;
export const CROSS_RING_MM = 2;
export const CROSS_LINE_MM = 0.25;

/** Width of the line around an open square. */
const OPEN_LINE_MM = 0.4;
const NAME_MM = 3.6;
/** Between the join line and the letters' feet or heads. */
const NAME_AIR_MM = 0.7;

/** A cross in a ring at each corner of the page's cell, exactly where the neighbours have theirs. */
export function cornerCrosses(page: TilePage): DrawingElement[] {
  const stroke = { colour: BLACK, widthMm: CROSS_LINE_MM };
  return boxCorners(page.cell).map((at) =>
    group('corner cross', [
      path([bar(at, CROSS_ARM_MM, 0), bar(at, 0, CROSS_ARM_MM), circleCurve(at, CROSS_RING_MM)], { stroke }),
    ]),
  );
}

function bar(at: Point, dx: number, dy: number): Curve {
  return curveFromPolyline(
    [
      { x: at.x - dx, y: at.y - dy },
      { x: at.x + dx, y: at.y + dy },
    ],
    false,
  );
}

/** The join line, along which the left and the upper page are trimmed, and its row of marks. */
export function joinSigns(fonts: FontBook, join: PageJoin): GroupElement {
  const { marks } = join;
  const open = marks.squares.filter((_, i) => !marks.code[i]);
  const filled = marks.squares.filter((_, i) => marks.code[i]);
  const inner = JOIN_SQUARE_MM / 2 - OPEN_LINE_MM;
  return group(`join ${join.pages.join('-')}`, [
    joinLine(join),
    path([triangle(join), ...filled.map((at) => square(at, JOIN_SQUARE_MM / 2))], { fill: BLACK }),
    path(
      open.flatMap((at) => [square(at, JOIN_SQUARE_MM / 2), square(at, inner)]),
      { fill: BLACK },
    ),
    ...joinNames(fonts, join),
  ]);
}

/** Dots between the corner crosses, but for the stretch of the marks, which show the line by themselves. */
function joinLine({ from, to, marks }: PageJoin): DrawingElement {
  const stroke = { colour: BLACK, widthMm: 0.15, dashMm: [0.6, 1.4] };
  const isUpright = from.x === to.x;
  const along = (p: Point, by: number): Point =>
    isUpright ? { x: p.x, y: p.y + by } : { x: p.x + by, y: p.y };
  const last = marks.squares[marks.squares.length - 1]!;
  const pairs: (readonly [Point, Point])[] = [
    [along(from, CROSS_ARM_MM + 0.5), along(marks.start, -JOIN_SQUARE_MM / 2 - 1)],
    [along(last, JOIN_SQUARE_MM / 2 + 0.5), along(to, -CROSS_ARM_MM - 0.5)],
  ];
  return path(
    pairs.map((pair) => curveFromPolyline(pair, false)),
    { stroke },
  );
}

/** Points along the join line, as long and as broad as a square. */
function triangle({ from, to, marks }: PageJoin): Curve {
  const r = JOIN_SQUARE_MM / 2;
  const { x, y } = marks.start;
  const corners =
    from.x === to.x
      ? [
          { x: x - r, y: y - r },
          { x: x + r, y: y - r },
          { x, y: y + r },
        ]
      : [
          { x: x - r, y: y - r },
          { x: x + r, y },
          { x: x - r, y: y + r },
        ];
  return curveFromPolyline(corners, true);
}

function square(at: Point, half: number): Curve {
  return curveFromPolyline(
    boxCorners({ minX: at.x - half, minY: at.y - half, maxX: at.x + half, maxY: at.y + half }),
    true,
  );
}

/** Each page's name on its own side of the line; both are read from below or from the right. */
function joinNames(fonts: FontBook, { from, to, pages, marks }: PageJoin): DrawingElement[] {
  const isUpright = from.x === to.x;
  const capital = capitalHeightMm(fonts, 'narrow bold', NAME_MM);
  const down = [-NAME_AIR_MM, NAME_AIR_MM + capital];
  return pages.map((name, i) => {
    const off = down[i]!;
    const at = isUpright
      ? { x: marks.namesAt.x + off, y: marks.namesAt.y }
      : { x: marks.namesAt.x, y: marks.namesAt.y + off };
    return textLine(fonts, name, {
      at,
      sizeMm: NAME_MM,
      colour: BLACK,
      face: 'narrow bold',
      anchor: 'middle',
      angleDeg: isUpright ? -90 : 0,
    });
  });
}

/** The room that a row of marks takes up: no label lies on it. */
export function joinRoom(join: PageJoin): LabelBox {
  const isUpright = join.from.x === join.to.x;
  const { start, namesAt } = join.marks;
  const end = isUpright ? namesAt.y + JOIN_NAMES_MM / 2 : namesAt.x + JOIN_NAMES_MM / 2;
  const begin = (isUpright ? start.y : start.x) - JOIN_SQUARE_MM;
  const middle = (begin + end) / 2;
  return {
    center: isUpright ? { x: start.x, y: middle } : { x: middle, y: start.y },
    widthMm: isUpright ? NAMES_BREADTH_MM : end - begin,
    heightMm: isUpright ? end - begin : NAMES_BREADTH_MM,
    angleDeg: 0,
  };
}

const NAMES_BREADTH_MM = 8;

/** The marks that can hide a line: the triangle and the squares. */
export function markBoxes({ marks }: PageJoin): LabelBox[] {
  const side = { widthMm: JOIN_SQUARE_MM, heightMm: JOIN_SQUARE_MM, angleDeg: 0 };
  return [marks.start, ...marks.squares].map((center) => ({ center, ...side }));
}
