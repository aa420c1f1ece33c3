import type { G } from '@svgdotjs/svg.js';
import type { Point } from '@hidebound/geometry';
import type { App } from '../../../../app/app.js';
import type { At, Stroke } from '../../../../drawing/hand.js';
import { linePath } from '../../../../drawing/path-data.js';
import type { Stage } from '../../../../drawing/stage.js';

/** What a tool works with. */
export interface Work {
  readonly app: App;
  readonly stage: Stage;
  /** Lies above all; what is drawn here lasts as long as a stroke. */
  readonly sketch: G;
}

/** How near is near enough, CSS pixels: a finger's half width, or what a pointer hits. */
const REACH_PX = { touch: 24, pen: 14, mouse: 9, keys: 14 } as const;

/** The same on the hide, mm. */
export function reachMm({ stage }: Work, { by }: At): number {
  return REACH_PX[by] / stage.view.get().scale;
}

export function clearSketch({ sketch }: Work): void {
  sketch.clear();
}

/** The only path of the sketch, drawn anew. */
export function sketchPath({ sketch }: Work, data: string, style: string, widthMm?: number): void {
  sketch.clear();
  const path = sketch.path(data).attr({ class: `sketch ${style}` });
  if (widthMm !== undefined) path.css('stroke-width', `${widthMm}px`);
}

export function sketchCircle({ sketch }: Work, at: Point, radiusMm: number, style: string): void {
  sketch.clear();
  sketch
    .circle(2 * radiusMm)
    .center(at.x, at.y)
    .attr({ class: `sketch ${style}` });
}

export interface Drawing {
  /** Its look while it lasts; a width in mm for a brush. */
  readonly style: string;
  readonly widthMm?: number;
  readonly closes?: boolean;
  readonly done: (drawn: readonly Point[]) => void;
}

/** A stroke that is drawn with the hand: shown while it lasts, handed on at its end. */
export function drawStroke(work: Work, start: At, { style, widthMm, closes, done }: Drawing): Stroke {
  const drawn: Point[] = [start.place];
  const show = (): void =>
    sketchPath(work, `${linePath(drawn)}${closes === true ? 'Z' : ''}`, style, widthMm);
  return {
    move: (at) => {
      drawn.push(at.place);
      show();
    },
    end: (at) => {
      drawn.push(at.place);
      clearSketch(work);
      done(drawn);
    },
    cancel: () => clearSketch(work),
  };
}
