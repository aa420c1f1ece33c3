import { applyAffine, distanceBetween } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import type { ChalkMark, LineEnd, PieceSetting, SettingOut } from '@hidebound/leather';
import { chain, circle, line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { labelBoxMeetsRegion } from '../label/label-box.js';
import type { HideView } from '../picture/hide-view.js';
import type { NamedPoint, PictureExtra } from '../picture/layout-picture.js';
import type { PictureStyle } from '../picture/picture-style.js';
import type { PlacedPiece } from '../picture/placed-pieces.js';
import { FREEING_CUT_MM, INK, MARK_LINE_MM, PAPER } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { measureText, textLine } from '../text/measure-text.js';
import { cornerName, hasTwoSides } from './setting-words.js';

interface Setting {
  readonly out: SettingOut;
  readonly view: HideView;
  readonly style: PictureStyle;
  readonly fonts: FontBook;
  readonly pieces: readonly PlacedPiece[];
}

/** Radius of the marks for A and B. */
const MARK_RADIUS_MM = 0.75;
/** Kept free around a mark. */
const MARK_ROOM_MM = 0.3;

/** Base line with its ruler, and every chalk mark: what setting out adds to the picture of a layout. */
export function settingPicture(setting: Setting): PictureExtra {
  const { out, view } = setting;
  const marks = marksOf(out);
  const ruler = rulerOf(setting);
  const at = (p: Point): Point => applyAffine(view.toDrawing, p);
  return {
    layers: [
      { name: 'rough cut sides', elements: roughCutSides(setting) },
      { name: 'base line', elements: [...ruler.elements, ...endsOf(setting)] },
      {
        name: 'marks',
        elements: marks.flatMap(({ a, b }) => [
          ...(b === undefined ? [] : [markB(at(b.at), setting.style)]),
          markA(at(a.at), setting.style),
        ]),
      },
    ],
    reserved: [
      ...marks.flatMap(({ a, b }) =>
        [a, ...(b === undefined ? [] : [b])].map((mark) => roomOf(at(mark.at), setting)),
      ),
      ...ruler.taken,
      ...[out.baseLine.start, out.baseLine.end].map(({ corner }) => squareAt(at(corner.at), setting)),
    ],
    named: namedPoints(out).map((point) => ({ ...point, at: at(point.at) })),
  };
}

/** A: a filled dot. */
export function markA(at: Point, style: PictureStyle): DrawingElement {
  return circle(at, MARK_RADIUS_MM * style.grow, { fill: INK });
}

/** B: an open ring. */
export function markB(at: Point, style: PictureStyle): DrawingElement {
  return circle(at, MARK_RADIUS_MM * style.grow, {
    fill: PAPER,
    stroke: { colour: INK, widthMm: MARK_LINE_MM * style.grow },
  });
}

/** The pieces that are measured to their A and B. */
function marksOf({ steps }: SettingOut): PieceSetting[] {
  return steps.flatMap((step) => {
    if (step.kind === 'piece') return [step.piece];
    return step.kind === 'rough cut' ? step.roughCut.pieces : [];
  });
}

function roomOf(center: Point, { style }: Setting): LabelBox {
  const side = 2 * (MARK_RADIUS_MM * style.grow + MARK_ROOM_MM);
  return { center, widthMm: side, heightMm: side, angleDeg: 0 };
}

function namedPoints({ baseLine, steps }: SettingOut): NamedPoint[] {
  const corners = cornersOf(baseLine.start, baseLine.end);
  return [
    { text: 'S', at: baseLine.start.at },
    { text: 'E', at: baseLine.end.at },
    ...corners.map(({ name, end }) => ({ text: name, at: end.corner.at })),
    ...steps.flatMap((step) => {
      if (step.kind === 'lane') return lanePoints(step.lane.p, step.lane.q, step.lane.id);
      if (step.kind !== 'rough cut') return [];
      const { number, roughCut } = step;
      return roughCut.corners.map(({ at }, i) => ({ text: cornerName(number, i), at, isClose: true }));
    }),
  ];
}

function lanePoints(p: ChalkMark, q: ChalkMark, id: string): NamedPoint[] {
  return [
    { text: `P ${id}`, at: p.at, isClose: true },
    { text: `Q ${id}`, at: q.at, isClose: true },
  ];
}

function squareAt(center: Point, { style }: Setting): LabelBox {
  const side = 2 * CORNER_MM * style.grow + MARK_ROOM_MM;
  return { center, widthMm: side, heightMm: side, angleDeg: 0 };
}

/** The corners that an end of the line is told from, where it is not the corner itself. */
export function cornersOf(
  start: LineEnd,
  end: LineEnd,
): { readonly name: string; readonly end: LineEnd; readonly letter: 'S' | 'E' }[] {
  const told = [
    { letter: 'S' as const, end: start },
    { letter: 'E' as const, end },
  ].filter((each) => each.end.fromCornerMm > 0);
  const isSame = told.length === 2 && distanceBetween(start.corner.at, end.corner.at) === 0;
  return told
    .map((each, i) => ({ ...each, name: isSame ? 'C' : `C${i + 1}` }))
    .filter((_, i) => !isSame || i === 0);
}

/** Lengths of the ruler's ticks on the drawing, and how far from the line its figures stand. */
const TICK_MM = 1;
const LONG_TICK_MM = 1.8;
const FIGURE_MM = 3.4;
/** A tick at each so many mm of leather, a long one with a figure at each multiple that leaves the figures apart. */
const TICKS_AT_MM = 100;
const FIGURES_AT_MM: readonly number[] = [100, 200, 500, 1000];
const FIGURES_APART_MM = 10;
const FROM_END_MM = 5;

interface Ruler {
  readonly elements: readonly DrawingElement[];
  readonly taken: readonly LabelBox[];
}

/** The base line as a ruler: where a figure would lie on a piece it is left out. */
function rulerOf({ out, view, style, fonts, pieces }: Setting): Ruler {
  const { frame, lengthMm } = out.baseLine;
  const isBoth = hasTwoSides(out.baseLine);
  const at = (along: number, aside: number): Point => {
    const foot = applyAffine(view.toDrawing, {
      x: frame.origin.x + frame.axis.x * along,
      y: frame.origin.y + frame.axis.y * along,
    });
    const beyond = directionOnDrawing(view.toDrawing, frame.out);
    return { x: foot.x - beyond.x * aside, y: foot.y - beyond.y * aside };
  };
  const stroke = { colour: INK, widthMm: FREEING_CUT_MM * style.pen };
  const fine = { colour: INK, widthMm: MARK_LINE_MM * style.pen };
  const figuresAt = FIGURES_AT_MM.find((mm) => mm * view.scale >= FIGURES_APART_MM * style.grow) ?? lengthMm;
  const elements: DrawingElement[] = [line(at(0, 0), at(lengthMm, 0), stroke)];
  const taken: LabelBox[] = [];
  for (let along = 0; along <= lengthMm; along += TICKS_AT_MM) {
    const isLong = along % figuresAt === 0;
    const tick = (isLong ? LONG_TICK_MM : TICK_MM) * style.grow;
    elements.push(line(at(along, isBoth ? -tick : 0), at(along, tick), fine));
    // At the ends stand S and E.
    if (!isLong || along === 0 || (lengthMm - along) * view.scale < FROM_END_MM) continue;
    const text = String(along);
    const { widthMm, aboveMm } = measureText(fonts, 'narrow', style.smallMm, text);
    const center = at(along, FIGURE_MM * style.grow + (isUpright(at(0, 0), at(1, 0)) ? widthMm / 2 - 1 : 0));
    const box: LabelBox = { center, widthMm: widthMm + 0.6, heightMm: aboveMm + 0.6, angleDeg: 0 };
    if (pieces.some((piece) => labelBoxMeetsRegion(box, piece.region))) continue;
    taken.push(box);
    elements.push(
      textLine(fonts, text, {
        at: { x: center.x, y: center.y + aboveMm / 2 },
        sizeMm: style.smallMm,
        colour: INK,
        face: 'narrow',
        anchor: 'middle',
      }),
    );
  }
  return { elements, taken };
}

function isUpright(from: Point, to: Point): boolean {
  return Math.abs(to.y - from.y) > Math.abs(to.x - from.x);
}

function directionOnDrawing(toDrawing: Affine, v: Point): Point {
  const x = toDrawing.a * v.x + toDrawing.c * v.y;
  const y = toDrawing.b * v.x + toDrawing.d * v.y;
  const length = Math.sqrt(x * x + y * y);
  return { x: x / length, y: y / length };
}

/** Half the side of the square that marks a corner. */
const CORNER_MM = 1.1;

/** Squares around the corners from which the ends are told. */
function endsOf({ out, view, style }: Setting): DrawingElement[] {
  const half = CORNER_MM * style.grow;
  return [out.baseLine.start, out.baseLine.end].map(({ corner }) => {
    const { x, y } = applyAffine(view.toDrawing, corner.at);
    const square = [
      { x: x - half, y: y - half },
      { x: x + half, y: y - half },
      { x: x + half, y: y + half },
      { x: x - half, y: y + half },
    ];
    return chain(square, true, { stroke: { colour: INK, widthMm: MARK_LINE_MM * style.pen } });
  });
}

/** The side of each rough cut that its pieces are measured from. */
function roughCutSides({ out, view, style }: Setting): DrawingElement[] {
  return out.steps.flatMap((step) => {
    if (step.kind !== 'rough cut') return [];
    const [from, to] = step.roughCut.baseSide.map((i) =>
      applyAffine(view.toDrawing, step.roughCut.corners[i]!.at),
    );
    return [line(from!, to!, { colour: INK, widthMm: FREEING_CUT_MM * style.pen })];
  });
}
