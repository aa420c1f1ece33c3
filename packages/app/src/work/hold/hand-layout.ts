import { ROTATION_DECIMALS, roundCoordinate, roughCutsFor } from '@hidebound/geometry';
import type { NestAnswer, RuleName } from '@hidebound/geometry';
import { bareCopy, layoutAgain, layoutFrom, meaningsIn, pieceCopyKey } from '@hidebound/leather';
import type { Layout, NamedHide, PieceCopy, PiecePlacement, UnplacedCopy } from '@hidebound/leather';
import type { HeldAt } from '../hold-tasks.js';
import { isUntouched } from '../laying/staying.js';
import { openTable } from './open-table.js';

const ROTATION_STEPS = 10 ** ROTATION_DECIMALS;

/** A place as a layout's file holds it. */
export function roundedAt({ hide, x, y, rotationDeg }: HeldAt): HeldAt {
  const turned = ((rotationDeg % 360) + 360) % 360;
  return {
    hide,
    x: roundCoordinate(x),
    y: roundCoordinate(y),
    rotationDeg: Math.round(turned * ROTATION_STEPS) / ROTATION_STEPS + 0,
  };
}

/** The layout with one copy laid by hand, wherever it lay before. A rule in `accepted` may be broken by it. */
export function withPut(
  layout: Layout,
  hides: readonly NamedHide[],
  copy: PieceCopy,
  at: HeldAt,
  accepted: readonly RuleName[],
): Layout {
  const key = pieceCopyKey(copy);
  const put: PiecePlacement = {
    ...bareCopy(copy),
    ...roundedAt(at),
    locked: false,
    accepted: [...new Set(accepted)],
    state: 'planned',
  };
  const lay = layout.placements.findIndex((one) => isOpen(one) && pieceCopyKey(one) === key);
  const placements =
    lay < 0 ? [...layout.placements, put] : layout.placements.map((one, i) => (i === lay ? put : one));
  return redrawn({ ...withoutSeat(layout, key), placements, unplaced: without(layout.unplaced, key) }, hides);
}

/** The layout with one copy taken off its hide: it is among those that do not lie yet. */
export function withLifted(layout: Layout, hides: readonly NamedHide[], copy: PieceCopy): Layout {
  const key = pieceCopyKey(copy);
  const placements = layout.placements.filter((one) => !isOpen(one) || pieceCopyKey(one) !== key);
  if (placements.length === layout.placements.length) return layout;
  const unplaced: UnplacedCopy[] = [...layout.unplaced, { ...bareCopy(copy), reason: 'not-tried' }];
  return redrawn({ ...withoutSeat(layout, key), placements, unplaced }, hides);
}

function isOpen({ state }: PiecePlacement): boolean {
  return state === 'planned';
}

function without(copies: readonly UnplacedCopy[], key: string): UnplacedCopy[] {
  return copies.filter((copy) => pieceCopyKey(copy) !== key);
}

/** A strap that is moved by itself has left its lane; a lane without straps is none. */
function withoutSeat(layout: Layout, key: string): Layout {
  const lanes = layout.lanes.map((lane) => ({
    ...lane,
    rows: lane.rows.map((row) => ({
      ...row,
      straps: row.straps.filter((copy) => pieceCopyKey(copy) !== key),
    })),
  }));
  return {
    ...layout,
    lanes: lanes.filter(({ rows }) => rows.some(({ straps }) => straps.length > 0)),
    roughCuts: layout.roughCuts.map((block) => ({
      ...block,
      members: block.members.filter((copy) => pieceCopyKey(copy) !== key),
    })),
  };
}

/** Rough cuts, order of cutting, yield and offcuts as the placements give them. */
function redrawn(layout: Layout, hides: readonly NamedHide[]): Layout {
  const { again, problem, answer } = openTable(layout, hides);
  const hasRoughCuts = problem.items.some(({ roughMargin }) => roughMargin !== undefined);
  const drawn: NestAnswer = {
    ...answer,
    // Where they can't be drawn rightly, the check says so.
    roughCuts: hasRoughCuts ? roughCutsFor(problem, answer.placements).roughCuts : [],
  };
  const { seed, streams, version, effort } = layout.origin;
  const origin = { version, seed, streams, ...(effort === undefined ? {} : { effort }) };
  if (isUntouched(layout)) {
    const { own } = again;
    return layoutFrom({
      ...layout,
      hides,
      problem: own,
      answer: drawn,
      keep: layout,
      origin,
      ...meaningsIn(layout),
    });
  }
  const budget = { seed, streams };
  return layoutAgain({ layout, hides, anew: true, budget }, again, drawn, origin);
}
