import type { PhotoTasks } from './photo-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

export type PhotoDesk = Remote<PhotoTasks>;

/** The worker that opens and traces photos; it loads the vision library when a photo is traced. */
export function openPhotoDesk(): PhotoDesk {
  return remote<PhotoTasks>(
    () => new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module', name: 'photo' }),
  );
}
