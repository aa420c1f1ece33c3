import type { PhotoSheetsTasks } from './photo-sheets-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

/** The worker that draws the sheets which lie beside a hide in its photo; loaded when they are asked for. */
export function openPhotoSheets(): Remote<PhotoSheetsTasks> {
  return remote<PhotoSheetsTasks>(
    () =>
      new Worker(new URL('./photo-sheets-worker.ts', import.meta.url), { type: 'module', name: 'sheets' }),
  );
}
