import type { App } from '../../app/app.js';
import type { Station } from '../../shell/station.js';
import { benchNow } from './bench-now.js';
import { benchCard } from './card/card.js';
import { beginFlaw, goBack, goNext, tickFront } from './deeds.js';
import { openBenchDrawing } from './drawing.js';
import { benchTable } from './table.js';
import { benchTray } from './tray.js';

/** Cutting, one piece at a time. */
export const BENCH_STATION: Station = {
  card: benchCard,
  tray: benchTray,
  open: openBenchDrawing,
  keys: [
    { key: 'c', words: 'bench.key.cut', run: (app) => whileCutting(app, () => tickFront(app, 'cut')) },
    {
      key: 'x',
      words: 'bench.key.spoiled',
      run: (app) => whileCutting(app, () => tickFront(app, 'spoiled')),
    },
    { key: 'n', words: 'bench.key.next', run: (app) => whileCutting(app, () => goNext(app)) },
    { key: 'Shift+n', words: 'bench.key.back', run: (app) => whileCutting(app, () => goBack(app)) },
    { key: 'f', words: 'bench.key.flaw', run: (app) => whileCutting(app, () => beginFlaw(app)) },
    { key: 'Escape', words: 'bench.key.leave', run: leaveFlaw },
  ],
};

function whileCutting(app: App, run: () => void): boolean {
  const { page, flaw } = benchTable(app);
  if (page.get() !== 'cutting' || flaw.get() !== undefined || benchNow(app) === undefined) return false;
  run();
  return true;
}

function leaveFlaw(app: App): boolean {
  const { flaw } = benchTable(app);
  if (flaw.get() === undefined) return false;
  flaw.set(undefined);
  return true;
}
