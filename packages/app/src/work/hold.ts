import type { HoldTasks } from './hold-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

export type HoldDesk = Remote<HoldTasks>;

/** The worker that judges pieces in hand; made when it is first asked. */
export function openHoldDesk(): HoldDesk {
  return remote<HoldTasks>(
    () => new Worker(new URL('./hold-worker.ts', import.meta.url), { type: 'module', name: 'hold' }),
  );
}
