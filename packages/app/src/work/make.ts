import type { MakeTasks } from './make-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

export type MakeBench = Remote<MakeTasks>;

/** The worker that draws sheets and writes files; with it come fonts and the writer of PDF, so it is made when needed. */
export function openMakeBench(): MakeBench {
  return remote<MakeTasks>(
    () => new Worker(new URL('./make-worker.ts', import.meta.url), { type: 'module', name: 'make' }),
  );
}
