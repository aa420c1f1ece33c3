import type { App } from '../../../app/app.js';
import type { At, Hand, Stroke } from '../../../drawing/hand.js';
import { copyKey } from '../../../drawing/piece-layer.js';
import type { Stage } from '../../../drawing/stage.js';
import type { HeldAt } from '../../../work/hold-tasks.js';
import { placementWith, presentLayout } from '../present.js';
import type { InHand, LayTable } from '../table.js';
import { brokenWords, copyWords } from '../words.js';
import { letGo, moveHand, putBack, takeLying } from './in-hand.js';
import { turnedBy, wholeTurn } from './turning.js';

/** Taking, moving, turning and letting go of pieces over the drawing. */
export function handOnPieces(app: App, table: LayTable, stage: Stage): Hand {
  return {
    press: (at) => {
      if (at.target?.closest('[data-kind="turn"]')) return turnStroke(app, table, at);
      const key = keyAt(at);
      if (key === undefined || !takes(app, table, key, at)) return undefined;
      return at.shift ? turnStroke(app, table, at) : moveStroke(app, table, at);
    },
    tap: (at) => tap(app, table, stage, at),
    describe: (at) => describe(app, table, at),
  };
}

function keyAt({ target }: At): string | undefined {
  return target?.closest('[data-kind="piece"]')?.getAttribute('data-id') ?? undefined;
}

/** A finger moves only the piece that was chosen by a tap: else one could not move the view over a full hide. */
function takes(app: App, table: LayTable, key: string, at: At): boolean {
  const hand = table.hand.get();
  if (hand !== undefined) return hand.phase === 'held' && copyKey(hand.copy) === key;
  if (at.by === 'touch' && table.chosen.get() !== key) return false;
  const present = presentLayout(app);
  const placement = present && placementWith(present.layout, key);
  return placement?.state === 'planned' && !placement.locked && table.run.get() === undefined;
}

/** The piece comes into the hand when the stroke first moves, so that a mere tap does not take it. */
function strokeWith(app: App, table: LayTable, start: At, next: (from: HeldAt, at: At) => HeldAt): Stroke {
  const key = keyAt(start) ?? table.chosen.get();
  let from: HeldAt | undefined;
  const begin = (): HeldAt | undefined => {
    if (from !== undefined) return from;
    const before = table.hand.get();
    if (before === undefined) {
      if (key === undefined || !takeLying(app, table, key, 'moving')) return undefined;
    } else table.hand.set({ ...before, phase: 'moving' });
    return (from = table.hand.get()?.at);
  };
  return {
    move: (at) => {
      const began = begin();
      if (began !== undefined) moveHand(app, table, next(began, at));
    },
    end: (at) => {
      const began = begin();
      if (began === undefined) return;
      moveHand(app, table, next(began, at));
      void letGo(app, table);
    },
    cancel: () => {
      if (from !== undefined) putBack(app, table);
    },
  };
}

/** Moved by one finger, turned by another. */
function moveStroke(app: App, table: LayTable, start: At): Stroke {
  let turnedDeg = 0;
  let last = start;
  const stroke = strokeWith(app, table, start, (from, { place }) => ({
    ...from,
    x: from.x + place.x - start.place.x,
    y: from.y + place.y - start.place.y,
    rotationDeg: wholeTurn(from.rotationDeg + turnedDeg),
  }));
  const move = (at: At): void => {
    last = at;
    stroke.move(at);
  };
  return {
    ...stroke,
    move,
    turn: (byDeg) => {
      turnedDeg += byDeg;
      move(last);
    },
  };
}

function turnStroke(app: App, table: LayTable, start: At): Stroke {
  return strokeWith(app, table, start, (from, { place }) => ({
    ...from,
    rotationDeg: wholeTurn(from.rotationDeg + turnedBy(from, start.place, place)),
  }));
}

/** A tap on a piece chooses it; with a piece in hand, a tap elsewhere lays it there. */
function tap(app: App, table: LayTable, stage: Stage, at: At): boolean {
  if (at.target?.closest('[data-kind="turn"]')) return true;
  const hand = table.hand.get();
  const key = keyAt(at);
  if (hand?.phase === 'held') {
    if (key === copyKey(hand.copy)) return true;
    moveHand(app, table, { ...hand.at, x: at.place.x, y: at.place.y });
    void letGo(app, table);
    return true;
  }
  if (hand !== undefined) return false;
  const before = table.chosen.get();
  table.chosen.set(key);
  const words = describe(app, table, at);
  if (words !== undefined) stage.say(words);
  return key !== undefined || before !== undefined;
}

function describe(app: App, table: LayTable, at: At): string | undefined {
  const hand = table.hand.get();
  if (hand !== undefined) return handWords(app, hand);
  const key = keyAt(at);
  const present = presentLayout(app);
  const placement = present && placementWith(present.layout, key);
  return placement && copyWords(app, placement);
}

/** What is in hand, and whether it may lie there. */
export function handWords(app: App, { copy, broken }: InHand): string {
  if (broken === undefined) return copyWords(app, copy);
  const words =
    broken.length === 0 ? app.say('lay.hand.fits') : broken.map((each) => brokenWords(app, each)).join('; ');
  return app.say('lay.hand.words', { piece: copy.piece, words });
}
