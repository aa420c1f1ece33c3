import type { LayTasks } from './lay-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

export type LayDesk = Remote<LayTasks>;

/** The worker that lays; made when it is first asked. */
export function openLayDesk(): LayDesk {
  return remote<LayTasks>(
    () => new Worker(new URL('./lay-worker.ts', import.meta.url), { type: 'module', name: 'lay' }),
  );
}
