import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cuttingNumbers, parseLayout, pieceCopyKey } from '@hidebound/leather';
import type { Layout } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { tickOne } from '../../../work/benching/tick.js';
import { blocksOf, neighbour, nextOpen, progressOf, workItems } from './order-of-work.js';

// The demo: 110 pieces on three hides, with three rough cuts and a lane of 34 straps (counted in its file).
const DEMO = join(import.meta.dirname, '../../../../../../fixtures/demo/bicycle-goods.layout.json');
const layout = parseLayout(readFileSync(DEMO, 'utf8'), { file: DEMO });

const ticked = (from: Layout, number: string, to: 'cut' | 'spoiled' | 'planned'): Layout =>
  tickOne({ layout: from, hides: [], number, to });

describe('the order of work', () => {
  it('when a layout is cut, each copy comes once, under the number that stands on its sheets', () => {
    const pieces = workItems(layout).filter(({ kind }) => kind === 'piece');
    expect(new Set(pieces.map(({ key }) => key)).size).toBe(110);
    expect(pieces).toHaveLength(110);
    const numbers = cuttingNumbers(layout);
    for (const { key, number } of pieces) expect(number).toBe(numbers.get(key));
  });

  it('when pieces lie in a rough cut or a lane, the cut that frees them comes before all of them', () => {
    const items = workItems(layout);
    const steps = items.filter((item) => item.kind === 'step');
    expect(steps.map(({ step }) => step.kind)).toEqual([
      'rough cut',
      'rough cut',
      'rough cut',
      'straight edge',
    ]);
    expect(steps.map(({ before }) => before.length)).toEqual([8, 1, 3, 34]);
    for (const step of steps)
      for (const key of step.before)
        expect(items.findIndex((item) => item.key === key)).toBeGreaterThan(items.indexOf(step));
  });

  it('when a piece lies in a rough cut, its card names that step', () => {
    const member = layout.roughCuts[0]!.members[0]!;
    expect(blocksOf(layout, pieceCopyKey(member)).map(({ of }) => of)).toEqual([layout.roughCuts[0]!.id]);
  });

  it('when all is cut one by one, every piece and every step comes in front exactly once', () => {
    let now = layout;
    const seen: string[] = [];
    for (let item = nextOpen(workItems(now), undefined); item !== undefined;) {
      seen.push(item.key);
      if (item.kind === 'piece') now = ticked(now, item.number, 'cut');
      item = nextOpen(workItems(now), item.key);
    }
    expect(seen).toEqual(workItems(layout).map(({ key }) => key));
    expect(progressOf(now)).toEqual({ cut: 110, left: 0, unlaid: 0, all: 110 });
  });

  it('when pieces are passed over, they come back at the end, but steps that are done do not', () => {
    const items = workItems(layout);
    let now = layout;
    for (const { kind, number, key } of items)
      if (kind === 'piece' && key !== items[1]!.key) now = ticked(now, number, 'cut');
    expect(nextOpen(workItems(now), items.at(-1)!.key)?.key).toBe(items[1]!.key);
  });

  it('when a piece is spoiled, it keeps its place in the order, is not open, and waits to be laid', () => {
    const [first, second] = workItems(layout);
    const now = ticked(layout, first!.number, 'spoiled');
    expect(workItems(now)[0]).toMatchObject({ key: first!.key, placement: { state: 'spoiled' } });
    expect(nextOpen(workItems(now), undefined)?.key).toBe(second!.key);
    expect(progressOf(now)).toEqual({ cut: 0, left: 109, unlaid: 1, all: 110 });
  });

  it('when a piece was spoiled a moment ago and is not on the list of what has no place yet, none is missing from the count', () => {
    const [first] = layout.placements;
    const placements = layout.placements.map((each) =>
      each === first ? { ...each, state: 'spoiled' as const } : each,
    );
    expect(progressOf({ ...layout, placements })).toEqual({ cut: 0, left: 109, unlaid: 1, all: 110 });
  });

  it('when a tick was a slip, the layout is what it was before', () => {
    const there = ticked(layout, '3', 'spoiled');
    expect(ticked(there, '3', 'planned').placements).toEqual(layout.placements);
    expect(ticked(there, '3', 'planned').unplaced).toEqual(layout.unplaced);
  });

  it('when there is nothing before the first or behind the last, there is no neighbour', () => {
    const items = workItems(layout);
    expect(neighbour(items, items[0]!.key, -1)).toBeUndefined();
    expect(neighbour(items, items.at(-1)!.key, 1)).toBeUndefined();
    expect(neighbour(items, items[4]!.key, 1)).toBe(items[5]);
  });
});
