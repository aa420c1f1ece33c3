import type { KindAnswer, PurchaseAnswer } from '@hidebound/leather';
import { chain, circle, line } from '../drawing/build.js';
import type { Drawing, DrawingElement, Stroke } from '../drawing/model.js';
import {
  BRASS,
  FINE_LINE_MM,
  HAIRLINE_MM,
  INDIGO,
  INK,
  INK_SOFT,
  OXBLOOD,
  PAPER,
  RULE,
} from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import type { BuyingUnit } from './buying-words.js';
import { areaSpanWords, unitMark } from './buying-words.js';

/** Lines that stay apart in grey, too. */
const LOOKS: readonly Omit<Stroke, 'widthMm'>[] = [
  { colour: OXBLOOD },
  { colour: INDIGO, dashMm: [2.4, 1.2] },
  { colour: BRASS, dashMm: [0.6, 1] },
  { colour: INK_SOFT, dashMm: [3.5, 0.9, 0.6, 0.9] },
];
/** More lines than can be told apart are not drawn. */
const MOST_LINES = LOOKS.length;
const LINE_MM = 0.55;

const WIDTH_MM = 170;
const PLOT = { minX: 16, maxX: 166, minY: 6, maxY: 66 } as const;
const TEXT_MM = 3.2;
const ROW_MM = 5;
const DOT_MM = 1.1;
/** The chance that most buyers go by. */
const USUAL = 90;

interface Scale {
  readonly fromMm2: number;
  readonly toMm2: number;
  readonly stepMm2: number;
}

/**
 * How many of 100 against the area bought: a line for each kind of hide, a dot where so many hides of middle size stand.
 * Undefined where no kind holds the pieces.
 */
export function chanceChart(answer: PurchaseAnswer, unit: BuyingUnit, fonts: FontBook): Drawing | undefined {
  const kinds = answer.kinds.filter(({ holdsAll }) => holdsAll).slice(0, MOST_LINES);
  if (kinds.length === 0) return undefined;
  const scale = scaleOf(kinds, unit);
  const legendTop = PLOT.maxY + 16;
  return {
    widthMm: WIDTH_MM,
    heightMm: legendTop + kinds.length * ROW_MM,
    title: 'How often so much leather is enough',
    layers: [
      { name: 'grid', elements: [...upAxis(fonts), ...areaAxis(scale, unit, fonts)] },
      { name: 'chances', elements: kinds.flatMap((kind, i) => kindLine(kind, i, scale)) },
      { name: 'hides', elements: kinds.flatMap((kind, i) => countDots(kind, i, scale, fonts)) },
      { name: 'legend', elements: kinds.flatMap((kind, i) => legendRow(kind, i, legendTop, unit, fonts)) },
    ],
  };
}

function scaleOf(kinds: readonly KindAnswer[], unit: BuyingUnit): Scale {
  const areas = kinds.flatMap(({ curve }) => curve.map(({ areaMm2 }) => areaMm2));
  const step = stepOf(Math.max(...areas) - Math.min(...areas), unit);
  return {
    fromMm2: Math.floor(Math.min(...areas) / step) * step,
    toMm2: Math.ceil(Math.max(...areas) / step) * step,
    stepMm2: step,
  };
}

const UNIT_MM2: Readonly<Record<BuyingUnit, number>> = { ft2: 92_903.04, m2: 1e6, dm2: 1e4 };
const STEPS = [1, 2, 5] as const;
const MOST_STEPS = 10;

/** A round step of the axis, in mm²: 1, 2 or 5 of a power of ten of the unit. */
function stepOf(spanMm2: number, unit: BuyingUnit): number {
  const span = spanMm2 / UNIT_MM2[unit];
  for (let power = 0.01; ; power *= 10) {
    const step = STEPS.find((each) => span / (each * power) <= MOST_STEPS);
    if (step !== undefined) return step * power * UNIT_MM2[unit];
  }
}

function xOf(areaMm2: number, { fromMm2, toMm2 }: Scale): number {
  const share = (areaMm2 - fromMm2) / (toMm2 - fromMm2);
  return PLOT.minX + share * (PLOT.maxX - PLOT.minX);
}

function yOf(inHundred: number): number {
  return PLOT.maxY - (inHundred / 100) * (PLOT.maxY - PLOT.minY);
}

function upAxis(fonts: FontBook): DrawingElement[] {
  return [0, 25, 50, 75, USUAL, 100].flatMap((value) => {
    const y = yOf(value);
    const isUsual = value === USUAL;
    return [
      line(
        { x: PLOT.minX, y },
        { x: PLOT.maxX, y },
        { colour: isUsual ? INK_SOFT : RULE, widthMm: isUsual ? FINE_LINE_MM : HAIRLINE_MM },
      ),
      textLine(fonts, String(value), {
        at: { x: PLOT.minX - 2, y: y + TEXT_MM * 0.36 },
        sizeMm: TEXT_MM,
        colour: INK,
        face: isUsual ? 'narrow bold' : 'narrow',
        anchor: 'end',
      }),
    ];
  });
}

function areaAxis(scale: Scale, unit: BuyingUnit, fonts: FontBook): DrawingElement[] {
  const step = scale.stepMm2;
  const count = Math.round((scale.toMm2 - scale.fromMm2) / step);
  const ticks = Array.from({ length: count + 1 }, (_, i) => scale.fromMm2 + i * step);
  const decimals = step < UNIT_MM2[unit] ? 2 : 0;
  return [
    ...ticks.flatMap((areaMm2) => [
      line(
        { x: xOf(areaMm2, scale), y: PLOT.maxY },
        { x: xOf(areaMm2, scale), y: PLOT.maxY + 1.5 },
        { colour: INK, widthMm: FINE_LINE_MM },
      ),
      textLine(fonts, (areaMm2 / UNIT_MM2[unit]).toFixed(decimals), {
        at: { x: xOf(areaMm2, scale), y: PLOT.maxY + 5 },
        sizeMm: TEXT_MM,
        colour: INK,
        face: 'narrow',
        anchor: 'middle',
      }),
    ]),
    textLine(fonts, `area bought, ${unitMark(unit)}`, {
      at: { x: PLOT.maxX, y: PLOT.maxY + 10 },
      sizeMm: TEXT_MM,
      colour: INK_SOFT,
      face: 'narrow',
      anchor: 'end',
    }),
    textLine(fonts, 'enough in so many of 100', {
      at: { x: PLOT.minX - 2, y: PLOT.minY - 2.5 },
      sizeMm: TEXT_MM,
      colour: INK_SOFT,
      face: 'narrow',
    }),
  ];
}

/** Below the line's own ends it is never, beyond them nearly always. */
function kindLine({ curve }: KindAnswer, index: number, scale: Scale): DrawingElement[] {
  const points = curve.map(({ areaMm2, inHundred }) => ({ x: xOf(areaMm2, scale), y: yOf(inHundred) }));
  return [chain(points, false, { stroke: { ...LOOKS[index]!, widthMm: LINE_MM } })];
}

/** A dot with the number of hides. */
function countDots(
  { counts, areaMm2 }: KindAnswer,
  index: number,
  scale: Scale,
  fonts: FontBook,
): DrawingElement[] {
  const middle = (areaMm2.min + areaMm2.max) / 2;
  return counts.flatMap(({ hides, inHundred }) => {
    const area = hides * middle;
    if (area < scale.fromMm2 || area > scale.toMm2) return [];
    const at = { x: xOf(area, scale), y: yOf(inHundred) };
    const { colour } = LOOKS[index]!;
    const isAtEnd = at.x > PLOT.maxX - TEXT_MM;
    return [
      circle(at, DOT_MM, { fill: PAPER, stroke: { colour, widthMm: LINE_MM } }),
      textLine(fonts, String(hides), {
        at: { x: at.x + (isAtEnd ? -1 : 1) * (DOT_MM + 0.8), y: at.y + TEXT_MM + 0.8 },
        anchor: isAtEnd ? 'end' : 'start',
        sizeMm: TEXT_MM,
        colour,
        face: 'narrow bold',
      }),
    ];
  });
}

function legendRow(
  kind: KindAnswer,
  index: number,
  top: number,
  unit: BuyingUnit,
  fonts: FontBook,
): DrawingElement[] {
  const y = top + index * ROW_MM;
  const sampleTo = PLOT.minX + 12;
  const words = `${kind.name}, ${areaSpanWords(kind.areaMm2, unit)} each`;
  const room = PLOT.maxX - sampleTo - 3;
  return [
    line({ x: PLOT.minX, y }, { x: sampleTo, y }, { ...LOOKS[index]!, widthMm: LINE_MM }),
    textLine(fonts, fitText(fonts, 'narrow', TEXT_MM, words, room), {
      at: { x: sampleTo + 3, y: y + TEXT_MM * 0.36 },
      sizeMm: TEXT_MM,
      colour: INK,
      face: 'narrow',
    }),
  ];
}
