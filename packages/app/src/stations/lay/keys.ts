import type { App } from '../../app/app.js';
import { hideAt } from '../../job/job.js';
import type { KeyRow } from '../../shell/station.js';
import { letGo, letStay, moveHand, putBack, takeLying } from './hand/in-hand.js';
import { chooseNext, takeOff, toggleLocked } from './hand/piece-changes.js';
import { wholeTurn } from './hand/turning.js';
import { startRun } from './run.js';
import { layTable } from './table.js';

const STEP_DEG = { plain: 1, shift: 15 } as const;

/** Turns the chosen piece in hand; it is let go by Enter on its slip, or by the slip's buttons. */
export function turnChosen(app: App, byDeg: number): boolean {
  const table = layTable(app);
  const chosen = table.chosen.get();
  if (table.hand.get() === undefined && (chosen === undefined || !takeLying(app, table, chosen, 'held')))
    return false;
  const hand = table.hand.get();
  if (hand === undefined || hand.phase === 'settling') return false;
  moveHand(app, table, { ...hand.at, rotationDeg: wholeTurn(hand.at.rotationDeg + byDeg) });
  return true;
}

const next = (app: App, step: 1 | -1): boolean =>
  chooseNext(app, layTable(app), hideAt(app.job.get(), app.place.get().hide)?.id, step);

export const LAY_KEYS: readonly KeyRow[] = [
  { key: 'n', words: 'lay.key.next', run: (app) => next(app, 1) },
  { key: 'Shift+n', words: 'lay.key.before', run: (app) => next(app, -1) },
  { key: ',', words: 'lay.key.left', run: (app) => turnChosen(app, -STEP_DEG.plain) },
  { key: '.', words: 'lay.key.right', run: (app) => turnChosen(app, STEP_DEG.plain) },
  { key: ';', words: 'lay.key.farLeft', run: (app) => turnChosen(app, -STEP_DEG.shift) },
  { key: ':', words: 'lay.key.farRight', run: (app) => turnChosen(app, STEP_DEG.shift) },
  { key: 'g', words: 'lay.key.letGo', run: letGoByKey },
  { key: 'Escape', words: 'lay.key.back', run: backByKey },
  { key: 's', words: 'lay.key.stay', run: (app) => toggleLocked(app, layTable(app)) },
  { key: 'Delete', words: 'lay.key.lift', run: (app) => takeOff(app, layTable(app)) },
  { key: 'l', words: 'lay.key.run', run: runByKey },
];

function letGoByKey(app: App): boolean {
  const table = layTable(app);
  const hand = table.hand.get();
  if (hand?.phase !== 'held') return false;
  void (hand.broken?.length === 0 ? letGo(app, table) : letStay(app, table));
  return true;
}

function backByKey(app: App): boolean {
  const table = layTable(app);
  if (table.hand.get() !== undefined) {
    putBack(app, table);
    return true;
  }
  if (table.chosen.get() === undefined) return false;
  table.chosen.set(undefined);
  return true;
}

function runByKey(app: App): boolean {
  const table = layTable(app);
  const run = table.run.get();
  if (run === undefined) void startRun(app, table, 'anew');
  else run.stop();
  return true;
}
