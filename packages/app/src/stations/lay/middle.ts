import type { Point } from '@hidebound/geometry';
import type { App } from '../../app/app.js';
import type { Stage } from '../../drawing/stage.js';

const stages = new WeakMap<App, Stage>();

/** The stage of this place, while it is open: a piece from the tray comes to lie where one looks. */
export function rememberStage(app: App, stage: Stage): () => void {
  stages.set(app, stage);
  return () => stages.delete(app);
}

export function middleInView(app: App): Point {
  const stage = stages.get(app);
  if (stage === undefined) return { x: 0, y: 0 };
  const { width, height } = stage.size.get();
  return stage.toPlace({ x: width / 2, y: height / 2 });
}

export function showAll(app: App): void {
  stages.get(app)?.fitAgain();
}
