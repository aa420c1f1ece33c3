import type { Point } from '@hidebound/geometry';
import type { App } from '../../app/app.js';
import type { Stage } from '../../drawing/stage.js';

const stages = new WeakMap<App, Stage>();

/** The stage of this place, while it is open: a piece from the tray comes to lie where one looks. */
export function rememberStage(app: App, stage: Stage): () => void {
  stages.set(app, stage);
  return () => stages.delete(app);
}

/** Where on the hide a pointer of the page points; undefined beside the drawing. */
export function placeUnder(app: App, { clientX, clientY }: MouseEvent): Point | undefined {
  const stage = stages.get(app);
  if (stage === undefined) return undefined;
  const { left, top, width, height } = stage.element.getBoundingClientRect();
  const screen = { x: clientX - left, y: clientY - top };
  const isIn = screen.x >= 0 && screen.y >= 0 && screen.x <= width && screen.y <= height;
  const isCovered = document.elementFromPoint(clientX, clientY)?.closest('.card') !== null;
  return isIn && !isCovered ? stage.toPlace(screen) : undefined;
}

export function middleInView(app: App): Point {
  const stage = stages.get(app);
  if (stage === undefined) return { x: 0, y: 0 };
  const { width, height } = stage.size.get();
  return stage.toPlace({ x: width / 2, y: height / 2 });
}
