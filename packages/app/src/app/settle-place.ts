import { filesOfKind, pathBeside } from '../job/job.js';
import type { Job } from '../job/job.js';
import type { Place } from './place.js';

/** The place with files that are there: the ones that were chosen, else the first of their kind that go together. */
export function settlePlace(place: Place, job: Job): Place {
  const keep = (path: string | undefined, kind: 'hide' | 'order' | 'layout'): string | undefined =>
    path !== undefined && job.files.get(path)?.kind === kind ? path : undefined;
  const order = keep(place.order, 'order') ?? filesOfKind(job, 'order')[0]?.[0];
  const layout = keep(place.layout, 'layout') ?? layoutOfOrder(job, order);
  const hide = keep(place.hide, 'hide') ?? firstHideOf(job, order) ?? filesOfKind(job, 'hide')[0]?.[0];
  const settled: Place = { name: place.name, hide, order, layout };
  const isSame =
    settled.hide === place.hide && settled.order === place.order && settled.layout === place.layout;
  return isSame ? place : settled;
}

/** The place with another order of the job in front, and the layout that is one of it. */
export function placeOfOrder(place: Place, job: Job, order: string): Place {
  return settlePlace({ ...place, order, layout: undefined }, job);
}

/** A layout knows its order by its name. */
function layoutOfOrder(job: Job, orderPath: string | undefined): string | undefined {
  const file = orderPath === undefined ? undefined : job.files.get(orderPath);
  const layouts = filesOfKind(job, 'layout');
  if (file?.kind !== 'order') return layouts[0]?.[0];
  return layouts.find(([, { layout }]) => layout.order.name === file.order.name)?.[0];
}

function firstHideOf(job: Job, orderPath: string | undefined): string | undefined {
  const file = orderPath === undefined ? undefined : job.files.get(orderPath);
  if (orderPath === undefined || file?.kind !== 'order') return undefined;
  return file.order.leathers
    .flatMap(({ hides }) => hides.map((hide) => pathBeside(orderPath, hide)))
    .find((path) => job.files.get(path)?.kind === 'hide');
}
