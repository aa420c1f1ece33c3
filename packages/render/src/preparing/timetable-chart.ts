import { civilTimeAfter, formatCivilTime } from '@hidebound/leather';
import type { PreparationJob, Timetable, WorkingHours } from '@hidebound/leather';
import { line, rectangle } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { FINE_LINE_MM, HAIRLINE_MM, INK, INK_SOFT, RULE } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { stepName } from './preparing-words.js';
import type { TimeWords } from './preparing-words.js';
import { timetableRows } from './timetable-rows.js';
import type { TimetableRow } from './timetable-rows.js';

export interface ChartOptions {
  readonly fonts: FontBook;
  readonly startMin: number;
  readonly hours?: WorkingHours;
  readonly times: TimeWords;
}

const WIDTH_MM = 180;
const NAME_MM = 46;
const TEXT_MM = 2.9;
const ROW_MM = 4.3;
const HEAD_ROW_MM = 5.4;
const AXIS_MM = 8;
const BAR_MM = 2.6;
/** Hands of a few minutes would not be seen on a chart of days. */
const LEAST_BAR_MM = 0.7;
const DAY_MIN = 24 * 60;
/** Ticks, in hours; the first that leaves room for its figures is taken. */
const TICKS_H = [1, 2, 3, 6, 12, 24, 48, 96, 168] as const;
const LEAST_TICK_MM = 13;

interface ChartLine {
  readonly name: string;
  readonly isHead: boolean;
  readonly rows: readonly TimetableRow[];
}

/**
 * The timetable as bars: one line for each step of each leather, hands dark, waiting light; shut hours are shaded. Time
 * runs from left to right.
 */
export function timetableChart(
  timetable: Timetable,
  jobs: readonly PreparationJob[],
  options: ChartOptions,
): Drawing {
  const lines = chartLines(timetableRows(timetable, jobs), jobs);
  const endMin = Math.max(timetable.endMin, options.startMin + 60);
  const xOf = (minutes: number): number =>
    NAME_MM + ((minutes - options.startMin) / (endMin - options.startMin)) * (WIDTH_MM - NAME_MM - 2);
  const heights = lines.map(({ isHead }) => (isHead ? HEAD_ROW_MM : ROW_MM));
  const bodyMm = heights.reduce((sum, height) => sum + height, 0);
  const keyTop = AXIS_MM + bodyMm + 2;
  const elements: DrawingElement[] = [
    ...shutHours(options, endMin, xOf, bodyMm),
    ...axis(options, endMin, xOf, bodyMm),
  ];
  let y = AXIS_MM;
  lines.forEach((each, i) => {
    elements.push(...lineElements(each, y, heights[i]!, xOf, options));
    y += heights[i]!;
  });
  elements.push(...key(keyTop, options));
  return {
    widthMm: WIDTH_MM,
    heightMm: keyTop + ROW_MM,
    title: 'Timetable',
    layers: [{ name: 'timetable', elements }],
  };
}

function chartLines(rows: readonly TimetableRow[], jobs: readonly PreparationJob[]): ChartLine[] {
  return jobs.flatMap((job, j) => [
    { name: `${job.name}: ${job.preparation.name}`, isHead: true, rows: [] },
    ...job.steps
      .map((step, s) => ({
        name: stepName(step, job),
        isHead: false,
        rows: rows.filter(({ jobIndex, stepIndex }) => jobIndex === j && stepIndex === s),
      }))
      .filter((each) => each.rows.length > 0),
  ]);
}

function lineElements(
  { name, isHead, rows }: ChartLine,
  y: number,
  heightMm: number,
  xOf: (minutes: number) => number,
  { fonts }: ChartOptions,
): DrawingElement[] {
  const face = isHead ? 'narrow bold' : 'narrow';
  const room = isHead ? WIDTH_MM : NAME_MM - 2;
  const base = y + heightMm - 1.3;
  const bar = (from: number, to: number, fill: string): DrawingElement =>
    rectangle({ minX: from, minY: base - BAR_MM + 0.4, maxX: to, maxY: base + 0.4 }, { fill });
  return [
    textLine(fonts, fitText(fonts, face, TEXT_MM, name, room), {
      at: { x: isHead ? 0 : 2, y: base },
      sizeMm: TEXT_MM,
      colour: isHead ? INK : INK_SOFT,
      face,
    }),
    ...rows.flatMap(({ startMin, endMin, readyMin }) => [
      ...(readyMin > endMin ? [bar(xOf(endMin), xOf(readyMin), WAITING)] : []),
      bar(xOf(startMin), Math.max(xOf(endMin), xOf(startMin) + LEAST_BAR_MM), INK),
    ]),
  ];
}

/** Brass, thinned to what lies on paper without drawing the eye from the hands. */
const WAITING = '#e3c48a';

function shutHours(
  { hours, startMin }: ChartOptions,
  endMin: number,
  xOf: (minutes: number) => number,
  bodyMm: number,
): DrawingElement[] {
  if (hours === undefined) return [];
  const shades: DrawingElement[] = [];
  for (let day = Math.floor(startMin / DAY_MIN) * DAY_MIN; day < endMin; day += DAY_MIN) {
    for (const [from, to] of [
      [day, day + hours.fromMin],
      [day + hours.toMin, day + DAY_MIN],
    ] as const) {
      const [minX, maxX] = [Math.max(from, startMin), Math.min(to, endMin)].map(xOf) as [number, number];
      if (maxX > minX)
        shades.push(rectangle({ minX, minY: AXIS_MM, maxX, maxY: AXIS_MM + bodyMm }, { fill: SHUT }));
    }
  }
  return shades;
}

const SHUT = '#efeae2';

function axis(
  options: ChartOptions,
  endMin: number,
  xOf: (minutes: number) => number,
  bodyMm: number,
): DrawingElement[] {
  const { fonts, startMin } = options;
  const hasDays = options.times.start !== undefined || options.times.hasHours;
  const stepMin = tickMinutes(startMin, endMin, xOf, hasDays);
  const origin = hasDays ? 0 : startMin;
  const elements: DrawingElement[] = [];
  for (let at = Math.ceil((startMin - origin) / stepMin) * stepMin + origin; at <= endMin; at += stepMin) {
    const x = xOf(at);
    elements.push(
      line({ x, y: AXIS_MM - 1 }, { x, y: AXIS_MM + bodyMm }, { colour: RULE, widthMm: HAIRLINE_MM }),
      textLine(fonts, tickWords(at, options), {
        at: { x, y: AXIS_MM - 2.2 },
        sizeMm: TEXT_MM * 0.92,
        colour: INK_SOFT,
        face: 'narrow',
        anchor: x > WIDTH_MM - 10 ? 'end' : 'middle',
      }),
    );
  }
  elements.push(
    line(
      { x: NAME_MM, y: AXIS_MM },
      { x: WIDTH_MM, y: AXIS_MM },
      { colour: INK_SOFT, widthMm: FINE_LINE_MM },
    ),
  );
  return elements;
}

/** Where days are told, ticks stand at midnights, else at round hours from the start. */
function tickMinutes(
  startMin: number,
  endMin: number,
  xOf: (minutes: number) => number,
  hasDays: boolean,
): number {
  const mmPerHour = xOf(startMin + 60) - xOf(startMin);
  const fits = TICKS_H.filter((hours) => (!hasDays || hours >= 24) && hours * mmPerHour >= LEAST_TICK_MM);
  const hours = fits[0] ?? Math.ceil((endMin - startMin) / 60);
  return hours * 60;
}

function tickWords(at: number, { times, startMin }: ChartOptions): string {
  if (times.start !== undefined) {
    // "Tue 2026-03-03 0:00": the weekday, the month and the day.
    const [weekday, day = ''] = formatCivilTime(civilTimeAfter(times.start, at)).split(' ');
    return `${weekday} ${day.slice(5)}`;
  }
  return times.hasHours ? `day ${Math.floor(at / DAY_MIN) + 1}` : `+ ${Math.round((at - startMin) / 60)} h`;
}

function key(y: number, { fonts, hours }: ChartOptions): DrawingElement[] {
  const entries = [
    { fill: INK, text: 'hands at work' },
    { fill: WAITING, text: 'leather waits' },
    ...(hours === undefined ? [] : [{ fill: SHUT, text: 'workshop shut' }]),
  ];
  return entries.flatMap(({ fill, text }, i) => {
    const x = NAME_MM + i * 36;
    return [
      rectangle(
        { minX: x, minY: y + 0.8, maxX: x + 6, maxY: y + 0.8 + BAR_MM },
        { fill, stroke: { colour: fill === SHUT ? RULE : fill, widthMm: HAIRLINE_MM } },
      ),
      textLine(fonts, text, {
        at: { x: x + 7.5, y: y + BAR_MM + 0.5 },
        sizeMm: TEXT_MM,
        colour: INK_SOFT,
        face: 'narrow',
      }),
    ];
  });
}
