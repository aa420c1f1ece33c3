import type { App } from '../../../../app/app.js';
import { orderAt, pathBeside } from '../../../../job/job.js';
import { namedFrom } from '../logic/file-names.js';

/** Names of the order's leathers, where none of them takes the hide yet. */
export function leathersWithout(app: App, path: string): readonly string[] {
  const orderPath = app.place.get().order;
  const order = orderAt(app.job.get(), orderPath);
  if (order === undefined || orderPath === undefined) return [];
  const isTaken = order.leathers.some(({ hides }) =>
    hides.some((named) => pathBeside(orderPath, named) === path),
  );
  return isTaken ? [] : order.leathers.map(({ name }) => name);
}

/** The hide that was just brought in is the one that is to be cut, so it is used first. */
export function useHideFor(app: App, path: string, leather: string): void {
  const orderPath = app.place.get().order;
  const order = orderAt(app.job.get(), orderPath);
  if (order === undefined || orderPath === undefined) return;
  const leathers = order.leathers.map((each) =>
    each.name === leather ? { ...each, hides: [namedFrom(orderPath, path), ...each.hides] } : each,
  );
  app.change(
    app.say('hide.undo.used'),
    new Map([[orderPath, { kind: 'order', order: { ...order, leathers } }]]),
  );
}
