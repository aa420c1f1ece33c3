import { html, svg } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { CurvePoint } from '../table.js';

const WIDTH = 320;
const HEIGHT = 120;
/** Room for the words at the axes. */
const LEFT = 8;
const BOTTOM = 20;
const TOP = 18;
/** Above the highest and below the lowest figure, as a share of what lies between. */
const AIR = 0.12;

export interface CurveShape {
  readonly path: string;
  readonly last: { readonly x: number; readonly y: number };
  /** Height of the layout that lay there before. */
  readonly beforeY: number | undefined;
}

/** The curve as steps: what was found holds until something better is. */
export function curveShape(
  points: readonly CurvePoint[],
  beforeMm2: number | undefined,
): CurveShape | undefined {
  const [first] = points;
  const end = points.at(-1);
  if (first === undefined || end === undefined) return undefined;
  const areas = [
    ...points.map(({ usedUpMm2 }) => usedUpMm2),
    ...(beforeMm2 === undefined ? [] : [beforeMm2]),
  ];
  const [least, most] = [Math.min(...areas), Math.max(...areas)];
  const span = Math.max(most - least, most * 0.01) * (1 + 2 * AIR);
  const floor = least - span * AIR;
  const x = (ms: number): number =>
    LEFT + (WIDTH - 2 * LEFT) * (end.elapsedMs === 0 ? 0 : ms / end.elapsedMs);
  const y = (mm2: number): number => HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * ((mm2 - floor) / span);
  const steps = points.map(({ elapsedMs, usedUpMm2 }, i) =>
    i === 0
      ? `M${short(x(elapsedMs))} ${short(y(usedUpMm2))}`
      : `H${short(x(elapsedMs))}V${short(y(usedUpMm2))}`,
  );
  return {
    path: steps.join(''),
    last: { x: x(end.elapsedMs), y: y(end.usedUpMm2) },
    beforeY: beforeMm2 === undefined ? undefined : y(beforeMm2),
  };
}

function short(value: number): number {
  return Math.round(value * 10) / 10;
}

/** How much leather the best layout so far uses up, over time. */
export function curve(
  app: App,
  points: readonly CurvePoint[],
  beforeMm2: number | undefined,
): TemplateResult | '' {
  const shape = curveShape(points, beforeMm2);
  if (shape === undefined) return '';
  const measures = app.measures();
  const [first, last] = [points[0]!, points.at(-1)!];
  const seconds = measures.number(last.elapsedMs / 1000, 0);
  const words = app.say('lay.curve.words', {
    first: measures.area(first.usedUpMm2),
    last: measures.area(last.usedUpMm2),
    seconds,
  });
  return html`<figure class="curve">
    <figcaption>${app.say('lay.curve')}</figcaption>
    <svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${words}>
      ${svg`<line class="curve-axis" x1=${LEFT} x2=${WIDTH - LEFT} y1=${HEIGHT - BOTTOM} y2=${HEIGHT - BOTTOM}></line>
      ${
        shape.beforeY === undefined
          ? ''
          : svg`<line class="curve-before" x1=${LEFT} x2=${WIDTH - LEFT} y1=${shape.beforeY} y2=${shape.beforeY}></line>
              <text x=${LEFT} y=${shape.beforeY - 4}>${app.say('lay.curve.before')}</text>`
      }
      <path class="curve-line" d=${shape.path}></path>
      <circle class="curve-now" cx=${shape.last.x} cy=${shape.last.y} r="4"></circle>
      <text x=${WIDTH - LEFT} y=${TOP - 6} text-anchor="end">${measures.area(last.usedUpMm2)}</text>
      <text x=${LEFT} y=${HEIGHT - 5}>0 s</text>
      <text x=${WIDTH - LEFT} y=${HEIGHT - 5} text-anchor="end">${seconds} s</text>`}
    </svg>
  </figure>`;
}
