import type { LayablePiece, PieceCopy } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { copyKey, pieceOf } from '../../../drawing/piece-layer.js';
import type { HeldAt } from '../../../work/hold-tasks.js';
import type { Broken } from '../../../work/laying/found.js';
import { latest } from '../latest.js';
import type { Latest } from '../latest.js';
import { placementWith, presentLayout } from '../present.js';
import type { InHand, LayTable } from '../table.js';

/** A piece slides so far into contact, mm: what an unsure hand is off by. */
const SNUG_MM = 6;

const judges = new WeakMap<LayTable, Latest<HeldAt>>();

/** One question after the other, and always the latest place: nothing waits for a verdict. */
function judgeOf(app: App, table: LayTable): Latest<HeldAt> {
  const known = judges.get(table);
  if (known !== undefined) return known;
  const made = latest<HeldAt, { readonly broken: readonly Broken[] }>(
    (at) => table.holdDesk.ask('judge', { at }),
    ({ broken }) => table.hand.update((hand) => hand && { ...hand, broken }),
    (error) => app.tellFailure(error),
  );
  judges.set(table, made);
  return made;
}

/** Whether pieces may be moved now: not while the engine moves them itself. */
export function canMove(app: App, table: LayTable): boolean {
  return table.run.get() === undefined && presentLayout(app) !== undefined;
}

/** Takes a copy that lies on a hide; false where it stays or is cut already. */
export function takeLying(app: App, table: LayTable, key: string, phase: InHand['phase']): boolean {
  const present = presentLayout(app);
  if (present === undefined || !canMove(app, table)) return false;
  const placement = placementWith(present.layout, key);
  if (placement === undefined || placement.locked || placement.state !== 'planned') return false;
  const { hide, x, y, rotationDeg } = placement;
  const at = { hide, x, y, rotationDeg };
  const piece = pieceOf(present.layout, placement)!;
  take(app, table, { copy: placement, piece, from: at, at, broken: undefined, phase });
  return true;
}

/** Takes a copy that lies nowhere yet, to lie at a place. */
export function takeFromTray(
  app: App,
  table: LayTable,
  copy: PieceCopy,
  at: HeldAt,
  phase: InHand['phase'] = 'held',
): boolean {
  const present = presentLayout(app);
  if (present === undefined || !canMove(app, table)) return false;
  const piece: LayablePiece | undefined = pieceOf(present.layout, copy);
  if (piece === undefined) return false;
  take(app, table, { copy, piece, from: undefined, at, broken: undefined, phase });
  return true;
}

function take(app: App, table: LayTable, hand: InHand): void {
  judgeOf(app, table).forget();
  table.hand.set(hand);
  table.chosen.set(copyKey(hand.copy));
  void table.holdDesk.ask('take', { copy: hand.copy }).catch((error: unknown) => app.tellFailure(error));
  judgeOf(app, table).wish(hand.at);
}

export function moveHand(app: App, table: LayTable, at: HeldAt): void {
  table.hand.update((hand) => hand && { ...hand, at });
  judgeOf(app, table).wish(at);
}

/** Puts back what is in hand: to its place, or into the tray. */
export function putBack(app: App, table: LayTable): void {
  judgeOf(app, table).forget();
  table.hand.set(undefined);
}

/**
 * Lets go: into contact where that is near, else right there. Where it breaks a rule it is held on, until it is decided
 * whether it goes back or stays all the same.
 */
export async function letGo(app: App, table: LayTable): Promise<void> {
  const hand = table.hand.get();
  if (hand === undefined || hand.phase === 'settling') return;
  judgeOf(app, table).forget();
  table.hand.set({ ...hand, phase: 'settling' });
  try {
    const snugMm = table.snug.get() ? SNUG_MM : 0;
    const { at, broken } = await table.holdDesk.ask('settle', { at: hand.at, snugMm });
    if (table.hand.get()?.copy !== hand.copy) return;
    if (broken.length > 0) table.hand.set({ ...hand, at, broken, phase: 'held' });
    else await put(app, table, { ...hand, at, broken, phase: 'settling' });
  } catch (error) {
    table.hand.set(undefined);
    app.tellFailure(error);
  }
}

/** Lets it stay although it breaks rules: the layout lists them as accepted. */
export async function letStay(app: App, table: LayTable): Promise<void> {
  const hand = table.hand.get();
  if (hand?.phase !== 'held') return;
  judgeOf(app, table).forget();
  table.hand.set({ ...hand, phase: 'settling' });
  try {
    const { at, broken } = await table.holdDesk.ask('settle', { at: hand.at, snugMm: 0 });
    await put(app, table, { ...hand, at, broken, phase: 'settling' });
  } catch (error) {
    table.hand.set(undefined);
    app.tellFailure(error);
  }
}

async function put(app: App, table: LayTable, hand: InHand): Promise<void> {
  table.hand.set(hand);
  const { path } = presentLayout(app)!;
  const accepted = (hand.broken ?? []).map(({ rule }) => rule);
  const { layout } = await table.holdDesk.ask('put', { at: hand.at, accepted });
  const label = app.say(hand.from === undefined ? 'lay.change.put' : 'lay.change.moved', {
    piece: hand.copy.piece,
  });
  app.change(label, new Map([[path, { kind: 'layout', layout }]]));
  table.hand.set(undefined);
}
