import type { BenchTasks } from './bench-tasks.js';
import { remote } from './remote.js';
import type { Remote } from './remote.js';

export type BenchDesk = Remote<BenchTasks>;

/** The worker beside the bench; made when it is first asked. */
export function openBenchDesk(): BenchDesk {
  return remote<BenchTasks>(
    () => new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module', name: 'bench' }),
  );
}
