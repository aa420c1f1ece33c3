import type { DeskTasks } from './desk-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

export type Desk = Remote<DeskTasks>;

export function openDesk(): Desk {
  return remote<DeskTasks>(
    () => new Worker(new URL('./desk-worker.ts', import.meta.url), { type: 'module', name: 'desk' }),
  );
}
