import type { PiecePlacement } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { copyKey } from '../../../drawing/piece-layer.js';
import { placementWith, presentLayout } from '../present.js';
import type { LayTable } from '../table.js';
import { canMove } from './in-hand.js';

/** The chosen copy, where it lies on a hide. */
export function chosenPlacement(app: App, table: LayTable): PiecePlacement | undefined {
  const present = presentLayout(app);
  return present === undefined ? undefined : placementWith(present.layout, table.chosen.get());
}

/** Nails the chosen piece down, or takes the nail out. */
export function toggleLocked(app: App, table: LayTable): boolean {
  const present = presentLayout(app);
  const chosen = chosenPlacement(app, table);
  if (present === undefined || chosen?.state !== 'planned' || !canMove(app, table)) return false;
  if (table.hand.get() !== undefined) return false;
  const { path, layout } = present;
  const placements = layout.placements.map((one) => (one === chosen ? { ...one, locked: !one.locked } : one));
  const label = app.say(chosen.locked ? 'lay.change.freed' : 'lay.change.locked', { piece: chosen.piece });
  app.change(label, new Map([[path, { kind: 'layout', layout: { ...layout, placements } }]]));
  return true;
}

/** Takes the chosen piece off its hide, into the tray. */
export function takeOff(app: App, table: LayTable): boolean {
  const present = presentLayout(app);
  const chosen = chosenPlacement(app, table);
  if (present === undefined || chosen === undefined || !canMove(app, table)) return false;
  if (chosen.locked || chosen.state !== 'planned') return false;
  table.hand.set(undefined);
  table.chosen.set(undefined);
  void table.holdDesk
    .ask('lift', { copy: chosen })
    .then(({ layout }) => {
      const label = app.say('lay.change.lifted', { piece: chosen.piece });
      app.change(label, new Map([[present.path, { kind: 'layout', layout }]]));
    })
    .catch((error: unknown) => app.tellFailure(error));
  return true;
}

/** Goes from one piece of the hide in front to the next, for those who have no pointer. */
export function chooseNext(app: App, table: LayTable, hideId: string | undefined, step: 1 | -1): boolean {
  const present = presentLayout(app);
  if (present === undefined || hideId === undefined || table.hand.get() !== undefined) return false;
  const keys = present.layout.placements
    .filter(({ hide, state }) => hide === hideId && state !== 'spoiled')
    .map((one) => copyKey(one));
  if (keys.length === 0) return false;
  const now = keys.indexOf(table.chosen.get() ?? '');
  table.chosen.set(keys[(now + step + keys.length) % keys.length]);
  return true;
}
