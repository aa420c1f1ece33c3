import type { BenchTasks } from './bench-tasks.js';
import { orderCard } from './benching/cards.js';
import { whatFits } from './benching/fits.js';
import { putBackIntoStock, seeStock, takeFromStock } from './benching/stock.js';
import { flawFound, setOutAll, tickOne } from './benching/tick.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<BenchTasks>({
  tick: (input) => ({ layout: tickOne(input) }),
  flaw: flawFound,
  setOut: setOutAll,
  card: ({ path, files }) => orderCard(path, files),
  fits: whatFits,
  stock: ({ files }) => seeStock(files),
  take: ({ files, layoutPath, ...how }) => takeFromStock(files, layoutPath, how),
  putBack: ({ files, date }) => putBackIntoStock(files, date),
});
