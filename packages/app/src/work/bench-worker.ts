import type { BenchTasks } from './bench-tasks.js';
import { flawFound, setOutAll, tickOne } from './benching/tick.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<BenchTasks>({
  tick: (input) => ({ layout: tickOne(input) }),
  flaw: flawFound,
  setOut: setOutAll,
});
