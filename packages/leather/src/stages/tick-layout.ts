import { copyWords } from '../cutfile/owner-words.js';
import type { Layout, PieceCopy, PiecePlacement, UnplacedCopy } from '../model/layout.js';
import { bareCopy, pieceCopyKey } from '../order/item-id.js';
import { leatherError } from '../words/refuse.js';
import { chooseCopies } from './choose-copies.js';
import type { ChosenCopies } from './choose-copies.js';
import { currentCopies } from './current-copies.js';
import type { CurrentCopy } from './current-copies.js';

export type CopyState = PiecePlacement['state'];

/** What is ticked: lists of numbers and names as a worker writes them. */
export interface TickWish {
  readonly cut?: string;
  readonly spoiled?: string;
  /** Ticks that are taken back. */
  readonly planned?: string;
  /** All that is still to be cut, and not named as spoiled, is cut. */
  readonly allCut?: boolean;
}

export interface TickedCopy {
  readonly copy: PieceCopy;
  readonly number: string;
  readonly hide: string;
  readonly from: CopyState;
  readonly to: CopyState;
}

export interface TickedLayout {
  /** Yield and offcuts are those of before: see `withFigures`. */
  readonly layout: Layout;
  readonly ticked: readonly TickedCopy[];
}

/**
 * The layout with pieces ticked as cut or spoiled, or ticks taken back. A spoiled copy keeps its place, because its
 * leather is gone, and its copy counts as not laid until it is laid again.
 * @throws LeatherError for entries that name nothing, name a copy twice, or ask for what it is already
 */
export function tickLayout(layout: Layout, wish: TickWish): TickedLayout {
  const copies = currentCopies(layout);
  const wanted = new Map<string, CopyState>();
  const want = (text: string | undefined, to: CopyState): void => {
    if (text === undefined) return;
    for (const chosen of chooseCopies(text, copies)) {
      for (const copy of ofState(chosen, to)) {
        if (wanted.has(copy.key)) throw leatherError('tick-twice', wordsOf(copy, chosen));
        wanted.set(copy.key, to);
      }
    }
  };
  want(wish.cut, 'cut');
  want(wish.spoiled, 'spoiled');
  want(wish.planned, 'planned');
  if (wish.allCut === true) {
    for (const { key, placement } of copies) {
      if (placement.state === 'planned' && !wanted.has(key)) wanted.set(key, 'cut');
    }
  }
  const ticked = copies.filter(({ key }) => wanted.has(key));
  return {
    layout: withStates(layout, ticked, wanted),
    ticked: ticked.map(({ key, placement, number }) => ({
      copy: bareCopy(placement),
      number,
      hide: placement.hide,
      from: placement.state,
      to: wanted.get(key)!,
    })),
  };
}

/** Those that can go over into the state. One copy alone must be able to; of several some must be. */
function ofState(chosen: ChosenCopies, to: CopyState): readonly CurrentCopy[] {
  const able = chosen.copies.filter(({ placement }) => canBecome(placement.state, to));
  if (able.length > 0) return able;
  const [first] = chosen.copies;
  if (chosen.isWide || first === undefined) {
    throw leatherError('tick-nothing-left', {
      asked: chosen.asked,
      state: to === 'planned' ? 'still to be cut' : to,
    });
  }
  throw leatherError(REFUSALS[first.placement.state], wordsOf(first, chosen));
}

const REFUSALS = {
  cut: 'tick-cut-already',
  spoiled: 'tick-spoiled-already',
  planned: 'tick-not-ticked',
} as const;

/** What was cut can turn out to be spoiled; what is spoiled is never whole again, unless the tick was a slip. */
function canBecome(from: CopyState, to: CopyState): boolean {
  return to === 'planned' ? from !== 'planned' : to === 'cut' ? from === 'planned' : from !== 'spoiled';
}

function wordsOf({ placement }: CurrentCopy, { asked }: ChosenCopies): { asked: string; what: string } {
  return { asked, what: copyWords(placement) };
}

function withStates(
  layout: Layout,
  ticked: readonly CurrentCopy[],
  wanted: ReadonlyMap<string, CopyState>,
): Layout {
  const states = new Map(ticked.map(({ index, key }) => [index, wanted.get(key)!]));
  const placements = layout.placements.map((placement, i) => {
    const state = states.get(i);
    return state === undefined ? placement : { ...placement, state };
  });
  const again = new Set(ticked.filter(({ key }) => wanted.get(key) !== 'spoiled').map(({ key }) => key));
  const spoiled = ticked.filter(({ key }) => wanted.get(key) === 'spoiled');
  return {
    ...layout,
    placements: keptWhole(placements, layout),
    unplaced: [
      ...layout.unplaced.filter((copy) => !again.has(pieceCopyKey(copy))),
      ...spoiled.map(({ placement }) => toLayAgain(placement)),
    ],
  };
}

/** A copy that waits for being laid again. */
export function toLayAgain(copy: PieceCopy): UnplacedCopy {
  return { ...bareCopy(copy), reason: 'not-tried' };
}

/**
 * Where sets are laid whole or not at all, one of which a piece was spoiled is not whole for a while. One of its pieces
 * bears that as accepted.
 */
export function keptWhole(placements: readonly PiecePlacement[], { order }: Pick<Layout, 'order'>) {
  if (order.mode !== 'sets') return placements;
  const setOf = ({ article, set }: PieceCopy): string => JSON.stringify([article, set]);
  const hurt = new Set(placements.filter(({ state }) => state === 'spoiled').map(setOf));
  const borne = new Set(
    placements.filter(({ accepted, state }) => accepted.includes('set') && state !== 'spoiled').map(setOf),
  );
  return placements.map((placement) => {
    const set = setOf(placement);
    if (placement.state === 'spoiled' || !hurt.has(set) || borne.has(set)) return placement;
    borne.add(set);
    return { ...placement, accepted: [...placement.accepted, 'set' as const] };
  });
}
