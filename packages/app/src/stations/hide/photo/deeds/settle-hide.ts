import type { Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import type { JobFile } from '../../../../job/job.js';
import { hideDesk } from '../bring-in.js';

/** A hide that came in lies in the job, with what belongs to it, and in front of her. */
export function settleHide(
  app: App,
  path: string,
  hide: Hide,
  parts: readonly (readonly [string, JobFile])[] = [],
): void {
  app.change(app.say('hide.undo.added'), new Map([...parts, [path, { kind: 'hide', hide }]]));
  app.place.update((place) => ({ ...place, hide: path }));
  hideDesk(app).bringIn.set(undefined);
}
