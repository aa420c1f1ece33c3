import type { App } from '../../../../app/app.js';
import { pathBeside } from '../../../../job/job.js';
import { hideDesk } from '../bring-in.js';
import { openShot } from './open-photos.js';

/** The photo that a hide was traced from comes onto the table, with what was found on it. */
export function showOnPhoto(app: App, path: string): void {
  const { bringIn, found } = hideDesk(app);
  const file = found.get().get(path)?.views[0]?.file;
  const picture = file === undefined ? undefined : app.job.get().files.get(pathBeside(path, file));
  if (file === undefined || picture?.kind !== 'picture') return;
  openShot(app, { file, bytes: picture.bytes }).then(
    (shot) => bringIn.set({ kind: 'seen', path, shot }),
    (error: unknown) => app.tellFailure(error),
  );
}
