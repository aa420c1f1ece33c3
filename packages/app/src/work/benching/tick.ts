import { hashHide, liftFlawed, settingOut, tickLayout, withFigures, withFoundFlaw } from '@hidebound/leather';
import type { CopyState, Layout, SettingOut } from '@hidebound/leather';
import type { BenchTasks, LayoutOnHides } from '../bench-tasks.js';
import { changedHides } from '../laying/same-order.js';

const WISHES = { cut: 'cut', spoiled: 'spoiled', planned: 'planned' } as const satisfies Record<
  CopyState,
  string
>;

/**
 * The layout with one piece ticked. Its figures follow where its hides are the ones that it was laid on; where a hide has
 * changed since, they stay as they were, so that the change is not hidden.
 * @throws LeatherError where the number names nothing, or the piece is that already
 */
export function tickOne({ layout, hides, number, to }: BenchTasks['tick']['input']): Layout {
  const ticked = tickLayout(layout, { [WISHES[to]]: number }).layout;
  if (changedHides(layout, hides).length > 0) return ticked;
  return withFigures(
    ticked,
    hides.map(({ hide }) => hide),
  );
}

/**
 * The hide with a flaw more, and the layout on it.
 * @throws LeatherError `flaw-off-hide`
 */
export function flawFound({
  layout,
  hides,
  hide: id,
  flaw,
}: BenchTasks['flaw']['input']): BenchTasks['flaw']['output'] {
  const named = hides.find(({ hide }) => hide.id === id);
  if (named === undefined) throw new Error('The hide is not one of the layout.');
  const { hide } = withFoundFlaw(named.hide, flaw, { frame: 'hide', useFrom: layout.order.useFrom });
  const after = hides.map((each) => (each === named ? { ...each, hide } : each));
  const lifted = liftFlawed(layout, hides, after);
  return {
    layout: keepOldHashes({ layout, hides }, lifted.layout, id),
    hide,
    lifted: lifted.flawed.map(({ copy, number, isCut }) => ({ piece: copy.piece, number, isCut })),
  };
}

/** A hide that had changed before stays known as another one than the pieces were laid on. */
function keepOldHashes({ layout, hides }: LayoutOnHides, after: Layout, flawed: string): Layout {
  const changed = new Set(
    layout.hides
      .filter(({ id, hash }) => {
        const hide = hides.find((each) => each.hide.id === id)?.hide;
        return hide !== undefined && hashHide(hide) !== hash;
      })
      .map(({ id }) => id),
  );
  changed.delete(flawed);
  const entries = after.hides.map((entry) =>
    changed.has(entry.id) ? (layout.hides.find(({ id }) => id === entry.id) ?? entry) : entry,
  );
  return { ...after, hides: entries };
}

/** As on the sheet for setting out, but with the pieces that are cut already: one goes back to look at them. */
export function setOutAll({ layout, hide }: BenchTasks['setOut']['input']): SettingOut {
  const placements = layout.placements
    .filter(({ state }) => state !== 'spoiled')
    .map((placement) => ({ ...placement, state: 'planned' as const }));
  return settingOut({ ...layout, placements }, hide);
}
