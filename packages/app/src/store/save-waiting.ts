import type { SaveOutcome, StoreWrite } from './job-store.js';
import type { WaitingReason } from './keep-state.js';
import { bytesOf, move, setKnown } from './keeping.js';
import type { Keeping } from './keeping.js';
import { settleConflict } from './settle-conflict.js';
import { reasonFor } from './store-error.js';
import { asNotWritten, asSaved, asTried, groupsOf } from './waiting.js';
import type { Waiting } from './waiting.js';

/** A store that refuses again and again though each conflict was settled is left alone for a while. */
const MOST_CONFLICTS = 20;

/** Saves all that waits and is not held up, group by group. Ends early where the store is out of reach. */
export async function saveWaiting(keeping: Keeping): Promise<void> {
  let conflicts = 0;
  for (;;) {
    const group = groupsOf(keeping.files).find((each) => each.every(({ path }) => !keeping.heldUp.has(path)));
    if (group === undefined) return;
    const outcome = await saveGroup(keeping, group);
    if (outcome === 'out of reach') return;
    if (outcome === 'conflict' && ++conflicts > MOST_CONFLICTS) {
      holdUp(keeping, group, 'out of reach');
      return;
    }
  }
}

type GroupOutcome = SaveOutcome['kind'] | 'out of reach';

async function saveGroup(keeping: Keeping, group: readonly Waiting[]): Promise<GroupOutcome> {
  for (const { path } of group) keeping.files.set(path, asTried(keeping.files.get(path)!));
  // Write-ahead: the journal has it, or has said that it can't take it.
  await keeping.line.flushed();
  let writes: readonly StoreWrite[];
  try {
    writes = await Promise.all(group.map((waiting) => writeOf(keeping, waiting)));
  } catch (error) {
    notWritten(keeping, group);
    holdUp(keeping, group, 'not written', error instanceof Error ? error.message : String(error));
    return 'failed';
  }
  const outcome = await keeping.store.save(writes);
  if (outcome.kind === 'saved') {
    const revisions = new Map(outcome.files.map(({ path, revision }) => [path, revision]));
    for (const waiting of group) saved(keeping, waiting, revisions.get(waiting.path) ?? null);
    return 'saved';
  }
  if (outcome.kind === 'conflict') {
    notWritten(keeping, group);
    return settleAll(
      keeping,
      group,
      outcome.conflicts.map(({ path }) => path),
    );
  }
  return failed(keeping, group, outcome);
}

async function writeOf(keeping: Keeping, { path, base, last }: Waiting): Promise<StoreWrite> {
  const bytes = await bytesOf(keeping, last);
  return bytes === undefined ? { path, base } : { path, base, bytes };
}

function saved(keeping: Keeping, { path, last }: Waiting, revision: string | null): void {
  setKnown(keeping, path, revision);
  move(keeping, path, asSaved(keeping.files.get(path)!, last, revision));
}

function notWritten(keeping: Keeping, group: readonly Waiting[]): void {
  for (const { path, last, isLastTried } of group) {
    // An attempt before this one may have reached the store all the same.
    if (isLastTried) continue;
    move(keeping, path, asNotWritten(keeping.files.get(path)!, last));
  }
}

async function settleAll(
  keeping: Keeping,
  group: readonly Waiting[],
  paths: readonly string[],
): Promise<GroupOutcome> {
  try {
    for (const path of paths) await settleConflict(keeping, path);
    return 'conflict';
  } catch (error) {
    const { reason, sentence } = reasonFor(error);
    holdUp(keeping, group, reason, sentence);
    return reason === 'out of reach' ? 'out of reach' : 'failed';
  }
}

function failed(
  keeping: Keeping,
  group: readonly Waiting[],
  { reason, sentence }: Extract<SaveOutcome, { kind: 'failed' }>,
): GroupOutcome {
  if (reason !== 'out of reach') notWritten(keeping, group);
  if (reason === 'too large' && group.length > 1) {
    // Each by itself may not be: better a step in parts than not at all.
    for (const { path } of group) {
      const now = keeping.files.get(path)!;
      keeping.files.set(path, { ...now, last: { ...now.last, steps: [] } });
    }
    return 'failed';
  }
  holdUp(keeping, group, reason, sentence);
  return reason === 'out of reach' ? 'out of reach' : 'failed';
}

function holdUp(
  { files, heldUp }: Keeping,
  group: readonly Waiting[],
  reason: WaitingReason,
  sentence?: string,
): void {
  for (const { path, last } of group) {
    // What was changed meanwhile gets its own try.
    if (files.get(path)?.last.order === last.order) heldUp.set(path, { reason, sentence });
  }
}
