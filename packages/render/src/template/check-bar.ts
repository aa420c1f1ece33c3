import { curveFromPolyline } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { boxCorners, group, line, path } from '../drawing/build.js';
import type { DrawingElement, GroupElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { textLine } from '../text/measure-text.js';
import { BLACK } from './template-style.js';
import type { WrongScale } from './wrong-scales.js';

export const CHECK_BAR_MM = 100;

/** Height of a check bar with its figures. */
export const CHECK_BAR_HEIGHT_MM = 14.4;

const MM_PER_INCH = 25.4;
const BAR_TOP_MM = 6;
const BAR_BOTTOM_MM = 9;
const BAR_PART_MM = 10;
/** Black left around the white parts of the bar, so that its ends are black on all sides. */
const BAR_RIM_MM = 0.3;
const TICK_MM = 0.13;
/** White beyond the bar's end, so that it stands out. */
const BAR_END_AIR_MM = 0.8;
const FIGURE_MM = 2.5;
const WORDS_AT_MM = 109.5;

/**
 * A bar of exactly 100 mm from outer edge to outer edge, black and white by turns, with mm above and inches below.
 * Beyond it are marked the places at which a true rule shows 100 mm if the page came out at one of the wrong scales: at
 * 100 mm over the ratio. Lies level, its beginning at (0, 0) of its own frame.
 */
export function checkBar(fonts: FontBook, scales: readonly WrongScale[]): GroupElement {
  return group('check bar', [
    path([barOutline(), ...whiteParts()], { fill: BLACK }),
    path([...mmTicks(), ...inchTicks()], { stroke: { colour: BLACK, widthMm: TICK_MM } }),
    ...figures(fonts),
    ...wrongPlaces(fonts, scales),
  ]);
}

function barOutline(): Curve {
  return boxCurve(0, BAR_TOP_MM, CHECK_BAR_MM, BAR_BOTTOM_MM);
}

function whiteParts(): Curve[] {
  const parts: Curve[] = [];
  for (let x = BAR_PART_MM; x < CHECK_BAR_MM; x += 2 * BAR_PART_MM) {
    const to = Math.min(x + BAR_PART_MM, CHECK_BAR_MM - BAR_RIM_MM);
    parts.push(boxCurve(x, BAR_TOP_MM + BAR_RIM_MM, to, BAR_BOTTOM_MM - BAR_RIM_MM));
  }
  return parts;
}

function boxCurve(minX: number, minY: number, maxX: number, maxY: number): Curve {
  return curveFromPolyline(boxCorners({ minX, minY, maxX, maxY }), true);
}

function tick(x: number, from: number, to: number): Curve {
  return curveFromPolyline(
    [
      { x, y: from },
      { x, y: to },
    ],
    false,
  );
}

function mmTicks(): Curve[] {
  return Array.from({ length: CHECK_BAR_MM + 1 }, (_, mm) => {
    const length = mm % 10 === 0 ? 2.6 : mm % 5 === 0 ? 1.9 : 1.2;
    return tick(mm, BAR_TOP_MM, BAR_TOP_MM - length);
  });
}

const EIGHTHS = 8;

function inchTicks(): Curve[] {
  const count = Math.floor((CHECK_BAR_MM / MM_PER_INCH) * EIGHTHS);
  return Array.from({ length: count + 1 }, (_, i) => {
    const length = i % EIGHTHS === 0 ? 2.6 : i % 4 === 0 ? 2 : i % 2 === 0 ? 1.5 : 1;
    return tick((i * MM_PER_INCH) / EIGHTHS, BAR_BOTTOM_MM, BAR_BOTTOM_MM + length);
  });
}

function figures(fonts: FontBook): DrawingElement[] {
  const text = (words: string, x: number, y: number): DrawingElement =>
    textLine(fonts, words, {
      at: { x, y },
      sizeMm: FIGURE_MM,
      colour: BLACK,
      face: 'narrow',
      anchor: 'middle',
    });
  const mm = Array.from({ length: 11 }, (_, i) => text(i === 0 ? '0 mm' : `${i * 10}`, i * 10, 2.7));
  const inches = [0, 1, 2, 3].map((inch) =>
    text(inch === 0 ? '0 in' : `${inch}`, inch * MM_PER_INCH, BAR_BOTTOM_MM + 5),
  );
  return [...mm, ...inches];
}

/** The farthest mark is led to its words above, the others below, the nearest lowest: no leader crosses a mark. */
function wrongPlaces(fonts: FontBook, scales: readonly WrongScale[]): DrawingElement[] {
  const stroke = { colour: BLACK, widthMm: 0.2 };
  const places = [...scales].sort((a, b) => b.ratio - a.ratio);
  const elements: DrawingElement[] = [
    line(
      { x: CHECK_BAR_MM + BAR_END_AIR_MM, y: BAR_BOTTOM_MM - 0.1 },
      { x: WORDS_AT_MM - 2.5, y: BAR_BOTTOM_MM - 0.1 },
      stroke,
    ),
  ];
  places.forEach(({ ratio, percent, words }, i) => {
    const x = CHECK_BAR_MM / ratio;
    const isFarthest = i === places.length - 1;
    const y = isFarthest ? 4.4 : BAR_BOTTOM_MM + 4.4 - 2.9 * i;
    elements.push(
      path(
        [
          curveFromPolyline(
            [
              { x, y: isFarthest ? BAR_BOTTOM_MM : BAR_TOP_MM },
              { x, y },
              { x: WORDS_AT_MM - 0.8, y },
            ],
            false,
          ),
        ],
        { stroke },
      ),
      textLine(fonts, `${percent} % ${words}`, {
        at: { x: WORDS_AT_MM, y: y + FIGURE_MM * 0.36 },
        sizeMm: FIGURE_MM,
        colour: BLACK,
        face: 'narrow',
      }),
    );
  });
  return elements;
}
