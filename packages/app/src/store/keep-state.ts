import type { FailureReason } from './job-store.js';
import type { Keeping } from './keeping.js';

/** How safe the work is. */
export type KeepState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** Safe in this browser, not yet where it belongs; tried again by itself. */
  | { readonly kind: 'waiting'; readonly reason: WaitingReason; readonly sentence?: string }
  /** Nowhere but in this tab: a person has to save a job file now. */
  | { readonly kind: 'unsafe'; readonly reason: WaitingReason };

/** "not written" also where the desk could not make a file of it. */
export type WaitingReason = FailureReason;

/** Why something is tried again only later. */
export interface HeldUp {
  readonly reason: WaitingReason;
  readonly sentence?: string | undefined;
}

/** `reach`: why the whole store is left alone for a while. */
export function keepState({ files, heldUp, line }: Keeping, reach: HeldUp | undefined): KeepState {
  const waiting = [...files.values()];
  if (waiting.length === 0) return { kind: 'saved' };
  const held = [...heldUp.values()][0] ?? reach;
  const isUnderWay = waiting.some(({ path }) => !heldUp.has(path)) && reach === undefined;
  if (held === undefined || isUnderWay) return { kind: 'saving' };
  const { reason, sentence } = held;
  if (waiting.every(({ last }) => line.has(last)))
    return { kind: 'waiting', reason, ...(sentence === undefined ? {} : { sentence }) };
  return line.failure() === undefined ? { kind: 'saving' } : { kind: 'unsafe', reason };
}

export function isSameState(one: KeepState, other: KeepState): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** Has the browser ask before the tab is closed, for as long as work is nowhere else. */
export function warnWhileUnsafe(state: {
  readonly watch: (listener: (state: KeepState) => void) => () => void;
}): () => void {
  const warn = (event: BeforeUnloadEvent): void => event.preventDefault();
  const unwatch = state.watch(({ kind }) => {
    if (kind === 'unsafe') addEventListener('beforeunload', warn);
    else removeEventListener('beforeunload', warn);
  });
  return () => {
    unwatch();
    removeEventListener('beforeunload', warn);
  };
}
