import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { placement, rectangle, testItem, testKind, testProblem, testSheet } from '../nest/test-problems.js';
import type { Item, NestProblem, Placement, RoughCut } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { drawRoughCuts } from './drawn-rough-cuts.js';
import { roughCutsFor } from './rough-cuts.js';

const panel = testItem('panel', rectangle(-20, -20, 20, 20), { group: 'dyed', roughMargin: 10 });
const waxed = testItem('waxed', rectangle(-20, -20, 20, 20), { group: 'waxed', roughMargin: 5 });
const patch = testItem('patch', rectangle(-5, -5, 5, 5));
const bare = testItem('bare', rectangle(-5, -5, 5, 5), { group: 'dyed' });
const frame = testItem(
  'frame',
  {
    outer: rectangle(-60, -60, 60, 60).outer,
    openings: [[...rectangle(-40, -40, 40, 40).outer].reverse()],
  } satisfies Region,
  { group: 'dyed', roughMargin: 10 },
);

function job(
  items: readonly Item[],
  placements: readonly Placement[],
  fixed: readonly Placement[] = [],
): NestProblem {
  const counts = Object.fromEntries(
    items.map(({ id }) => [id, placements.filter(({ item }) => item === id).length]),
  );
  return testProblem({
    items,
    setKinds: [testKind(counts)],
    sheets: [testSheet('sheet', rectangle(0, 0, 600, 400))],
    fixed: fixed.map((one) => ({ ...one, accepted: [] })),
    distances: { gap: 1, edge: 0, void: 0 },
  });
}

function broken(problem: NestProblem, placements: readonly Placement[], roughCuts: readonly RoughCut[]) {
  return checkAnswer(problem, { placements, lanes: [], roughCuts, unplaced: [], joins: 0 });
}

/** Ids of items with their copies, short. */
function short(copies: readonly { readonly item: string; readonly copy: number }[]): string[] {
  return copies.map(({ item, copy }) => `${item} ${copy}`);
}

describe('rough cuts of layouts by hand', () => {
  it('when two panels lie side by side, one block of four corners holds both', () => {
    const placements = [placement('panel', 1, 100, 100), placement('panel', 2, 141, 100)];
    const problem = job([panel], placements);
    const { roughCuts, conflicts } = roughCutsFor(problem, placements);
    expect(conflicts).toEqual([]);
    expect(roughCuts).toHaveLength(1);
    expect(roughCuts[0]).toMatchObject({ id: 'dyed 1', sheet: 'sheet', group: 'dyed', marginMm: 10 });
    expect(roughCuts[0]!.outline).toHaveLength(4);
    expect(broken(problem, placements, roughCuts)).toEqual([]);
  });

  it('when panels lie too far apart, each has a block; when a strip of leather lies between them, they share one', () => {
    const blocks = (x: number): number => {
      const placements = [placement('panel', 1, 100, 100), placement('panel', 2, x, 100)];
      return roughCutsFor(job([panel], placements), placements).roughCuts.length;
    };
    expect([180, 400].map(blocks)).toEqual([1, 2]);
  });

  it('when a foreign piece lies between two blocks, they stay apart', () => {
    const placements = [
      placement('panel', 1, 100, 100),
      placement('panel', 2, 180, 100),
      placement('patch', 1, 140, 85),
      placement('patch', 2, 140, 115),
    ];
    const problem = job([panel, patch], placements);
    const { roughCuts, conflicts } = roughCutsFor(problem, placements);
    expect(conflicts).toEqual([]);
    expect(roughCuts.map(({ members }) => members.length)).toEqual([1, 1]);
    expect(broken(problem, placements, roughCuts)).toEqual([]);
  });

  it('when pieces keep the bare margins to the thousandth, tight outlines still fit', () => {
    const placements = [
      placement('panel', 1, 30, 30),
      placement('waxed', 1, 85, 30),
      placement('patch', 1, 30, 65),
      placement('panel', 2, 85, 85, { rotationDeg: 90 }),
    ];
    const problem = job([panel, waxed, patch], placements);
    const { roughCuts, conflicts } = roughCutsFor(problem, placements);
    expect(conflicts).toEqual([]);
    expect(broken(problem, placements, roughCuts)).toEqual([]);
  });

  it('when margins differ within a block, each member keeps its own', () => {
    const wide = testItem('wide', rectangle(-20, -20, 20, 20), { group: 'dyed', roughMargin: 25 });
    const placements = [placement('panel', 1, 100, 100), placement('wide', 1, 141, 100)];
    const problem = job([panel, wide], placements);
    const { roughCuts } = roughCutsFor(problem, placements);
    expect(roughCuts).toHaveLength(1);
    expect(roughCuts[0]!.marginMm).toBe(10);
    expect(broken(problem, placements, roughCuts)).toEqual([]);
  });

  it('when a piece of the group without a margin lies amid a block, it becomes a member', () => {
    const placements = [placement('panel', 1, 100, 100), placement('bare', 1, 126, 100)];
    const problem = job([panel, bare], placements);
    const { roughCuts, conflicts } = roughCutsFor(problem, placements);
    expect(conflicts).toEqual([]);
    expect(short(roughCuts[0]!.members)).toEqual(['panel 1', 'bare 1']);
    expect(broken(problem, placements, roughCuts)).toEqual([]);
  });

  it('when nothing has a margin, there are no rough cuts', () => {
    const placements = [placement('patch', 1, 100, 100)];
    expect(roughCutsFor(job([patch], placements), placements)).toEqual({ roughCuts: [], conflicts: [] });
  });
});

describe('rough cuts that can not be drawn', () => {
  it('when a margin reaches over the edge, it is told, and lifting that piece mends it', () => {
    const placements = [placement('panel', 1, 25, 100), placement('panel', 2, 66, 100)];
    const problem = job([panel], placements);
    const { conflicts } = roughCutsFor(problem, placements);
    expect(conflicts).toMatchObject([{ code: 'over-edge', sheet: 'sheet', group: 'dyed', others: [] }]);
    expect(short(conflicts[0]!.lift)).toEqual(['panel 1']);
    const drawn = drawRoughCuts(problem, placements);
    expect(short(drawn.placements)).toEqual(['panel 2']);
    expect(short(drawn.lifted)).toEqual(['panel 1']);
    expect(drawn.conflicts).toEqual([]);
  });

  it('when a foreign piece lies within a margin, it is lifted, unless it is fixed', () => {
    const placements = [placement('panel', 1, 100, 100), placement('patch', 1, 127, 100)];
    const lifts = (fixed: readonly Placement[]) => {
      const { conflicts } = roughCutsFor(job([panel, patch], placements, fixed), placements);
      expect(conflicts.map(({ code }) => code)).toEqual(['too-near']);
      return short(conflicts[0]!.lift);
    };
    expect(lifts([])).toEqual(['patch 1']);
    expect(lifts(placements.slice(1))).toEqual(['panel 1']);
    expect(lifts(placements)).toEqual([]);
  });

  it('when all that is concerned is fixed, the conflict stays as it is', () => {
    const placements = [placement('panel', 1, 100, 100), placement('patch', 1, 127, 100)];
    const drawn = drawRoughCuts(job([panel, patch], placements, placements), placements);
    expect(drawn.placements).toEqual(placements);
    expect(drawn.conflicts).toHaveLength(1);
  });

  it('when margins of two groups overlap, the later piece is lifted', () => {
    const placements = [placement('panel', 1, 100, 100), placement('waxed', 1, 150, 100)];
    const { conflicts } = roughCutsFor(job([panel, waxed], placements), placements);
    expect(conflicts.map(({ code, lift }) => [code, short(lift)])).toEqual([['too-near', ['waxed 1']]]);
  });

  it.each([
    ['patch', patch],
    ['waxed', testItem('waxed', rectangle(-5, -5, 5, 5), { group: 'waxed', roughMargin: 5 })],
  ])('when a foreign piece (%s) lies in the opening of a frame, it is enclosed and lifted', (id, item) => {
    const placements = [placement('frame', 1, 100, 100), placement(id, 1, 100, 100)];
    const problem = job([frame, item], placements);
    const { conflicts } = roughCutsFor(problem, placements);
    expect(conflicts.map(({ code, lift }) => [code, short(lift)])).toEqual([['encloses', [`${id} 1`]]]);
    expect(short(drawRoughCuts(problem, placements).placements)).toEqual(['frame 1']);
  });

  it('when a piece of the same group lies in the opening, it is a member', () => {
    const placements = [placement('frame', 1, 100, 100), placement('panel', 1, 100, 100)];
    const problem = job([frame, panel], placements);
    const { roughCuts, conflicts } = roughCutsFor(problem, placements);
    expect(conflicts).toEqual([]);
    expect(roughCuts.map(({ members }) => short(members))).toEqual([['frame 1', 'panel 1']]);
    expect(broken(problem, placements, roughCuts)).toEqual([]);
  });

  it('when panels ring a foreign piece that stays, the ring is opened', () => {
    const ring = [
      [100, 100],
      [150, 100],
      [200, 100],
      [100, 150],
      [200, 150],
      [100, 200],
      [150, 200],
      [200, 200],
    ].map(([x, y], i) => placement('panel', i + 1, x!, y!));
    const amid = placement('patch', 1, 150, 150);
    const placements = [...ring, amid];
    const free = drawRoughCuts(job([panel, patch], placements), placements);
    expect(short(free.lifted)).toEqual(['patch 1']);
    expect(free.roughCuts).toHaveLength(1);
    const problem = job([panel, patch], placements, [amid]);
    const drawn = drawRoughCuts(problem, placements);
    // Without one corner of the ring its neighbours still meet across it.
    expect(drawn.lifted.map(({ item }) => item)).toEqual(['panel', 'panel']);
    expect(drawn.conflicts).toEqual([]);
    expect(
      broken(problem, drawn.placements, drawn.roughCuts).filter(({ rule }) => rule === 'rough-cut'),
    ).toEqual([]);
  });

  it('when a piece has a margin but no group, it can be in no rough cut', () => {
    const lost = testItem('lost', rectangle(-20, -20, 20, 20), { roughMargin: 10 });
    const placements = [placement('lost', 1, 100, 100)];
    const { roughCuts, conflicts } = roughCutsFor(job([lost], placements), placements);
    expect(roughCuts).toEqual([]);
    expect(conflicts.map(({ code, lift }) => [code, short(lift)])).toEqual([['no-group', ['lost 1']]]);
  });
});
