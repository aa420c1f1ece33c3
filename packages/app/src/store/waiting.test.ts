import { describe, expect, it } from 'vitest';
import type { Change } from './journal.js';
import { textFile } from './test-world.js';
import { asNotWritten, asSaved, asTried, firstWaiting, groupsOf, waitingOf, withChange } from './waiting.js';

function change(order: number, path: string, more: Partial<Change> = {}): Change {
  return { order, path, base: 'r1', file: textFile(`${order}`), strand: `1:${order}`, steps: [], ...more };
}

describe('what waits of a file', () => {
  it('when an older change was never sent, the newer one takes its place in the journal', () => {
    const { waiting, notes } = withChange(firstWaiting(change(1, 'a')), change(2, 'a', { base: 'r9' }));
    expect(waiting).toMatchObject({ base: 'r1', last: { order: 2, base: 'r1', strand: '1:1' }, tried: [] });
    expect(notes).toMatchObject({ puts: [{ order: 2 }], drops: [1] });
  });

  it('when an older change was sent and its answer is not known, it stays in the journal', () => {
    const { waiting, notes } = withChange(asTried(firstWaiting(change(1, 'a'))), change(2, 'a'));
    expect(waiting.tried.map(({ order }) => order)).toEqual([1]);
    expect(notes.drops).toEqual([]);
  });

  it('when the store has an older change, the newer one follows it', () => {
    const first = change(1, 'a');
    const { waiting } = withChange(asTried(firstWaiting(first)), change(2, 'a'));
    const saved = asSaved(waiting, first, 'r2');
    expect(saved.waiting).toMatchObject({ base: 'r2', last: { order: 2, base: 'r2' }, tried: [] });
    expect(saved.notes).toMatchObject({ puts: [{ order: 2, base: 'r2' }], drops: [1] });
  });

  it('when the newest change was not written, it counts as never sent', () => {
    const last = change(1, 'a');
    expect(asNotWritten(asTried(firstWaiting(last)), last).waiting).toMatchObject({ isLastTried: false });
  });

  it('when changes of one file were made without seeing one another, they wait apart', () => {
    const left = [change(1, 'a'), change(2, 'a'), change(3, 'a', { strand: '1:1' })];
    expect(waitingOf(left).map(({ last }) => last.order)).toEqual([3, 2]);
  });
});

describe('files that are saved together', () => {
  const groups = (...changes: readonly Change[]): string[] =>
    groupsOf(new Map(changes.map((each) => [each.path, firstWaiting(each)]))).map((group) =>
      group
        .map(({ path }) => path)
        .sort()
        .join(' '),
    );

  it('when files share a step, directly or by others, they are one group', () => {
    expect(
      groups(
        change(1, 'a', { steps: ['x'] }),
        change(2, 'b', { steps: ['y'] }),
        change(3, 'c', { steps: ['z', 'y'] }),
        change(4, 'd', { steps: ['x', 'z'] }),
      ),
    ).toEqual(['a b c d']);
  });

  it('when they share none, each is saved by itself, the longest waiting first', () => {
    expect(
      groups(change(5, 'a'), change(2, 'b', { steps: ['x'] }), change(3, 'c', { steps: ['y'] })),
    ).toEqual(['b', 'c', 'a']);
  });
});
