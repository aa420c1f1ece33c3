import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { createRandom } from '@hidebound/geometry';
import { checkLayout, parseLayout, pieceCopyKey, writeLayout } from '@hidebound/leather';
import type { Layout, PiecePlacement } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import type { FileOf } from '../../job/job.js';
import { readFiles } from '../desk/read-files.js';
import { readOrder } from '../desk/read-order.js';
import { hidesOfLayout } from '../laying/layout-paths.js';
import { changedHides, isOfOrder } from '../laying/same-order.js';
import { withLifted, withPut } from './hand-layout.js';
import { judge, settle, takeInHand } from './hand.js';
import { inspect } from './inspect.js';
import { openTable } from './open-table.js';

const DEMO = join(import.meta.dirname, '../../../../../fixtures/demo');
const PATHS = [
  ...readdirSync(DEMO).filter((name) => /\.(hide|layout)\.json$|\.yaml$/.test(name)),
  ...readdirSync(join(DEMO, 'patterns')).map((name) => `patterns/${name}`),
];
const files = new Map(
  readFiles(PATHS.map((path) => ({ path, bytes: new Uint8Array(readFileSync(join(DEMO, path))) }))),
);
const LAYOUT = 'bicycle-goods.layout.json';
const { layout } = files.get(LAYOUT) as FileOf<'layout'>;
const hides = hidesOfLayout(layout, LAYOUT, files);
const read = await readOrder({ path: 'bicycle-goods.order.yaml', files });

const inLane = new Set(
  layout.lanes.flatMap(({ rows }) => rows.flatMap(({ straps }) => straps.map(pieceCopyKey))),
);
const inBlock = new Set(layout.roughCuts.flatMap(({ members }) => members.map(pieceCopyKey)));
const plain = layout.placements.filter(
  (one) => !inLane.has(pieceCopyKey(one)) && !inBlock.has(pieceCopyKey(one)),
);
const wrap = layout.placements.find((one) => inBlock.has(pieceCopyKey(one)))!;
const strap = layout.placements.find((one) => inLane.has(pieceCopyKey(one)))!;
/** As the file holds it. */
const filed = (one: Layout): Layout => parseLayout(writeLayout(one), { file: LAYOUT });
const rules = (one: Layout): string[] => [
  ...new Set(
    checkLayout(filed(one), hides).violations.map(
      ({ rule, accepted }) => `${rule}${accepted ? ' accepted' : ''}`,
    ),
  ),
];

describe('a layout that is laid open', () => {
  it('when it is the demo’s, it is proven and of today’s order and hides', () => {
    expect(inspect({ layout, hides, read })).toEqual({
      verdict: { proven: true, broken: [], told: [] },
      isOlderOrder: false,
      changedHides: [],
    });
  });

  it('when the order or a hide has changed since, that is told', () => {
    const order = { ...read.order, cutting: { ...read.order.cutting, gapMm: read.order.cutting.gapMm + 1 } };
    expect(isOfOrder(layout, { ...read, order })).toBe(false);
    const [first, ...others] = hides;
    const changed = [{ ...first!, hide: { ...first!.hide, flaws: [] } }, ...others];
    expect(changedHides(layout, changed)).toEqual([first!.hide.id]);
  });
});

describe('a piece in hand', () => {
  it('when it is left where it lies, nothing is broken, whichever plain piece it is', () => {
    const table = openTable(layout, hides);
    for (const one of plain) expect(judge(takeInHand(table, one)!, one)).toEqual([]);
  });

  // Against the exact check, which knows nothing of the bench: both must name the same rules.
  it('when it is moved anywhere, what is told is what the check finds of the layout made so', () => {
    const random = createRandom(5);
    const table = openTable(layout, hides);
    for (let i = 0; i < 6; i++) {
      const one = plain[random.integer(plain.length)]!;
      const at = {
        hide: one.hide,
        x: one.x + random.between(-60, 60),
        y: one.y + random.between(-60, 60),
        rotationDeg: one.rotationDeg + random.between(-20, 20),
      };
      const told = new Set(judge(takeInHand(table, one)!, at).map(({ rule }) => rule));
      const made = withPut(layout, hides, one, at, []);
      // A piece that comes over others may also force their rough cuts to be drawn otherwise.
      const found = new Set(rules(made).filter((rule) => rule !== 'rough-cut'));
      told.delete('rough-cut');
      expect([i, ...[...told].sort()]).toEqual([i, ...[...found].sort()]);
    }
  });

  it('when it is let go near its place, it comes into contact and the layout is proven', () => {
    const table = openTable(layout, hides);
    let snug = 0;
    for (const one of plain.slice(0, 5)) {
      const { at, isSnug, broken } = settle(
        takeInHand(table, one)!,
        { ...one, x: one.x + 1.5, y: one.y - 1 },
        8,
      );
      if (!isSnug) continue;
      snug += 1;
      expect(broken).toEqual([]);
      expect(rules(withPut(layout, hides, one, at, []))).toEqual([]);
    }
    expect(snug).toBeGreaterThan(2);
  });

  it('when a broken rule is accepted, it is listed with the piece and the check forgives it', () => {
    const one = plain[0]!;
    const at = { hide: one.hide, x: one.x, y: one.y, rotationDeg: one.rotationDeg + 40 };
    const broken = judge(takeInHand(openTable(layout, hides), one)!, at).map(({ rule }) => rule);
    expect(broken.length).toBeGreaterThan(0);
    const made = withPut(layout, hides, one, at, broken);
    const check = checkLayout(filed(made), hides);
    expect(check.proven).toBe(true);
    expect(check.violations.length).toBeGreaterThan(0);
  });

  it('when it is taken off and laid again, all is as it was but the order of the list', () => {
    const one = plain[3]!;
    const lifted = withLifted(layout, hides, one);
    expect(lifted.unplaced).toEqual([expect.objectContaining({ piece: one.piece, reason: 'not-tried' })]);
    expect(lifted.yield.total.piecesMm2).toBeLessThan(layout.yield.total.piecesMm2);
    expect(rules(lifted)).toEqual([]);
    const back = withPut(lifted, hides, one, one, []);
    const sorted = (placements: readonly PiecePlacement[]) =>
      [...placements].sort((a, b) => (pieceCopyKey(a) < pieceCopyKey(b) ? -1 : 1));
    expect(sorted(back.placements)).toEqual(sorted(layout.placements));
    expect(filed(back).yield).toEqual(layout.yield);
    expect(filed(back).roughCuts).toEqual(layout.roughCuts);
    expect(rules(back)).toEqual([]);
  });

  it('when it has a rough cut, the rough cuts are drawn anew around where it lies', () => {
    const lifted = withLifted(layout, hides, wrap);
    expect(rules(lifted)).toEqual([]);
    const members = lifted.roughCuts.flatMap((block) => block.members.map(pieceCopyKey));
    expect(members).not.toContain(pieceCopyKey(wrap));
    expect(rules(withPut(lifted, hides, wrap, wrap, []))).toEqual([]);
  });

  it('when a strap leaves the straps beside it, that is told, and the others stay proven', () => {
    const found = judge(takeInHand(openTable(layout, hides), strap)!, { ...strap, y: strap.y + 0.5 });
    expect(found.map(({ rule }) => rule)).toContain('lane');
    expect(rules(withLifted(layout, hides, strap))).toEqual([]);
  });

  it('when pieces are cut already, they and their numbers stay as another piece is moved', () => {
    const cut = plain[1]!;
    const ticked: Layout = {
      ...layout,
      placements: layout.placements.map((one) => (one === cut ? { ...one, state: 'cut' } : one)),
    };
    const lifted = withLifted(ticked, hides, plain[2]!);
    expect(lifted.placements).toContainEqual({ ...cut, state: 'cut' });
    const numberOf = (one: Layout) =>
      one.cuttingOrder.find(
        ({ kind, pieces }) =>
          kind === 'piece' && pieces.some((each) => pieceCopyKey(each) === pieceCopyKey(cut)),
      )?.number;
    expect(numberOf(lifted)).toBe(numberOf(ticked));
    expect(rules(lifted)).toEqual([]);
  });
});
