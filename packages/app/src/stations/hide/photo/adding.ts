import type { App } from '../../../app/app.js';
import { cell } from '../../../app/cell.js';
import type { Cell } from '../../../app/cell.js';

const cells = new WeakMap<App, Cell<boolean>>();

/** True while a new hide is being brought in: then the photo's steps stand where the marks' tools stand otherwise. */
export function addingCell(app: App): Cell<boolean> {
  const known = cells.get(app);
  if (known !== undefined) return known;
  const made = cell(false);
  cells.set(app, made);
  return made;
}

/** A hide is being brought in, or there is none yet. */
export function isAdding(app: App): boolean {
  return addingCell(app).get() || app.place.get().hide === undefined;
}
